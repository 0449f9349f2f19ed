/* frame-encoder.h: for tests: a meter that sends what its display shows.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Written from the tables of the formats, without any of the decoders' code.
 */
#pragma once

#include <glib.h>

/* A display in words. A plain value. */
typedef struct
{
  const char *unit;     /* with its prefix, as in frame-encoder.c: "V", "mV", "ohm", "kohm", … */
  const char *mode;     /* "dc", "ac", "ac+dc", "diode", "continuity", "none" */
  guint       counts;   /* the digits without their point */
  guint       decimals; /* digits behind the point */
  gboolean    negative;
  gboolean    over;
  gboolean    low_battery;
  gboolean    hold;
} FrameShow;

/* The frame of a display; FALSE when the format has no such display. Appends to @out. */
gboolean frame_encode (const char *format_id, const FrameShow *show, GByteArray *out);

/* A display that the format has. */
void frame_show_random (const char *format_id, GRand *rand, FrameShow *show);

/* The unit without its prefix. */
const char *frame_show_get_unit (const FrameShow *show);

/* In the base unit: the double nearest to what is shown. */
double frame_show_get_value (const FrameShow *show);

/* What decoder-probe.h writes for it. (transfer full) */
char *frame_show_to_probe (const FrameShow *show);

/* Bit 7 of each byte: odd parity, as a line of 7O1 read as 8N1 shows it; or a one, as one of
 * 7N2 does. */
void frame_add_parity (GByteArray *bytes);
void frame_add_ones (GByteArray *bytes);
