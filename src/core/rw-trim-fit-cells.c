/* rw-trim-fit-cells.c: sorts the readings of a fit by position and rail.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings of one rail at one position are merged into a cell (their weighted mean; what they
 * differ by goes into the misfit), so that the equations (rw-trim-fit-solve.c) see each rail once
 * a position.
 */
#include "config.h"

#include "rw-trim-fit-private.h"

#include <math.h>
#include <string.h>

/* A reading that claims to be exact (or nearly) counts as this share of the largest uncertainty
 * given, or, when all claim so, of the largest value: weights further apart than 1e10 would leave
 * no digits to the rest. */
static const double floor_of_u = 1e-5;
static const double floor_of_value = 1e-9;
static const double most_volts = 1e12; /* beyond is no reading, and squares would overflow */

gboolean
rw_trim_fit_can_use (const RwTrimFit     *self,
                     const RwTrimReading *reading)
{
  return reading->rail < self->n_rails && reading->position < self->n_positions &&
         fabs (reading->value) < most_volts && reading->u >= 0 && reading->u < most_volts;
}

static double
least_u (const RwTrimFit     *self,
         const RwTrimReading *readings,
         guint                n_readings)
{
  double u = 0, value = 0;

  for (guint i = 0; i < n_readings; i++)
    if (rw_trim_fit_can_use (self, &readings[i]))
      {
        u = MAX (u, readings[i].u);
        value = MAX (value, fabs (readings[i].value));
      }
  return MAX (floor_of_u * u, MAX (floor_of_value * value, G_MINFLOAT));
}

static void
add_to_cell (RwTrimFit           *self,
             RwTrimCell          *cell,
             const RwTrimReading *reading)
{
  const double u = MAX (reading->u, self->u_floor), w = 1 / (u * u);
  const double off = reading->value - cell->y;
  const double share = w / (cell->w + w);

  cell->chi2 += cell->w * share * off * off;
  cell->n++;
  cell->y += share * off;
  cell->w += w;
  if (!reading->normal)
    {
      cell->w2 += w * w;
      cell->w3 += w * w * w;
    }
}

/* The cell of @rail among those of a position from @first on, kept in the order of rails. */
static RwTrimCell *
cell_for (RwTrimFit *self,
          guint      first,
          guint      rail)
{
  guint at = self->first[self->n_positions];

  while (at > first && self->cells[at - 1].rail > rail)
    at--;
  if (at > first && self->cells[at - 1].rail == rail)
    return &self->cells[at - 1];
  memmove (&self->cells[at + 1], &self->cells[at],
           (self->first[self->n_positions] - at) * sizeof self->cells[0]);
  self->first[self->n_positions]++;
  self->cells[at] = (RwTrimCell){ .rail = rail };
  return &self->cells[at];
}

/* Indices of the readings that count, by position (counting sort). @starts: where each position
 * starts, and the end; room for two more than positions, zeroed. */
static guint *
sort_by_position (const RwTrimFit     *self,
                  const RwTrimReading *readings,
                  guint                n_readings,
                  const gboolean      *left_out,
                  guint               *starts)
{
  guint *order = g_new (guint, n_readings + 1);

  for (guint i = 0; i < n_readings; i++)
    if (rw_trim_fit_can_use (self, &readings[i]) && !(left_out && left_out[i]))
      starts[readings[i].position + 2]++;
  for (guint k = 0; k < self->n_positions; k++)
    starts[k + 2] += starts[k + 1];
  for (guint i = 0; i < n_readings; i++)
    if (rw_trim_fit_can_use (self, &readings[i]) && !(left_out && left_out[i]))
      order[starts[readings[i].position + 1]++] = i;
  return order;
}

void
rw_trim_fit_make_cells (RwTrimFit           *self,
                        const RwTrimReading *readings,
                        guint                n_readings,
                        const gboolean      *left_out)
{
  g_autofree guint *starts = g_new0 (guint, self->n_positions + 2);
  g_autofree guint *order = sort_by_position (self, readings, n_readings, left_out, starts);
  guint *end = &self->first[self->n_positions];

  self->u_floor = least_u (self, readings, n_readings);
  self->cells = g_new (RwTrimCell, n_readings + 1);
  for (guint k = 0; k < self->n_positions; k++)
    {
      const guint first = *end;

      self->first[k] = first;
      for (guint i = starts[k]; i < starts[k + 1]; i++)
        {
          const RwTrimReading *reading = &readings[order[i]];

          add_to_cell (self, cell_for (self, first, reading->rail), reading);
        }
    }
}
