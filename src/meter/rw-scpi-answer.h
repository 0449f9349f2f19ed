/* rw-scpi-answer.h: the answers of a SCPI instrument that are no values.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The answer to *IDN?: four fields and no quotes. Its first two, "Quayside M3", or NULL.
 * (transfer full) */
char *rw_scpi_answer_read_name (const char *clean);

/* An entry of the error queue, such as -113,"Undefined header". *words gets its text without
 * the quotes, at most 120 characters; FALSE, and nothing set, when it is something else, such
 * as two values. (out) (transfer full) */
gboolean rw_scpi_answer_read_error (const char *clean, int *code, char **words);

/* Whether a line begins like a number. */
gboolean rw_scpi_answer_is_number (const char *clean);

G_END_DECLS
