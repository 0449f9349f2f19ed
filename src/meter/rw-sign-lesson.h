/* rw-sign-lesson.h: learns which bit of digits-11 means minus, from a reading that is negative.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure. In the status byte of a frame, bit 2 is the minus of digits-11a and the low battery of digits-11b;
 * bit 3 is the minus of digits-11b and the judge mark of digits-11a. On a reading known to be negative the
 * minus must be set in every frame: when all frames have exactly one of the two bits set, and the same one,
 * that bit is the minus. Anything else settles nothing.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_SIGN_LESSON_FEW,     /* fewer than RW_SIGN_LESSON_LEAST frames */
  RW_SIGN_LESSON_A,       /* digits-11a */
  RW_SIGN_LESSON_B,       /* digits-11b */
  RW_SIGN_LESSON_NEITHER, /* no bit set in any frame: the value is not negative */
  RW_SIGN_LESSON_BOTH,    /* both set in all frames: minus and something else */
  RW_SIGN_LESSON_MIXED    /* the frames do not agree */
} RwSignLesson;

#define RW_SIGN_LESSON_LEAST 3

typedef struct
{
  guint frames;
  guint only_bit_2, only_bit_3, both, neither;
} RwSignCounts;

/* Looks for whole digits-11 frames among bytes read as 7O1, or as 8N1 with the parity in bit 7. */
RwSignCounts rw_sign_lesson_count (const guint8 *tainted, gsize n);

RwSignLesson rw_sign_lesson_judge (const RwSignCounts *counts);

G_END_DECLS
