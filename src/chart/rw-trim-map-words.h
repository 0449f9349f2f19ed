/* rw-trim-map-words.h: what the trim map says in words. All strings are translated and given away.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-trim-map-values.h"

G_BEGIN_DECLS

/* The sentence that stands in place of a picture; NULL when there is something to draw. */
char *rw_trim_map_words_instead (const RwTrimSet *set);

char *rw_trim_map_words_axis (const RwTrimSet *set);  /* "Reference +5 V, at the board" */
char *rw_trim_map_words_note (const RwTrimSet *set);  /* "Not read yet: −5 V"; NULL: all is drawn */
char *rw_trim_map_words_volts (const RwTrimSet *set, double volts); /* "5.06 V" */

/* Labels on the picture. @past, here and below: of an earlier visit, which is over. */
char *rw_trim_map_words_set_label (const RwTrimSet *set); /* "5.06 V set point" */
char *rw_trim_map_words_bound_label (const RwTrimSet *set, gboolean lower);
char *rw_trim_map_words_now_label (const RwTrimSet *set, const RwTrimMapNow *now, gboolean past);
char *rw_trim_map_words_conflict (const RwTrimSet *set);

/* One line each, for what lies under the pointer. */
char *rw_trim_map_words_point (const RwTrimSet *set, const RwTrimPoint *point);
char *rw_trim_map_words_line (const RwTrimSet *set, guint rail, double x);
char *rw_trim_map_words_set_point (const RwTrimSet *set);
char *rw_trim_map_words_window (const RwTrimSet *set);
char *rw_trim_map_words_now (const RwTrimSet *set, const RwTrimLive *live, gboolean past);

/* A few sentences about the whole picture, @note: with rw_trim_map_words_note (). @set and @live: (nullable). */
char *rw_trim_map_words_summary (const RwTrimSet *set, const RwTrimLive *live, gboolean past, gboolean note);

G_END_DECLS
