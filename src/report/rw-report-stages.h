/* rw-report-stages.h: the bring-up in the text report: stages passed, gone on against advice, unproven.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-knowledge.h"
#include "rw-stages.h"

G_BEGIN_DECLS

/* A section, translated: every stage up to the furthest one entered with how it ended; what was gone on with against
 * advice, why, and what had been advised; what nobody proved. Nothing when no stage was entered. */
void rw_report_stages_append (const RwStages *stages, GString *out);

/* The same from a session, with the shipped words; says so in a line when they cannot be read. @knowledge: names the
 * complaints; (nullable). */
void rw_report_stages_append_of (RwSession *session, RwKnowledge *knowledge, GString *out);

G_END_DECLS
