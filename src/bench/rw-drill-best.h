/* rw-drill-best.h: what a drill would have cost in the order that the program advises.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "rw-knowledge.h"
#include "rw-practice-drill.h"
#include "rw-session.h"

G_BEGIN_DECLS

typedef struct
{
  gboolean   fixed;   /* every fault is gone */
  double     minutes; /* checks, changes of setup, repairs and their proof */
  GPtrArray *steps;   /* of char *: one line each, translated */
} RwDrillBest;

/* Works a fresh cabinet of the drill from its symptoms on, by the program's advice alone, until it is fixed. Needs
 * seconds: for a thread. @knowledge: whole. */
void rw_drill_best_work (RwDrillBest *out, const RwPracticeDrill *drill, RwKnowledge *knowledge,
                         GCancellable *cancellable);
void rw_drill_best_clear (RwDrillBest *self);

G_END_DECLS
