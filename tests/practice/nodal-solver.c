/* nodal-solver.c: a small circuit solver, to check the practice cabinet's own against.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Modified nodal analysis (Ho, Ruehli, Brennan 1975): unknown are the volts of the nodes and the amperes of the sources;
 * one equation of currents for each node, one of volts for each source; Gaussian elimination with partial pivoting. The
 * loads, which bend, are taken for straight lines at the present volts, again and again (Newton).
 */
#include "config.h"

#include "nodal-solver.h"

#include <math.h>
#include <string.h>

static const guint most_rounds = 200;
static const double still = 1e-12;

void
nodal_start (NodalCircuit *self,
             guint         n_nodes)
{
  memset (self, 0, sizeof *self);
  self->n_nodes = n_nodes;
}

void
nodal_resistor (NodalCircuit *self,
                guint         a,
                guint         b,
                double        ohms)
{
  const double siemens = 1 / fmax (1e-9, ohms);

  self->siemens[a][a] += siemens;
  self->siemens[b][b] += siemens;
  self->siemens[a][b] -= siemens;
  self->siemens[b][a] -= siemens;
}

void
nodal_load (NodalCircuit *self,
            guint         a,
            guint         b,
            double        amps,
            double        nominal,
            double        follow)
{
  self->load[self->n_loads++] = (NodalLoad){ a, b, amps, nominal, follow };
}

guint
nodal_source (NodalCircuit *self,
              guint         plus,
              guint         minus,
              double        volts)
{
  self->source[self->n_sources] = (NodalSource){ .plus = plus, .minus = minus, .volts = volts };
  return self->n_sources++;
}

void
nodal_gain_volts (NodalCircuit *self,
                  guint         source,
                  guint         node,
                  double        gain)
{
  self->source[source].gain[node] += gain;
}

void
nodal_gain_amps (NodalCircuit *self,
                 guint         source,
                 guint         of,
                 double        ohms)
{
  self->source[source].gain[self->n_nodes + of] += ohms;
}

/* The load as a straight line through its present point: i = at_zero + siemens·v. */
static void
linearise (const NodalLoad *load,
           double           volts,
           double          *siemens,
           double          *at_zero)
{
  const double half = load->nominal / 2;

  *at_zero = load->amps * (1 - load->follow);
  *siemens = load->amps * load->follow / load->nominal;
  if (volts >= half)
    return;
  *siemens = volts > 0 ? (*at_zero + *siemens * half) / half : 0;
  *at_zero = 0;
}

static void
fill (const NodalCircuit *self,
      double              m[NODAL_MOST][NODAL_MOST + 1])
{
  const guint n = self->n_nodes + self->n_sources;

  for (guint i = 0; i < n; i++)
    for (guint j = 0; j <= n; j++)
      m[i][j] = i < self->n_nodes && j < self->n_nodes ? self->siemens[i][j] : 0;
  for (guint k = 0; k < self->n_loads; k++)
    {
      const NodalLoad *load = &self->load[k];
      double siemens, at_zero;

      linearise (load, self->x[load->a] - self->x[load->b], &siemens, &at_zero);
      m[load->a][load->a] += siemens;
      m[load->b][load->b] += siemens;
      m[load->a][load->b] -= siemens;
      m[load->b][load->a] -= siemens;
      m[load->a][n] -= at_zero;
      m[load->b][n] += at_zero;
    }
  for (guint k = 0; k < self->n_sources; k++)
    {
      const NodalSource *source = &self->source[k];
      const guint row = self->n_nodes + k;

      m[source->plus][row] -= 1;
      m[source->minus][row] += 1;
      m[row][source->plus] += 1;
      m[row][source->minus] -= 1;
      for (guint j = 0; j < n; j++)
        m[row][j] -= source->gain[j];
      m[row][n] = source->volts;
    }
  /* Node 0 stands at nothing. */
  for (guint j = 0; j <= n; j++)
    m[0][j] = j == 0;
}

static gboolean
eliminate (double m[NODAL_MOST][NODAL_MOST + 1],
           guint  n)
{
  for (guint k = 0; k < n; k++)
    {
      guint best = k;

      for (guint i = k + 1; i < n; i++)
        if (fabs (m[i][k]) > fabs (m[best][k]))
          best = i;
      if (fabs (m[best][k]) < 1e-14)
        return FALSE;
      for (guint j = k; j <= n; j++)
        {
          const double swap = m[k][j];

          m[k][j] = m[best][j];
          m[best][j] = swap;
        }
      for (guint i = 0; i < n; i++)
        {
          const double by = m[i][k] / m[k][k];

          for (guint j = k; i != k && by != 0 && j <= n; j++)
            m[i][j] -= by * m[k][j];
        }
    }
  return TRUE;
}

gboolean
nodal_solve (NodalCircuit *self)
{
  const guint n = self->n_nodes + self->n_sources;
  double m[NODAL_MOST][NODAL_MOST + 1];

  g_assert_cmpuint (n, <=, NODAL_MOST);
  for (guint round = 0; round < most_rounds; round++)
    {
      double moved = 0;

      fill (self, m);
      if (!eliminate (m, n))
        return FALSE;
      for (guint i = 0; i < n; i++)
        {
          const double x = i == 0 ? 0 : m[i][n] / m[i][i];

          moved = fmax (moved, fabs (x - self->x[i]));
          self->x[i] = x;
        }
      if (moved < still * 100)
        return TRUE;
    }
  return FALSE;
}

double
nodal_volts (const NodalCircuit *self,
             guint               node)
{
  return self->x[node];
}

double
nodal_amps (const NodalCircuit *self,
            guint               source)
{
  return self->x[self->n_nodes + source];
}
