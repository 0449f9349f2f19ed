/* rw-watch-wiggle.c: a wiggle test: one spot watched for dips while plugs are moved, and resets marked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-watch-wiggle.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

static const guint most_dips = 500;
static const double gap = 5; /* seconds without a sample that are not under watch, as in rw-dips.h */

typedef struct
{
  guint  n;  /* event number */
  double at; /* seconds under watch; NaN: nothing was */
} Reset;

struct _RwWatchWiggle
{
  GObject     parent_instance;
  RwSession  *session;
  gboolean    running;
  double      started;
  const char *rail;  /* interned; NULL: never started */
  RwPlace     place;
  const char *meter; /* interned; of the first sample */
  gboolean    heard; /* a sample came */
  double      newest; /* seconds of the session: the last sample */
  guint       elsewhere;
  RwDips     *dips;
  GArray     *falls;  /* of double: seconds under watch at which a dip or a step towards 0 began */
  GArray     *resets; /* of Reset */
};

G_DEFINE_FINAL_TYPE (RwWatchWiggle, rw_watch_wiggle, G_TYPE_OBJECT)

static guint changed_signal;

static void
tell (RwWatchWiggle *self)
{
  g_signal_emit (self, changed_signal, 0);
}

/* --- what comes in -------------------------------------------------------------------------------- */

/* A rise resets nothing. */
static gboolean
is_fall (const RwDip *dip)
{
  return dip->kind == RW_DIP_DIP || (dip->kind == RW_DIP_STEP && dip->size * dip->base < 0);
}

static void
take_dip (RwWatchWiggle *self,
          double         t)
{
  const RwDip *dip = rw_dips_get (self->dips, rw_dips_get_n (self->dips) - 1);
  const double at = MAX (rw_dips_get_watched (self->dips) - (t - dip->start), 0);

  if (is_fall (dip))
    g_array_append_val (self->falls, at);
}

static void
take_sample (RwWatchWiggle *self,
             const RwEvent *event)
{
  const RwReading *sample = &event->reading;

  if (!self->heard && sample->rail == self->rail && sample->place == self->place)
    self->meter = sample->meter;
  if (sample->rail != self->rail || sample->place != self->place || sample->kind != RW_KIND_DC
      || sample->meter != self->meter)
    {
      self->elsewhere++;
      return;
    }
  self->heard = TRUE;
  if (rw_dips_push (self->dips, event->t, sample))
    take_dip (self, event->t);
  self->newest = event->t;
}

static gboolean
is_reset (const RwEvent *event)
{
  return g_strcmp0 (event->words.text, RW_WATCH_RESET) == 0 || g_strcmp0 (event->words.text, _ ("reset seen")) == 0;
}

static void
take_mark (RwWatchWiggle *self,
           const RwEvent *event)
{
  const double since = event->t - self->newest;
  Reset reset = { event->n, (double) NAN };

  if (!is_reset (event))
    return;
  if (self->heard && since <= gap && !isnan (rw_dips_get_base (self->dips)))
    reset.at = rw_dips_get_watched (self->dips) + MAX (since, 0);
  g_array_append_val (self->resets, reset);
}

static void
added_cb (RwWatchWiggle *self,
          guint          index)
{
  const RwEvent *event = rw_session_get_event (self->session, index);

  if (!self->running || event->t < self->started)
    return;
  if (event->type == RW_EVENT_SAMPLE)
    take_sample (self, event);
  else if (event->type == RW_EVENT_MARK)
    take_mark (self, event);
  else if (event->type != RW_EVENT_RETRACT)
    return;
  tell (self);
}

/* --- start and end -------------------------------------------------------------------------------- */

static void
forget (RwWatchWiggle *self)
{
  g_clear_pointer (&self->dips, rw_dips_free);
  self->dips = rw_dips_new (most_dips);
  g_array_set_size (self->falls, 0);
  g_array_set_size (self->resets, 0);
  self->heard = FALSE;
  self->elsewhere = 0;
}

/* A replay went back: what was watched lies in the future again. */
static void
rewound_cb (RwWatchWiggle *self)
{
  self->running = FALSE;
  self->rail = NULL;
  forget (self);
  tell (self);
}

void
rw_watch_wiggle_start (RwWatchWiggle *self,
                       double         t,
                       const char    *rail,
                       RwPlace        place)
{
  g_return_if_fail (RW_IS_WATCH_WIGGLE (self) && rail != NULL);
  forget (self);
  self->running = TRUE;
  self->started = t;
  self->rail = g_intern_string (rail);
  self->place = place;
  tell (self);
}

void
rw_watch_wiggle_stop (RwWatchWiggle *self)
{
  g_return_if_fail (RW_IS_WATCH_WIGGLE (self));
  self->running = FALSE;
  tell (self);
}

/* --- what follows --------------------------------------------------------------------------------- */

gboolean
rw_watch_wiggle_is_running (RwWatchWiggle *self)
{
  return self->running;
}

const char *
rw_watch_wiggle_get_rail (RwWatchWiggle *self)
{
  return self->rail;
}

RwPlace
rw_watch_wiggle_get_place (RwWatchWiggle *self)
{
  return self->place;
}

const RwDips *
rw_watch_wiggle_get_dips (RwWatchWiggle *self)
{
  return self->rail != NULL ? self->dips : NULL;
}

guint
rw_watch_wiggle_get_elsewhere (RwWatchWiggle *self)
{
  return self->elsewhere;
}

/* Seconds under watch of the resets that stand; *away: those marked while nothing was under watch.
 * (transfer full) (element-type double) */
static GArray *
list_resets (RwWatchWiggle *self,
             guint         *away)
{
  GArray *list = g_array_new (FALSE, FALSE, sizeof (double));

  *away = 0;
  for (guint i = 0; i < self->resets->len; i++)
    {
      const Reset *reset = &g_array_index (self->resets, Reset, i);
      const int index = rw_session_find (self->session, reset->n);

      if (index < 0 || !rw_session_is_live (self->session, (guint) index))
        continue;
      if (isnan (reset->at))
        ++*away;
      else
        g_array_append_val (list, reset->at);
    }
  return list;
}

guint
rw_watch_wiggle_get_n_resets (RwWatchWiggle *self)
{
  guint away;
  g_autoptr (GArray) list = list_resets (self, &away);

  return list->len;
}

guint
rw_watch_wiggle_get_n_away (RwWatchWiggle *self)
{
  guint away;
  g_autoptr (GArray) list = list_resets (self, &away);

  return away;
}

RwTogether
rw_watch_wiggle_get_together (RwWatchWiggle *self)
{
  guint away;
  g_autoptr (GArray) list = list_resets (self, &away);
  double end = rw_dips_get_watched (self->dips);

  for (guint i = 0; i < list->len; i++)
    end = MAX (end, g_array_index (list, double, i));
  return rw_together_test ((const double *) (gpointer) self->falls->data, self->falls->len,
                           (const double *) (gpointer) list->data, list->len, 0, end, RW_WATCH_REACH);
}

/* --- in words ------------------------------------------------------------------------------------- */

/* "+5 V, board". (transfer full) */
static char *
name_spot (RwWatchWiggle *self)
{
  const RwRail *rail = rw_profile_find_rail (rw_session_get_profile (self->session), self->rail);
  const gboolean ground = g_str_equal (self->rail, RW_RAIL_GROUND);

  return g_strdup_printf ("%s, %s", rail != NULL ? rail->label : ground ? _ ("ground") : self->rail,
                          rw_place_get_label (self->place));
}

static char *
describe_running (RwWatchWiggle *self)
{
  g_autofree char *spot = name_spot (self);
  const double threshold = rw_dips_get_threshold (self->dips);

  if (!self->heard)
    return g_strdup_printf (self->elsewhere > 0
                              ? _ ("The meter is elsewhere or not on DC volts: put the leads to %s.")
                              : _ ("Waiting for the meter at %s: this test needs a meter on a cable."), spot);
  if (isnan (threshold))
    return g_strdup_printf (_ ("%s: learning how quiet it is. Touch nothing yet."), spot);

  g_autofree char *base = rw_quantity_format (rw_dips_get_base (self->dips), 0.001, RW_KIND_DC);
  g_autofree char *least = rw_quantity_format (threshold, 0.001, RW_KIND_DC);

  /* Translators: spot, its quiet value, the smallest change that is named. */
  return g_strdup_printf (_ ("%s is quiet at %s; changes from %s are named. Move one plug after another now, by its "
                             "insulated body, and press M when the game resets."), spot, base, least);
}

char *
rw_watch_wiggle_describe (RwWatchWiggle *self)
{
  if (self->rail == NULL)
    return g_strdup (_ ("Clip the leads to a spot, start, and move one plug after another: dips are seen, timed and "
                        "counted."));
  if (self->running)
    return describe_running (self);

  g_autofree char *spot = name_spot (self);
  g_autofree char *watched = rw_quantity_format_age (rw_dips_get_watched (self->dips));

  return g_strdup_printf (_ ("The test at %s has ended; it watched for %s."), spot, watched);
}

char *
rw_watch_wiggle_describe_counts (RwWatchWiggle *self)
{
  const guint dips = rw_dips_get_count (self->dips, RW_DIP_DIP);
  const guint peaks = rw_dips_get_count (self->dips, RW_DIP_PEAK);
  const guint steps = rw_dips_get_count (self->dips, RW_DIP_STEP);
  const guint resets = rw_watch_wiggle_get_n_resets (self);
  const guint breaks = rw_dips_get_interruptions (self->dips);
  g_autofree char *a = g_strdup_printf (ngettext ("%u dip", "%u dips", dips), dips);
  g_autofree char *b = g_strdup_printf (ngettext ("%u peak", "%u peaks", peaks), peaks);
  g_autofree char *c = g_strdup_printf (ngettext ("%u step", "%u steps", steps), steps);
  g_autofree char *d = g_strdup_printf (ngettext ("%u reset", "%u resets", resets), resets);
  g_autofree char *e = g_strdup_printf (ngettext ("%u interruption", "%u interruptions", breaks), breaks);

  return g_strdup_printf ("%s · %s · %s · %s · %s", a, b, c, d, e);
}

char *
rw_watch_wiggle_describe_dip (RwWatchWiggle *self,
                              const RwDip   *dip)
{
  g_autofree char *clock = rw_quantity_format_clock (dip->start);
  g_autofree char *size = rw_quantity_format_signed (dip->size, 0.001, RW_KIND_DC);
  g_autofree char *base = rw_quantity_format (dip->base, 0.001, RW_KIND_DC);
  const double seconds = dip->end - dip->start;
  g_autofree char *length = rw_quantity_format_number (seconds, 1);

  if (dip->kind == RW_DIP_STEP)
    /* Translators: time, size, value before. */
    return g_strdup_printf (_ ("%s  step %s from %s"), clock, size, base);
  if (seconds < 0.05)
    /* Translators: time, "dip" or "peak", size, value before. */
    return g_strdup_printf (_ ("%s  %s %s from %s, a single reading"), clock,
                            dip->kind == RW_DIP_DIP ? _ ("dip") : _ ("peak"), size, base);
  /* Translators: time, "dip" or "peak", size, value before, seconds between the first and last sample of it. */
  return g_strdup_printf (_ ("%s  %s %s from %s, %s s"), clock, dip->kind == RW_DIP_DIP ? _ ("dip") : _ ("peak"), size,
                          base, length);
}

char *
rw_watch_wiggle_describe_together (RwWatchWiggle *self)
{
  const RwTogether together = rw_watch_wiggle_get_together (self);
  const guint away = rw_watch_wiggle_get_n_away (self);
  g_autofree char *words = rw_together_describe (&together);

  if (away == 0)
    return g_steal_pointer (&words);

  g_autofree char *left = g_strdup_printf (ngettext ("%u reset was marked while nothing was under watch and does not "
                                                     "count.",
                                                     "%u resets were marked while nothing was under watch and do not "
                                                     "count.", away), away);

  return g_strdup_printf ("%s %s", words, left);
}

char *
rw_watch_wiggle_dup_record (RwWatchWiggle *self)
{
  if (self->rail == NULL || !self->heard)
    return NULL;

  g_autofree char *spot = name_spot (self);
  g_autofree char *watched = rw_quantity_format_age (rw_dips_get_watched (self->dips));
  g_autofree char *counts = rw_watch_wiggle_describe_counts (self);
  g_autofree char *together = rw_watch_wiggle_describe_together (self);

  /* Translators: spot, how long, counts, a sentence. */
  return g_strdup_printf (_ ("Wiggle test at %s, %s under watch: %s. %s"), spot, watched, counts, together);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_watch_wiggle_finalize (GObject *object)
{
  RwWatchWiggle *self = RW_WATCH_WIGGLE (object);

  g_clear_object (&self->session);
  g_clear_pointer (&self->dips, rw_dips_free);
  g_array_unref (self->falls);
  g_array_unref (self->resets);
  G_OBJECT_CLASS (rw_watch_wiggle_parent_class)->finalize (object);
}

static void
rw_watch_wiggle_class_init (RwWatchWiggleClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_watch_wiggle_finalize;
  changed_signal = g_signal_new ("changed", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
rw_watch_wiggle_init (RwWatchWiggle *self)
{
  self->falls = g_array_new (FALSE, FALSE, sizeof (double));
  self->resets = g_array_new (FALSE, FALSE, sizeof (Reset));
  forget (self);
}

RwWatchWiggle *
rw_watch_wiggle_new (RwSession *session)
{
  RwWatchWiggle *self = g_object_new (RW_TYPE_WATCH_WIGGLE, NULL);

  g_return_val_if_fail (RW_IS_SESSION (session), self);
  self->session = g_object_ref (session);
  g_signal_connect_object (session, "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (session, "rewound", G_CALLBACK (rewound_cb), self, G_CONNECT_SWAPPED);
  return self;
}
