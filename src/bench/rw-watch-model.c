/* rw-watch-model.c: what the watch window says of a warm-up and of ripple, and when a reading falls due.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nobody is reminded of a warm-up that he does not follow: a point is due only where the spot has a reading in the
 * same run. Past its time a point is missed; nothing reminds of it any more.
 */
#include "config.h"

#include "rw-watch-model.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-ripple.h"

static const double stream_gap = 5; /* seconds without a sample: another stream */

static const RwPlace places[] = { RW_PLACE_TERMINALS, RW_PLACE_BOARD, RW_PLACE_CHIP };

/* --- warm-up -------------------------------------------------------------------------------------- */

GArray *
rw_watch_list_spots (RwSession *session,
                     double     now)
{
  GArray *spots = g_array_new (FALSE, FALSE, sizeof (RwWatchSpot));
  RwProfile *profile = rw_session_get_profile (session);
  const RwRail *reference = rw_profile_get_reference (profile);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    for (guint k = 0; k < G_N_ELEMENTS (places); k++)
      {
        const RwRail *rail = rw_profile_get_rail (profile, i);
        const RwWatchSpot spot = { rail, places[k], rw_warm_up_read (session, rail->id, places[k], now) };
        const gboolean wanted = rail == reference && places[k] != RW_PLACE_CHIP && !isnan (spot.read.started);

        if (spot.read.n > 0 || wanted)
          g_array_append_val (spots, spot);
      }
  return spots;
}

char *
rw_watch_spot_name (const RwWatchSpot *self)
{
  return g_strdup_printf ("%s, %s", self->rail->label, rw_place_get_label (self->place));
}

char *
rw_watch_verdict_words (RwWarmUpVerdict verdict)
{
  switch (verdict)
    {
    case RW_WARM_UP_GOOD:
      return g_strdup_printf ("● %s", _ ("steady"));
    case RW_WARM_UP_FAIR:
      return g_strdup_printf ("◐ %s", _ ("drifts a little"));
    case RW_WARM_UP_BAD:
      return g_strdup_printf ("▲ %s", _ ("drifts too much"));
    case RW_WARM_UP_UNSURE:
      return g_strdup_printf ("◐ %s", _ ("too close to call"));
    case RW_WARM_UP_STEPPED:
      return g_strdup_printf ("▲ %s", _ ("stepped"));
    case RW_WARM_UP_TOO_FEW:
    default:
      return g_strdup_printf ("– %s", _ ("too few readings"));
    }
}

char *
rw_watch_point_words (const RwWarmUpPoint *point)
{
  g_autofree char *value = point->state == RW_WARM_UP_IN ? rw_quantity_format (point->value, point->step, RW_KIND_DC) : NULL;

  switch (point->state)
    {
    case RW_WARM_UP_IN:
      /* Translators: minutes after power on, value. */
      return g_strdup_printf (_ ("%g min: %s"), point->minutes, value);
    case RW_WARM_UP_DUE:
      return g_strdup_printf (_ ("%g min: due now"), point->minutes);
    case RW_WARM_UP_OVERDUE:
      return g_strdup_printf (_ ("%g min: missed"), point->minutes);
    case RW_WARM_UP_LATER:
    default:
      return g_strdup_printf (_ ("%g min: later"), point->minutes);
    }
}

/* (nullable) */
static const RwWatchSpot *
find_spot (const GArray *spots,
           const RwRail *rail,
           RwPlace       place)
{
  for (guint i = 0; i < spots->len; i++)
    {
      const RwWatchSpot *spot = &g_array_index (spots, RwWatchSpot, i);

      if (spot->rail == rail && spot->place == place)
        return spot;
    }
  return NULL;
}

char *
rw_watch_where_words (const GArray *spots)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < spots->len; i++)
    {
      const RwWatchSpot *board = &g_array_index (spots, RwWatchSpot, i);
      const RwWatchSpot *terminals = find_spot (spots, board->rail, RW_PLACE_TERMINALS);

      if (board->place != RW_PLACE_BOARD || terminals == NULL)
        continue;

      const char *words = rw_warm_up_where_describe (rw_warm_up_where (&board->read, &terminals->read,
                                                                       board->rail->nominal));

      if (*words != '\0')
        g_string_append_printf (text, "%s%s: %s", text->len > 0 ? "\n" : "", board->rail->label, words);
    }
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

/* --- the reminder --------------------------------------------------------------------------------- */

void
rw_watch_reminder_init (RwWatchReminder *self)
{
  *self = (RwWatchReminder){ (double) NAN, 0 };
}

static gboolean
is_due (const RwWatchSpot *spot,
        int                point)
{
  return spot->read.running && spot->read.n > 0 && spot->read.points[point].state == RW_WARM_UP_DUE;
}

int
rw_watch_find_due (const GArray *spots)
{
  for (int point = 0; point < RW_WARM_UP_N_POINTS; point++)
    for (guint i = 0; i < spots->len; i++)
      if (is_due (&g_array_index (spots, RwWatchSpot, i), point))
        return point;
  return -1;
}

char *
rw_watch_due_words (const GArray *spots,
                    int           point)
{
  g_autoptr (GString) list = g_string_new (NULL);
  double minutes = 0;

  for (guint i = 0; i < spots->len; i++)
    {
      const RwWatchSpot *spot = &g_array_index (spots, RwWatchSpot, i);

      if (!is_due (spot, point))
        continue;

      g_autofree char *name = rw_watch_spot_name (spot);

      minutes = spot->read.points[point].minutes;
      g_string_append_printf (list, "%s%s", list->len > 0 ? "; " : "", name);
    }
  /* Translators: minutes after power on, the spots to read. */
  return g_strdup_printf (_ ("Warm-up: the readings at %g min are due: %s."), minutes, list->str);
}

gboolean
rw_watch_reminder_take (RwWatchReminder *self,
                        const GArray    *spots,
                        int             *point)
{
  *point = rw_watch_find_due (spots);
  if (*point < 0)
    return FALSE;

  const double started = g_array_index (spots, RwWatchSpot, 0).read.started;

  if (!(started == self->started))
    *self = (RwWatchReminder){ started, 0 };
  if ((self->said & 1u << *point) != 0)
    return FALSE;
  self->said |= 1u << *point;
  return TRUE;
}

/* --- ripple --------------------------------------------------------------------------------------- */

double
rw_watch_rate (RwSession       *session,
               const RwReading *like)
{
  const guint n = rw_session_get_n_events (session);
  double newest = (double) NAN;
  double oldest = (double) NAN;
  guint steps = 0;

  for (guint i = n; i > 0 && n - i < 200 && steps < 40; i--)
    {
      const RwEvent *event = rw_session_get_event (session, i - 1);

      if (event->type != RW_EVENT_SAMPLE || event->reading.meter != like->meter
          || !rw_reading_same_spot (&event->reading, like))
        continue;
      if (isnan (newest))
        newest = event->t;
      else if (oldest - event->t > stream_gap)
        break;
      else
        steps++;
      oldest = event->t;
    }
  return steps >= 4 && newest > oldest ? steps / (newest - oldest) : 0;
}

/* The newest DC reading of the spot that still describes it. (nullable) */
static const RwReading *
find_dc (RwSession       *session,
         const RwReading *live)
{
  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (!rw_session_is_live (session, index))
        continue;
      if (event->type == RW_EVENT_SETUP || event->type == RW_EVENT_TRIM
          || (event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED))
        return NULL;
      if (event->type == RW_EVENT_READING && event->reading.kind == RW_KIND_DC && event->reading.rail == live->rail
          && event->reading.place == live->place)
        return &event->reading;
    }
  return NULL;
}

/* (transfer full) */
static char *
say_trough (RwSession       *session,
            const RwReading *live)
{
  const RwReading *dc = find_dc (session, live);
  const RwRippleNumber none = { (double) NAN, (double) NAN };

  return rw_ripple_describe_trough (dc != NULL ? rw_ripple_trough (dc, live, rw_session_find_meter (session, dc->meter),
                                                                   rw_session_find_meter (session, live->meter))
                                               : none);
}

static void
append_ripple (RwSession          *session,
               const RwReading    *live,
               const RwMeterFacts *facts,
               RwRippleSupply      supply,
               GString            *text)
{
  const RwRail *rail = rw_profile_find_rail (rw_session_get_profile (session), live->rail);
  g_autofree char *words = rw_ripple_describe (live, facts, supply, rail);

  g_string_append (text, words);
  if (rail == NULL || !rw_ripple_is_raw (rail))
    return;

  g_autofree char *trough = say_trough (session, live);

  g_string_append_printf (text, " %s", trough);
}

char *
rw_watch_ripple_words (RwSession       *session,
                       const RwReading *live,
                       double           rate,
                       const char      *wanted)
{
  const RwMeterFacts *facts = live != NULL && live->meter != NULL ? rw_session_find_meter (session, live->meter) : NULL;
  const RwRippleSupply supply = rw_ripple_supply_of (rw_session_get_profile (session));
  g_autofree char *meter = rw_ripple_describe_meter (facts, supply);
  g_autoptr (GString) text = g_string_new (NULL);

  if (wanted != NULL && (live == NULL || live->kind != RW_KIND_RIPPLE))
    g_string_append_printf (text, _ ("“%s” asks for the AC range: turn the dial to AC volts (V~), leads in the volts "
                                     "jacks. Low-voltage side only: the mains screws are next to the DC ones, so cover "
                                     "them first.\n"), wanted);
  if (live != NULL && live->kind == RW_KIND_RIPPLE)
    append_ripple (session, live, facts, supply, text);
  else
    {
      g_autofree char *stream = rw_ripple_describe_stream (rate);

      g_string_append (text, stream);
    }
  g_string_append_printf (text, "\n%s %s", meter,
                          _ ("MIN and MAX on DC volts do not show ripple either: they keep the ends of readings that are "
                             "averages already. Single spikes, and dips shorter than a tenth of a second, are for an "
                             "oscilloscope."));
  return g_strdup (text->str);
}
