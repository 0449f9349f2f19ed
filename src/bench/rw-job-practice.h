/* rw-job-practice.h: hands on the practice cabinet of a job, when leads are put by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * At first the leads of the practice meter are where the person says they are. Once they are put by hand they are
 * where they were put, and what the person says may be wrong, as on a real bench.
 */
#pragma once

#include "rw-job.h"
#include "rw-practice-meter.h"

G_BEGIN_DECLS

RwPracticeMeter *rw_job_get_practice_meter (RwJob *self); /* (nullable) borrowed */

/* FALSE again: the leads go back to where the person says they are, and the meter's dial follows. */
void     rw_job_set_leads_by_hand (RwJob *self, gboolean by_hand);
gboolean rw_job_get_leads_by_hand (RwJob *self);

/* As rw_practice_cabinet_put_lead (); what the meter showed before is over. */
gboolean rw_job_put_lead (RwJob *self, RwPracticeLead lead, const char *node);

/* Turns dial, jack and range; what the meter showed before is over. */
void rw_job_set_practice_meter (RwJob *self, RwPracticeMode mode, RwPracticeJack jack, int range);

/* Lets minutes (0 … 60) pass at once: the cabinet warms or cools, the session's clock goes on, the meter's values of
 * that time are lost. A note says so, and the setup when the cabinet is warm or cold now and was not before. */
void rw_job_let_pass (RwJob *self, double minutes);

/* Writes a note. @text: translated. */
void rw_job_note (RwJob *self, const char *text);

/* From now on there is no advice, and @why (translated) stands in its place. */
void rw_job_stop_advising (RwJob *self, const char *why);

/* FALSE once it was stopped. */
gboolean rw_job_gives_advice (RwJob *self);

/* All of it, whatever the cabinet, whether advice is given or not. NULL: it cannot be read. (nullable) borrowed */
RwKnowledge *rw_job_get_knowledge (RwJob *self);

G_END_DECLS
