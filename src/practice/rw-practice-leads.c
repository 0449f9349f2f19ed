/* rw-practice-leads.c: red and black lead on a practice cabinet, and what is between them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A reading of a session is two points (the rail's first, then what it is read against):
 *
 *     R terminals   strip:R, strip:gnd         R wire     strip:R, edge:R
 *     R board       edge:R, edge:gnd           gnd wire   edge:gnd, strip:gnd
 *     R chip        chip:R, chip:gnd           raw        supply:raw+, supply:raw-
 *
 * All other pairs are no reading, however sensible: a session has no name for them.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-practice-nodes-private.h"

static const double dead_volts = 0.001;    /* below, no power is felt */
static const double charged_volts = 0.010; /* below, a capacitor counts as empty */

/* --- readings as pairs --------------------------------------------------------------------------- */

static const RwPracticePoint points[RW_PLACE_WIRE] = {
  [RW_PLACE_TERMINALS] = RW_PRACTICE_POINT_STRIP,
  [RW_PLACE_BOARD] = RW_PRACTICE_POINT_EDGE,
  [RW_PLACE_CHIP] = RW_PRACTICE_POINT_CHIP,
};

/* The two points, in the order of the table. */
static void
points_of (int              rail,
           RwPlace          place,
           RwPracticePoint *red,
           RwPracticePoint *black,
           int             *black_rail)
{
  *black_rail = RW_PRACTICE_GROUND;
  if (place != RW_PLACE_WIRE)
    *red = *black = points[place];
  else if (rail == RW_PRACTICE_GROUND)
    {
      *red = RW_PRACTICE_POINT_EDGE;
      *black = RW_PRACTICE_POINT_STRIP;
    }
  else
    {
      *red = RW_PRACTICE_POINT_STRIP;
      *black = RW_PRACTICE_POINT_EDGE;
      *black_rail = rail;
    }
}

static const char *
id_of (RwPracticeCabinet *self,
       RwPracticePoint    point,
       int                rail)
{
  const int i = rw_practice_nodes_find_point (self->nodes, point, rail);

  return i >= 0 ? g_array_index (self->nodes, RwPracticeTouch, i).node.id : NULL;
}

gboolean
rw_practice_cabinet_find_pair (RwPracticeCabinet *self,
                               const char        *rail,
                               RwPlace            place,
                               const char       **red,
                               const char       **black)
{
  const gboolean there = rw_practice_model_has_spot (&self->model, rail, place, RW_KIND_DC);
  const int i = rw_practice_params_index_of (&self->model.params, rail);
  RwPracticePoint its_red, its_black;
  int black_rail;

  *red = *black = NULL;
  if (there && g_str_equal (rail, RW_PRACTICE_RAIL_RAW))
    {
      *red = id_of (self, RW_PRACTICE_POINT_RAW_PLUS, RW_PRACTICE_NO_RAIL);
      *black = id_of (self, RW_PRACTICE_POINT_RAW_MINUS, RW_PRACTICE_NO_RAIL);
    }
  else if (there)
    {
      points_of (i, place, &its_red, &its_black, &black_rail);
      *red = id_of (self, its_red, i);
      *black = id_of (self, its_black, black_rail);
    }
  return there;
}

/* The rail's point first. */
static gboolean
read_in_order (const RwPracticeTouch *red,
               const RwPracticeTouch *black,
               RwPracticePair        *out)
{
  if (red->point == RW_PRACTICE_POINT_RAW_PLUS && black->point == RW_PRACTICE_POINT_RAW_MINUS)
    {
      out->rail = g_intern_static_string (RW_PRACTICE_RAIL_RAW);
      out->place = RW_PLACE_TERMINALS;
      return TRUE;
    }
  if (red->rail == RW_PRACTICE_NO_RAIL)
    return FALSE;
  for (RwPlace place = 0; place < RW_N_PLACES; place++)
    {
      RwPracticePoint its_red, its_black;
      int black_rail;

      if (red->rail == RW_PRACTICE_GROUND && place != RW_PLACE_WIRE)
        continue;
      points_of (red->rail, place, &its_red, &its_black, &black_rail);
      if (red->point != its_red || black->point != its_black || black->rail != black_rail)
        continue;
      out->rail = g_intern_string (red->node.rail);
      out->place = place;
      return TRUE;
    }
  return FALSE;
}

gboolean
rw_practice_nodes_read_as (const RwPracticeTouch *red,
                           const RwPracticeTouch *black,
                           RwPracticePair        *out)
{
  out->reversed = FALSE;
  if (read_in_order (red, black, out))
    return TRUE;
  out->reversed = read_in_order (black, red, out);
  return out->reversed;
}

/* --- between two points -------------------------------------------------------------------------- */

static const RwPracticeTouch *
touch_of (const RwPracticeCabinet *self,
          const char              *id)
{
  const int i = id != NULL ? rw_practice_nodes_find (self->nodes, id) : -1;
  const RwPracticeTouch *touch = i >= 0 ? &g_array_index (self->nodes, RwPracticeTouch, i) : NULL;

  return touch != NULL && touch->point != RW_PRACTICE_POINT_MAINS ? touch : NULL;
}

static guint
index_of (const RwPracticeCabinet *self,
          const RwPracticeTouch   *touch)
{
  return (guint) (touch - &g_array_index (self->nodes, RwPracticeTouch, 0));
}

void
rw_practice_nodes_measure_volts (const RwPracticeCabinet *self,
                                 const char              *red,
                                 const char              *black,
                                 RwPracticePair          *out)
{
  const RwPracticeTouch *a = touch_of (self, red), *b = touch_of (self, black);
  const gboolean power = self->model.state.power;

  *out = (RwPracticePair){ .open = TRUE, .ohms = INFINITY };
  if (a == NULL || b == NULL)
    return;
  rw_practice_nodes_read_as (a, b, out);
  if (!rw_practice_nodes_are_joined (self, index_of (self, a), index_of (self, b)))
    return;
  out->open = FALSE;
  out->dc = rw_practice_nodes_volts (self, a) - rw_practice_nodes_volts (self, b);
  out->ac = rw_practice_nodes_ac (self, a, b);
  out->live = power && (fabs (out->dc) > dead_volts || out->ac > dead_volts);
  out->charged = !power && fabs (out->dc) > charged_volts;
}

void
rw_practice_cabinet_measure (RwPracticeCabinet *self,
                             const char        *red,
                             const char        *black,
                             RwPracticePair    *out)
{
  rw_practice_nodes_measure_volts (self, red, black, out);
  if (!out->open)
    out->ohms = rw_practice_nodes_ohms (self, index_of (self, touch_of (self, red)),
                                        index_of (self, touch_of (self, black)));
}

/* --- leads --------------------------------------------------------------------------------------- */

static void
leads_moved (RwPracticeCabinet *self)
{
  self->leads_serial++;
  g_signal_emit_by_name (self, "leads-moved");
}

gboolean
rw_practice_cabinet_set_leads (RwPracticeCabinet *self,
                               const char        *rail,
                               RwPlace            place,
                               RwKind             kind)
{
  const char *red = NULL, *black = NULL;

  if (rail != NULL
      && (!rw_practice_model_has_spot (&self->model, rail, place, kind)
          || !rw_practice_cabinet_find_pair (self, rail, place, &red, &black)))
    return FALSE;
  self->lead[RW_PRACTICE_RED] = red;
  self->lead[RW_PRACTICE_BLACK] = black;
  self->rail = g_intern_string (rail);
  self->place = place;
  self->reversed = FALSE;
  self->kind = kind;
  leads_moved (self);
  return TRUE;
}

static const char *
explain_mains (const RwPracticeCabinet *self)
{
  if (self->dial.amps_jack)
    return _ ("Stopped: this is a mains point, and the meter is set for amperes. It would have been a short circuit across "
              "the mains in your hands: an arc, molten metal, a burst meter. Mains points stay live with the switch off. "
              "Cover them before you measure beside them, and leave them to licensed people.");
  if (rw_practice_cabinet_get_dialled (self) == RW_KIND_OHMS)
    return _ ("Stopped: this is a mains point, and the meter is set for ohms. Ohms across mains destroys the meter and can "
              "kill. Mains points stay live with the switch off: the plug out, proved and kept out, comes first. Leave "
              "them to licensed people.");
  return _ ("Stopped: this is a mains point. It can kill, and it stays live with the switch off. No low-voltage question "
            "needs a lead here. Cover the mains screws before you measure beside them, and leave them to licensed people.");
}

static void
stop_lethal (RwPracticeCabinet *self,
             const char        *node)
{
  self->n_lethal++;
  g_signal_emit_by_name (self, "lethal", node, explain_mains (self));
}

gboolean
rw_practice_cabinet_put_lead (RwPracticeCabinet *self,
                              RwPracticeLead     lead,
                              const char        *node)
{
  const RwPracticeTouch *touch[RW_PRACTICE_N_LEADS];
  RwPracticePair pair = { 0 };

  g_return_val_if_fail (RW_IS_PRACTICE_CABINET (self) && lead < RW_PRACTICE_N_LEADS, FALSE);

  const int i = node != NULL ? rw_practice_nodes_find (self->nodes, node) : -1;

  if (node != NULL && i < 0)
    return FALSE;
  if (i >= 0 && g_array_index (self->nodes, RwPracticeTouch, i).point == RW_PRACTICE_POINT_MAINS)
    {
      stop_lethal (self, g_intern_string (node));
      return FALSE;
    }
  self->lead[lead] = g_intern_string (node);
  touch[RW_PRACTICE_RED] = touch_of (self, self->lead[RW_PRACTICE_RED]);
  touch[RW_PRACTICE_BLACK] = touch_of (self, self->lead[RW_PRACTICE_BLACK]);
  if (touch[RW_PRACTICE_RED] != NULL && touch[RW_PRACTICE_BLACK] != NULL)
    rw_practice_nodes_read_as (touch[RW_PRACTICE_RED], touch[RW_PRACTICE_BLACK], &pair);
  self->rail = pair.rail;
  self->place = pair.place;
  self->reversed = pair.reversed;
  leads_moved (self);
  return TRUE;
}

const char *
rw_practice_cabinet_get_lead (RwPracticeCabinet *self,
                              RwPracticeLead     lead)
{
  g_return_val_if_fail (lead < RW_PRACTICE_N_LEADS, NULL);
  return self->lead[lead];
}

guint
rw_practice_cabinet_get_n_lethal (RwPracticeCabinet *self)
{
  return self->n_lethal;
}

guint
rw_practice_cabinet_get_leads_serial (RwPracticeCabinet *self)
{
  return self->leads_serial;
}

RwKind
rw_practice_cabinet_get_dialled (const RwPracticeCabinet *self)
{
  return self->dial.by_hand ? self->dial.kind : self->kind;
}

void
rw_practice_cabinet_set_dial (RwPracticeCabinet    *self,
                              const RwPracticeDial *dial)
{
  self->dial = *dial;
}

const char *
rw_practice_cabinet_get_leads (RwPracticeCabinet *self,
                               RwPlace           *place,
                               RwKind            *kind)
{
  if (place != NULL)
    *place = self->place;
  if (kind != NULL)
    *kind = rw_practice_cabinet_get_dialled (self);
  return self->rail;
}
