/* rw-call-words.h: rounds of calls in words, for the panel and for the class; no widget.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-call-score.h"

G_BEGIN_DECLS

/* All texts owned, translated. */
typedef struct
{
  char  *title;
  char **lines; /* NULL-terminated */
  char **cells; /* NULL-terminated, row by row, the first row its head; NULL: no table */
  guint  n_columns;
} RwCallWords;

void rw_call_words_clear (RwCallWords *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwCallWords, rw_call_words_clear)

/* While a round is open: the question, what was shown last, who has called; no value, no prediction. */
void rw_call_words_ask (RwCallWords *out, const RwCallRound *round, const RwProfile *profile);

/* After the reveal: reading, prediction with its band, calls with their points, the best first. */
void rw_call_words_reveal (RwCallWords *out, const RwCallRound *round, RwSession *session);

/* The lesson's score so far; title alone when nothing was scored. @standings: of rw_call_standings (). */
void rw_call_words_standings (RwCallWords *out, GPtrArray *standings);

/* "11.90 V ± 0.10 V" (transfer full) */
char *rw_call_words_call (const RwCall *call, RwKind kind);

G_END_DECLS
