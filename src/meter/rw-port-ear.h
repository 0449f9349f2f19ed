/* rw-port-ear.h: what one opening of a port has brought in a search, and whether to stay.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Listening is left when
 *
 *   nothing came for 1.75 s, longer than the pause of any slow meter (2.5 s where somebody was heard)
 *   what came is explained by no format, and was whole: it began and ended with a pause, or fills a while
 *     without any pause; a byte or two are whole only when they come again
 *
 * and goes on as long as a format explains part of what comes, and more comes.
 *
 * A question is asked 150 ms after the opening, when what a cable sends as it gets its power is over; not
 * when somebody talks then. It is asked again when it was answered, or once when it was not, or not well.
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-search-plan.h"

G_BEGIN_DECLS

typedef struct
{
  RwSearchStep step;
  RwBytePort  *port;
  gint64       opened_us;  /* monotonic, as are all; 0: not yet */
  gint64       first_us;   /* of the bytes */
  gint64       last_us;
  gint64       asked_us;
  gint64       weighed_us;
  guint        stretches;  /* of bytes that began after a pause */
  guint        tries;      /* questions since the last good answer */
  GByteArray  *bytes;
  gsize        weighed;    /* bytes at the last weighing */
  gboolean     stay;       /* some format explains part of it */
  gboolean     lost;       /* the port is gone */
} RwPortEar;

/* The port stays the caller's. */
void rw_port_ear_init (RwPortEar *self, const RwSearchStep *step, RwBytePort *port);
void rw_port_ear_clear (RwPortEar *self);

/* Reads what is there. */
void rw_port_ear_hear (RwPortEar *self);

/* The first bytes may be the end of a frame. */
gboolean rw_port_ear_is_torn (const RwPortEar *self);

/* Bytes came later than what a cable sends as it gets its power. */
gboolean rw_port_ear_is_talked_to (const RwPortEar *self);

/* Listening has nothing more to tell. @talks: somebody was heard on this port before. */
gboolean rw_port_ear_is_done (const RwPortEar *self, gint64 now_us, gboolean talks);

typedef enum
{
  RW_PORT_EAR_WAIT,
  RW_PORT_EAR_ASK,  /* the question is counted as asked */
  RW_PORT_EAR_LEAVE
} RwPortEarAnswer;

/* What to do next where something is asked. */
RwPortEarAnswer rw_port_ear_judge_answer (RwPortEar *self, gint64 now_us);

/* The name that an instrument answered with. (transfer full) (nullable) */
char *rw_port_ear_read_name (const RwPortEar *self);

/* The first line of text that no format explains: it may be a meter whose lines need a pattern.
 * (transfer full) (nullable) */
char *rw_port_ear_dup_stranger (const RwPortEar *self);

G_END_DECLS
