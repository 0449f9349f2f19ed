/* rw-warm-up.h: how far a rail drifts while the cabinet warms up, and how surely.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of a session and a time. A run begins when power comes on (or at the first reading that follows,
 * when nobody said so) and ends with power off, a turn of the trim, a repair that fixed something, or the board's
 * being pulled or plugged: what follows is another run.
 */
#pragma once

#include "rw-session.h"

G_BEGIN_DECLS

typedef enum
{
  RW_WARM_UP_TOO_FEW, /* fewer than two readings, or less than a quarter of an hour between them */
  RW_WARM_UP_UNSURE,  /* the error reaches across the figure: neither good nor bad is shown */
  RW_WARM_UP_GOOD,    /* within 0.6 % of nominal (0.03 V on 5 V), shown */
  RW_WARM_UP_FAIR,    /* between the two, shown */
  RW_WARM_UP_BAD,     /* beyond 1.6 % of nominal (0.08 V on 5 V), shown */
  RW_WARM_UP_STEPPED, /* it stepped once, plainly: no warming, whatever drift there is beside it */
} RwWarmUpVerdict;

typedef enum
{
  RW_WARM_UP_LATER,   /* still to come */
  RW_WARM_UP_DUE,     /* may be taken now */
  RW_WARM_UP_OVERDUE, /* its time has gone by without a reading */
  RW_WARM_UP_IN,
} RwWarmUpState;

#define RW_WARM_UP_N_POINTS 5

/* When a warm-up is read: minutes after power on, and from when to when a reading counts for them. */
typedef struct
{
  double minutes, from, to;
} RwWarmUpMinute;

const RwWarmUpMinute *rw_warm_up_get_minute (guint i);           /* i < RW_WARM_UP_N_POINTS */
const RwWarmUpMinute *rw_warm_up_find_minute (double minutes);   /* (nullable): none of them */

typedef struct
{
  double        minutes;  /* 0, 5, 15, 30, 60 after power on */
  double        from, to; /* seconds of the session in which a reading counts for it */
  RwWarmUpState state;
  guint         n;        /* event number of the reading nearest to it; 0: none */
  double        value;    /* volts; NaN when none */
  double        step;     /* volts: the last digit of it; 0 when unknown */
} RwWarmUpPoint;

typedef struct
{
  gboolean        running;   /* there is power (as far as anyone said) and the run goes on */
  double          started;   /* seconds of the session; NaN when there is no run */
  guint           n;         /* readings in the run */
  double          first;     /* seconds after power on of the first of them; NaN: none */
  double          span;      /* seconds from the first to the last of them */
  double          drift;     /* volts from first to last, by the fit and without the step; its sign is the value's.
                              * NaN: too few, or a step that no drift is seen beside */
  double          u;         /* its standard uncertainty: scatter corrected for correlation, and the meter's own part */
  double          r;         /* lag-1 correlation of the residuals */
  double          n_eff;     /* readings that they are worth */
  gboolean        approach;  /* an exponential approach describes them better than a line */
  double          tau;       /* seconds; NaN without */
  double          final;     /* volts it tends to; NaN without */
  gboolean        settled;   /* the last digit or 0.1 % of nominal, whichever is more, is all that is left */
  double          settle_at; /* seconds after power on when that is reached; NaN: not yet to be told */
  double          step;      /* volts, its sign is the value's; NaN: it did not step. With one, nothing is said of an end */
  double          u_step;    /* its standard uncertainty; NaN without */
  double          step_at;   /* seconds after power on: half way between the readings around it; NaN without */
  double          step_from, step_to; /* the readings between which it lies, at 95 % */
  RwWarmUpVerdict verdict;
  RwWarmUpPoint   points[RW_WARM_UP_N_POINTS];
} RwWarmUp;

/* The newest run at this spot, as it stands at @now (seconds of the session). DC only. */
RwWarmUp rw_warm_up_read (RwSession *session, const char *rail, RwPlace place, double now);

typedef enum
{
  RW_WARM_UP_WHERE_UNKNOWN, /* a spot is missing, or the error is too large */
  RW_WARM_UP_WHERE_STILL,   /* the board does not fall */
  RW_WARM_UP_WHERE_SUPPLY,  /* both fall: the supply */
  RW_WARM_UP_WHERE_WIRING,  /* only the board falls: plugs and wires heating */
  RW_WARM_UP_WHERE_STEP_BEFORE, /* both stepped at one time: a load, or the supply */
  RW_WARM_UP_WHERE_STEP_BEHIND, /* only the board stepped: something between */
} RwWarmUpWhere;

/* "Falls" is towards 0. A fall counts when it is beyond 0.6 % of @nominal by 1.645 u; the board's alone when the
 * difference of the falls is as large as that too. Of a step it is said when the terminals stepped at the same time, or
 * were read before and after it and are good or fair. */
RwWarmUpWhere rw_warm_up_where (const RwWarmUp *board, const RwWarmUp *terminals, double nominal);

/* Translated, with numbers. (transfer full) */
char       *rw_warm_up_describe (const RwWarmUp *self, double nominal);
const char *rw_warm_up_where_describe (RwWarmUpWhere where); /* static; "" for UNKNOWN */

G_END_DECLS
