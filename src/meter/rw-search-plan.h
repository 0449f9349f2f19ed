/* rw-search-plan.h: what to try next on a port where a meter is looked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure. Listening comes first, the likeliest speeds before the others, in turn with DTR alone and with DTR
 * and RTS on, since some cables are powered by the one, some by the other. Somebody who talks is heard at
 * nearly any speed, as garbage: then the lines stay as they are, and only the speed is changed. On ports that
 * were quiet twice, each question that a format has is asked at the speeds it is usual at; then it goes on
 * listening. Where somebody talks nothing is ever asked.
 *
 *   LISTEN ──quiet, twice, or a round of nearly nothing──► each question once ──► LISTEN
 *   LISTEN ──bytes──► LISTEN at the other speeds with the same lines
 *
 * What garbage tells of the speed. A receiver begins each byte at a falling edge, that is with a low stretch of
 * at least one bit of the sender's. One bit of a sender that is r times slower covers the start bit and the
 * first bits of a byte: with r = 2, 3, … 8 at least r − 1 low bits of every byte are 0. So the smallest number
 * of low zeros in (nearly) all bytes gives r, and that speed is tried next. A sender that is faster leaves
 * few bytes of a frame, or bytes without such a rule: slower speeds are then left out of the round.
 */
#pragma once

#include "rw-serial-settings.h"

G_BEGIN_DECLS

typedef enum
{
  RW_SEARCH_LISTEN,
  RW_SEARCH_ASK_VALUE, /* one letter; the answer is a frame */
  RW_SEARCH_ASK_NAME   /* the answer is an instrument's name */
} RwSearchKind;

typedef struct
{
  RwSearchKind     kind;
  RwSerialSettings line;     /* as the port is to be opened; of no meaning for a network */
  const char      *question; /* static; NULL to listen */
} RwSearchStep;

/* A plain value. */
typedef struct
{
  gboolean serial;
  gboolean asks;       /* the next steps are questions, from number asked on */
  guint    asked;
  guint    listened;   /* steps so far */
  guint    at;         /* speed number in this round */
  gsize    heard;      /* bytes in this round of all speeds */
  gboolean talks;      /* somebody was heard in this round, with the lines as in power */
  guint    power;
  guint    hint;       /* baud to try next, out of turn; 0 */
  gboolean hinted;     /* in this round */
  guint    above;      /* baud: slower ones and this are left out of this round */
} RwSearchPlan;

/* @serial FALSE: a network, which has no speeds and takes no letters. */
void rw_search_plan_init (RwSearchPlan *self, gboolean serial);

/* There is always something to try; the deadline is the caller's. */
RwSearchStep rw_search_plan_next (RwSearchPlan *self);

/* Tells what the step that next () gave has brought: bytes, in stretches with pauses between them. */
void rw_search_plan_heard (RwSearchPlan       *self,
                           const RwSearchStep *step,
                           const guint8       *tainted,
                           gsize               n,
                           guint               stretches);

G_END_DECLS
