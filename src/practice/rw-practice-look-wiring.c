/* rw-practice-look-wiring.c: what looking shows between supply and board.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-practice-look-private.h"

#include <math.h>

#include "rw-practice-parts.h"
#include "rw-practice-symptoms.h"

static const double high_ohms = 0.5, blown_ohms = 1e6;
static const double good_fuse_ohms = 0.02, brown_fuse_ohms = 0.07;
static const double pull_up_ohms = 1000;
static const double dull_ohms = 0.008;
static const double burnt_hot = 0.40; /* of a path's contact heat in one finger: that one */

static const char *
ground_ohms (const RwPracticeLook *look)
{
  if (rw_practice_path_ohms (&look->params->ground, look->state) > high_ohms)
    return "power";
  if (look->params->panel_ground_ohms > high_ohms)
    return "panel";
  return look->params->video_ground_ohms > high_ohms && !look->params->colour_wire ? "picture"
                                                                                  : "good";
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
  const double crimp = joint_volts (look, MAX (path->crimp_ohms, path->fuse_ohms)),
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

  if (look->params->sense == RW_PRACTICE_SENSE_OPEN)
    return look->params->crack_on_board ? "edge" : "harness"; /* where its wire has come off */
  if (path->wander < 0.01)
    return "still";
  if (g_str_equal (where, "joint"))
    return "harness";
  return g_str_equal (where, "edge") || g_str_equal (where, "screw") ? where : "still";
}

static const char *
connector_temperature (const RwPracticeLook *look)
{
  const double watts = rw_practice_symptoms_plug_watts (look->model) * look->state->warm;

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
  return rw_practice_path_hot_watts (&look->reference->path, look->params->full_amps, 1)
         > RW_PRACTICE_BROWN_WATTS;
}

/* A wire that is off, or a connector that does not sit where it should. */
static gboolean
has_loose_wire (const RwPracticeLook *look)
{
  for (guint i = 0; i < look->params->n_rails; i++)
    if (look->params->rail[i].path.open)
      return TRUE;
  return FALSE;
}

static const char *
look_and_smell (const RwPracticeLook *look)
{
  static const char *const bulging[] = { "output-capacitors-tired", "raw-capacitor-tired",
                                         NULL };

  if (has_browned (look)
      || (look->params->fuse_ohms > brown_fuse_ohms && look->params->fuse_ohms < blown_ohms))
    return "brown";
  if (look->params->bulges && rw_practice_look_has_any (look, bulging))
    return "bulged";
  if (rw_practice_look_has (look, "board-corroded"))
    return "crust";
  return look->params->tap_ratio <= 0 || look->params->earth_ohms > blown_ohms || has_loose_wire (look)
             ? "misfit"
             : "clean";
}

static const char *
edge_connector (const RwPracticeLook *look)
{
  const RwPracticePath *path = &look->reference->path;
  const double amps = look->params->full_amps;
  const double hottest = amps * amps * path->contact_ohms * path->contact_hot;

  if (path->contact_ohms <= dull_ohms)
    return look->params->dull_fingers ? "dull" : "bright";
  return path->contact_hot > burnt_hot || hottest > RW_PRACTICE_BROWN_WATTS ? "dark" : "dull";
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

static const char *
earth (const RwPracticeLook *look)
{
  return look->params->earth_ohms > 1 ? "bad" : "good";
}

static const char *
fuse_ohms (const RwPracticeLook *look)
{
  if (look->params->fuse_ohms > blown_ohms || look->params->lamp_fuse_open)
    return "open";
  return look->params->fuse_ohms > 3 * good_fuse_ohms ? "raised" : "good";
}

static const char *
fuse_holder (const RwPracticeLook *look)
{
  const double ohms = look->params->fuse_ohms;

  return ohms > 2 * good_fuse_ohms && ohms < blown_ohms ? "slack" : "tight";
}

/* A switch to ground under a pull-up: what is left of 5 V when it is pressed. */
static double
pressed_volts (double ohms)
{
  return 5 * ohms / (ohms + pull_up_ohms);
}

static const char *
panel_ground (const RwPracticeLook *look)
{
  if (pressed_volts (look->params->panel_ground_ohms) >= 0.3)
    return "bad";
  return pressed_volts (look->params->switch_ohms) >= 0.3 ? "one" : "good";
}

static const char *
video_ground (const RwPracticeLook *look)
{
  return look->params->video_ground_ohms >= 0.3 ? "bad" : "good";
}

const RwPracticeLookKind rw_practice_looks_wiring[] = {
  { "connector-temperature", TRUE, connector_temperature },
  { "crimp-tug", FALSE, crimp_tug },
  { "drop-where", TRUE, drop_where },
  { "earth-continuity", FALSE, earth },
  { "edge-connector-look", FALSE, edge_connector },
  { "fuse-holder-look", FALSE, fuse_holder },
  { "fuse-ohms", FALSE, fuse_ohms },
  { "ground-ohms", FALSE, ground_ohms },
  { "look-and-smell", FALSE, look_and_smell },
  { "panel-ground-drop", FALSE, panel_ground },
  { "sense-drop", TRUE, sense_drop },
  { "video-ground", FALSE, video_ground },
  { "wiggle-test", TRUE, wiggle },
  { NULL, FALSE, NULL },
};
