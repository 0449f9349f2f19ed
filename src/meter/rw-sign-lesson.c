/* rw-sign-lesson.c: learns which bit of digits-11 means minus, from a reading that is negative.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A frame: 0 range, 1-4 digits, 5 function, 6 status, 7-8 options, 9-10 CR LF; all but the last two are
 * 0x30 … 0x3F, the digits 0x30 … 0x39. The frame before must have ended: a longer format's last 11 bytes
 * are no frame.
 */
#include "config.h"

#include "rw-sign-lesson.h"

enum
{
  LENGTH = 11,
  FIRST_DIGIT = 1,
  LAST_DIGIT = 4,
  STATUS = 6,
  BIT_2 = 1 << 2,
  BIT_3 = 1 << 3
};

/* The seven data bits; 0, which no frame has, when the parity in bit 7 is wrong. */
static guint8
take_seven (guint8   byte,
            gboolean parity)
{
  if (!parity)
    return byte;
  return __builtin_parity (byte) != 0 ? byte & 0x7F : 0;
}

static gboolean
has_parity (const guint8 *tainted,
            gsize         n)
{
  for (gsize i = 0; i < n; i++)
    if ((tainted[i] & 0x80) != 0)
      return TRUE;
  return FALSE;
}

static gboolean
is_frame (const guint8 *seven)
{
  for (guint i = 0; i < LENGTH - 2; i++)
    {
      const guint8 most = i >= FIRST_DIGIT && i <= LAST_DIGIT ? 0x39 : 0x3F;

      if (seven[i] < 0x30 || seven[i] > most)
        return FALSE;
    }
  return seven[LENGTH - 2] == '\r' && seven[LENGTH - 1] == '\n';
}

static void
count_frame (guint8        status,
             RwSignCounts *counts)
{
  counts->frames++;
  switch (status & (BIT_2 | BIT_3))
    {
    case BIT_2:
      counts->only_bit_2++;
      break;
    case BIT_3:
      counts->only_bit_3++;
      break;
    case BIT_2 | BIT_3:
      counts->both++;
      break;
    default:
      counts->neither++;
      break;
    }
}

RwSignCounts
rw_sign_lesson_count (const guint8 *tainted,
                      gsize         n)
{
  const gboolean parity = has_parity (tainted, n);
  g_autofree guint8 *seven = g_malloc (n + 1);
  RwSignCounts counts = { 0 };

  for (gsize i = 0; i < n; i++)
    seven[i] = take_seven (tainted[i], parity);
  for (gsize i = 0; i + LENGTH <= n; i++)
    if (is_frame (seven + i) && (i == 0 || seven[i - 1] == '\n'))
      count_frame (seven[i + STATUS], &counts);
  return counts;
}

RwSignLesson
rw_sign_lesson_judge (const RwSignCounts *counts)
{
  if (counts->frames < RW_SIGN_LESSON_LEAST)
    return RW_SIGN_LESSON_FEW;
  if (counts->only_bit_2 == counts->frames)
    return RW_SIGN_LESSON_A;
  if (counts->only_bit_3 == counts->frames)
    return RW_SIGN_LESSON_B;
  if (counts->neither == counts->frames)
    return RW_SIGN_LESSON_NEITHER;
  if (counts->both == counts->frames)
    return RW_SIGN_LESSON_BOTH;
  return RW_SIGN_LESSON_MIXED;
}
