/* contact-sim.h: hands with leads and a meter, simulated: streams of contacts whose truth is known.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

/* What is peculiar to a contact. */
typedef enum
{
  SIM_PLAIN,
  SIM_SKID,   /* one or two odd values early in it */
  SIM_SLOW,   /* the rail charges, τ 2–12 s, with up to 0.8 V to go when it is touched */
  SIM_RIPPLE, /* an alias of ripple, up to ±0.6 % */
  SIM_TURN,   /* the trim is turned under the leads */
  SIM_DROP,   /* millivolts along a wire */
  SIM_DEAD,   /* a rail at 0.000 V, firm */
  SIM_N_KINDS
} SimKind;

typedef struct
{
  double   t;
  double   shown;   /* NaN: overload */
  double   step;
  double   quiet;   /* what the meter's filter holds: no noise, no rounding, no range error */
  gboolean touched;
} SimSample;

typedef struct
{
  SimKind kind;
  double  rate;       /* readings a second */
  double  tau;        /* seconds, of the meter's filter */
  double  noise;      /* counts, standard deviation */
  guint   first, end; /* samples touched: first … end − 1 */
  double  final;      /* where it ends; where it rested before the turn of SIM_TURN is `before` */
  double  before;
  guint   turn_first, turn_end; /* samples while the screw moves; 0, 0: none */
  guint   settles;    /* sample from which on the truth stays within max (1.5 steps, 0.05 %) of final (before) */
  guint   settles_again; /* the same after a turn */
} SimContact;

typedef struct _ContactSim ContactSim;

/* One meter and one person, drawn at random. */
ContactSim *contact_sim_new (GRand *random);
void        contact_sim_free (ContactSim *self);

/* Leads in the air, a contact, and the lifting. Time goes on from call to call. @samples: (element-type
 * SimSample), overwritten. */
void contact_sim_next (ContactSim *self, GArray *samples, SimContact *contact);

const char *contact_sim_kind_name (SimKind kind);
