/* rw-meter-listen.h: meters of the book and a job: which of them it listens to.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Which meters were listened to last is remembered (setting "meters-in-use"), so that the next job listens to
 * them by itself. Everywhere @settings is nullable: then nothing is remembered.
 */
#pragma once

#include <gio/gio.h>

#include "rw-job.h"
#include "rw-meter-book.h"

G_BEGIN_DECLS

/* Plugs a meter of the book into the job, where the book says that it stays. FALSE: it is read by eye, or its
 * format or pattern is not understood. */
gboolean rw_meter_listen (RwJob *job, const RwKnownMeter *meter, GSettings *settings, GError **error);

/* Unplugs it, and does not listen to it in the next job. */
void rw_meter_let_go (RwJob *job, const char *id, GSettings *settings);

/* Listens again to the meters that were listened to last, at a job at the bench that can be written to; no
 * effect on others. A meter that cannot be understood any more is left out and named in the log. */
void rw_meter_resume (RwJob *job, GSettings *settings);

/* FALSE, *out untouched: the job does not listen to it. */
gboolean rw_meter_is_listened_to (RwJob *job, const char *id, RwJobMeterInfo *out);

/* What the meter shows now. FALSE, *out untouched: no values come from it. */
gboolean rw_meter_find_newest (RwJob *job, const char *id, RwReading *out);

/* Tells the session what the book says now of a meter that is in it already. */
void rw_meter_tell_facts (RwJob *job, const RwMeterFacts *facts);

G_END_DECLS
