/* rw-practice-faults-wiring.c: faults between a practice cabinet's supply and its board.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-faults-private.h"

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
      path->contact_hot += 0.08 * strength; /* a film is never quite even */
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
  RwPracticePath *path = &rw_practice_faults_reference (params)->path;

  path->contact_ohms += 0.120 * strength;
  path->contact_hot += 0.70 * strength;
  path->contact_warm += 0.5 * strength;
  path->wander += 0.03 * strength;
}

static void
poor_crimp (RwPracticeParams *params,
            double            strength)
{
  RwPracticePath *path = &rw_practice_faults_reference (params)->path;

  path->crimp_ohms += 0.090 * strength;
  path->contact_warm += 0.5 * strength;
  path->wander += 0.05 * strength;
}

/* A ring round a header pin: it grows as it warms, trembles, and opens for a moment now and
 * then. */
static void
cracked_joint (RwPracticeParams *params,
               double            strength)
{
  RwPracticePath *path = &rw_practice_faults_reference (params)->path;

  path->crimp_ohms += 0.020 * strength;
  path->contact_warm += 1.0 * strength;
  path->wander += 0.30 * strength;
  path->jerks = TRUE;
  params->jerk_rate += 0.06 * strength;
  params->jerk_ohms = MAX (params->jerk_ohms, 0.6 * strength);
}

static void
loose_screw (RwPracticeParams *params,
             double            strength)
{
  RwPracticePath *path = &rw_practice_faults_reference (params)->path;

  path->screw_ohms += 0.080 * strength;
  path->contact_warm += 0.3 * strength;
  path->wander += 0.08 * strength;
}

static void
ground_wire_poor (RwPracticeParams *params,
                  double            strength)
{
  params->ground.wire_ohms += 0.085 * strength;
}

static void
reference_wire_thin (RwPracticeParams *params,
                     double            strength)
{
  rw_practice_faults_reference (params)->path.wire_ohms += 0.090 * strength;
}

/* Corroded first, broken in the end. */
static void
m5_open (RwPracticeParams *params,
         double            strength)
{
  RwPracticePath *path = &rw_practice_faults_rail (params, "m5")->path;

  path->crimp_ohms += 40 * strength;
  path->wander += 0.1 * strength;
  path->open = strength > 0.5;
}

/* The clips have lost their spring and gone brown. A linear supply has the fuse in its winding; a
 * switcher's cabinet in the wire of +5 V. */
static void
fuse_holder_tired (RwPracticeParams *params,
                   double            strength)
{
  RwPracticeRail *reference = rw_practice_faults_reference (params);
  const double ohms = 0.085 * strength;

  params->fuse_ohms += ohms;
  reference->path.wander += 0.06 * strength;
  if (params->supply == RW_PRACTICE_LINEAR)
    {
      reference->raw.winding_ohms += 3 * ohms; /* the pulses are tall */
      return;
    }
  reference->path.fuse_ohms += ohms;
  reference->path.contact_warm += 0.4 * strength;
}

/* Blown by a true overload; what did it may still be there. */
static void
fuse_blown (RwPracticeParams *params,
            double            strength)
{
  RwPracticeRail *reference = rw_practice_faults_reference (params);

  if (strength <= 0)
    return;
  if (strength > 0.5)
    {
      reference->load_amps *= 1 + 8 * strength;
      reference->load_follow = 1;
    }
  rw_practice_faults_blow_fuse (params);
}

/* One row towards the other rails: half of the +5 fingers are left, the others meet a neighbour's;
 * one row towards ground: +5 V lies on it. The board has had enough either way. */
static void
connector_shifted (RwPracticeParams *params,
                   double            strength)
{
  RwPracticeRail *reference = rw_practice_faults_reference (params);

  if (strength <= 0)
    return;
  for (guint i = 0; i < params->n_rails; i++)
    if (i != params->reference)
      {
        params->rail[i].path.open = TRUE;
        if (params->rail[i].sign < 0)
          params->rail[i].ghost_volts = 0.92 * reference->nominal;
      }
  reference->path.contact_ohms *= 2;
  reference->path.contact_hot *= 2;
  params->own_dead = TRUE;
  if (strength > 0.5)
    {
      reference->load_amps *= 10;
      reference->load_follow = 1;
    }
}

const RwPracticeFaultKind rw_practice_faults_wiring[] = {
  /* F05: terminal right, board low, drops in both conductors, at the edge; warm, moves. */
  { "edge-oxidised", rw_practice_faults_fit_any, edge_oxidised },
  /* F06: the same on one finger, black and hot. */
  { "edge-burnt", rw_practice_faults_fit_any, edge_burnt },
  /* F07: drop between two crimps, moves. */
  { "poor-crimp", rw_practice_faults_fit_any, poor_crimp },
  /* F44: a ring; moves with a tap and with heat; opens for a moment. */
  { "cracked-joint", rw_practice_faults_fit_any, cracked_joint },
  /* F10: drop from screw to lug, screw hot, moves. */
  { "loose-terminal-screw", rw_practice_faults_fit_any, loose_screw },
  /* F08: drop in ground only, bars, ripple greater at the board. */
  { "ground-wire-poor", rw_practice_faults_fit_any, ground_wire_poor },
  /* F09: drop even along the +5 wire, every joint good. */
  { "plus5-wire-thin", rw_practice_faults_fit_any, reference_wire_thin },
  /* F17: −5 right at the terminals, lifted at the board. */
  { "minus5-open-wire", rw_practice_faults_fit_m5, m5_open },
  /* F25: drop over fuse and holder, ohms several times normal, brown, loose. */
  { "fuse-holder-tired", rw_practice_faults_fit_any, fuse_holder_tired },
  /* F24: fuse open, a short behind it. */
  { "fuse-blown", rw_practice_faults_fit_any, fuse_blown },
  /* F42: rails on wrong fingers, −5 with the wrong sign, board dead. */
  { "connector-shifted", rw_practice_faults_fit_any, connector_shifted },
  { NULL, NULL, NULL },
};
