/* rw-limits.h: how much a file may ask of us before it is refused.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A file may come from anybody. The figures are generous for real work (eight meters at ten values a second fill
 * 2.3 million lines in a day of eight hours; a day at the bench holds a few hundred readings) and low enough that
 * a file made to do harm neither fills the memory nor holds the window up.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Of a whole file. Whatever is met first ends the reading: what was read up to it is kept, and that is said. */
typedef struct
{
  gsize file_bytes;   /* read of one file */
  gsize header_bytes; /* of the first line; it holds a whole profile */
  gsize line_bytes;   /* of any other line; a longer one is damaged */
  gsize memory_bytes; /* that the events take, words included */
  guint events;
  guint landmarks;    /* events that are no samples: all that is computed goes through them again and again */
  guint rails;        /* rails that readings name and the profile does not have */
  gsize search;       /* events times retracts, where the numbers do not rise and each is looked for one by one */
  guint damaged;      /* damaged lines; behind so many it is hardly a session */
} RwLimits;

static const RwLimits rw_limits = {
  .file_bytes = (gsize) 512 * 1024 * 1024,
  .header_bytes = 1024 * 1024,
  .line_bytes = 256 * 1024,
  .memory_bytes = (gsize) 768 * 1024 * 1024,
  .events = 3000000,
  .landmarks = 20000,
  .rails = 64,
  .search = 50000000,
  .damaged = 10000,
};

/* Of single things. */
#define RW_LIMIT_RAILS 64         /* of a profile */
#define RW_LIMIT_METERS 64        /* of a header */
#define RW_LIMIT_ID_CHARS 100     /* of an id: a longer one is damage */
#define RW_LIMIT_NAME_CHARS 200   /* of a name, a label, a title, as it is shown */
#define RW_LIMIT_TEXT_CHARS 10000 /* of a note, as it is shown */

/* Of annotations: a file beside a session. */
#define RW_LIMIT_NOTES 20000

G_END_DECLS
