/* fixtures.h: what the tests of the core share: a profile, sessions, random events, a folder.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"

/* g_test_init in the locale of the environment; stops when a comma was asked for and is not there. */
void fixture_init (int *argc, char ***argv);

/* +5 V, +12 V and −5 V, one line of JSON. */
#define FIXTURE_PROFILE                                                                              \
  "{\"id\":\"three\",\"title\":\"Three rails\",\"reference\":\"p5\",\"rails\":["                     \
  "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5.0,\"limits\":[4.9,5.2],\"bare_limits\":[4.75,5.4]," \
  "\"never_above\":5.5,\"priority\":1,\"follows_trim\":\"yes\",\"feeds\":\"logic\",\"ripple_limit\":0.05}," \
  "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[10.8,13.2],\"never_above\":15,"    \
  "\"priority\":2,\"follows_trim\":\"yes\"},"                                                         \
  "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],\"bare_limits\":[-6.5,-4.5],"    \
  "\"never_above\":7,\"priority\":3,\"follows_trim\":\"unknown\",\"ripple_limit\":0.05}]}"

/* A header line without newline; its meter m1 is ±(0.5 % + 2). */
#define FIXTURE_HEADER                                                                              \
  "{\"railwright\":1,\"id\":\"0b7f\",\"started\":\"2026-03-14T09:30:00Z\","                          \
  "\"cabinet\":{\"name\":\"Tidepool Racer\",\"tag\":\"B-07\"},\"profile\":" FIXTURE_PROFILE          \
  ",\"meters\":[{\"id\":\"m1\",\"name\":\"bench meter\",\"percent\":0.5,\"counts\":2}]}"

RwProfile *fixture_profile (void);
RwSession *fixture_session (void);

/* Published and worked data; freed by the caller. */
JsonNode *fixture_refdata (const char *name);

/* A number of a nested object: "computed", "pc_oil". NULL ends the path. */
double fixture_number (JsonNode *node, ...) G_GNUC_NULL_TERMINATED;

/* The event read from a line that must be good. */
RwEvent fixture_event (const char *line);

/* Its line without newline. (transfer full) */
char *fixture_line (const RwEvent *event);

/* Anything that can happen, t near @t; retracts name numbers up to n. */
RwEvent fixture_random_event (GRand *random, double t, guint n);

/* Every field of both is the same, the kept line too. */
void fixture_assert_same_event (const RwEvent *a, const RwEvent *b);

/* A fresh folder under the temporary one, and its removal with all that is in it. */
char *fixture_folder (void);
void  fixture_remove (const char *folder);

/* Runs the main loop so long, or until *flag turns TRUE (flag may be NULL). */
void fixture_spin (double seconds, const gboolean *flag);
