/* rw-lead-layout.c: where the parts and the tips of the leads are, and the same in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Places are shares of the picture's width and height. Along a wire the meter reads the drop itself: of a rail red on
 * the supply's screw and black on the board's finger, of the ground return the other way round, since its current
 * flows back; both then read above zero.
 */
#include "config.h"

#include "rw-lead-picture.h"

#include <glib/gi18n-lib.h>

/* Rows that screws, contacts and fingers share. */
static const double row_rail = 0.26, row_ground = 0.42, row_mains = 0.62;

gboolean
rw_lead_scene_of_check (const RwCheck   *check,
                        const RwProfile *profile,
                        RwLeadScene     *out)
{
  g_return_val_if_fail (check != NULL && profile != NULL, FALSE);
  if (!check->measures)
    return FALSE;

  const int index = rw_profile_index_of (profile, check->rail);

  *out = (RwLeadScene) { .rail = index >= 0 ? rw_profile_get_rail (profile, (guint) index)->label : NULL,
                         .series = rw_theme_series_index (profile, check->rail),
                         .place = check->place,
                         .kind = check->kind,
                         .power = check->power,
                         .board = check->board };
  return TRUE;
}

static void
place_parts (const RwLeadScene *scene,
             double             w,
             double             h,
             RwLeadLayout      *out)
{
  /* Pulled, the board stands clear of its connector. */
  const double left = scene->board == RW_SAID_NO ? 0.72 : 0.60;

  out->supply = (RwRect) { 0.02 * w, 0.14 * h, 0.25 * w, 0.60 * h };
  out->edge = (RwRect) { 0.53 * w, 0.16 * h, 0.045 * w, 0.38 * h };
  out->board = (RwRect) { left * w, 0.14 * h, (0.98 - left) * w, 0.60 * h };
  out->chip = (RwRect) { 0.84 * w, 0.50 * h, 0.09 * w, 0.16 * h };
  out->meter = (RwRect) { 0.34 * w, 0.82 * h, 0.17 * w, 0.16 * h };
}

void
rw_lead_layout_make (const RwLeadScene *scene,
                     double             width,
                     double             height,
                     RwLeadLayout      *out)
{
  g_return_if_fail (scene != NULL && out != NULL);

  const double rail_y = row_rail * height, ground_y = row_ground * height;

  *out = (RwLeadLayout) { 0 };
  place_parts (scene, width, height, out);

  const double screws = rw_rect_right (&out->supply), contacts = out->edge.x, fingers = out->board.x;

  out->rail_screw = (RwLeadPoint) { screws, rail_y };
  out->ground_screw = (RwLeadPoint) { screws, ground_y };
  out->mains_screw = (RwLeadPoint) { screws, row_mains * height };
  out->rail_contact = (RwLeadPoint) { contacts, rail_y };
  out->ground_contact = (RwLeadPoint) { contacts, ground_y };
  out->rail_finger = (RwLeadPoint) { fingers, rail_y };
  out->ground_finger = (RwLeadPoint) { fingers, ground_y };
  out->rail_pin = (RwLeadPoint) { rw_rect_right (&out->chip), out->chip.y };
  out->ground_pin = (RwLeadPoint) { out->chip.x, rw_rect_bottom (&out->chip) };
  switch (scene->place)
    {
    case RW_PLACE_BOARD:
      out->red = out->rail_finger;
      out->black = out->ground_finger;
      break;
    case RW_PLACE_CHIP:
      out->red = out->rail_pin;
      out->black = out->ground_pin;
      break;
    case RW_PLACE_WIRE:
      out->red = scene->rail != NULL ? out->rail_screw : out->ground_finger;
      out->black = scene->rail != NULL ? out->rail_finger : out->ground_screw;
      break;
    case RW_PLACE_TERMINALS:
    case RW_N_PLACES:
    default:
      out->red = out->rail_screw;
      out->black = out->ground_screw;
    }
}

/* --- words -------------------------------------------------------------------------------------- */

static char *
dup_tips (const RwLeadScene *scene)
{
  if (scene->place == RW_PLACE_WIRE && scene->rail == NULL)
    return g_strdup (_ ("Red tip on a ground finger on the board's side of the connector, black tip on the supply's "
                        "0 V screw."));

  const char *rail = scene->rail != NULL ? scene->rail : _ ("ground");

  switch (scene->place)
    {
    case RW_PLACE_BOARD:
      /* Translators: label of a rail: "+5 V". */
      return g_strdup_printf (_ ("Red tip on a %s finger on the board's side of the connector, black tip on a ground "
                                 "finger there."),
                              rail);
    case RW_PLACE_CHIP:
      /* Translators: label of a rail: "+5 V". */
      return g_strdup_printf (_ ("Red tip on the %s pin of a chip far from the edge, black tip on its ground pin."), rail);
    case RW_PLACE_WIRE:
      /* Translators: label of a rail, twice: "+5 V". */
      return g_strdup_printf (_ ("Red tip on the supply's %s screw, black tip on a %s finger on the board's side of the "
                                 "connector."),
                              rail, rail);
    case RW_PLACE_TERMINALS:
    case RW_N_PLACES:
    default:
      /* Translators: label of a rail: "+5 V". */
      return g_strdup_printf (_ ("Red tip on the supply's %s screw, black tip on its 0 V screw."), rail);
    }
}

char *
rw_lead_picture_describe (const RwLeadScene *scene)
{
  g_return_val_if_fail (scene != NULL, NULL);

  g_autofree char *tips = dup_tips (scene);
  GString *text = g_string_new (tips);

  if (scene->kind == RW_KIND_RIPPLE)
    g_string_append_printf (text, " %s", _ ("Meter on AC."));
  if (scene->power != RW_SAID_NOT)
    g_string_append_printf (text, " %s", scene->power ? _ ("Power on.") : _ ("Power off, plug pulled."));
  if (scene->board != RW_SAID_NOT)
    g_string_append_printf (text, " %s", scene->board ? _ ("Board fitted.") : _ ("Board out."));
  return g_string_free (text, FALSE);
}
