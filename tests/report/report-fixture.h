/* report-fixture.h: a small session with numbers that can be worked out by hand.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-journal-reader.h"
#include "rw-knowledge.h"

G_BEGIN_DECLS

/* A header line with two rails: p5 4.90 … 5.20 V (middle 5.05, half width 0.15), m5 −5.5 … −4.5
 * V; meter m1 of ±(0.5 % + 2 counts), meter m2 of which nothing is known. Cabinet “Tidepool
 * "Racer"” B-07. */
extern const char fixture_header[];

/* Lines of a session: an event with its payload, a reading or sample with the rest of its keys. */
#define EVENT(n, t, payload) "{\"n\":" #n ",\"t\":" #t "," payload "}\n"
#define SPOT(rail, place, kind, rest) \
  "{\"rail\":\"" rail "\",\"place\":\"" place "\",\"kind\":\"" kind "\"," rest "}"
#define READING(n, t, rail, place, kind, rest) \
  EVENT (n, t, "\"reading\":" SPOT (rail, place, kind, rest))
#define SAMPLE(n, t, rail, place, kind, rest) \
  EVENT (n, t, "\"sample\":" SPOT (rail, place, kind, rest))

/* The header, then @lines; at least the header must be readable. (transfer full) */
RwJournalRead *fixture_read (const char *lines);

/* What mini-knowledge.json holds. (transfer full) */
RwKnowledge *fixture_load_knowledge (void);

G_END_DECLS
