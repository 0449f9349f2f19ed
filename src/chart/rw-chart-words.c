/* rw-chart-words.c: what the chart says in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chart-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

static const double longest_time = 1e9; /* seconds: a clock shows no more */
static const double coarse_u = 0.02; /* volts at 95 %: from here on a millivolt says nothing */

static char *
clock_words (double t)
{
  return rw_quantity_format_clock (CLAMP (t, 0, longest_time));
}

/* Free text may hold line breaks; a label has one line. */
static char *
one_line (char *words)
{
  return g_strstrip (g_strdelimit (words, "\n\r\t", ' '));
}

/* Name of the symptom or cause that @event is about; NULL when it is about none. */
static char *
name_of (const RwEvent      *event,
         const RwChartNamer *namer)
{
  const char *id = event->type == RW_EVENT_SYMPTOM  ? event->symptom.id
                   : event->type == RW_EVENT_REPAIR ? event->repair.cause
                                                    : NULL;
  char *name = id != NULL && namer->func != NULL ? namer->func (event->type, id, namer->user_data)
                                                 : NULL;

  return name != NULL ? name : g_strdup (id);
}

/* The event described, with the name of its symptom or cause in place of the id. */
static char *
describe_named (RwSession          *session,
                const RwEvent      *event,
                const RwChartNamer *namer)
{
  g_autofree char *name = name_of (event, namer);
  RwEvent named = *event; /* on loan: nothing of it is freed */

  if (event->type == RW_EVENT_SYMPTOM)
    named.symptom.id = name;
  else if (event->type == RW_EVENT_REPAIR)
    named.repair.cause = name;
  return one_line (rw_event_describe (&named, rw_session_get_profile (session)));
}

/* Short, since a sign beside it says the rest: a pulse for a symptom, a tick for a repair that
 * helped. */
char *
rw_chart_words_vertical (RwSession             *session,
                         const RwChartVertical *vertical,
                         const RwChartNamer    *namer)
{
  RwEvent event = *rw_session_get_event (session, vertical->index);

  if (event.type == RW_EVENT_TRIM)
    /* Translators: label at a turn of the trim; %u counts the turns. */
    return g_strdup_printf (_ ("trim %u"), vertical->count);
  if (event.type == RW_EVENT_REPAIR
      || (event.type == RW_EVENT_SYMPTOM && event.symptom.state == RW_SYMPTOM_PRESENT))
    return one_line (name_of (&event, namer));
  if (event.type == RW_EVENT_SETUP)
    event.setup = vertical->news;
  return describe_named (session, &event, namer);
}

/* "+5 V, board: 5.02 V ±0.02 V · inside · 1:23" */
static char *
value_words (RwSession       *session,
             const RwReading *reading,
             const RwChartHit *hit)
{
  const RwEvent plain = { .type = RW_EVENT_READING, .reading = *reading };
  g_autofree char *where = rw_event_describe (&plain, rw_session_get_profile (session));
  g_autofree char *spread = hit->u > 0 ? rw_quantity_format_u (hit->u, reading->kind)
                                       : g_strdup ("");
  g_autofree char *when = clock_words (hit->t);
  const char *kind = reading->kind == RW_KIND_RIPPLE ? _ ("ripple") : NULL;
  const char *verdict = hit->verdict != RW_VERDICT_NONE ? rw_verdict_get_label (hit->verdict)
                                                        : NULL;
  g_autofree char *value = g_strjoin (spread[0] != '\0' ? " " : "", where, spread, NULL);
  const char *parts[5] = { value };
  guint n = 1;

  if (kind != NULL)
    parts[n++] = kind;
  if (verdict != NULL)
    parts[n++] = verdict;
  parts[n++] = when;
  return g_strjoinv (" · ", (char **) parts);
}

static void
fill_value (RwSession       *session,
            const RwReading *reading,
            RwChartHit      *hit)
{
  const RwRail *rail = rw_profile_find_rail (rw_session_get_profile (session), reading->rail);
  const gboolean over = reading->over || !isfinite (reading->value);
  double lo, hi;

  hit->rail = reading->rail;
  hit->place = reading->place;
  hit->what = reading->kind;
  hit->value = over ? (double) NAN : reading->value;
  hit->u = rw_meter_facts_u_total (rw_session_find_meter (session, reading->meter), reading);
  hit->verdict = RW_VERDICT_NONE;
  if (!over && rw_rail_limits_at (rail, reading->rail, reading->place, reading->kind, &lo, &hi))
    hit->verdict = rw_verdict_judge (hit->value, hit->u, lo, hi);
  hit->text = value_words (session, reading, hit);
}

void
rw_chart_words_fill_hit (RwSession          *session,
                         guint               index,
                         const RwChartNamer *namer,
                         RwChartHit         *hit)
{
  const RwEvent *event = rw_session_get_event (session, index);

  if (hit->kind != RW_HIT_VERTICAL)
    {
      fill_value (session, &event->reading, hit);
      return;
    }
  hit->rail = NULL;
  hit->value = hit->u = NAN;
  hit->verdict = RW_VERDICT_NONE;

  g_autofree char *what = describe_named (session, event, namer);
  g_autofree char *when = clock_words (hit->t);

  hit->text = g_strdup_printf ("%s · %s", what, when);
}

/* "11.83 V ±0.05 V": as many decimals as the uncertainty has. */
static char *
expected_value (const RwExpectedKnot *knot)
{
  const double step = RW_SCENE_COVER * knot->u < coarse_u ? 0.001 : 0.01;
  g_autofree char *value = rw_quantity_format (knot->value, step, RW_KIND_DC);
  g_autofree char *spread = knot->u > 0 ? rw_quantity_format_u (knot->u, RW_KIND_DC) : g_strdup ("");

  return g_strjoin (spread[0] != '\0' ? " " : "", value, spread, NULL);
}

void
rw_chart_words_fill_expected (const RwChartChannel *channel,
                              const RwExpectedKnot *knot,
                              RwChartHit           *hit)
{
  g_autofree char *value = expected_value (knot);
  g_autofree char *when = clock_words (knot->t);

  hit->rail = channel->rail;
  hit->place = channel->place;
  hit->what = channel->kind;
  hit->value = knot->value;
  hit->u = knot->u;
  hit->verdict = RW_VERDICT_NONE;
  /* Translators: what the chart shows under the pointer: a rail, a place, a value with its uncertainty
   * that follows from other readings, and a time: "+12 V, board: expected 11.83 V ±0.05 V, not
   * measured · 1:23". */
  hit->text = g_strdup_printf (_ ("%s, %s: expected %s, not measured · %s"),
                               rw_scene_rail_label (channel), rw_place_get_label (channel->place),
                               value, when);
}

/* Event index of the newest thing @trace shows; G_MAXUINT when that is nothing. */
static guint
newest_of (const RwScene *scene,
           const RwTrace *trace)
{
  const RwPyramid *samples = trace->channel->samples;
  const RwChartReading *reading = rw_chart_channel_last_reading (trace->channel, scene->time.hi);
  guint newest = reading != NULL ? reading->index : G_MAXUINT;

  for (guint i = trace->first_sample + trace->n_samples; i-- > 0;)
    if (!isnan (rw_pyramid_get_value (samples, i)))
      {
        const guint tag = rw_pyramid_get_tag (samples, i);

        return newest == G_MAXUINT ? tag : MAX (newest, tag);
      }
  return newest;
}

static guint
count_verticals (const RwScene *scene,
                 RwEventType    type)
{
  const guint n = rw_chart_data_get_n_verticals (scene->in.data);
  guint count = 0;

  for (guint i = 0; i < n; i++)
    count += rw_chart_data_get_vertical (scene->in.data, i)->type == type ? 1 : 0;
  return count;
}

static void
say_span (const RwScene *scene,
          GString       *out)
{
  g_autofree char *from = clock_words (scene->time.lo);
  g_autofree char *to = clock_words (scene->time.hi);
  guint n_rails = 0;

  for (guint i = 0; i < scene->traces->len; i++)
    n_rails += i == 0
               || rw_scene_trace (scene, i)->channel->rail
                      != rw_scene_trace (scene, i - 1)->channel->rail;
  if (n_rails == 0)
    /* Translators: read out for the chart; %s are times such as 1:23. */
    g_string_append_printf (out, _ ("No readings between %s and %s."), from, to);
  else
    g_string_append_printf (
        out, ngettext ("%u rail between %s and %s.", "%u rails between %s and %s.", n_rails),
        n_rails, from, to);
}

static void
say_trace (const RwScene *scene,
           const RwTrace *trace,
           GString       *out)
{
  RwSession *session = rw_chart_data_get_session (scene->in.data);
  const guint newest = newest_of (scene, trace);
  const guint n = trace->channel->readings->len;

  if (newest == G_MAXUINT)
    return;

  const double t = rw_session_get_event (session, newest)->t;
  g_auto (RwChartHit) hit = { .kind = RW_HIT_READING, .t = t };
  const RwChartNamer nobody = { NULL, NULL };

  rw_chart_words_fill_hit (session, newest, &nobody, &hit);
  g_string_append_printf (out, " %s", hit.text);
  if (n > 0)
    g_string_append_printf (out, ngettext (" (%u reading).", " (%u readings).", n), n);
  else
    g_string_append_c (out, '.');
}

static void
say_expected (const RwScene *scene,
              GString       *out)
{
  for (guint i = 0; i < scene->traces->len; i++)
    {
      const RwExpectedKnot *knot = rw_scene_expected_now (scene, i);

      if (knot == NULL)
        continue;

      g_auto (RwChartHit) hit = { .kind = RW_HIT_EXPECTED, .t = knot->t };

      rw_chart_words_fill_expected (rw_scene_trace (scene, i)->channel, knot, &hit);
      g_string_append_printf (out, " %s.", hit.text);
    }
}

static void
say_verticals (const RwScene *scene,
               GString       *out)
{
  const guint n_trims = count_verticals (scene, RW_EVENT_TRIM);
  const guint n_marks = count_verticals (scene, RW_EVENT_MARK);

  if (n_trims > 0)
    g_string_append_printf (
        out, ngettext (" %u turn of the trim.", " %u turns of the trim.", n_trims), n_trims);
  if (n_marks > 0)
    g_string_append_printf (out, ngettext (" %u mark.", " %u marks.", n_marks), n_marks);
}

char *
rw_chart_words_summary (const RwScene *scene)
{
  GString *out = g_string_new (NULL);

  say_span (scene, out);
  for (guint i = 0; i < scene->traces->len; i++)
    say_trace (scene, rw_scene_trace (scene, i), out);
  say_expected (scene, out);
  say_verticals (scene, out);
  return g_string_free (out, FALSE);
}
