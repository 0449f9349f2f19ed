/* rw-bench-state.h: what the events say, computed: readings with verdicts, setup, symptoms, warnings.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of a session. Immutable once made, reference-counted; made anew after each event
 * (samples excepted: they change nothing here).
 *
 * Stale: a reading is stale when a live trim, a change of power or board, or a repair follows it.
 */
#pragma once

#include "rw-session.h"
#include "rw-trim-set.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

typedef struct
{
  RwReading     reading;
  const RwRail *rail;      /* NULL for ground or a rail the profile does not have */
  guint         n;         /* event number */
  double        t;         /* seconds */
  RwSetup       setup;     /* as it was then */
  double        u;         /* total standard uncertainty, NaN when over */
  double        u_own;     /* without the meter's common part */
  double        lo, hi;    /* limits at this spot; NaN when none */
  double        position;  /* NaN when no limits */
  double        margin;    /* NaN when no limits */
  RwVerdict     verdict;
  gboolean      stale;
  gboolean      changed_since; /* a trim or a repair that fixed something followed: the value no longer
                            * describes the cabinet */
  gboolean      came_back; /* views only: the supply's output was found dead here, in this setup, and is alive after
                            * a rest without power, nothing mended in between */
} RwSpotState;

typedef struct
{
  const char    *id;
  RwSymptomState state;
  guint          n;
  double         t;
} RwSymptomSeen;

typedef struct
{
  const char *check;
  const char *outcome;
  guint       n;
  double      t;
  gboolean    changed_since; /* a repair that fixed something followed */
} RwFindingSeen;

typedef struct
{
  const char    *cause;
  RwRepairResult result;
  guint          n;
  double         t;
} RwRepairSeen;

typedef struct
{
  guint       n;      /* event it is about */
  const char *id;     /* "never-above", "leads-reversed", …: rw-mistakes.c lists them */
  gboolean    danger; /* replaces everything else on screen while it lasts */
  char       *text;   /* translated, says what to do */
} RwWarning;

typedef struct _RwBenchState RwBenchState;

RwBenchState *rw_bench_state_new (RwSession *session); /* (transfer full) O(landmarks) */
RwBenchState *rw_bench_state_ref (RwBenchState *self);
void          rw_bench_state_unref (RwBenchState *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwBenchState, rw_bench_state_unref)

RwProfile *rw_bench_state_get_profile (const RwBenchState *self); /* borrowed */
RwSetup    rw_bench_state_get_setup (const RwBenchState *self);

/* Last live reading of every spot, rails in the order of the profile, then ground, then strangers. */
guint              rw_bench_state_get_n_spots (const RwBenchState *self);
const RwSpotState *rw_bench_state_get_spot (const RwBenchState *self, guint i);
const RwSpotState *rw_bench_state_find_spot (const RwBenchState *self, const char *rail, RwPlace place,
                                             RwKind kind); /* (nullable) */
/* The last DC reading of a rail wherever it was taken, but not along a wire. (nullable) */
const RwSpotState *rw_bench_state_find_rail (const RwBenchState *self, const char *rail);

/* Last live reading of every spot with the board out, and of every spot with it fitted (or nobody said): a loaded
 * reading leaves the bare one standing here. In no particular order. */
guint              rw_bench_state_get_n_views (const RwBenchState *self);
const RwSpotState *rw_bench_state_get_view (const RwBenchState *self, guint i);
/* @out: with the board out. (nullable) */
const RwSpotState *rw_bench_state_find_view (const RwBenchState *self, const char *rail, RwPlace place, RwKind kind,
                                             gboolean out);

/* Event number of the last time that the board was plugged in after it was out; that the trim was turned. 0: never. */
guint rw_bench_state_get_plugged (const RwBenchState *self);
guint rw_bench_state_get_turned (const RwBenchState *self);

/* Last live state of every symptom spoken of. */
guint                rw_bench_state_get_n_symptoms (const RwBenchState *self);
const RwSymptomSeen *rw_bench_state_get_symptom (const RwBenchState *self, guint i);
guint                rw_bench_state_get_n_findings (const RwBenchState *self); /* last of each check */
const RwFindingSeen *rw_bench_state_get_finding (const RwBenchState *self, guint i);
guint                rw_bench_state_get_n_repairs (const RwBenchState *self);
const RwRepairSeen  *rw_bench_state_get_repair (const RwBenchState *self, guint i);
guint                rw_bench_state_get_n_warnings (const RwBenchState *self);
const RwWarning     *rw_bench_state_get_warning (const RwBenchState *self, guint i);

/* The first warning of a danger; while there is one, nothing is suggested. (nullable) */
const RwWarning     *rw_bench_state_find_danger (const RwBenchState *self);

/* What is known of the trim, a set for each place and board in or out that was read since the last repair
 * that fixed something. */
guint            rw_bench_state_get_n_trim_sets (const RwBenchState *self);
const RwTrimSet *rw_bench_state_get_trim_set (const RwBenchState *self, guint i);
/* The set at @place with the board as it is now. (nullable) */
const RwTrimSet *rw_bench_state_find_trim_set (const RwBenchState *self, RwPlace place);

guint       rw_bench_state_get_n_trims (const RwBenchState *self);
const char *rw_bench_state_get_stage (const RwBenchState *self); /* (nullable) */

G_END_DECLS
