/* rw-drill-reckon.h: what the work of a session comes to, in minutes of the knowledge.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-knowledge.h"
#include "rw-session.h"

G_BEGIN_DECLS

/* To see that a repair was a cure. */
#define RW_DRILL_PROOF_MINUTES 3

/* Each live reading or finding as its check (two minutes for a reading that is none of the knowledge's), each change of
 * setup, each repair with its proof. Begins running, board fitted, cold, as a practice job does. */
double rw_drill_reckon (RwSession *session, RwKnowledge *knowledge);

G_END_DECLS
