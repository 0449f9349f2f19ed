/* rw-contact.c: one touch of the leads after another, from a stream.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *            at rest, and no air                    2 samples away
 *     NONE ─▶ MOVING ─▶ SETTLED ─▶ HOLDING ─▶ away ─┬─ near (moved on): MOVING, then SETTLED anew
 *       ▲                             ▲             ├─ back where it was: HOLDING
 *       └───────── far: air, overload, another value ┘
 *
 * Rest is rw-settle.h's. Leads in the air show up to ±0.6 V that wander, or pick-up that never rests. A value in
 * that band is therefore a contact only when it is *firm*, as dead rails are and drops along a wire: all values
 *   - for 3 s and at least 12 samples within max (2 steps, 0.5 %, 1 mV) of their middle, or
 *   - for 4 s and at least 16 samples within max (4.5 steps, 0.5 %, 1 mV), and without memory, as the noise of a
 *     meter is and what leads pick up is not: von Neumann's ratio Σ(vᵢ₊₁ − vᵢ)²/Σ(vᵢ − mean)², 2 for white noise,
 *     is from 1.1 to 2.9.
 * A display too coarse to show the wandering shows a firm zero with leads in the air, and no stream can tell that
 * from a dead rail.
 *
 * A settled value is elsewhere when it differs from where the contact rests by more than max (1.9 steps, 0.4 %)
 * and twice the error of the difference; one less than 1.25 % away has to stay settled for 10 samples, since
 * crest and trough of a slow ripple are as far apart. A sample is away further than max (5 steps, 0.4 %, 4 u); two make
 * the contact move on. Where it rests becomes better known for 3 s; then it follows the value by at most 0.3 % a
 * minute, so that a supply that warms up neither ends the contact nor is kept.
 * Far is the band of the air, overload, the other sign, or more than 20 %: no trim moves a rail by more without
 * passing its limits. The contact ends with the third far sample that is not on its way back (a filter returns
 * slowly), when it was away for 0.6 s, or for 1.3 s at a value that is no air (a mean of four conversions shows a
 * short slip that long). Back before that, the contact goes on.
 */
#include "config.h"

#include "rw-contact.h"

#include <math.h>
#include <string.h>

static const double air = 0.6; /* volts */
static const double firm_share = 0.005, firm_volts = 0.001;
static const double least_white = 1.1, most_white = 2.9; /* von Neumann's ratio */
static const double bounce = 0.6;     /* seconds that the leads may be off */
static const double slip = 1.3;       /* seconds that they may touch something else: a mean of four holds that long */
static const double warm = 5e-5;       /* of the value, a second: what drifts no faster does not move */
static const double first_look = 3;    /* seconds in which where it rests becomes better known */
static const double beat_share = 0.0125; /* a crest or a trough of ripple, perhaps: */
static const guint beat_samples = 10;  /* … if it does not last */
static const guint away_samples = 2; /* of a value that moves on; one more ends it when it is far */

/* A stretch in the band of the air that stays within @steps of its middle, for so long. */
typedef struct
{
  double steps, seconds;
  guint  least;
  double low, high, since;
  double mean, squares, last, changes; /* of its values; of the differences of neighbours */
  guint  n;
} Firm;

static const Firm firm_kinds[] = { { .steps = 2, .seconds = 3, .least = 12 },
                                   { .steps = 4.5, .seconds = 4, .least = 16 } };

struct _RwContact
{
  RwSettle *settle; /* NULL until the first sample */
  double    step;   /* that settle was made with */

  Firm firm[G_N_ELEMENTS (firm_kinds)];

  /* The contact. */
  gboolean  holding; /* kept holds, and the leads may still be there */
  gboolean  moving_on;
  gboolean  moved;
  double    low_steps; /* how far a contact in the band of the air may wander */
  RwSettled kept;
  double    rest, u_rest; /* where it rests now */
  double    kept_t, near_t, last_t;
  double    last_off; /* how far the last sample was from rest */
  guint     n_away, n_far, n_near;
  guint     n_elsewhere; /* at rest, not where it was */
};

/* What was held firmly is over: what comes next has to show itself anew. */
static void
forget_firmness (RwContact *self)
{
  memcpy (self->firm, firm_kinds, sizeof firm_kinds);
}

RwContact *
rw_contact_new (void)
{
  RwContact *self = g_new0 (RwContact, 1);

  forget_firmness (self);
  return self;
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
  forget_firmness (self);
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
  if (in_air_band (self->rest))
    return MAX (self->low_steps * step, 0.004 * fabs (self->rest));
  return MAX (5 * step, 0.004 * fabs (self->rest));
}

/* Said of a settled value: two that differ by more than their errors. */
static gboolean
rests_elsewhere (const RwContact *self,
                 const RwSettled *now,
                 double           step)
{
  return fabs (now->value - self->rest)
         > MAX (1.9 * step, 0.004 * fabs (self->rest)) + 2 * hypot (now->u, self->u_rest);
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
watch_firmness (Firm  *firm,
                double t,
                double value,
                double step)
{
  const double low = MIN (firm->low, value), high = MAX (firm->high, value);
  const double least = MAX (firm_volts, firm_share * fabs (high + low) / 2);
  const double reach = MAX (firm->steps * step * (1 + 1e-9), least);

  if (firm->n == 0 || !in_air_band (value) || t < firm->since || high - low > 2 * reach)
    {
      firm->low = firm->high = firm->mean = firm->last = value;
      firm->since = t;
      firm->squares = firm->changes = 0;
      firm->n = in_air_band (value);
      return;
    }

  const double off = value - firm->mean, change = value - firm->last;

  firm->n++;
  firm->mean += off / firm->n;
  firm->squares += off * (value - firm->mean);
  firm->changes += change * change;
  firm->last = value;
  firm->low = low;
  firm->high = high;
}

/* The wide band asks for noise that has no memory: what leads pick up in the air has. */
static gboolean
is_firm (const Firm *firm,
         double      t)
{
  return firm->n >= firm->least && t - firm->since >= firm->seconds
         && (firm->steps < 3
             || (firm->changes >= least_white * firm->squares && firm->changes <= most_white * firm->squares));
}

static gboolean
is_contact (const RwContact *self,
            double           t,
            double           value)
{
  return !in_air_band (value) || is_firm (&self->firm[0], t) || is_firm (&self->firm[1], t);
}

static RwSettled
settle (RwContact *self,
        double     t,
        double     value,
        double     step)
{
  if (self->settle == NULL)
    self->settle = rw_settle_new (step);
  else if (self->step != step)
    rw_settle_set_step (self->settle, step);
  self->step = step;
  return rw_settle_push (self->settle, t, value);
}

/* Where it rests becomes better known at first, and drifts. */
static void
follow_rest (RwContact       *self,
             double           t,
             const RwSettled *now)
{
  const double most = warm * fabs (self->rest) * (t - self->last_t), by = now->value - self->rest;

  if (t - self->kept_t <= first_look && now->u <= self->u_rest)
    {
      self->rest = now->value;
      self->u_rest = now->u;
      return;
    }
  self->rest += CLAMP (by, -most, most);
  self->u_rest = MIN (self->u_rest, now->u);
}

/* The leads may be off, as far as this sample tells. */
static gboolean
is_blank (double value)
{
  return !isfinite (value) || in_air_band (value);
}

/* A value on its way back is not off any more; but what wanders about 0 V only seems to come back. */
static void
count_far (RwContact *self,
           double     t,
           double     value,
           double     step,
           double     off)
{
  const gboolean far = is_far (self, value, step), low = in_air_band (self->rest);

  self->n_near = far ? 0 : self->n_near + 1;
  if (self->n_near > (low ? 1 : 0))
    {
      self->n_far = 0;
      self->near_t = t;
    }
  else if (far && (low || !(off < self->last_off)))
    self->n_far++;
}

/* Does the contact go on, as far as this sample tells? */
static void
follow (RwContact       *self,
        double           t,
        double           value,
        double           step,
        const RwSettled *now)
{
  const gboolean away = (now->settled && rests_elsewhere (self, now, step)) || is_away (self, value, step);
  const double off = fabs (value - self->rest);

  self->n_away = away ? self->n_away + 1 : 0;
  count_far (self, t, value, step, off);
  self->last_off = off;
  const double wait = is_blank (value) || in_air_band (self->rest) ? bounce : slip;

  if (self->n_far > away_samples && t - self->near_t > wait)
    {
      forget_firmness (self);
      self->holding = FALSE;
    }
  else if (!away)
    {
      self->moving_on = FALSE;
      if (now->settled)
        follow_rest (self, t, now);
    }
  else if (self->n_away >= away_samples)
    {
      if (!self->moving_on)
        forget_firmness (self);
      self->moving_on = TRUE;
    }
}

static RwContactState
keep (RwContact *self,
      double     t,
      RwSettled  now,
      double     step,
      RwSettled *out)
{
  self->moved = self->holding && !is_far (self, now.value, step);
  self->holding = TRUE;
  self->moving_on = FALSE;
  self->n_away = self->n_far = self->n_elsewhere = 0;
  self->kept = now;
  self->low_steps = is_firm (&self->firm[0], t) ? 2.5 : 6;
  self->rest = now.value;
  self->u_rest = now.u;
  self->kept_t = self->near_t = t;
  self->last_off = 0;
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

  for (guint i = 0; i < G_N_ELEMENTS (self->firm); i++)
    watch_firmness (&self->firm[i], t, value, step);
  if (self->holding)
    follow (self, t, value, step, &now);
  self->last_t = t;
  if (self->holding && !self->moving_on)
    {
      if (out != NULL)
        *out = self->kept;
      return RW_CONTACT_HOLDING;
    }
  if (now.settled && self->holding && !rests_elsewhere (self, &now, step))
    return RW_CONTACT_MOVING; /* between where it was and elsewhere: the median has not left yet */
  self->n_elsewhere = now.settled ? self->n_elsewhere + 1 : 0;
  if (now.settled && self->holding && self->n_elsewhere < beat_samples
      && fabs (now.value - self->rest) < beat_share * fabs (self->rest))
    return RW_CONTACT_MOVING;
  if (now.settled && isfinite (value) && is_contact (self, t, now.value))
    return keep (self, t, now, step, out);
  return !isfinite (value) || in_air_band (value) ? RW_CONTACT_NONE : RW_CONTACT_MOVING;
}
