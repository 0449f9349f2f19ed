/* rw-decoder-guard.h: believes a change only when frames agree on it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The frames of display meters carry no checksum. A frame with one bad byte can be perfectly
 * formed: one segment makes a 9 of an 8, one bit a 4 of a 5, a minus, another range. So:
 *
 *   1. A frame that says exactly what one believed within the last 16 frames said is handed
 *      out at once, and frames held then are dropped: a lone odd frame in a steady stream is
 *      noise on the line, and a last digit that flickers has few values.
 *   2. Any other frame is held, up to three of them. If it says exactly what a held one says,
 *      the two are handed out, and the other held ones dropped.
 *   3. A value that wavers more or moves seldom says the same twice. A held frame is handed
 *      out too when others vouch for it, all with the same unit, mode, step, sign and flags,
 *      and no two the same:
 *        a. it and the next two lie within 3 counts of each other, or a thousandth of the
 *           reading where that is more;
 *        b. it, the next two, and the one after those or the last believed one rise or fall
 *           all the way.
 *      Older ones that nobody vouches for are dropped.
 *
 * What is handed out is from then on the believed frame. Order is kept.
 *
 * Why three different ones in 3a, four in 3b, and not one fewer: one bad frame W among equal
 * ones S comes as S W S, as W S S when it is the first, as S S W when it is the last, and
 * where the value jumps from A, as A W S S or A S W S. In each the second S comes, and rule 2
 * drops W, before three different frames are held or four go one way: W never finds enough
 * that vouch for it, though it lie within a count of S or between A and S. So no single bad
 * frame comes out of a stream that shows each value for three frames, but one that happens to
 * say exactly what was shown within the last 16. To ask for less would not do: with two
 * frames within 3 counts W S S lets W out; with A counted as one of three near ones a small
 * step A W S does, and so does B strictly between A and C.
 *
 * The price: the first value needs two frames and a moving one is two frames late. Of frames
 * that waver at random by ±1 count 98 of 100 come out, by ±2 80 to 91, by ±5 59; of what jumps
 * about without end one in five (measured in tests/meter/test-decoder-noise.c). The others
 * are counted in doubted.
 *
 * A capture of single readings has no steady value that could be protected. While nothing has
 * been believed yet the first 64 frames are remembered, and if the input ends so, they are all
 * handed out in order. If anything was believed, what is still held at the end is dropped.
 *
 * A meter with several displays sends their frames in turn. Each place has its own believed
 * and held frames. Handed out is the main one of those that are believed; a place that has
 * been silent for some frames is forgotten.
 */
#pragma once

#include "rw-decoder-display.h"

G_BEGIN_DECLS

#define RW_DECODER_GUARD_EARLY 64
#define RW_DECODER_GUARD_HELD 4 /* three, and the frame just come */
#define RW_DECODER_GUARD_RECENT 8

typedef struct
{
  RwDecoderDisplay recent[RW_DECODER_GUARD_RECENT]; /* believed and different, the last first */
  guint64          recent_at[RW_DECODER_GUARD_RECENT]; /* frame numbers */
  guint            n_recent;
  RwDecoderDisplay held[RW_DECODER_GUARD_HELD];
  guint            n_held;
  guint64          last; /* frame number of its last frame */
} RwDecoderGuardPlace;

/* All zero to begin with; nothing is owned. */
typedef struct
{
  RwDecoderGuardPlace places[RW_DECODER_DISPLAY_PLACES];
  RwDecoderDisplay    early[RW_DECODER_GUARD_EARLY]; /* all frames while nothing was believed */
  guint               n_early;
  guint64             waiting; /* dropped, but may yet come out at the end */
  gboolean            ever;    /* something was believed, be it before a restart */
  guint64             frames;  /* taken */
  guint64             doubted; /* dropped for good */
} RwDecoderGuard;

typedef void (*RwDecoderGuardFunc) (const RwDecoderDisplay *display, gpointer data);

/* Takes a whole frame and calls @callback for each that is believed now. */
void rw_decoder_guard_take (RwDecoderGuard         *self,
                            const RwDecoderDisplay *display,
                            RwDecoderGuardFunc      callback,
                            gpointer                data);

/* The input has ended. */
void rw_decoder_guard_end (RwDecoderGuard *self, RwDecoderGuardFunc callback, gpointer data);

/* The stream was cut: forgets what is held and what is believed. */
void rw_decoder_guard_restart (RwDecoderGuard *self);

G_END_DECLS
