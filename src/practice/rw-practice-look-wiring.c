/* rw-practice-look-wiring.c: what looking shows between supply and board.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-parts.h"
#include "rw-practice-symptoms.h"

static const char *
ground_ohms (const RwPracticeLook *look)
{
  return rw_practice_path_ohms (&look->params->ground, look->state) > 0.5 ? "power" : "good";
}

/* Volts over one joint of the reference rail now. */
static double
joint_volts (const RwPracticeLook *look,
             double                ohms)
{
  return look->flow->amps * ohms * (1 + look->reference->path.contact_warm * look->state->warm);
}

static const char *
drop_where (const RwPracticeLook *look)
{
  const RwPracticePath *path = &look->reference->path, *ground = &look->params->ground;
  const double contact = MAX (joint_volts (look, path->contact_ohms),
                              joint_volts (look, ground->contact_ohms));
  const double crimp = joint_volts (look, path->crimp_ohms),
               screw = joint_volts (look, path->screw_ohms);

  if (MAX (contact, MAX (crimp, screw)) > 0.015)
    {
      if (contact >= crimp && contact >= screw)
        return "edge";
      return crimp >= screw ? "joint" : "screw";
    }
  if (look->flow->amps * path->wire_ohms > 0.08 || look->flow->amps * ground->wire_ohms > 0.05)
    return "spread";
  return "none";
}

/* A joint that trembles by itself moves when it is touched. */
static const char *
wiggle (const RwPracticeLook *look)
{
  const RwPracticePath *path = &look->reference->path;
  const char *where = drop_where (look);

  if (path->wander < 0.01)
    return "still";
  if (g_str_equal (where, "joint"))
    return "harness";
  return g_str_equal (where, "edge") || g_str_equal (where, "screw") ? where : "still";
}

static const char *
connector_temperature (const RwPracticeLook *look)
{
  const double watts = rw_practice_symptoms_joint_watts (look->model) * look->state->warm;

  if (watts > 0.6)
    return "hot";
  return watts > 0.12 ? "warm" : "cool";
}

static const char *
sense_drop (const RwPracticeLook *look)
{
  if (look->params->sense == RW_PRACTICE_SENSE_OPEN)
    return "off";
  return look->params->sense == RW_PRACTICE_SENSE_BOARD ? "same" : "without";
}

/* Ohms that have browned their plug, whatever flows just now. */
static gboolean
has_browned (const RwPracticeLook *look)
{
  const RwPracticePath *path = &look->reference->path;
  const double ohms = MAX (path->contact_ohms, MAX (path->crimp_ohms, path->screw_ohms));
  const double amps = look->params->full_amps;

  return amps * amps * ohms > 0.5;
}

static const char *
look_and_smell (const RwPracticeLook *look)
{
  static const char *const bulging[] = { "output-capacitors-tired", "raw-capacitor-tired",
                                         NULL };

  if (has_browned (look))
    return "brown";
  if (rw_practice_look_has_any (look, bulging))
    return "bulged";
  return rw_practice_look_has (look, "minus5-open-wire") ? "misfit" : "clean";
}

static const char *
edge_connector (const RwPracticeLook *look)
{
  const double ohms = look->reference->path.contact_ohms;

  if (ohms > 0.080)
    return "dark";
  return ohms > 0.008 ? "dull" : "bright";
}

static const char *
crimp_tug (const RwPracticeLook *look)
{
  if (rw_practice_look_has (look, "cracked-joint"))
    return "ring";
  if (rw_practice_look_has (look, "minus5-open-wire")
      || look->reference->path.crimp_ohms > 0.015)
    return "pin";
  return look->reference->path.screw_ohms > 0.010 ? "screw" : "firm";
}

/* Nothing in a practice cabinet can be wrong with these. */
static const char *
always_good (const RwPracticeLook *look)
{
  return "good";
}

static const char *
always_tight (const RwPracticeLook *look)
{
  return "tight";
}

const RwPracticeLookKind rw_practice_looks_wiring[] = {
  { "connector-temperature", TRUE, connector_temperature },
  { "crimp-tug", FALSE, crimp_tug },
  { "drop-where", TRUE, drop_where },
  { "earth-continuity", FALSE, always_good },
  { "edge-connector-look", FALSE, edge_connector },
  { "fuse-holder-look", FALSE, always_tight },
  { "fuse-ohms", FALSE, always_good },
  { "ground-ohms", FALSE, ground_ohms },
  { "look-and-smell", FALSE, look_and_smell },
  { "panel-ground-drop", FALSE, always_good },
  { "sense-drop", TRUE, sense_drop },
  { "video-ground", FALSE, always_good },
  { "wiggle-test", TRUE, wiggle },
  { NULL, FALSE, NULL },
};
