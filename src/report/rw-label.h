/* rw-label.h: the label that stays on the supply: what it was set to, when, with what, by whom.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A rail stands with its last value at the board under load and at the terminals; a value that a trim or a repair
 * followed is left out rather than shown. The same session, date and person give the same label.
 */
#pragma once

#include <cairo.h>

#include "rw-bench-state.h"

G_BEGIN_DECLS

/* 90 × 50 mm in points. */
#define RW_LABEL_WIDTH 255.118
#define RW_LABEL_HEIGHT 141.732

/* Texts for people, translated; "–" where there is nothing. Read-only. */
typedef struct
{
  char *rail;
  char *board;
  char *terminals;
} RwLabelRow;

typedef struct
{
  char   *cabinet;   /* "Tidepool Racer · B-07" */
  char   *date;      /* as given */
  char   *set_point; /* "+5 V: 5.05 V at the board, 5.10 V at the terminals" */
  char   *meter;     /* "bench meter, ±(0.50 % + 2 counts)" */
  char   *warm;      /* "warm", "cold", "warm or cold: not said" */
  char   *who;       /* as given; "–" when empty */
  GArray *rows;      /* of RwLabelRow, rails in the order of the profile */
} RwLabel;

/* @date: for people, as it shall stand there; @who: (nullable). (transfer full) */
RwLabel *rw_label_new (RwSession *session, const RwBenchState *state, const char *date, const char *who);
void     rw_label_free (RwLabel *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwLabel, rw_label_free)

/* Lines of plain text. (transfer full) */
GString *rw_label_to_text (const RwLabel *self);

/* Draws into 0, 0 … RW_LABEL_WIDTH, RW_LABEL_HEIGHT; what is long is wrapped, and the type shrinks until everything fits. */
void rw_label_draw (const RwLabel *self, cairo_t *cr);

/* As a PDF page of that size, replaced as a whole or not at all; its dates are the session's start. Errors: G_FILE_ERROR,
 * and G_IO_ERROR when it cannot be drawn. */
gboolean rw_label_save_pdf (const RwLabel *self, RwSession *session, const char *path, GError **error);

G_END_DECLS
