/* rw-line-fields.h: what has been found in a line of text so far.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-number.h"
#include "rw-unit-text.h"

G_BEGIN_DECLS

typedef struct
{
  RwNumber   number; /* only with has_number */
  RwUnitText unit;   /* only with has_unit */
  gboolean   has_number;
  gboolean   has_unit;
  gboolean   over;
  gboolean   signed_apart; /* a sign stood apart from the number */
  gboolean   negative;     /* and was a minus */
  gboolean   dc;
  gboolean   ac;
  gboolean   diode;
  gboolean   continuity;
  gboolean   low_battery;
  gboolean   hold;
} RwLineFields;

typedef enum
{
  RW_LINE_WORD_TAKEN,
  RW_LINE_WORD_UNKNOWN,
  RW_LINE_WORD_AGAINST /* contradicts the line: a second unit, half a unit ("m V"), "nan" */
} RwLineWord;

/* Takes a word: a unit, DC, AC, DIODE, HOLD, LOWBAT, … */
RwLineWord rw_line_fields_take_word (RwLineFields *self, const char *word, gsize n);

/* Takes a mode word alone; FALSE when it is none. */
gboolean rw_line_fields_take_mode (RwLineFields *self, const char *word, gsize n);

/* The value they make; a unit or mode that the line did not give is the assumed one. FALSE
 * when the number or any unit is missing, or the number does not fit a double. */
gboolean rw_line_fields_get_value (const RwLineFields *self,
                                   RwMeterUnit         assumed_unit,
                                   RwMeterMode         assumed_mode,
                                   RwMeterValue       *value);

G_END_DECLS
