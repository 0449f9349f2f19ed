/* contact-sim.h: hands with leads and a meter, simulated: streams of contacts whose truth is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* What stands between the leads and the display. */
typedef enum
{
  SIM_FILTER, /* first order, 0.2–0.8 s */
  SIM_BOXCAR, /* the mean of the last 2–4 conversions */
  SIM_BARE,   /* dual slope: each conversion is the mean of its own time */
  SIM_N_METERS
} SimMeter;

/* What is peculiar to a contact. */
typedef enum
{
  SIM_PLAIN,
  SIM_GLITCH, /* one or two odd values on the display */
  SIM_SLIP,   /* the tip skids off for 0.1–0.4 s in mid-contact */
  SIM_DOUBLE, /* it bounces: on for 0.1–0.6 s, off for 0.1–0.45 s, on */
  SIM_SLOW,   /* the rail charges, τ 2–12 s, with up to 16 % to go when it is touched */
  SIM_WARM,   /* drifts by 0.1 % a minute: that counts as rest */
  SIM_RIPPLE, /* an alias of ripple, up to ±0.6 % */
  SIM_TURN,   /* the trim is turned under the leads */
  SIM_DROP,   /* millivolts along a wire */
  SIM_DEAD,   /* a rail at 0.000 V, firm */
  SIM_N_KINDS
} SimKind;

typedef struct
{
  double   t;
  double   shown;  /* NaN: overload */
  double   step;
  double   quiet;  /* what the meter's filter holds: no noise, no rounding, no range error */
  double   aim;    /* what that comes to if nothing else happens */
  double   offset; /* the range's own error, volts */
  gboolean touched;
  gboolean wild;   /* shown while the meter looks for its range */
} SimSample;

/* A value that comes to rest: settles is the first sample from which on quiet stays within max (1.5 steps,
 * 0.05 %) of aim, end the one that is no longer of it. */
typedef struct
{
  guint settles, end;
} SimRest;

typedef struct
{
  SimKind  kind;
  SimMeter meter;
  double   rate;       /* readings a second */
  double   tau;        /* seconds, of the meter's filter */
  double   noise;      /* counts, standard deviation */
  guint    first, end; /* samples touched: first … end − 1 */
  guint    n_rests;    /* 2: SIM_TURN, before and after */
  SimRest  rests[2];
} SimContact;

typedef struct _ContactSim ContactSim;

/* One meter and one person, drawn at random. */
ContactSim *contact_sim_new (GRand *random);
void        contact_sim_free (ContactSim *self);

/* Leads in the air, a contact, and the lifting. Time goes on from call to call. @samples: (element-type
 * SimSample), overwritten. */
void contact_sim_next (ContactSim *self, GArray *samples, SimContact *contact);

const char *contact_sim_kind_name (SimKind kind);
const char *contact_sim_meter_name (SimMeter meter);
