/* rw-decide.h: "What would you do now?": a replay stops at each decision and asks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * No widget. While it is on and the replay plays, it pauses just before a check was taken, and there is a question;
 * once that was answered the replay goes on with rw_decide_go_on (). Whoever moves the replay elsewhere drops the
 * question.
 *
 * Signal "changed": a question came, was answered or went away; it was switched.
 */
#pragma once

#include "rw-decide-question.h"
#include "rw-replay.h"

G_BEGIN_DECLS

#define RW_TYPE_DECIDE (rw_decide_get_type ())
G_DECLARE_FINAL_TYPE (RwDecide, rw_decide, RW, DECIDE, GObject)

/* Off at first. Refs both. */
RwDecide *rw_decide_new (RwReplay *replay, RwKnowledge *knowledge);

void     rw_decide_set_on (RwDecide *self, gboolean on);
gboolean rw_decide_get_on (RwDecide *self);

const RwDecideQuestion *rw_decide_get_question (RwDecide *self); /* (nullable) borrowed until "changed" */
const RwDecideScore    *rw_decide_get_score (RwDecide *self);

/* Answers with option @i. A question is answered once. */
void rw_decide_choose (RwDecide *self, guint i);

/* Drops the question, answered or not, and plays on. */
void rw_decide_go_on (RwDecide *self);

G_END_DECLS
