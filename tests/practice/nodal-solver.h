/* nodal-solver.h: a small circuit solver, to check the practice cabinet's own against.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

#define NODAL_MOST 64 /* nodes and sources together */

typedef struct
{
  guint  a, b;
  double amps, nominal, follow;
} NodalLoad;

typedef struct
{
  guint  plus, minus;
  double volts;
  double gain[NODAL_MOST]; /* volts per unit of each unknown */
} NodalSource;

typedef struct
{
  guint       n_nodes, n_sources, n_loads;
  double      siemens[NODAL_MOST][NODAL_MOST];
  NodalSource source[NODAL_MOST];
  NodalLoad   load[NODAL_MOST];
  double      x[NODAL_MOST]; /* volts of the nodes, then amperes of the sources */
} NodalCircuit;

/* Node 0 is where volts are counted from. All of them joined to it by something. */
void nodal_start (NodalCircuit *self, guint n_nodes);

void nodal_resistor (NodalCircuit *self, guint a, guint b, double ohms);

/* Draws current from a to b: amps·((1 − follow) + follow·v/nominal) down to half its nominal volts, and below like the
 * resistor that it is there; nothing the wrong way round. */
void nodal_load (NodalCircuit *self, guint a, guint b, double amps, double nominal, double follow);

/* Holds v(plus) − v(minus) at @volts and what its gains add. Returns its number. */
guint nodal_source (NodalCircuit *self, guint plus, guint minus, double volts);
void  nodal_gain_volts (NodalCircuit *self, guint source, guint node, double gain);
void  nodal_gain_amps (NodalCircuit *self, guint source, guint of, double ohms);

/* FALSE: it did not settle, or there is no solution. Starts from the last one. */
gboolean nodal_solve (NodalCircuit *self);

double nodal_volts (const NodalCircuit *self, guint node);
double nodal_amps (const NodalCircuit *self, guint source); /* out of its plus */
