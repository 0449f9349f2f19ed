/* rw-trim-fit-private.h: the insides of RwTrimFit, shared by the files that make it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-fit.h"

G_BEGIN_DECLS

/* All readings of one rail at one position, as one. */
typedef struct
{
  guint  rail;
  guint  n;
  double w;      /* Σ 1/u² */
  double y;      /* their weighted mean, volts */
  double chi2;   /* misfit of them among themselves */
  double w2, w3; /* Σ 1/u⁴ and Σ 1/u⁶ of those whose error is rectangular: for a band's shape */
} RwTrimCell;

/* What a rail's slot says besides the place of its line among the unknowns. */
enum
{
  RW_TRIM_NO_LINE = -1,
  RW_TRIM_IS_REFERENCE = -2,
};

/* A rail tells x when its slope is this many standard uncertainties away from 0. */
#define RW_TRIM_SURELY 3.0

/* A fit that is less likely is no chance, and an outlier is looked for. */
#define RW_TRIM_MISFIT_P 0.01

/* The search ends when what is left is at least as likely. */
#define RW_TRIM_FITS_P 0.05

/* A reading is named when no other scores within this of it. */
#define RW_TRIM_CLEAR_LEAD 9.0

struct _RwTrimFit
{
  gatomicrefcount refs;

  guint        n_rails, reference, n_positions;
  RwTrimPrior *priors;
  double       u_floor; /* least standard uncertainty of a reading, volts */

  RwTrimCell *cells; /* by position, then rail */
  guint      *first; /* a position: its first cell; one more than positions */

  gboolean *known; /* a position: x is known */
  double   *x;     /* a position: the reference there, volts */
  double   *h;     /* a position: Σ w b², the weight of x when the lines are exact */

  int    *slot;       /* a rail: 0 … n_slots − 1, or one of the above */
  guint   n_slots;
  double *level;      /* a rail: V at centre, volts */
  double *slope;      /* a rail */
  double *centre;     /* a rail: a fixed x amid its positions, volts */
  guint  *n_readings; /* a rail: readings that count */
  double *cov;        /* 2 n_slots square: level of slot s at 2s, slope at 2s + 1 */

  double chi2, p;
  guint  dof;

  guint   *outliers;
  guint    n_outliers;
  gboolean unclear;
};

/* How the search for outliers ended. */
typedef enum
{
  RW_TRIM_SEARCH_NONE,    /* the fit of all readings was good */
  RW_TRIM_SEARCH_NAMED,   /* without those that were named it is */
  RW_TRIM_SEARCH_TIED,    /* one more would have to be named, but two are about as likely */
  RW_TRIM_SEARCH_GAVE_UP
} RwTrimSearchEnd;

typedef struct
{
  RwTrimSearchEnd end;
  RwTrimFit *first;      /* of all readings */
  RwTrimFit *last;       /* without those that it would name */
  gboolean  *left_out;   /* a reading: it is one of them; NULL: none is */
  guint      n_left_out;
  double     least_lead; /* with which one of them was ahead of the next; INFINITY without any */
  double     lead;       /* after TIED: of the best score over the next */
  double     gain;       /* … by which the best one is below χ² */
  guint      leaders[2]; /* … readings: the best, the next */
} RwTrimSearch;

void rw_trim_search_clear (RwTrimSearch *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwTrimSearch, rw_trim_search_clear)

/* The fit of all readings but those in @left_out (a reading: TRUE leaves it out; NULL: none is). */
RwTrimFit *rw_trim_fit_make (guint n_rails, guint reference, const RwTrimPrior *priors,
                             guint n_positions, const RwTrimReading *readings, guint n_readings,
                             const gboolean *left_out);

/* rw_trim_fit_new (), and how it came about; clear *search when done. (transfer full) */
RwTrimFit *rw_trim_fit_search (guint n_rails, guint reference, const RwTrimPrior *priors, guint n_positions,
                               const RwTrimReading *readings, guint n_readings, RwTrimSearch *search);

/* Sets cells and first from the readings that count. */
void rw_trim_fit_make_cells (RwTrimFit *self, const RwTrimReading *readings, guint n_readings,
                             const gboolean *left_out);

/* 1/u² of a slope's prior, 0 for none. */
double rw_trim_prior_weight (const RwTrimPrior *prior);

/* Best x of a position, lines given; sets x and h. Nothing changes when no rail there tells x. */
void rw_trim_fit_place (RwTrimFit *self, guint position);

/* From the present lines (level, slope of every rail with a slot ≥ 0) to the best ones, and x, h,
 * cov. FALSE: nothing determines the line in slot @bad. */
gboolean rw_trim_fit_solve (RwTrimFit *self, int *bad);

/* Whether x can be told from a value of this rail. */
gboolean rw_trim_fit_tells_x (const RwTrimFit *self, guint rail);

/* The fitted value, volts, of a rail that has a line (or is the reference) at a position whose x
 * is known, and its variance. */
double rw_trim_fit_at (const RwTrimFit *self, guint position, guint rail, double *variance);

/* Whether a reading can count at all: finite, and of a rail and position that exist. */
gboolean rw_trim_fit_can_use (const RwTrimFit *self, const RwTrimReading *reading);

/* search->first, or a better fit without the readings that can be named as outliers. Fills in the rest of *search.
 * (transfer full) */
RwTrimFit *rw_trim_fit_find_outliers (RwTrimSearch *search, const RwTrimReading *readings, guint n_readings);

G_END_DECLS
