/* rw-number.h: numbers as instruments write them, whatever the locale.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The grammar is that of IEEE Std 488.2-1992, 7.7.2 and 8.7.2 to 8.7.4 (ws: ASCII 0…9 and
 * 11…32):
 *
 *   NR1      = [+|-] digit+
 *   NR2      = [+|-] digit+ . digit+
 *   NR3      = [+|-] digit+ . digit+ E (+|-) digit+
 *   NRf      = mantissa [ws] [(E|e) [ws] [+|-] digit+]
 *   mantissa = [+|-] (digit+ [. digit*] | . digit+)
 *
 * at most 255 mantissa digits and an exponent of at most ±32000. Never: inf, nan,
 * hexadecimal, two decimal marks, a thousands mark, digits that are not ASCII. A number is
 * kept as its digits and a power of ten and becomes a double in one conversion, so that 35 mV
 * is the same double as 0.035 V.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_NUMBER_MAX_DIGITS 255

/* Above this magnitude a SCPI value says "over-range" (9.9E37), "under-range" (−9.9E37) or
 * "not a number" (9.91E37); a meter that keeps single precision sends 9.89999995E+37
 * (SCPI-1999 vol. 1, 7.2.1). */
#define RW_NUMBER_SENTINEL 9.0e37

typedef enum
{
  RW_NUMBER_GOOD,
  RW_NUMBER_NOT_ONE,   /* not a number by the grammar */
  RW_NUMBER_TOO_LARGE, /* beyond a double: never infinity */
  RW_NUMBER_TOO_SMALL  /* not 0, but below a double */
} RwNumberStatus;

typedef enum
{
  RW_NUMBER_NR1 = 1 << 0,
  RW_NUMBER_NR2 = 1 << 1,
  RW_NUMBER_NR3 = 1 << 2,
  RW_NUMBER_NRF = 1 << 3
} RwNumberForms;

/* A number taken apart: ±digits · 10^power. A plain value. */
typedef struct
{
  char          digits[RW_NUMBER_MAX_DIGITS + 1]; /* the mantissa without sign and mark */
  gboolean      negative;
  int           power; /* of ten, of the last digit */
  RwNumberForms forms; /* the grammars that it follows */
} RwNumber;

/* How many bytes at the start of @text are a number with the decimal mark @mark ('.' or ',');
 * 0 when none. No blanks inside. U+2212 counts as a minus (but is in none of the forms). What
 * follows is the caller's to judge: "1.2.3" gives the three bytes "1.2". */
gsize rw_number_scan (const char *text, gsize n, char mark, RwNumber *number);

/* The whole of @text as NRf: no blanks around it, blanks inside only where the grammar has them. */
RwNumberStatus rw_number_parse (const char *text, gsize n, RwNumber *number);

/* The double nearest to number · 10^@shift, and the value of its last digit (always above 0).
 * Either pointer may be NULL. Zero comes out as +0. */
RwNumberStatus rw_number_get (const RwNumber *number, int shift, double *value, double *step);

/* |value| is one of the SCPI words for "no value". */
gboolean rw_number_is_sentinel (double value);

/* How many bytes at the start of @text are a word for overload: OL, O.L, 0L, 0.L, .OL, -OL,
 * OVLD, OVER, OVERLOAD, OVL, ----, 1----, --.-- in any case; 0 when none, as for "--5". What
 * follows OL is the caller's to judge: "OLkΩ" is an overload, "OLD" is not. */
gsize rw_number_scan_overload (const char *text, gsize n);

G_END_DECLS
