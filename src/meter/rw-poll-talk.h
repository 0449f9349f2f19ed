/* rw-poll-talk.h: asks a meter the same thing over and over.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   QUIET ──50 ms of nothing──► ASK ──question──► AWAIT ──value──► ASK …
 *   AWAIT ──bytes that make no value, then 150 ms of nothing──► ASK
 *   AWAIT ──nothing in time──► ASK, with a longer and longer wait
 *
 * QUIET throws away the end of an answer to somebody before us. From one question to the next
 * there are 250 ms at least. The wait doubles with each question in vain, up to 4 s. A value
 * that comes after its question was repeated once or twice may be followed by the repetition's:
 * the talk then pauses as long as that answer took, and waits at least twice as long from then on.
 */
#pragma once

#include "rw-talk.h"

G_BEGIN_DECLS

/* @question: copied, sent as it is. @wait_us: how long the first wait is. (transfer full) */
RwTalk *rw_poll_talk_new (const char *question, gint64 wait_us);

G_END_DECLS
