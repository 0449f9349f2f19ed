/* rw-plain-text.h: a stranger's words made fit to be shown.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Words of a file reach labels, tables, pictures and terminals. None of these takes them for markup or a command,
 * but a character alone can do harm: one that turns the order of what follows round ("exe.gpj" reads as "jpg.exe"),
 * one that starts a terminal's command, or ten thousand of them. Plain text holds none of these:
 *
 *   C0, C1 and DEL (line ends and a tab only in TEXT), U+2028, U+2029            replaced by U+FFFD or a space
 *   U+202A–U+202E, U+2066–U+2069 (embeddings, overrides, isolates)                replaced by U+FFFD
 *   U+FEFF, U+FFF9–U+FFFB, U+E0000–U+E0FFF (invisible), noncharacters               replaced by U+FFFD
 *   past the longest length                                                       cut, with "…" at its end
 *
 * What writing in both directions needs stays: U+200E, U+200F, U+061C, and the joiners U+200C, U+200D.
 * Source of the lists: Unicode Standard Annex 9, section 2, and Technical Report 36, section 2.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_PLAIN_NAME, /* one line, RW_LIMIT_NAME_CHARS */
  RW_PLAIN_TEXT, /* several, RW_LIMIT_TEXT_CHARS */
} RwPlainKind;

/* @tainted: valid UTF-8. */
gboolean rw_plain_text_is (const char *tainted, RwPlainKind kind);

/* @tainted: (nullable) gives NULL. The same text when it is plain. (transfer full) */
char *rw_plain_text_dup (const char *tainted, RwPlainKind kind);

/* A path or file name as it can be shown, whatever bytes it holds. (transfer full) */
char *rw_plain_text_dup_path (const char *path);

G_END_DECLS
