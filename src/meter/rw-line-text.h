/* rw-line-text.h: one line from a meter made into clean text, and what its characters are.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#include "rw-line-buffer.h"

G_BEGIN_DECLS

/* Room for a line whose every byte becomes two. */
#define RW_LINE_TEXT_MAX (2 * RW_LINE_BUFFER_MAX + 1)

/* Copies a line without a byte order mark, NULs and blanks around it, as UTF-8 with a NUL
 * behind. The single bytes B5 and B0 (µ and ° of ISO 8859-1) become UTF-8, since many meters
 * send them. FALSE when it holds anything that is not text: control characters other than
 * tab, other bad bytes. */
gboolean rw_line_text_clean (const char *tainted,
                             gsize       n,
                             char        clean[RW_LINE_TEXT_MAX],
                             gsize      *clean_n);

/* Bytes of the blanks at the start: space, tab, no-break and thin spaces. */
gsize rw_line_text_blanks (const char *text, gsize n);

/* Bytes of the word at the start: letters, µ, Ω, °, %. */
gsize rw_line_text_word (const char *text, gsize n);

/* TRUE when a number that was just read cannot go on with what follows: the line's end, a
 * blank, a letter, or punctuation that is not followed by a digit. "1,5", "12:30", "1.2.3"
 * and "5-" do go on. */
gboolean rw_line_text_ends_number (const char *rest, gsize n);

G_END_DECLS
