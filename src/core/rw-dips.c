/* rw-dips.c: watches the samples of one spot for dips and steps while somebody wiggles a plug.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Baseline: median of the newest quiet samples; when those a half window apart all moved the same way and
 * beyond the noise, the rail is drifting and the baseline is carried on by the median of these moves. Noise: 1.4826/√2 times the median of the
 * differences of neighbours about their own median, of the newest NOISE of them (half of them may be wild). A median of rounded
 * numbers is itself rounded: half a last digit is added, so that the noise is not taken for less than it is.
 */
#include "config.h"

#include "rw-dips.h"

#include <math.h>

#include "rw-robust.h"

enum
{
  NOISE = 64,
  NOISE_PLAIN = 30, /* differences for the ordinary threshold */
  LAG = RW_DIPS_BASE / 2
};

static const double least_move = 0.005;   /* volts */
static const double drift_sigmas = 2.5;   /* a move over LAG samples that is no chance; less does no harm */
static const double longest_gap = 5;      /* seconds */
static const double lifted_below = 0.2;   /* of the baseline */

struct _RwDips
{
  GArray *kept; /* of RwDip */
  guint   most;
  guint   count[3];
  guint   interruptions;
  double  watched, last_t, step;
  double  quiet[RW_DIPS_BASE]; /* oldest first */
  guint   n_quiet;
  double  moves[NOISE];
  guint   n_moves, next_move;
  double  base, threshold;
  double  away[RW_DIPS_STEP];
  double  away_start, away_end;
  guint   n_away;
};

RwDips *
rw_dips_new (guint most)
{
  RwDips *self = g_new0 (RwDips, 1);

  self->kept = g_array_new (FALSE, FALSE, sizeof (RwDip));
  self->most = MAX (most, 1);
  self->last_t = -INFINITY;
  self->step = (double) NAN;
  self->base = self->threshold = (double) NAN;
  return self;
}

void
rw_dips_free (RwDips *self)
{
  g_array_unref (self->kept);
  g_free (self);
}

static void
forget (RwDips *self)
{
  self->n_quiet = 0;
  self->n_away = 0;
  self->base = self->threshold = (double) NAN;
}

static double
noise_of (const RwDips *self)
{
  const double mad = self->n_moves > 0 ? rw_robust_mad (self->moves, self->n_moves) : 0;

  return RW_ROBUST_MAD_SIGMA / M_SQRT2 * (mad + self->step / 2);
}

/* The move from one quiet sample to the next when they drift, else 0. */
static double
drift_of (const RwDips *self)
{
  double moved[RW_DIPS_BASE];
  guint up = 0, down = 0, n = 0;

  if (self->n_quiet < RW_DIPS_BASE)
    return 0;
  for (; n + LAG < self->n_quiet; n++)
    {
      moved[n] = (self->quiet[n + LAG] - self->quiet[n]) / LAG;
      up += moved[n] > 0;
      down += moved[n] < 0;
    }

  const double move = rw_robust_median (moved, n);

  return (up == n || down == n) && fabs (move) * LAG > drift_sigmas * noise_of (self) ? move : 0;
}

static void
learn (RwDips *self)
{
  if (self->n_quiet < RW_DIPS_LEARN)
    return;

  const double sigmas = self->n_moves < NOISE_PLAIN ? 8 : 6;

  self->base = rw_robust_median (self->quiet, self->n_quiet) + drift_of (self) * (self->n_quiet + 1) / 2.0;
  self->threshold = MAX (MAX (sigmas * noise_of (self), 3 * self->step), least_move);
}

static void
take_quiet (RwDips *self,
            double  value)
{
  if (self->n_quiet > 0)
    {
      self->moves[self->next_move] = value - self->quiet[self->n_quiet - 1];
      self->next_move = (self->next_move + 1) % NOISE;
      self->n_moves = MIN (self->n_moves + 1, NOISE);
    }
  if (self->n_quiet == RW_DIPS_BASE)
    {
      for (guint i = 1; i < RW_DIPS_BASE; i++)
        self->quiet[i - 1] = self->quiet[i];
      self->n_quiet--;
    }
  self->quiet[self->n_quiet++] = value;
  learn (self);
}

static void
keep (RwDips *self,
      RwDip   dip)
{
  self->count[dip.kind]++;
  if (self->kept->len == self->most)
    g_array_remove_index (self->kept, 0);
  g_array_append_val (self->kept, dip);
}

/* Back on the baseline: what was it? */
static void
finish_dip (RwDips *self)
{
  RwDip dip = { .start = self->away_start, .end = self->away_end, .base = self->base };

  for (guint i = 0; i < self->n_away; i++)
    if (fabs (self->away[i] - self->base) > fabs (dip.size))
      dip.size = self->away[i] - self->base;
  dip.kind = (dip.size < 0) == (self->base > 0) ? RW_DIP_DIP : RW_DIP_PEAK;
  self->n_away = 0;
  keep (self, dip);
}

static void
finish_step (RwDips *self)
{
  const double level = rw_robust_median (self->away, self->n_away);

  keep (self, (RwDip){ .kind = RW_DIP_STEP, .start = self->away_start, .end = self->away_start,
                       .size = level - self->base, .base = self->base });
  self->n_quiet = 0;
  for (guint i = 0; i < self->n_away; i++)
    take_quiet (self, self->away[i]);
  self->n_away = 0;
}

static gboolean
take_away (RwDips *self,
           double  t,
           double  value)
{
  const gboolean flipped = self->n_away > 0 && (value > self->base) != (self->away[0] > self->base);

  if (flipped)
    finish_dip (self);
  if (self->n_away == 0)
    self->away_start = t;
  self->away_end = t;
  self->away[self->n_away++] = value;
  if (self->n_away < RW_DIPS_STEP)
    return flipped;
  finish_step (self);
  return TRUE;
}

static gboolean
is_interruption (const RwDips    *self,
                 const RwReading *sample)
{
  return sample->over || !isfinite (sample->value)
         || (!isnan (self->base) && fabs (sample->value) < lifted_below * fabs (self->base));
}

/* Another range, or a silence: what was learnt holds no more. */
static void
take_breaks (RwDips          *self,
             double           dt,
             const RwReading *sample)
{
  const gboolean other = fabs (sample->step - self->step) > 1e-3 * MAX (sample->step, self->step);

  if (other || isnan (self->step))
    self->n_moves = self->next_move = 0;
  if (other || dt > longest_gap)
    forget (self);
  else if (!isnan (self->base))
    self->watched += dt;
  self->step = sample->step;
}

gboolean
rw_dips_push (RwDips          *self,
              double           t,
              const RwReading *sample)
{
  const double dt = t - self->last_t;

  if (!(dt > 0))
    return FALSE;
  self->last_t = t;
  if (is_interruption (self, sample))
    {
      self->interruptions += self->n_quiet > 0;
      forget (self);
      return FALSE;
    }
  take_breaks (self, dt, sample);
  if (!isnan (self->base) && fabs (sample->value - self->base) > self->threshold)
    return take_away (self, t, sample->value);

  const gboolean back = self->n_away > 0;

  if (back)
    finish_dip (self);
  take_quiet (self, sample->value);
  return back;
}

guint
rw_dips_get_n (const RwDips *self)
{
  return self->kept->len;
}

const RwDip *
rw_dips_get (const RwDips *self,
             guint         i)
{
  return &g_array_index (self->kept, RwDip, i);
}

guint
rw_dips_get_count (const RwDips *self,
                   RwDipKind     kind)
{
  return self->count[kind];
}

double
rw_dips_get_base (const RwDips *self)
{
  return self->base;
}

double
rw_dips_get_threshold (const RwDips *self)
{
  return self->threshold;
}

double
rw_dips_get_watched (const RwDips *self)
{
  return self->watched;
}

guint
rw_dips_get_interruptions (const RwDips *self)
{
  return self->interruptions;
}

gboolean
rw_dips_is_away (const RwDips *self)
{
  return self->n_away > 0;
}

const RwDip *
rw_dips_find_before (const RwDips *self,
                     double        t,
                     double        window)
{
  for (guint i = self->kept->len; i > 0; i--)
    {
      const RwDip *dip = rw_dips_get (self, i - 1);

      if (dip->start <= t && t - dip->start <= window && (dip->size < 0) == (dip->base > 0))
        return dip;
    }
  return NULL;
}
