/* rw-trim-set.h: everything known of the trim at one place, with the board in or out.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Loaded and unloaded readings, and the places, are fitted apart: loads move the lines' offsets.
 * Made by the bench state from the events; a repair that fixed something starts afresh.
 */
#pragma once

#include "rw-event.h"
#include "rw-trim-window.h"

G_BEGIN_DECLS

/* A kept reading in the set. */
typedef struct
{
  guint    n;        /* event number */
  double   t;        /* seconds */
  guint    rail;     /* index in the profile */
  guint    position; /* index in the set */
  double   value;    /* volts as shown */
  double   u;        /* own standard uncertainty */
  double   x, u_x;   /* where it stands across: the reference at its position; NaN when not known */
  gboolean outlier;  /* named as one and left out of the lines */
} RwTrimPoint;

/* A stretch between two turns. */
typedef struct
{
  double   from, to; /* seconds; to is INFINITY for the one that lasts */
  double   x, u_x;   /* the reference there; NaN when not known */
} RwTrimPosition;

/* A rail at the set point. */
typedef struct
{
  guint          rail;
  RwTrimExpected expected;
  double         u_common; /* the meter's common part there, volts, standard */
  double         margin;   /* NaN without limits */
} RwTrimPredicted;

/* Immutable, reference-counted, all fields read-only. */
typedef struct
{
  RwProfile    *profile;
  RwPlace       place;
  RwSaid        board;     /* fitted, out, or nobody said */
  double        percent;   /* the meter's common part, per cent; the largest of the meters used */
  guint         reference; /* index of the reference rail */
  GArray       *points;    /* of RwTrimPoint, in order */
  GArray       *positions; /* of RwTrimPosition */
  RwTrimFit    *fit;       /* rails by index in the profile */
  double       *lo, *hi;   /* limits a rail at this place and board, NaN for none */
  guint         n_lined;   /* rails with a line, the reference included */
  RwTrimWindow  window;    /* over the rails with a line; low_rail, high_rail, kept: profile indices */
  double        chance;    /* that all of them are inside at window.best; NaN without best */
  GArray       *predicted; /* of RwTrimPredicted at window.best, rails with a line, reference left out */
  gboolean      complete;  /* every rail of the profile has a line */
  gboolean      is_current;/* position of the last element of positions is where the screw stands now */
  double        x, u_x;    /* the reference now, as far as readings tell; NaN when not known */
} RwTrimSet;

/* What a set is made from; copied. Points come with x, u_x and outlier unset. */
typedef struct
{
  RwProfile         *profile;
  RwPlace            place;
  RwSaid             board;
  const RwTrimPoint *points;
  guint              n_points;
  const gboolean    *normal;      /* a point: its error is normal, not a meter's counts; NULL: none is */
  const double      *starts;      /* a position: seconds when it began */
  const double      *ends;        /* a position: seconds when it ended; INFINITY: it lasts */
  guint              n_positions;
  gboolean           is_current;
  double             percent;
} RwTrimSetInput;

/* O(points). (transfer full) */
RwTrimSet *rw_trim_set_new (const RwTrimSetInput *input);
RwTrimSet *rw_trim_set_ref (RwTrimSet *self);
void       rw_trim_set_unref (RwTrimSet *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTrimSet, rw_trim_set_unref)

/* The prior of a rail's slope from its profile: in proportion to its nominal volts. */
RwTrimPrior rw_trim_prior (const RwRail *rail, const RwRail *reference);

/* What every rail does while one of them is watched. */
typedef struct
{
  guint           n_rails;
  guint           from;     /* profile index of the rail that the meter is on */
  double          x, u_x;   /* the reference now; NaN when the watched rail cannot tell */
  RwTrimExpected *rails;    /* a rail; value NaN where nothing can be said; owned */
} RwTrimLive;

/* The watched rail shows @value with own standard uncertainty @u. Clear *out when done; out->x is NaN and all
 * values but that of @from are NaN when nothing can be told from it. */
void rw_trim_live_init (RwTrimLive *out, const RwTrimSet *set, guint from, double value, double u);
void rw_trim_live_clear (RwTrimLive *self);

G_END_DECLS
