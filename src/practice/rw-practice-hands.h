/* rw-practice-hands.h: hands at a practice cabinet that work by themselves: setups, readings, looks, as events.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-meter.h"
#include "rw-session.h"

G_BEGIN_DECLS

/* Seconds that things take, and how many of them at most are lived through step by step: the rest only warms or cools
 * and passes at once. INFINITY: all are. */
typedef struct
{
  double power_on, power_off, board, warm_up, cool_down;
  double lived;
  double glance; /* seconds between two looks at the meter; 0: one at each of its values */
} RwPracticePace;

/* A technician, the cabinet and what has been told of it. Not a GObject; in one thread. */
typedef struct
{
  RwPracticeCabinet *cabinet; /* owned */
  RwPracticeMeter   *meter;   /* owned */
  RwSession         *session; /* owned */
  RwPracticePace     pace;
  RwSetup            said;    /* as the last setup event has it */
  double             skipped; /* seconds that passed at once */
} RwPracticeHands;

/* Takes @cabinet and @meter; nothing has been told yet. @name: of the session's cabinet. @started: its beginning. */
void rw_practice_hands_init (RwPracticeHands *self, RwPracticeCabinet *cabinet, RwPracticeMeter *meter, const char *name,
                             GDateTime *started, const RwPracticePace *pace);
void rw_practice_hands_clear (RwPracticeHands *self);

/* Seconds since the beginning. */
double rw_practice_hands_now (const RwPracticeHands *self);

/* Adds an event, now; takes its text. */
void rw_practice_hands_add (RwPracticeHands *self, RwEvent event);

RwSetup rw_practice_hands_get_setup (const RwPracticeHands *self);

/* Adds the setup when it is not as it was told last. */
void rw_practice_hands_tell_setup (RwPracticeHands *self);

/* Makes it so, without telling: the board moves with the power off only; warming needs power, cooling needs it off.
 * @to: all three said. */
void rw_practice_hands_change_setup (RwPracticeHands *self, RwSetup to);

/* @seconds of which at most @lived are lived through. */
void rw_practice_hands_pass (RwPracticeHands *self, double seconds, double lived);

/* Leads there; the median that the meter's values settle at, or after 15 s the last of them. FALSE: no such spot, or no
 * value. */
gboolean rw_practice_hands_read (RwPracticeHands *self, const char *rail, RwPlace place, RwKind kind, RwReading *out);

/* The outcome id that looking for @seconds, of which 20 are lived through, shows for this check. (nullable) */
const char *rw_practice_hands_look (RwPracticeHands *self, const char *check, double seconds);

/* How many of the symptoms are still there. */
guint rw_practice_hands_count_left (const RwPracticeHands *self, const char *const *symptoms, guint n);

/* Tells of those that are not: the first of two faults is gone. */
void rw_practice_hands_tell_cured (RwPracticeHands *self, const char *const *symptoms, guint n);

/* Lets @seconds of warming or cooling pass at once: warmth and the times since power came or went are first-order or
 * plain sums, so that nothing is lost but what a watcher would have seen. */
void rw_practice_hands_skip (RwPracticeCabinet *cabinet, double seconds);

G_END_DECLS
