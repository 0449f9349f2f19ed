/* rw-practice-script.h: a job at a practice cabinet, written down as text and done by rote.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The language stands at the head of rw-practice-script.c.
 */
#pragma once

#include "rw-practice-cabinet.h"
#include "rw-session.h"

G_BEGIN_DECLS

/* Runs a script and returns the session that came of it. @profiles: folder that "profile ID" is
 * looked for in first as ID.json; NULL: the user's and the shipped ones. The same text gives the
 * same session, its id included. Errors: RW_PRACTICE_ERROR_SCRIPT, _STATE and what the profile
 * gave; the message names @where and the line. (transfer full) */
RwSession *rw_practice_script_run (const char *text, const char *where, const char *profiles,
                                   GError **error);

/* The same from a file. */
RwSession *rw_practice_script_run_file (const char *path, const char *profiles, GError **error);

G_END_DECLS
