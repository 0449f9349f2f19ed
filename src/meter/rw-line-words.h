/* rw-line-words.h: finds the one number and its unit in a line of free text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A line is read from left to right as blanks, punctuation, numbers, overload words and
 * words. It is a value when it holds exactly one number or overload word and one unit, on
 * either side: "5.012 V DC", "DC-1.999 mV", "VDC: 12.06", "Ch1 0.L MΩ". Words it does not
 * know are passed over, but not between a number and its unit ("12.3 mega ohm"), nor when
 * they hold digits behind the number ("2.0 e5 V"). Two numbers, two units, a broken number
 * ("1,5" with a point declared, "12:30", "0x1F") or a strange character: not understood,
 * since nothing says which reading would be right.
 */
#pragma once

#include "rw-line-fields.h"

G_BEGIN_DECLS

/* @clean comes from rw_line_text_clean (). @mark is '.' or ','. FALSE when the line is no
 * value; whether a unit is needed is the caller's to judge. */
gboolean rw_line_words_read (const char *clean, gsize n, char mark, RwLineFields *fields);

G_END_DECLS
