/* rw-meter-guess.h: which format explains a capture, and how sure that is.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: bytes in, a ranking out. The capture comes from one port at one speed. Read as 8N1, parity and a
 * second stop bit of seven-bit lines show in bit 7, so that only the speed has to be tried on the port; see
 * rw-meter-guess.c for the arithmetic.
 */
#pragma once

#include "rw-decoder.h"

G_BEGIN_DECLS

/* One format and what the capture says for it. A plain value. */
typedef struct
{
  const char      *format;         /* id, static; with sign_unsure "digits-11a", for both of them */
  double           bits;           /* log2 of the odds of this format against "none of them" */
  double           sure;           /* 0 … 1: the same as a chance, among all formats and none of them */
  double           explained;      /* 0 … 1: share of the bytes that the format explains */
  guint            values;
  guint            not_understood; /* whole frames or lines that made no sense */
  RwMeterValue     newest;         /* valid when values > 0; without its sign when sign_unsure */
  gboolean         sign_unsure;
  RwSerialSettings line;           /* how a link has to read it; the usual baud rate, not the one heard */
} RwMeterGuess;

/* All formats but "scpi", whose meters are known by their names, the likeliest first. With @torn the first
 * bytes may be the end of a frame. (transfer full) (element-type RwMeterGuess) */
GArray *rw_meter_guess_rank (const guint8 *tainted, gsize n, gboolean torn);

/* The chance of answer @i of @n that exclude each other and have these log2 odds against none of them. */
double rw_meter_guess_get_sure (const double *bits, guint n, guint i);

G_END_DECLS
