/* practice-bench.h: a person with a meter at a practice cabinet, who writes down what they believe they read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "practice-fixtures.h"
#include "rw-bench-state.h"
#include "rw-practice-meter.h"
#include "rw-practice-nodes.h"

typedef struct
{
  RwPracticeCabinet *cabinet;
  RwPracticeMeter   *meter; /* ±(0.09 % + 2), 6000 counts, clips */
  RwSession         *session;
  guint              n_lethal;
  char              *lethal_text;
} PracticeBench;

/* On for 3 s, board fitted. */
PracticeBench *practice_bench_new (const char *profile, guint64 seed, const char *fault, double strength);
void           practice_bench_free (PracticeBench *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (PracticeBench, practice_bench_free)

void practice_bench_power (PracticeBench *self, gboolean on, double seconds);
void practice_bench_fit (PracticeBench *self, gboolean fitted);
void practice_bench_turn (PracticeBench *self, double volts);

void practice_bench_put (PracticeBench *self, const char *red, const char *black);
void practice_bench_set (PracticeBench *self, RwPracticeMode mode);

/* What the display says once it stands still. */
RwPracticeShown practice_bench_look (PracticeBench *self);

/* Writes it down as a reading of that spot. */
void practice_bench_claim (PracticeBench *self, const char *rail, RwPlace place, RwKind kind);

/* Leads, look and claim in one. */
double practice_bench_read (PracticeBench *self,
                            const char    *red,
                            const char    *black,
                            const char    *rail,
                            RwPlace        place,
                            RwKind         kind);

/* Is somebody warned of this mistake? */
gboolean practice_bench_warned (PracticeBench *self, const char *id);
/* Of how many mistakes. */
guint practice_bench_n_warnings (PracticeBench *self);
