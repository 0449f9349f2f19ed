/* rw-link-words.h: what a link over a port tells people of its states.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All return translated sentences. (transfer full)
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-talk.h"

G_BEGIN_DECLS

char *rw_link_words_opening (const RwBytePort *port);
char *rw_link_words_listening (const RwBytePort *port);

/* It said its name: rw_talk_get_name () is not NULL. */
char *rw_link_words_named (const RwBytePort *port, const RwTalk *talk);

char *rw_link_words_reading (const RwBytePort *port, const RwTalk *talk);

/* Why no value comes, as far as the bytes tell. @heard: bytes came; @doubted: whole frames came,
 * but no two agree; @bad (nullable): the last frame that made no sense. */
char *rw_link_words_silent (const RwBytePort *port,
                            const RwTalk     *talk,
                            gboolean          heard,
                            gboolean          doubted,
                            const char       *bad);

char *rw_link_words_lost (const RwBytePort *port);

/* @message and then @trouble (nullable). */
char *rw_link_words_join (const char *message, const char *trouble);

G_END_DECLS
