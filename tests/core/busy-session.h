/* busy-session.h: sessions made at random that look like work at a cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-session.h"

typedef struct
{
  guint  n_events;
  double noise;    /* largest error of a reading over what its meter's counts allow; 1: as stated */
  double slope;    /* of +12 V over the 2.4 V a volt that is expected of it */
  double drift;    /* volts a reading by which +12 V creeps away from its line */
  guint  turns;    /* of 100 events are turns of the trim */
  guint  mishaps;  /* … typing errors, overloads, wrong leads */
  guint  retracts; /* … taken back: mostly the newest event, at times any, at times a retraction */
  guint  changes;  /* … switching, plugging, warming up, repairs, facts of a meter */
  guint  others;   /* … marks, stages, findings, symptoms, samples */
  guint  places;   /* 1: only the board's edge; 4: all there are */
  gboolean orderly; /* only the newest event is taken back, and no facts of a meter change */
} BusyStyle;

/* A style made at random. */
BusyStyle busy_style (GRand *random, guint n_events);

/* On FIXTURE_PROFILE. (transfer full) */
RwSession *busy_session_new (GRand *random, const BusyStyle *style);
