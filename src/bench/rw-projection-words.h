/* rw-projection-words.h: the words of the projector: rails, the next check, what was sent over; and what may be said of
 * hidden rails: nothing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-job.h"
#include "rw-projection-content.h"

G_BEGIN_DECLS

/* @text speaks of a rail of @hidden, a set of rail ids: by its label or its nominal volts ("-5", "− 5 V", "+5"). Values
 * near them are not looked for. @text: (nullable). */
gboolean rw_projection_words_tell (const RwProfile *profile, GHashTable *hidden, const char *text);

/* What there is to say of a rail: what the meter on it shows now, else its last reading in @state, at @place if it was
 * read there. (transfer full) */
RwProjectionRail *rw_projection_words_rail (RwJob *job, RwBenchState *state, const RwRail *rail, RwPlace place);

/* Title and outcomes of the next check, without chances and causes. Sets title and lines of @out. */
void rw_projection_words_check (RwJob *job, GHashTable *hidden, RwProjectionContent *out);

/* What is sent over. FALSE, *out untouched: there is no such thing now. @out: (nullable): only asks. */
gboolean rw_projection_words_sent (RwJob *job, GHashTable *hidden, RwProjectionSent what, RwProjectionContent *out);

/* "values", "trim map"; "the last note", "the answer". Static, translated. */
const char *rw_projection_words_part (RwProjectionPart part);
const char *rw_projection_words_sent_name (RwProjectionSent what);

G_END_DECLS
