/* rw-job-stages.h: a job's bring-up: the stages as they stand now, and what a person does at them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-label.h"
#include "rw-stages.h"

G_BEGIN_DECLS

/* As of the present moment, with what the meter shows now. NULL when the words of the stages cannot be read; @error says why. (transfer full) */
RwStages *rw_job_dup_stages (RwJob *self, GError **error);

/* The words of the stages, read once. (nullable) borrowed */
RwStageWords *rw_job_get_stage_words (RwJob *self, GError **error);

/* Enters a stage; the one that the job is in stays in it. */
void rw_job_enter_stage (RwJob *self, RwStage stage);
void rw_job_read_hazard (RwJob *self, RwStage stage);
void rw_job_go_against (RwJob *self, RwStage stage, const char *why);
void rw_job_answer_stage (RwJob *self, const RwStageQuestion *question, gboolean yes);

/* Whether the power must go off by what a meter shows just now; never in a job that entered no stage. FALSE, and *out
 * untouched: no. Else free with rw_gate_reason_clear (). */
gboolean rw_job_look_live (RwJob *self, RwGateReason *out);

/* Why the power must go off now, by what was kept or by what the meter shows. A job that never entered a stage has
 * none. (nullable) (transfer full) */
char *rw_job_dup_off_now (RwJob *self);

/* With the day of the session's last event, local time. @who: (nullable). (transfer full) */
RwLabel *rw_job_make_label (RwJob *self, const char *who);

/* The title of a stage; @id when it is none of ours. Borrowed. */
const char *rw_job_stage_title (RwJob *self, const char *id);

/* The question of a stage that a finding answers. (nullable) borrowed */
const RwStageQuestion *rw_job_find_stage_question (RwJob *self, const char *check);

G_END_DECLS
