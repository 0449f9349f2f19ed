/* rw-practice-drill.h: a cabinet with hidden faults, drawn from a level and a seed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Levels: 1 one plain fault, strong; 2 any one fault, fair; 3 a subtle one, or two at once. The same level and seed
 * give the same cabinet on every machine with the same data. Whatever is drawn shows: by a symptom, or by a rail that
 * is outside its limits at the board.
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

#define RW_PRACTICE_DRILL_LEVELS 3
#define RW_PRACTICE_DRILL_FAULTS 2
#define RW_PRACTICE_DRILL_SYMPTOMS 16

/* Ids are static. */
typedef struct
{
  guint           level; /* 1 … RW_PRACTICE_DRILL_LEVELS */
  guint64         seed;
  RwProfile      *profile; /* owned */
  guint64         cabinet_seed;
  RwPracticeFault faults[RW_PRACTICE_DRILL_FAULTS];
  guint           n_faults;
  const char     *symptoms[RW_PRACTICE_DRILL_SYMPTOMS]; /* what its player noticed, cold or warm */
  guint           n_symptoms;
} RwPracticeDrill;

/* @profiles: (element-type RwProfile); of these only the ones that ship with the program are drawn from. Errors:
 * RW_PRACTICE_ERROR_PROFILE when none of them is there, RW_PRACTICE_ERROR_STATE when nothing drawn shows. *out is to be
 * cleared. Takes about a second at worst. */
gboolean rw_practice_drill_draw (RwPracticeDrill *out, guint level, guint64 seed, GPtrArray *profiles, GError **error);
void     rw_practice_drill_clear (RwPracticeDrill *self);
void     rw_practice_drill_copy (const RwPracticeDrill *self, RwPracticeDrill *out);

/* Off, cold, board fitted. (transfer full) */
RwPracticeCabinet *rw_practice_drill_open (const RwPracticeDrill *self, const char *name, GError **error);

/* "2-4711": level and seed, to be shared. (transfer full) */
char    *rw_practice_drill_dup_code (guint level, guint64 seed);
/* Takes that, with spaces around it, or the seed alone: *level stays as it was then. FALSE: neither. */
gboolean rw_practice_drill_parse_code (const char *text, guint *level, guint64 *seed);

/* Words for a level, translated. Static. */
const char *rw_practice_drill_level_label (guint level);

G_END_DECLS
