/* chart-fixture.h: made-up sessions for the tests of the chart.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"

/* Nothing happened yet. */
RwSession *fixture_empty (void);

/* Eight minutes: bare readings, five trims under load, marks, a symptom, a repair, a note, a
 * second place. */
RwSession *fixture_trims (void);

/* @n samples of +5 V at ten a second, warm-up drift and noise, a gap, two spikes; a kept reading
 * or two. */
RwSession *fixture_stream (guint n);

/* A few of everything, ripple, drops, an overload, one value far off, a stranger. */
RwSession *fixture_oddities (void);

/* @n random events with any seed; also retracts. */
RwSession *fixture_random (guint32 seed, guint n);

/* Adds one random event, at @t or a little later; returns its time. */
double fixture_add_random (RwSession *session, GRand *random, double t);

/* Shorthands: add and forget. @rail and @place as in files. */
void fixture_reading (RwSession *session, double t, const char *rail, RwPlace place, double value);
void fixture_sample (RwSession *session, double t, const char *rail, RwPlace place, double value);
void fixture_event (RwSession *session, RwEvent event);
