/* rw-compare.h: two sessions of one cabinet: what changed beyond the meters' errors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of two sessions. Immutable once made, reference-counted.
 *
 * Paired are the last valid readings of the same rail, place, kind and setup. A reading is no longer valid when the
 * trim was turned or a repair fixed something after it, or the board was plugged in anew after one with it fitted;
 * the power alone changes nothing, since it is part of the setup. A part of the setup that nobody told in one session
 * matches any of the other.
 *
 * Uncertainty of a difference d = now − then (JCGM 100:2008, 4.3.7 and 5.1.2): the counts part
 * is each reading's own; the per cent part of one and the same meter scales both readings alike and leaves
 * p/100·|d|/√3; of two meters both parts stay whole. A reading that carries its own u carries it whole.
 *
 * Many spots are looked at at once, so that one of them would seem to have changed by chance: p is the two-sided
 * normal chance of such a difference without a change, corrected over all pairs by Holm's step-down rule (S. Holm,
 * Scandinavian Journal of Statistics 6 (1979), 65–70), which holds whatever depends on what. The chance that it calls
 * any change where there is none is at most RW_COMPARE_ALPHA.
 */
#pragma once

#include "rw-bench-state.h"

G_BEGIN_DECLS

#define RW_COMPARE_ALPHA 0.05

/* A change of less than this much of half the limits' width need not be seen by the meters. */
#define RW_COMPARE_WORTH 0.5

/* Whose per cent part is common to both sessions. */
typedef enum
{
  RW_COMPARE_METERS_BY_NAME, /* of meters with the same name, per cent and counts */
  RW_COMPARE_METERS_SAME,    /* of all: it was one meter */
  RW_COMPARE_METERS_OTHER,   /* of none: another meter, or adjusted in between */
  RW_N_COMPARE_METERS
} RwCompareMeters;

typedef enum
{
  RW_COMPARE_READING, /* a spot */
  RW_COMPARE_SLOPE,   /* of a rail over the reference rail, volts a volt */
  RW_COMPARE_LEVEL,   /* where that line lies, at x volts of the reference rail */
  RW_N_COMPARE_WHATS
} RwCompareWhat;

typedef enum
{
  RW_COMPARE_CHANGED, /* beyond the meters' errors */
  RW_COMPARE_UNTOLD,  /* these meters cannot tell: see why */
  RW_COMPARE_NOT,     /* no change beyond the meters' errors, and one that matters would have been seen */
  RW_N_COMPARE_RESULTS
} RwCompareResult;

typedef enum
{
  RW_COMPARE_WHY_NONE,
  RW_COMPARE_WHY_OVERLOAD, /* one of them or both showed overload */
  RW_COMPARE_WHY_METER,    /* nobody said how good a meter is */
  RW_COMPARE_WHY_COARSE,   /* a change of RW_COMPARE_WORTH could go unseen */
} RwCompareWhy;

/* One of the two sides. */
typedef struct
{
  double    value;  /* base unit; NaN for an overload */
  double    u;      /* total standard uncertainty; NaN when not known */
  double    lo, hi; /* limits there, of that session's profile; NaN: none */
  double    offset; /* SLOPE and LEVEL: volts at 0 V of the reference, and its standard uncertainty */
  double    offset_u;
  RwVerdict verdict;
  guint     n;      /* event; 0 for a line */
  double    t;      /* seconds since that session's start; NaN for a line */
  gboolean  before_repair; /* a line: a repair that fixed something followed */
} RwCompareValue;

typedef struct
{
  RwCompareWhat   what;
  const char     *rail;  /* interned */
  char           *label; /* "+5 V", "ground", or the bare id */
  const char     *reference; /* label of the reference rail; borrowed from the profile of the later session */
  RwPlace         place;
  RwKind          kind;
  RwSetup         setup; /* what is known of either */
  gboolean        setup_unsure; /* nobody told a part of it in one session */
  double          step;  /* the coarser last digit; 0 not known */
  double          x;     /* LEVEL: volts of the reference; else NaN */
  RwCompareValue  then, now;
  double          difference; /* now − then; NaN for an overload */
  double          u;          /* its standard uncertainty; NaN when it cannot be told */
  double          worth;      /* a change by RW_COMPARE_WORTH; NaN without limits */
  double          p, p_adjusted; /* NaN when not tested */
  RwCompareResult result;
  RwCompareWhy    why;
} RwCompareItem;

/* A spot that was not paired. */
typedef struct
{
  const char *rail; /* interned */
  char       *label;
  RwPlace     place;
  RwKind      kind;
  RwSetup     setup;
  gboolean    in_then, in_now;
  gboolean    outdated; /* read in both, but no longer valid at the end of one; else read in one only */
} RwCompareLeft;

typedef struct
{
  const char    *id;
  gboolean       then_said, now_said;
  RwSymptomState then, now;
} RwCompareSymptom;

/* A limit of the profile that is not the same. Volts; NaN or infinite: none. */
typedef struct
{
  char  *label; /* of the rail */
  char  *name;  /* translated: which limit */
  double then_lo, then_hi, now_lo, now_hi; /* lo NaN: only hi counts */
} RwCompareLimit;

typedef struct _RwCompare RwCompare;

/* The session that started earlier is "then", whichever is given first; of two that started together @a is. Neither
 * may change while it is looked at; refs both. O(landmarks · spots). (transfer full) */
RwCompare *rw_compare_new (RwSession *a, RwSession *b, RwCompareMeters meters);
RwCompare *rw_compare_ref (RwCompare *self);
void       rw_compare_unref (RwCompare *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwCompare, rw_compare_unref)

RwSession       *rw_compare_get_then (const RwCompare *self); /* borrowed */
RwSession       *rw_compare_get_now (const RwCompare *self);
RwBenchState    *rw_compare_get_then_state (const RwCompare *self); /* borrowed */
RwBenchState    *rw_compare_get_now_state (const RwCompare *self);
RwCompareMeters  rw_compare_get_meters (const RwCompare *self);

/* What changed first, the surest first; then what cannot be told; then what did not. */
guint                rw_compare_get_n_items (const RwCompare *self);
const RwCompareItem *rw_compare_get_item (const RwCompare *self, guint i);
guint                rw_compare_get_n_results (const RwCompare *self, RwCompareResult result);
guint                rw_compare_get_n_tests (const RwCompare *self); /* pairs that the correction counts */

guint                   rw_compare_get_n_left (const RwCompare *self);
const RwCompareLeft    *rw_compare_get_left (const RwCompare *self, guint i);
guint                   rw_compare_get_n_symptoms (const RwCompare *self);
const RwCompareSymptom *rw_compare_get_symptom (const RwCompare *self, guint i);
guint                   rw_compare_get_n_limits (const RwCompare *self);
const RwCompareLimit   *rw_compare_get_limit (const RwCompare *self, guint i);

/* Translated sentences on what makes the two hard to compare: another cabinet, tag or profile, no rail in common. */
guint       rw_compare_get_n_remarks (const RwCompare *self);
const char *rw_compare_get_remark (const RwCompare *self, guint i);

/* The trim set to show of a side: at the place, with the board in or out, at which both were read, that with the most
 * readings; else its own fullest one. (nullable) borrowed */
const RwTrimSet *rw_compare_get_trim_set (const RwCompare *self, gboolean now);

/* Standard uncertainty of b − a. @meter_a, @meter_b: (nullable) of either reading; @same: they are one meter. NaN when
 * it cannot be told (an overload, an unknown meter). */
double rw_compare_u (const RwReading *a, const RwMeterFacts *meter_a, const RwReading *b, const RwMeterFacts *meter_b,
                     gboolean same);

/* Holm's adjusted chances: @adjusted[i] is the least level at which pair i counts as changed. NaN stays NaN and counts
 * for nothing. */
void rw_compare_holm (const double *p, guint n, double *adjusted);

/* "changed", "cannot-tell", "not-changed"; translated words. */
const char *rw_compare_result_to_id (RwCompareResult result);
const char *rw_compare_result_get_label (RwCompareResult result);

G_END_DECLS
