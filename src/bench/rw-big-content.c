/* rw-big-content.c: what the big view says.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-big-content.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-live-target.h"
#include "rw-quantity.h"

/* --- rail and place ------------------------------------------------------------------------------- */

static const char *
label_of (RwJob      *job,
          const char *id)
{
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (job), id);

  return rail != NULL ? rail->label : g_str_equal (id, RW_RAIL_GROUND) ? _ ("ground") : id;
}

static char *
say_where (RwJob           *job,
           const RwReading *sample)
{
  const char *place = rw_place_get_label (sample->place);

  if (g_str_equal (sample->rail, RW_LIVE_SOMEWHERE))
    return g_strdup (_ ("which rail?"));
  if (sample->kind == RW_KIND_RIPPLE)
    /* Translators: rail, place. */
    return g_strdup_printf (_ ("%s ripple · %s"), label_of (job, sample->rail), place);
  /* Translators: rail, place: "+5 V · board". */
  return g_strdup_printf (_ ("%s · %s"), label_of (job, sample->rail), place);
}

/* What to do so that the meter shows something. */
static char *
say_touch (RwJob *job)
{
  const char *rail = rw_job_get_rail (job);
  const char *label = label_of (job, rail);

  if (rw_job_get_kind (job) != RW_KIND_DC)
    /* Translators: rail, place. */
    return g_strdup_printf (_ ("Measure %s, %s"), label, rw_place_get_label (rw_job_get_place (job)));
  if (g_str_equal (rail, RW_RAIL_GROUND))
    return g_strdup (_ ("Touch both ends of the ground wire"));
  switch (rw_job_get_place (job))
    {
    case RW_PLACE_TERMINALS:
      /* Translators: rail. */
      return g_strdup_printf (_ ("Touch %s at the terminals"), label);
    case RW_PLACE_CHIP:
      /* Translators: rail. */
      return g_strdup_printf (_ ("Touch %s at the far chip"), label);
    case RW_PLACE_WIRE:
      /* Translators: rail. */
      return g_strdup_printf (_ ("Touch both ends of the %s wire"), label);
    case RW_PLACE_BOARD:
    case RW_N_PLACES:
    default:
      /* Translators: rail. */
      return g_strdup_printf (_ ("Touch %s at the board"), label);
    }
}

/* Nothing is live: what has to happen first? */
static char *
say_first (RwJob *job)
{
  RwJobMeterInfo meter;

  if (rw_job_get_mode (job) == RW_JOB_REPLAY)
    return g_strdup (_ ("No meter was read at this moment"));
  if (!rw_job_get_meter (job, 0, &meter))
    return g_strdup (_ ("Connect a meter to see its value here"));
  if (rw_job_get_n_meters (job) == 1 && meter.state != RW_LINK_LISTENING && meter.state != RW_LINK_READING
      && meter.words[0] != '\0')
    return g_strdup (meter.words);
  return say_touch (job);
}

/* --- verdict and target --------------------------------------------------------------------------- */

static char *
say_verdict (const RwTarget *target,
             gboolean        stale)
{
  if (stale)
    return g_strdup (_ ("◌ stale"));
  if (target->sample.over)
    return g_strdup (_ ("▲ overload"));
  if (!target->touched || target->verdict == RW_VERDICT_NONE)
    return NULL;
  return g_strdup_printf ("%s %s", rw_verdict_get_glyph (target->verdict), rw_verdict_get_label (target->verdict));
}

/* From afar nobody needs more than hundredths of a volt; a drop along a wire is a matter of thousandths. */
static char *
format_amount (const RwTarget *target,
               double          value)
{
  const RwReading *sample = &target->sample;
  const gboolean coarse = sample->kind == RW_KIND_DC && sample->place != RW_PLACE_WIRE;

  return rw_quantity_format (value, coarse ? MAX (sample->step, 0.01) : sample->step, sample->kind);
}

static char *
say_turn (const RwTarget *target)
{
  g_autofree char *by = format_amount (target, fabs (target->distance));
  g_autofree char *to = format_amount (target, target->aim);

  if (target->distance < 0)
    /* Translators: amount, value: what the trim is to do to this rail. */
    return g_strdup_printf (_ ("Up %s to %s"), by, to);
  /* Translators: amount, value: what the trim is to do to this rail. */
  return g_strdup_printf (_ ("Down %s to %s"), by, to);
}

static char *
say_limit (const RwTarget *target)
{
  g_autofree char *past = format_amount (target, fabs (target->past));
  g_autofree char *limit = format_amount (target, target->limit);

  if (target->verdict != RW_VERDICT_OUTSIDE)
    /* Translators: value. */
    return g_strdup_printf (_ ("The limit is %s"), limit);
  if (target->weak)
    /* Translators: amount, value of the limit towards 0 V. */
    return g_strdup_printf (_ ("%s short of %s"), past, limit);
  /* Translators: amount, value of the limit. */
  return g_strdup_printf (_ ("%s past %s"), past, limit);
}

/* What to do about the value, one short line. (nullable) */
static char *
say_todo (RwJob          *job,
          const RwTarget *target)
{
  const RwSetup setup = rw_bench_state_get_setup (rw_job_get_state (job));

  if (target->sample.over)
    return g_strdup (_ ("Choose a higher range"));
  if (target->danger)
    return g_strdup (_ ("Too much: power off now"));
  if (!target->touched)
    return setup.power_on == RW_SAID_NO ? g_strdup (_ ("The power is off")) : say_touch (job);
  if (target->reversed)
    return g_strdup (_ ("Wrong sign: swap the leads"));
  if (target->from == RW_TARGET_TRIM && !target->inside)
    return say_turn (target);
  if (target->from != RW_TARGET_NONE && target->inside)
    return g_strdup (_ ("Leave it"));
  return isnan (target->limit) ? NULL : say_limit (target);
}

static RwVerdict
choose_look (const RwTarget *target)
{
  if (target->danger || target->sample.over || target->reversed)
    return RW_VERDICT_OUTSIDE;
  return target->touched ? target->verdict : RW_VERDICT_NONE;
}

/* --- the bar -------------------------------------------------------------------------------------- */

static double
position_of (const RwTarget *target,
             double          value)
{
  return rw_position (value, target->lo, target->hi, target->rail != NULL && target->rail->nominal < 0);
}

static void
take_bar (RwBigBar       *bar,
          const RwTarget *target)
{
  const double a = position_of (target, target->window_lo), b = position_of (target, target->window_hi);

  bar->shown = !isnan (target->lo) && !isnan (target->hi);
  bar->open_low = !isfinite (target->lo);
  bar->value = target->touched ? position_of (target, target->value) : (double) NAN;
  bar->aim = target->from == RW_TARGET_TRIM ? position_of (target, target->aim) : (double) NAN;
  bar->window_lo = MIN (a, b);
  bar->window_hi = MAX (a, b);
}

/* --- all of it ------------------------------------------------------------------------------------ */

static void
take_target (RwBigContent   *out,
             RwJob          *job,
             const RwTarget *target,
             double          age)
{
  out->stale = age > RW_LIVE_TARGET_OLD;
  out->danger = target->danger && !out->stale;
  out->look = out->stale ? RW_VERDICT_NONE : choose_look (target);
  out->where = say_where (job, &target->sample);
  out->value = rw_quantity_format (target->value, target->sample.step, target->sample.kind);
  if (target->sample.over)
    {
      g_free (out->value);
      out->value = g_strdup (_ ("OL"));
    }
  out->verdict = say_verdict (target, out->stale);
  out->todo = out->stale ? say_touch (job) : say_todo (job, target);
  take_bar (&out->bar, target);
}

void
rw_big_content_init (RwBigContent *out,
                     RwJob        *job,
                     const char   *message)
{
  RwTarget target;
  double age;

  *out = (RwBigContent){ .message = g_strdup (message), .look = RW_VERDICT_NONE };
  if (job == NULL)
    out->todo = g_strdup (_ ("Open a job to see its meter here"));
  else if (rw_live_target (job, &target, &age))
    take_target (out, job, &target, age);
  else
    out->todo = say_first (job);
}

void
rw_big_content_clear (RwBigContent *self)
{
  g_clear_pointer (&self->where, g_free);
  g_clear_pointer (&self->value, g_free);
  g_clear_pointer (&self->verdict, g_free);
  g_clear_pointer (&self->todo, g_free);
  g_clear_pointer (&self->message, g_free);
}

static gboolean
same_number (double a,
             double b)
{
  return a == b || (isnan (a) && isnan (b));
}

gboolean
rw_big_content_equal (const RwBigContent *a,
                      const RwBigContent *b)
{
  return g_strcmp0 (a->where, b->where) == 0 && g_strcmp0 (a->value, b->value) == 0
         && g_strcmp0 (a->verdict, b->verdict) == 0 && g_strcmp0 (a->todo, b->todo) == 0
         && g_strcmp0 (a->message, b->message) == 0 && a->look == b->look && a->stale == b->stale
         && a->danger == b->danger && a->bar.shown == b->bar.shown && a->bar.open_low == b->bar.open_low
         && same_number (a->bar.value, b->bar.value) && same_number (a->bar.aim, b->bar.aim)
         && same_number (a->bar.window_lo, b->bar.window_lo) && same_number (a->bar.window_hi, b->bar.window_hi);
}

char *
rw_big_content_dup_text (const RwBigContent *self)
{
  const char *parts[] = { self->message, self->where, self->value, self->verdict, self->todo };
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    if (parts[i] != NULL && parts[i][0] != '\0')
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", parts[i]);
  return g_string_free (text, FALSE);
}
