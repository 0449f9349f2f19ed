/* rw-contact.c: one touch of the leads after another, from a stream.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *            at rest, and no air                    2 samples away
 *     NONE ─▶ MOVING ─▶ SETTLED ─▶ HOLDING ─▶ away ─┬─ near (moved on): MOVING, then SETTLED anew
 *       ▲                             ▲             ├─ back where it was: HOLDING
 *       └───────── far: air, overload, another value ┘
 *
 * Rest is rw-settle.h's. Leads in the air show up to ±0.35 V that wander, or pick-up that never rests. A value
 * in that band is therefore a contact only when it is *firm*: for 2.5 s and at least ten samples all values lie
 * within max (1.5 steps, 0.5 %, 1 mV) of their middle (dead rails, drops along a wire; a wandering value crosses more than that in a
 * fraction of the time). A display too coarse to show the wandering shows a firm zero with leads in the air,
 * and no stream can tell that from a dead rail.
 *
 * Away is further than max (5 steps, 0.4 %) from where the contact rests (a sample: 4 u of it as well), for 2
 * samples; where it rests follows
 * the value as long as the stream stays at rest, so that a slow drift neither ends the contact nor is kept.
 * Far is the band of the air, overload, the other sign, or more than 20 %: no trim moves a rail by more without
 * passing its limits. Far for one or two samples, overload among them, is a skidding tip or a range change: back
 * within that, the contact goes on; the third ends it.
 */
#include "config.h"

#include "rw-contact.h"

#include <math.h>

static const double air = 0.35; /* volts */
static const double firm_seconds = 2.5;
static const guint firm_samples = 10;
static const double firm_steps = 1.5, firm_share = 0.005, firm_volts = 0.001;
static const guint away_samples = 2; /* of a value that moves on; one more ends it when it is far */

struct _RwContact
{
  RwSettle *settle; /* NULL until the first sample */
  double    step;   /* that settle was made with */

  /* The firm stretch in the band of the air. */
  double low, high;
  double firm_since;
  guint  n_firm;

  /* The contact. */
  gboolean  holding; /* kept holds, and the leads may still be there */
  gboolean  moving_on;
  gboolean  moved;
  RwSettled kept;
  double    rest; /* where it rests now */
  guint     n_away, n_far;
};

RwContact *
rw_contact_new (void)
{
  return g_new0 (RwContact, 1);
}

void
rw_contact_free (RwContact *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->settle, rw_settle_free);
  g_free (self);
}

void
rw_contact_reset (RwContact *self)
{
  g_clear_pointer (&self->settle, rw_settle_free);
  *self = (RwContact){ 0 };
}

gboolean
rw_contact_get_moved (const RwContact *self)
{
  return self->moved;
}

static gboolean
in_air_band (double value)
{
  return fabs (value) <= air;
}

static double
get_reach (const RwContact *self,
           double           step)
{
  return MAX (5 * step, 0.004 * fabs (self->rest));
}

/* Said of a settled value. */
static gboolean
rests_elsewhere (const RwContact *self,
                 double           value,
                 double           step)
{
  return fabs (value - self->rest) > get_reach (self, step);
}

/* Said of a single sample, whose noise the error of the value tells of. */
static gboolean
is_away (const RwContact *self,
         double           value,
         double           step)
{
  return !(fabs (value - self->rest) <= MAX (get_reach (self, step), 4 * self->kept.u));
}

/* A contact in the band of the air has no other nearness than its digits. */
static gboolean
is_far (const RwContact *self,
        double           value,
        double           step)
{
  if (isnan (value))
    return TRUE;
  if (in_air_band (self->rest) || in_air_band (value))
    return is_away (self, value, step);
  return fabs (value - self->rest) > 0.20 * fabs (self->rest);
}

static void
watch_firmness (RwContact *self,
                double     t,
                double     value,
                double     step)
{
  const double low = MIN (self->low, value), high = MAX (self->high, value);

  /* A hair for values that are not exact in binary. */
  if (self->n_firm > 0 && in_air_band (value) && t >= self->firm_since
      && high - low <= 2 * MAX (firm_steps * step * (1 + 1e-9), MAX (firm_volts, firm_share * fabs (high + low) / 2)))
    {
      self->low = low;
      self->high = high;
      self->n_firm++;
      return;
    }
  self->low = self->high = value;
  self->firm_since = t;
  self->n_firm = in_air_band (value);
}

static gboolean
is_contact (const RwContact *self,
            double           t,
            double           value)
{
  return !in_air_band (value)
         || (self->n_firm >= firm_samples && t - self->firm_since >= firm_seconds);
}

static RwSettled
settle (RwContact *self,
        double     t,
        double     value,
        double     step)
{
  if (self->settle == NULL || self->step != step)
    {
      g_clear_pointer (&self->settle, rw_settle_free);
      self->settle = rw_settle_new (step);
      self->step = step;
    }
  return rw_settle_push (self->settle, t, value);
}

/* Does the contact go on, as far as this sample tells? */
static void
follow (RwContact       *self,
        double           value,
        double           step,
        const RwSettled *now)
{
  const gboolean elsewhere = now->settled && rests_elsewhere (self, now->value, step);
  const gboolean away = elsewhere || is_away (self, value, step);

  self->n_away = away ? self->n_away + 1 : 0;
  self->n_far = is_far (self, value, step) ? self->n_far + 1 : 0;
  if (self->n_far > away_samples)
    self->holding = FALSE;
  else if (!away)
    {
      self->moving_on = FALSE;
      if (now->settled)
        self->rest = now->value;
    }
  else if (self->n_away >= away_samples)
    self->moving_on = TRUE;
}

static RwContactState
keep (RwContact *self,
      RwSettled  now,
      RwSettled *out)
{
  self->moved = self->holding;
  self->holding = TRUE;
  self->moving_on = FALSE;
  self->n_away = self->n_far = 0;
  self->kept = now;
  self->rest = now.value;
  if (out != NULL)
    *out = now;
  return RW_CONTACT_SETTLED;
}

RwContactState
rw_contact_push (RwContact *self,
                 double     t,
                 double     value,
                 double     step,
                 RwSettled *out)
{
  const RwSettled now = settle (self, t, isfinite (value) ? value : (double) NAN, step);

  watch_firmness (self, t, value, step);
  if (self->holding)
    follow (self, value, step, &now);
  if (self->holding && !self->moving_on)
    {
      if (out != NULL)
        *out = self->kept;
      return RW_CONTACT_HOLDING;
    }
  if (now.settled && self->holding && !rests_elsewhere (self, now.value, step))
    return RW_CONTACT_MOVING; /* between where it was and elsewhere: the median has not left yet */
  if (now.settled && isfinite (value) && is_contact (self, t, now.value))
    return keep (self, now, out);
  return !isfinite (value) || in_air_band (value) ? RW_CONTACT_NONE : RW_CONTACT_MOVING;
}
