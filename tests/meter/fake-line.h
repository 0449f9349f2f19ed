/* fake-line.h: for tests: a serial line down to its bits, with a meter at the other end.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What the meter sends is a level over real time: start bit, data, parity, stop bits at its own speed. The
 * port samples that level at the speed it was opened with, in the middle of each of its own bits, as a UART
 * does; at a wrong speed garbage comes out, or nothing.
 */
#pragma once

#include "rw-meter-finder.h"

typedef struct
{
  /* the meter */
  RwSerialSettings line;      /* dtr and rts: what its cable needs, see needs_power */
  gboolean         needs_power;
  GPtrArray       *frames;    /* of GBytes, sent in turn */
  double           pause;     /* seconds between two frames; 0: sends nothing by itself */
  const char      *question;  /* answers it with the next frame; NULL */
  double           delay;     /* seconds from the question to the answer */
  double           spoil;     /* share of the sent bytes that are replaced by others: the same ones each time,
                                 however fast the machine is */
  double           glitches;  /* bytes a second that nobody sent */
  gboolean         any_speed; /* the adapter does not care for speeds */
  int              error;     /* an RwPortError for each open (), or −1 */

  /* what happened */
  GString *written;
  guint    opens, open_now;
  gboolean asked_unheard; /* written to before it was listened to for a second in all */
  gboolean asked_talking; /* written to within two seconds of a byte that it gave unasked */
  double   listened;      /* seconds */

  /* inner life */
  char   *name;
  GMutex  lock;
  GRand  *spoil_rand, *rand; /* the second is asked by the clock */
  GArray *sendings; /* of Sending */
  guint   next_frame;
  double  born, last_byte;
} FakeLine;

/* @format: takes the line settings from it. */
FakeLine *fake_line_new (const char *name, const char *format);
void      fake_line_free (FakeLine *self);

/* "31 32 0D". */
void fake_line_add_hex (FakeLine *self, const char *hex);
void fake_line_add_text (FakeLine *self, const char *text);

/* An RwPortMaker; @lines is a GPtrArray of FakeLine. */
RwBytePort *fake_line_make_port (const RwMeterAddress *address, gpointer lines);
