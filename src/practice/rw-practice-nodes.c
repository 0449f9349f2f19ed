/* rw-practice-nodes.c: the points of a practice cabinet that a lead can touch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What points there are follows from the profile alone, never from what is wrong: a point that was there only
 * with a fault would tell it. Hazards are those of a real bench: the screws of a supply sit on one strip with the
 * mains, the inside of its case is no better, the loudspeaker hangs beside the picture tube.
 */
#include "config.h"

#include "rw-practice-nodes-private.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  GArray    *nodes;
  guint      columns[RW_PRACTICE_N_AREAS];
  RwProfile *profile;
} Builder;

const char *
rw_practice_hazard_get_label (RwPracticeHazard hazard)
{
  static const char *const labels[RW_PRACTICE_N_HAZARDS] = {
    N_ ("no voltage"),
    N_ ("low voltage"),
    N_ ("low voltage, mains within a hand's breadth"),
    N_ ("mains: live even with the switch off"),
    N_ ("low voltage, picture tube near"),
  };

  g_return_val_if_fail (hazard < RW_PRACTICE_N_HAZARDS, NULL);
  return _ (labels[hazard]);
}

const char *
rw_practice_area_get_label (RwPracticeArea area)
{
  static const char *const labels[RW_PRACTICE_N_AREAS] = {
    N_ ("Supply strip"), N_ ("Inside the supply"), N_ ("Harness"), N_ ("Edge connector"),
    N_ ("Board"),        N_ ("Sound"),             N_ ("Cabinet"),
  };

  g_return_val_if_fail (area < RW_PRACTICE_N_AREAS, NULL);
  return _ (labels[area]);
}

static void
clear_touch (gpointer data)
{
  g_free (((RwPracticeTouch *) data)->node.label);
}

/* Takes @label. */
static void
add (Builder         *builder,
     const char      *id,
     char            *label,
     RwPracticeArea   area,
     RwPracticeHazard hazard,
     RwPracticePoint  point,
     int              rail)
{
  RwPracticeTouch touch = { .point = point, .rail = rail };

  touch.node.id = g_intern_string (id);
  touch.node.label = label;
  touch.node.area = area;
  touch.node.hazard = hazard;
  touch.node.row = point == RW_PRACTICE_POINT_HARNESS_BOARD ? 1 : 0;
  touch.node.column = builder->columns[area];
  if (point != RW_PRACTICE_POINT_HARNESS_SUPPLY)
    builder->columns[area]++;
  if (rail == RW_PRACTICE_GROUND)
    touch.node.rail = RW_RAIL_GROUND;
  else if (rail >= 0)
    touch.node.rail = rw_profile_get_rail (builder->profile, (guint) rail)->id;
  g_array_append_val (builder->nodes, touch);
}

/* A point along a conductor. @format: of the label, with the name of the rail. */
static void
add_along (Builder         *builder,
           const char      *id_format,
           const char      *format,
           RwPracticeArea   area,
           RwPracticeHazard hazard,
           RwPracticePoint  point,
           int              rail)
{
  const gboolean ground = rail == RW_PRACTICE_GROUND;
  const RwRail *of = ground ? NULL : rw_profile_get_rail (builder->profile, (guint) rail);
  g_autoptr (GString) id = g_string_new (id_format), label = g_string_new (format);

  g_string_replace (id, "{}", ground ? RW_RAIL_GROUND : of->id, 1);
  g_string_replace (label, "{}", ground ? _ ("0 V") : of->label, 1);
  add (builder, id->str, g_strdup (label->str), area, hazard, point, rail);
}

static void
add_strip (Builder *builder,
           int      n_rails)
{
  add (builder, "mains:l", g_strdup (_ ("Mains screw, live")), RW_PRACTICE_AREA_STRIP, RW_PRACTICE_HAZARD_MAINS,
       RW_PRACTICE_POINT_MAINS, RW_PRACTICE_NO_RAIL);
  add (builder, "mains:n", g_strdup (_ ("Mains screw, neutral")), RW_PRACTICE_AREA_STRIP,
       RW_PRACTICE_HAZARD_MAINS, RW_PRACTICE_POINT_MAINS, RW_PRACTICE_NO_RAIL);
  add (builder, "mains:earth", g_strdup (_ ("Earth screw")), RW_PRACTICE_AREA_STRIP,
       RW_PRACTICE_HAZARD_BESIDE_MAINS, RW_PRACTICE_POINT_EARTH, RW_PRACTICE_NO_RAIL);
  for (int i = RW_PRACTICE_GROUND; i < n_rails; i++)
    add_along (builder, "strip:{}",
               /* Translators: {} is the name of a rail, such as +5 V. */
               _ ("{}, screw at the supply"), RW_PRACTICE_AREA_STRIP, RW_PRACTICE_HAZARD_BESIDE_MAINS,
               RW_PRACTICE_POINT_STRIP, i);
  add (builder, "supply:sense", g_strdup (_ ("Sense screw")), RW_PRACTICE_AREA_STRIP,
       RW_PRACTICE_HAZARD_BESIDE_MAINS, RW_PRACTICE_POINT_SENSE, RW_PRACTICE_NO_RAIL);
}

static void
add_inside (Builder         *builder,
            const char      *id,
            const char      *label,
            RwPracticePoint  point)
{
  add (builder, id, g_strdup (label), RW_PRACTICE_AREA_SUPPLY, RW_PRACTICE_HAZARD_BESIDE_MAINS, point,
       RW_PRACTICE_NO_RAIL);
}

static void
add_linear (Builder *builder)
{
  add_inside (builder, "supply:ac1", _ ("Transformer winding, fuse end"), RW_PRACTICE_POINT_AC1);
  add_inside (builder, "supply:ac2", _ ("Transformer winding, other end"), RW_PRACTICE_POINT_AC2);
  add_inside (builder, "supply:fuse1", _ ("Fuse holder, transformer end"), RW_PRACTICE_POINT_FUSE1);
  add_inside (builder, "supply:fuse2", _ ("Fuse holder, rectifier end"), RW_PRACTICE_POINT_FUSE2);
  add_inside (builder, "supply:raw+", _ ("Big capacitor, plus"), RW_PRACTICE_POINT_RAW_PLUS);
  add_inside (builder, "supply:raw-", _ ("Big capacitor, minus"), RW_PRACTICE_POINT_RAW_MINUS);
}

/* A switcher has nothing to measure inside: its fuse hangs on the mains. */
static void
add_switcher (Builder *builder)
{
  add (builder, "mains:fuse1", g_strdup (_ ("Mains fuse holder, mains end")), RW_PRACTICE_AREA_SUPPLY,
       RW_PRACTICE_HAZARD_MAINS, RW_PRACTICE_POINT_MAINS, RW_PRACTICE_NO_RAIL);
  add (builder, "mains:fuse2", g_strdup (_ ("Mains fuse holder, supply end")), RW_PRACTICE_AREA_SUPPLY,
       RW_PRACTICE_HAZARD_MAINS, RW_PRACTICE_POINT_MAINS, RW_PRACTICE_NO_RAIL);
}

static void
add_wiring (Builder *builder,
            int      n_rails)
{
  for (int i = RW_PRACTICE_GROUND; i < n_rails; i++)
    {
      /* Translators: {} is the name of a rail, such as +5 V; here and below. */
      add_along (builder, "harness:{}:supply", _ ("{}, wire crimp at the supply"), RW_PRACTICE_AREA_HARNESS,
                 RW_PRACTICE_HAZARD_BESIDE_MAINS, RW_PRACTICE_POINT_HARNESS_SUPPLY, i);
      add_along (builder, "harness:{}:board", _ ("{}, wire crimp at the board"), RW_PRACTICE_AREA_HARNESS,
                 RW_PRACTICE_HAZARD_LOW, RW_PRACTICE_POINT_HARNESS_BOARD, i);
    }
  for (int i = RW_PRACTICE_GROUND; i < n_rails; i++)
    add_along (builder, "edge:{}", _ ("{}, edge finger on the board"), RW_PRACTICE_AREA_EDGE,
               RW_PRACTICE_HAZARD_LOW, RW_PRACTICE_POINT_EDGE, i);
  for (int i = RW_PRACTICE_GROUND; i < n_rails; i++)
    add_along (builder, "chip:{}", _ ("{}, pin of a far chip"), RW_PRACTICE_AREA_BOARD, RW_PRACTICE_HAZARD_LOW,
               RW_PRACTICE_POINT_CHIP, i);
}

static void
add_rest (Builder  *builder,
          gboolean  sound)
{
  const RwPracticeHazard tube = RW_PRACTICE_HAZARD_TUBE;

  if (sound)
    {
      add (builder, "sound:gnd", g_strdup (_ ("Ground of the sound amplifier")), RW_PRACTICE_AREA_SOUND,
           RW_PRACTICE_HAZARD_LOW, RW_PRACTICE_POINT_SOUND_GROUND, RW_PRACTICE_NO_RAIL);
      add (builder, "sound:speaker+", g_strdup (_ ("Loudspeaker, plus")), RW_PRACTICE_AREA_SOUND, tube,
           RW_PRACTICE_POINT_SPEAKER_PLUS, RW_PRACTICE_NO_RAIL);
      add (builder, "sound:speaker-", g_strdup (_ ("Loudspeaker, minus")), RW_PRACTICE_AREA_SOUND, tube,
           RW_PRACTICE_POINT_SPEAKER_MINUS, RW_PRACTICE_NO_RAIL);
    }
  add (builder, "cabinet:chassis", g_strdup (_ ("Bare metal of the cabinet")), RW_PRACTICE_AREA_CABINET,
       RW_PRACTICE_HAZARD_NONE, RW_PRACTICE_POINT_CHASSIS, RW_PRACTICE_NO_RAIL);
  add (builder, "cabinet:monitor", g_strdup (_ ("Ground of the monitor's plug")), RW_PRACTICE_AREA_CABINET, tube,
       RW_PRACTICE_POINT_MONITOR, RW_PRACTICE_NO_RAIL);
  add (builder, "cabinet:lamp+", g_strdup (_ ("Lamp holder, plus")), RW_PRACTICE_AREA_CABINET,
       RW_PRACTICE_HAZARD_LOW, RW_PRACTICE_POINT_LAMP_PLUS, RW_PRACTICE_NO_RAIL);
  add (builder, "cabinet:lamp-", g_strdup (_ ("Lamp holder, minus")), RW_PRACTICE_AREA_CABINET,
       RW_PRACTICE_HAZARD_LOW, RW_PRACTICE_POINT_LAMP_MINUS, RW_PRACTICE_NO_RAIL);
}

GArray *
rw_practice_nodes_build (const RwPracticeParams *params,
                         RwProfile              *profile)
{
  Builder builder = { g_array_new (FALSE, TRUE, sizeof (RwPracticeTouch)), { 0 }, profile };

  g_array_set_clear_func (builder.nodes, clear_touch);
  add_strip (&builder, (int) params->n_rails);
  if (params->supply == RW_PRACTICE_LINEAR)
    add_linear (&builder);
  else
    add_switcher (&builder);
  add_wiring (&builder, (int) params->n_rails);
  add_rest (&builder, params->audio >= 0);
  return builder.nodes;
}

int
rw_practice_nodes_find (const GArray *nodes,
                        const char   *id)
{
  for (guint i = 0; i < nodes->len; i++)
    if (g_strcmp0 (g_array_index (nodes, RwPracticeTouch, i).node.id, id) == 0)
      return (int) i;
  return -1;
}

int
rw_practice_nodes_find_point (const GArray   *nodes,
                              RwPracticePoint point,
                              int             rail)
{
  for (guint i = 0; i < nodes->len; i++)
    {
      const RwPracticeTouch *touch = &g_array_index (nodes, RwPracticeTouch, i);

      if (touch->point == point && touch->rail == rail)
        return (int) i;
    }
  return -1;
}

guint
rw_practice_cabinet_get_n_nodes (RwPracticeCabinet *self)
{
  return self->nodes->len;
}

const RwPracticeNode *
rw_practice_cabinet_get_node (RwPracticeCabinet *self,
                              guint              i)
{
  g_return_val_if_fail (i < self->nodes->len, NULL);
  return &g_array_index (self->nodes, RwPracticeTouch, i).node;
}

const RwPracticeNode *
rw_practice_cabinet_find_node (RwPracticeCabinet *self,
                               const char        *id)
{
  const int i = rw_practice_nodes_find (self->nodes, id);

  return i >= 0 ? rw_practice_cabinet_get_node (self, (guint) i) : NULL;
}
