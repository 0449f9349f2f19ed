/* rw-practice-faults-wiring.c: faults between a practice cabinet's supply and its board.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

static RwPracticeRail *
reference_of (RwPracticeParams *params)
{
  return &params->rail[params->reference];
}

/* The knowledge speaks of rails by id; a fault is planted in the rail of that id. */
static gboolean
has_rail (const RwPracticeParams *params,
          const char             *rail)
{
  const int i = rw_practice_params_index_of (params, rail);

  return i >= 0 && (guint)i != params->reference;
}

static RwPracticeRail *
rail_of (RwPracticeParams *params,
         const char       *rail)
{
  return &params->rail[rw_practice_params_index_of (params, rail)];
}

static gboolean
fits_any (const RwPracticeParams *params)
{
  return TRUE;
}

static gboolean
fits_m5 (const RwPracticeParams *params)
{
  return has_rail (params, "m5");
}

/* Every finger suffers; ground has twice as many of them. The film heats, grows and trembles.
 */
static void
edge_oxidised (RwPracticeParams *params,
               double            strength)
{
  for (guint i = 0; i < params->n_rails; i++)
    {
      RwPracticePath *path = &params->rail[i].path;

      path->contact_ohms += (i == params->reference ? 0.080 : 0.250) * strength;
      path->contact_warm += 0.3 * strength;
      path->wander += 0.03 * strength;
    }
  params->ground.contact_ohms += 0.035 * strength;
  params->ground.contact_warm += 0.3 * strength;
  params->ground.wander += 0.03 * strength;
}

/* One finger of four has burnt; the others carry its share and warm up. */
static void
edge_burnt (RwPracticeParams *params,
            double            strength)
{
  RwPracticePath *path = &reference_of (params)->path;

  path->contact_ohms += 0.120 * strength;
  path->contact_warm += 0.5 * strength;
  path->wander += 0.03 * strength;
}

static void
poor_crimp (RwPracticeParams *params,
            double            strength)
{
  RwPracticePath *path = &reference_of (params)->path;

  path->crimp_ohms += 0.090 * strength;
  path->contact_warm += 0.5 * strength;
  path->wander += 0.05 * strength;
}

/* A ring round a header pin: it opens as it warms, and trembles. */
static void
cracked_joint (RwPracticeParams *params,
               double            strength)
{
  RwPracticePath *path = &reference_of (params)->path;

  path->crimp_ohms += 0.050 * strength;
  path->contact_warm += 1.0 * strength;
  path->wander += 0.30 * strength;
}

static void
loose_screw (RwPracticeParams *params,
             double            strength)
{
  RwPracticePath *path = &reference_of (params)->path;

  path->screw_ohms += 0.080 * strength;
  path->contact_warm += 0.3 * strength;
  path->wander += 0.08 * strength;
}

static void
ground_wire_poor (RwPracticeParams *params,
                  double            strength)
{
  params->ground.wire_ohms += 0.060 * strength;
}

static void
reference_wire_thin (RwPracticeParams *params,
                     double            strength)
{
  reference_of (params)->path.wire_ohms += 0.090 * strength;
}

/* Corroded first, broken in the end. */
static void
m5_open (RwPracticeParams *params,
         double            strength)
{
  RwPracticePath *path = &rail_of (params, "m5")->path;

  path->crimp_ohms += 40 * strength;
  path->wander += 0.1 * strength;
  path->open = strength > 0.5;
}

const RwPracticeFaultKind rw_practice_faults_wiring[] = {
  { "edge-oxidised", fits_any, edge_oxidised },
  { "edge-burnt", fits_any, edge_burnt },
  { "poor-crimp", fits_any, poor_crimp },
  { "cracked-joint", fits_any, cracked_joint },
  { "loose-terminal-screw", fits_any, loose_screw },
  { "ground-wire-poor", fits_any, ground_wire_poor },
  { "plus5-wire-thin", fits_any, reference_wire_thin },
  { "minus5-open-wire", fits_m5, m5_open },
  { NULL, NULL, NULL },
};
