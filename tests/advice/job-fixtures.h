/* job-fixtures.h: a small knowledge, and jobs, for the tests of beliefs and advice.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-bench-state.h"
#include "rw-knowledge.h"

/* A data folder of our own, so that what the person running the tests has at home does not
 * matter. Before anything else asks for it. (GLib's own isolation of folders leaks, which a
 * run with sanitizers would count.) */
void fixture_leave_home (void);

/* Removes it again, as far as it is empty. */
void fixture_come_home (void);

/* tests/advice/small-knowledge.json: causes low, thin, worn, minus (needs −5 V) and linear
 * (needs a linear supply); see the file. */
RwKnowledge *fixture_knowledge (void);

/* Knowledge out of one text, which must be good. */
RwKnowledge *fixture_knowledge_from (const char *text);

/* The same, or NULL and the error. The file is called "mine.json". */
RwKnowledge *fixture_try_knowledge (const char *text, GError **error);

/* +5 V and, with @minus, −5 V; @supply may be NULL. */
RwProfile *fixture_profile (gboolean minus, const char *supply);

/* A job on that profile with both rails. Its meter is m1, without errors of its own. */
RwSession *fixture_job (void);

/* What happens on it; each comes a second later. */
void fixture_setup (RwSession *job, RwSaid power, RwSaid board, RwSaid warm);
void fixture_symptom (RwSession *job, const char *id, RwSymptomState state);
void fixture_finding (RwSession *job, const char *check, const char *outcome);
void fixture_repair (RwSession *job, const char *cause, RwRepairResult result);
void fixture_trim (RwSession *job);

/* @u: its standard uncertainty. */
void fixture_reading (RwSession *job, const char *rail, RwPlace place, RwKind kind, double value,
                      double u);
void fixture_overload (RwSession *job, const char *rail, RwPlace place, RwKind kind);
