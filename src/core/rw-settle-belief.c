/* rw-settle-belief.c: what the samples of a stream so far say of where it goes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A stream of one spot after another is a row of stretches, each of one law:
 *   value (now) = end + fast + slow,  fast ← fast·exp (−dt/τf),  slow ← slow·exp (−dt/τs)
 * with no way left (rest), a fast one (the meter's own filter), a slow one (a rail that charges), or both. Where a
 * stretch began is unknown, and so are its law, its constants and its noise. All of them that still have a chance
 * are carried along and weighed: Bayesian inference of the last change point (Adams and MacKay 2007,
 * arXiv:0710.3742), with a Kalman filter a stretch:
 *
 *   state     end, fast, slow, and ln τ of the first of these two, linearised about where it is
 *   noise     σ² = squares/dof, learned along with it; a sample has Student's t density about what was foretold
 *   weight    ← weight·(1 − break)·density; a sample that is a stranger to a stretch (density below odd/range) is
 *             skipped, up to two in a row: a skidding tip
 *   begin     with each sample one stretch of each law, weight break·chance of the law/range
 *
 * A filter is continuous. A fast stretch begins where the display was: if it leapt by d within dt, then at least
 * d/(exp (dt/τ) − 1) is left to go, and about twice that. So four equal samples after a leap from the air are rest,
 * since no filter leaps that far and then stands; four equal ones at the end of a curve may be its crest.
 *
 * What is only just there says nothing of where it goes: a stretch that began with a leap counts as on its way for
 * four samples and 0.27 s; for seven when the display lay still before and the leap is small, as when a tip slips
 * under a meter that shows the mean of four conversions. A stretch that begins without a leap is mostly the slow
 * part that shows when the fast one has died down, seldom the end of a turn, hardly ever a filter.
 *
 * What the meter's filter is shows in how its leaps go on: the shares of the laws follow what eight samples after
 * each leap said, so a meter without a filter is believed sooner to be at rest when it stands.
 *
 * The numbers below were chosen on simulated hands and meters (tests/core/contact-sim.c), and judged on others.
 */
#include "config.h"

#include "rw-settle-belief.h"

#include <math.h>

enum
{
  N_FAST = 4,
  N_SLOW = 2,
  N_LAWS = 1 + N_FAST + N_SLOW + N_FAST, /* rest; fast; slow; both */
  MOST = 64,                             /* stretches that live on */
  N_STATE = 4,
  END = 0,
  FAST = 1,
  SLOW = 2,
  LOG_TAU = 3,
  MOST_DOF = 48, /* samples that the noise is learned from */
  MOST_SKIPPED = 2,
  LEAST_TO_SKIP = 3,
  LEAST = 4, /* samples after a leap */
  LEAST_AFTER_REST = 7,
  LEAST_FOR_NOISE = 8,
  LEAST_FOR_LAW = 8,
  HALVINGS = 18
};

static const double fast_tau[N_FAST] = { 0.13, 0.24, 0.43, 0.78 }; /* seconds; about where to begin */
static const double slow_tau[N_SLOW] = { 3, 8 };
static const double both_tau = 6;
static const double u_log_fast = 0.3, u_log_slow = 0.5; /* of ln τ at first */
static const double most_log = 1.5;                     /* that ln τ may stray */

static const double break_chance = 0.06, odd_chance = 0.01; /* a sample */
static const double fast_chance = 0.6, slow_chance = 0.1, both_chance = 0.005;
static const double fast_smooth = 0.1, slow_smooth = 10; /* times that, without a leap */
static const double trust = 0.7; /* leaps; the weight of the shares at first */
static const double leap_steps = 3, leap_share = 0.003;
static const double negligible = 1e-5;
static const double least_seconds = 0.27;
static const double left_out = 0.05; /* of what may be left, by chance: beyond 2 u */

static const double misfit = 0.03;      /* of what an exponential moves by: no filter is quite one */
static const double drift = 2e-5;       /* of the value, a √second: what rests may wander */
static const double slow_share = 0.1;   /* of the value: what a charging rail may have to go */
static const double unseen_share = 0.1; /* the same of a filter whose way nobody saw */

static const double noise_guess = 0.6, noise_dof = 4; /* steps, as if from so many samples */
static const double known_dof = 14, known_by = 0.05;  /* the same once a rest was seen; a running mean */
static const double least_known = 0.4, most_known = 3;
static const double least_share = 2e-5, least_volts = 1e-9; /* noise of a meter whose steps are unknown */

typedef struct
{
  guint8 law, skipped;
  guint8 least; /* samples before it says something; 0: it began without a leap */
  guint  n;
  double began;
  double weight;
  double m[N_STATE];
  double p[N_STATE][N_STATE];
  double dof, squares;
} Stretch;

/* The newest sample beside the one before. */
typedef struct
{
  double   t, value, dt;
  double   range; /* that a value out of nowhere may lie in */
  gboolean first, leapt, from_rest;
} Sample;

struct _RwSettleBelief
{
  double  step;
  double  known; /* standard deviation of the noise that stretches at rest had, in steps; 0: none seen yet */
  double  t, value;
  double  leaps[N_LAWS]; /* how often a leap turned out to be of this law: the meter's own filter */
  double  n_leaps;
  double  learnt; /* when the last of them was */
  guint   n;
  Stretch stretch[MOST + N_LAWS];
  double  student[MOST_DOF + 1]; /* the constant of the density, by degrees of freedom */
};

RwSettleBelief *
rw_settle_belief_new (double step)
{
  RwSettleBelief *self = g_new0 (RwSettleBelief, 1);

  self->step = step;
  for (guint i = 1; i < G_N_ELEMENTS (self->student); i++)
    self->student[i] = exp (lgamma ((i + 1) / 2.0) - lgamma (i / 2.0)) / sqrt (i * G_PI);
  return self;
}

void
rw_settle_belief_free (RwSettleBelief *self)
{
  g_free (self);
}

void
rw_settle_belief_reset (RwSettleBelief *self)
{
  self->n = 0;
}

void
rw_settle_belief_set_step (RwSettleBelief *self,
                           double          step)
{
  self->step = step;
  self->n = 0;
}

/* --- laws ----------------------------------------------------------------------------------------- */

static gboolean
has_fast (guint law)
{
  return (law >= 1 && law <= N_FAST) || law > N_FAST + N_SLOW;
}

static gboolean
has_slow (guint law)
{
  return law > N_FAST;
}

static double
get_fast_tau (guint law)
{
  return fast_tau[law <= N_FAST ? law - 1 : law - 1 - N_FAST - N_SLOW];
}

static double
get_slow_tau (guint law)
{
  return law <= N_FAST + N_SLOW ? slow_tau[law - 1 - N_FAST] : both_tau;
}

static double
get_first_share (guint law)
{
  if (has_fast (law) && has_slow (law))
    return both_chance / N_FAST;
  if (has_fast (law))
    return fast_chance / N_FAST;
  return has_slow (law) ? slow_chance / N_SLOW : 1 - fast_chance - slow_chance - both_chance;
}

/* Of the stretches that begin: as at first thought, and as the leaps so far were. */
static double
get_share (const RwSettleBelief *self,
           guint                 law)
{
  return (trust * get_first_share (law) + self->leaps[law]) / (trust + self->n_leaps);
}

/* That a stretch of this law begins with this sample. */
static double
get_chance (const RwSettleBelief *self,
            guint                 law,
            const Sample         *sample)
{
  const double share = get_share (self, law);

  if (sample->first)
    return share;
  if (sample->leapt)
    return break_chance * share;
  return break_chance * share
         * (has_slow (law) ? slow_smooth : has_fast (law) ? fast_smooth : 1);
}

/* --- a stretch ------------------------------------------------------------------------------------ */

/* One exponential part of it, @by being dt/τ as first guessed; @unsure: that τ is the one of the state. */
static void
decay (Stretch *it,
       guint    part,
       double   by,
       gboolean unsure)
{
  const double times = unsure ? by * exp (-it->m[LOG_TAU]) : by, keep = exp (-times), left = it->m[part];
  const double turn = unsure ? left * keep * times : 0; /* ∂(left·keep)/∂ ln τ */
  double column[N_STATE];

  for (guint k = 0; k < N_STATE; k++)
    column[k] = keep * it->p[part][k] + turn * it->p[LOG_TAU][k];
  column[part] = keep * column[part] + turn * column[LOG_TAU];
  for (guint k = 0; k < N_STATE; k++)
    it->p[part][k] = it->p[k][part] = column[k];
  it->m[part] *= keep;

  /* What the straight line in ln τ leaves out, too. */
  const double off = misfit * left * (1 - keep), bend = 0.5 * turn * times * it->p[LOG_TAU][LOG_TAU];

  it->p[part][part] += off * off + bend * bend;
}

static void
advance (Stretch      *it,
         const Sample *sample)
{
  const double wander = drift * sample->value;

  it->p[END][END] += wander * wander * sample->dt;
  if (has_fast (it->law))
    decay (it, FAST, sample->dt / get_fast_tau (it->law), TRUE);
  if (has_slow (it->law))
    decay (it, SLOW, sample->dt / get_slow_tau (it->law), !has_fast (it->law));
}

/* @gain: covariance of the state with the sample; @spread: variance of the sample, foretold. */
static void
correct (Stretch      *it,
         const double *gain,
         double        spread,
         double        off)
{
  const double noise = it->squares / it->dof;

  for (guint i = 0; i < N_STATE; i++)
    {
      it->m[i] += gain[i] / spread * off;
      for (guint k = 0; k < N_STATE; k++)
        it->p[i][k] -= gain[i] * gain[k] / spread;
    }
  it->m[LOG_TAU] = CLAMP (it->m[LOG_TAU], -most_log, most_log);
  if (it->dof >= MOST_DOF)
    it->squares *= (MOST_DOF - 1.0) / MOST_DOF;
  else
    it->dof++;
  it->squares += off * off * noise / spread;
  it->skipped = 0;
  it->n++;
}

static void
learn (const RwSettleBelief *self,
       Stretch              *it,
       const Sample         *sample)
{
  const double noise = it->squares / it->dof, off = sample->value - it->m[END] - it->m[FAST] - it->m[SLOW];
  double gain[N_STATE];

  for (guint i = 0; i < N_STATE; i++)
    gain[i] = it->p[i][END] + it->p[i][FAST] + it->p[i][SLOW];

  const double spread = noise + MAX (gain[END] + gain[FAST] + gain[SLOW], 0);
  const double density = self->student[(guint) it->dof] / sqrt (spread)
                         * pow (1 + off * off / spread / it->dof, -(it->dof + 1) / 2);
  const double stranger = odd_chance / sample->range;

  const gboolean may_skip = it->n >= LEAST_TO_SKIP && it->skipped < MOST_SKIPPED;

  it->weight *= (1 - break_chance) * MAX (density, may_skip ? stranger : 0);
  if (may_skip && density < stranger)
    it->skipped++;
  else
    correct (it, gain, spread, off);
}

static double
get_first_noise (const RwSettleBelief *self,
                 double                value)
{
  const double steps = self->known > 0 ? CLAMP (self->known, least_known, most_known) : noise_guess;

  return MAX (steps * self->step, MAX (least_share * fabs (value), least_volts));
}

static Stretch
begin (const RwSettleBelief *self,
       guint                 law,
       const Sample         *sample)
{
  const double noise = get_first_noise (self, sample->value), dof = self->known > 0 ? known_dof : noise_dof;
  const double size = fabs (sample->value);
  const double slow = has_slow (law) ? slow_share * size + self->step : 0;
  double fast = has_fast (law) ? unseen_share * size + self->step : 0;
  Stretch it = { .law = (guint8) law, .n = 1, .began = sample->t, .dof = dof, .squares = dof * noise * noise };

  it.least = !sample->leapt ? 0 : sample->from_rest ? LEAST_AFTER_REST : LEAST;
  if (has_fast (law) && !sample->first)
    {
      const double times = 1 / expm1 (sample->dt / get_fast_tau (law));
      const double least = (self->value - sample->value) * times;

      it.m[FAST] = 2 * least;
      fast = hypot (least, 1.5 * noise * times);
    }
  it.m[END] = sample->value - it.m[FAST];
  it.p[END][END] = noise * noise + fast * fast + slow * slow;
  it.p[FAST][FAST] = fast * fast;
  it.p[SLOW][SLOW] = slow * slow;
  it.p[END][FAST] = it.p[FAST][END] = -fast * fast;
  it.p[END][SLOW] = it.p[SLOW][END] = -slow * slow;
  if (law > 0)
    it.p[LOG_TAU][LOG_TAU] = has_fast (law) ? u_log_fast * u_log_fast : u_log_slow * u_log_slow;
  return it;
}

/* --- all of them ---------------------------------------------------------------------------------- */

/* The display lay still, or seemed to, and not in the air. */
static gboolean
lay_still (const RwSettleBelief *self,
           double                value)
{
  double weight = 0;

  if (self->n == 0 || fabs (value - self->value) > 0.5 * fabs (value))
    return FALSE;
  for (guint i = 0; i < self->n; i++)
    if (self->stretch[i].n >= 2 && self->stretch[i].law == 0)
      weight += self->stretch[i].weight;
  return weight > 0.3;
}

static Sample
look_at (const RwSettleBelief *self,
         double                t,
         double                value)
{
  const gboolean first = self->n == 0;
  const double before = first ? value : self->value;

  return (Sample){ .t = t,
                   .value = value,
                   .dt = first ? 0 : t - self->t,
                   .range = 2 * MAX (MAX (fabs (value), fabs (before)), MAX (100 * self->step, 0.1)),
                   .first = first,
                   .leapt = first
                            || fabs (value - before) > MAX (leap_steps * self->step, leap_share * fabs (value)),
                   .from_rest = lay_still (self, value) };
}

static void
begin_all (RwSettleBelief *self,
           const Sample   *sample)
{
  const guint n = self->n;
  double sum = 0;

  for (guint i = 0; i < n; i++)
    sum += self->stretch[i].weight;
  for (guint law = 0; law < N_LAWS; law++)
    {
      const double weight = get_chance (self, law, sample) / sample->range;

      if (weight <= negligible * sum)
        continue;
      self->stretch[self->n] = begin (self, law, sample);
      self->stretch[self->n++].weight = weight;
    }
}

/* Those that matter are left, their weights one. */
static void
forget_unlikely (RwSettleBelief *self)
{
  double sum = 0, bar = negligible;
  guint n;

  for (guint i = 0; i < self->n; i++)
    sum += self->stretch[i].weight;
  for (guint i = 0; i < self->n; i++)
    self->stretch[i].weight /= sum;
  do
    {
      n = 0;
      for (guint i = 0; i < self->n; i++)
        if (self->stretch[i].weight > bar)
          self->stretch[n++] = self->stretch[i];
      self->n = n;
      bar *= 3;
    }
  while (n > MOST);
}

static const Stretch *
get_best (const RwSettleBelief *self)
{
  const Stretch *best = self->stretch;

  for (guint i = 1; i < self->n; i++)
    if (self->stretch[i].weight > best->weight)
      best = &self->stretch[i];
  return best;
}

/* A meter has the same noise at its next contact. */
static void
learn_noise (RwSettleBelief *self)
{
  const Stretch *best = get_best (self);

  if (self->n == 0 || best->law != 0 || best->n < LEAST_FOR_NOISE || best->skipped > 0 || self->step <= 0)
    return;

  const double noise = sqrt (best->squares / best->dof) / self->step;

  self->known = self->known > 0 ? self->known + known_by * (noise - self->known) : noise;
}

/* A meter has the same filter at its next contact: rest or a fast law, once each leap. */
static void
learn_law (RwSettleBelief *self)
{
  const Stretch *best = get_best (self);

  if (self->n == 0 || best->least == 0 || best->n < LEAST_FOR_LAW || best->began == self->learnt)
    return;
  self->learnt = best->began;
  for (guint i = 0; i < self->n; i++)
    {
      const Stretch *it = &self->stretch[i];

      if (it->began != best->began || has_slow (it->law))
        continue;
      self->leaps[it->law] += it->weight;
      self->n_leaps += it->weight;
    }
}

void
rw_settle_belief_push (RwSettleBelief *self,
                       double          t,
                       double          value)
{
  const Sample sample = look_at (self, t, value);

  for (guint i = 0; i < self->n; i++)
    {
      advance (&self->stretch[i], &sample);
      learn (self, &self->stretch[i], &sample);
    }
  begin_all (self, &sample);
  self->t = t;
  self->value = value;
  forget_unlikely (self);
  learn_noise (self);
  learn_law (self);
}

static double
chance_beyond (double mean,
               double u,
               double way)
{
  const double by = MAX (u, 1e-12) * G_SQRT2;

  return 0.5 * (erfc ((way - mean) / by) + erfc ((way + mean) / by));
}

/* That more than @way is left of it. */
static double
chance_left (const Stretch *it,
             double         way)
{
  const double variance = it->p[FAST][FAST] + it->p[SLOW][SLOW] + 2 * it->p[FAST][SLOW];

  return chance_beyond (it->m[FAST] + it->m[SLOW], sqrt (MAX (variance, 0)), way);
}

static gboolean
is_young (const RwSettleBelief *self,
          const Stretch        *it)
{
  return it->n < it->least || (it->least > 0 && self->t - it->began < least_seconds);
}

RwSettleOutlook
rw_settle_belief_get (const RwSettleBelief *self,
                      double                way)
{
  if (self->n == 0)
    return (RwSettleOutlook){ .p_going = 1 };

  RwSettleOutlook outlook = { .fits = get_best (self)->skipped == 0 };

  for (guint i = 0; i < self->n; i++)
    {
      const Stretch *it = &self->stretch[i];

      outlook.noise += it->weight * sqrt (it->squares / it->dof);
      if (is_young (self, it))
        {
          outlook.p_going += it->weight;
          continue;
        }
      if (has_slow (it->law))
        outlook.p_creeping += it->weight * chance_left (it, way);
      else if (has_fast (it->law))
        outlook.p_going += it->weight * chance_left (it, way);
    }
  return outlook;
}

/* That more than @way is left, by all stretches that say something. */
static double
share_beyond (const RwSettleBelief *self,
              double                way)
{
  double weight = 0, beyond = 0;

  for (guint i = 0; i < self->n; i++)
    {
      const Stretch *it = &self->stretch[i];

      if (is_young (self, it))
        continue;
      weight += it->weight;
      if (it->law > 0)
        beyond += it->weight * chance_left (it, way);
    }
  return weight > 0 ? beyond / weight : 1;
}

double
rw_settle_belief_get_u_left (const RwSettleBelief *self)
{
  double low = 0, high = fabs (self->value);

  if (self->n == 0 || share_beyond (self, high) > left_out)
    return high;
  for (guint i = 0; i < HALVINGS; i++)
    {
      const double middle = (low + high) / 2;

      *(share_beyond (self, middle) > left_out ? &low : &high) = middle;
    }
  return high / 2;
}
