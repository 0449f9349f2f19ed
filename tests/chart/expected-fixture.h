/* expected-fixture.h: a supply whose followers are straight lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "scene-fixture.h"

#define EXPECTED_WIDTH 860.0
#define EXPECTED_HEIGHT 330.0

/* Volts of @rail while the reference is at @x. */
double expected_truth (const char *rail, double x);

/* Adds a reading at the board, as it is; of every rail, 8 s apart; a turn of the trim. */
void expected_read (RwSession *session, double t, const char *rail, double x);
void expected_read_all (RwSession *session, double t, double x);
void expected_turn (RwSession *session, double t);

/* Two positions known in full, at 10 s and at 60 s, and a third turn at 100 s. */
RwSession *expected_turned (void);

/* The scene of all of @session as its events are now. */
const RwScene *expected_look (SceneFixture *fixture, RwSession *session);

/* The only stretch of @rail that is there at @t. (nullable) */
const RwExpectedStretch *expected_at (const RwScene *scene, const char *rail, double t);

const RwExpectedKnot *expected_knot (const RwExpectedStretch *stretch, guint i);
const RwExpectedKnot *expected_last_knot (const RwExpectedStretch *stretch);
