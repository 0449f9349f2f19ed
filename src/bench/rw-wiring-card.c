/* rw-wiring-card.c: drops along the wires and ripple.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One row each for the reference rail's drop, the ground's drop, and the reference rail's ripple. A row is a
 * button that aims the leads there. Where the card is narrow its names wrap, and in a dense strip all of it is smaller.
 */
#include "config.h"

#include "rw-wiring-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-verdict-style.h"

typedef struct
{
  const char *rail;
  RwPlace     place;
  RwKind      kind;
  GtkWidget  *button;
  GtkWidget  *name;
  GtkWidget  *value;
  GtkWidget  *verdict;
} Row;

enum
{
  ROW_DROP,
  ROW_GROUND,
  ROW_RIPPLE,
  N_ROWS
};

struct _RwWiringCard
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GtkWidget *box;
  Row        rows[N_ROWS];
};

G_DEFINE_FINAL_TYPE (RwWiringCard, rw_wiring_card, GTK_TYPE_WIDGET)

static const RwSpotState *
find_spot (RwWiringCard *self,
           const Row    *row)
{
  RwBenchState *state = rw_job_get_state (self->job);
  const RwSpotState *spot = rw_bench_state_find_spot (state, row->rail, row->place, row->kind);

  if (spot == NULL && row->kind == RW_KIND_RIPPLE)
    spot = rw_bench_state_find_spot (state, row->rail, RW_PLACE_TERMINALS, row->kind);
  return spot;
}

static void
show_row (RwWiringCard *self,
          Row          *row)
{
  const RwSpotState *spot = find_spot (self, row);
  g_autofree char *value = spot != NULL ? rw_quantity_format (spot->reading.value, spot->reading.step, row->kind)
                                        : g_strdup ("–");
  const char *glyph = spot == NULL ? "" : spot->stale ? "◌" : rw_verdict_get_glyph (spot->verdict);
  const char *word = spot == NULL ? _ ("not measured yet")
                     : spot->stale ? _ ("stale")
                                   : rw_verdict_get_label (spot->verdict);
  g_autofree char *label = g_strdup_printf ("%s: %s, %s", gtk_label_get_text (GTK_LABEL (row->name)), value, word);

  gtk_label_set_text (GTK_LABEL (row->value), value);
  gtk_label_set_text (GTK_LABEL (row->verdict), glyph);
  rw_verdict_style_set (row->verdict, spot != NULL ? spot->verdict : RW_VERDICT_NONE, spot == NULL || spot->stale);
  gtk_widget_set_tooltip_text (row->button, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row->button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static void
refresh (RwWiringCard *self)
{
  for (guint i = 0; i < N_ROWS; i++)
    show_row (self, &self->rows[i]);
}

static void
clicked_cb (GtkWidget    *button,
            RwWiringCard *self)
{
  for (guint i = 0; i < N_ROWS; i++)
    if (self->rows[i].button == button)
      rw_job_set_spot (self->job, self->rows[i].rail, self->rows[i].place, self->rows[i].kind);
}

static void
add_row (RwWiringCard *self,
         Row          *row,
         const char   *name)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  row->button = gtk_button_new ();
  row->name = gtk_label_new (name);
  row->value = gtk_label_new ("–");
  row->verdict = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (row->name), 0);
  gtk_label_set_wrap (GTK_LABEL (row->name), TRUE);
  gtk_widget_set_hexpand (row->name, TRUE);
  gtk_widget_add_css_class (row->value, "numeric");
  gtk_widget_add_css_class (row->verdict, "verdict");
  gtk_box_append (GTK_BOX (box), row->name);
  gtk_box_append (GTK_BOX (box), row->value);
  gtk_box_append (GTK_BOX (box), row->verdict);
  gtk_button_set_child (GTK_BUTTON (row->button), box);
  gtk_widget_add_css_class (row->button, "flat");
  gtk_widget_add_css_class (row->button, "wiring-row");
  g_signal_connect (row->button, "clicked", G_CALLBACK (clicked_cb), self);
  gtk_box_append (GTK_BOX (self->box), row->button);
}

static void
rw_wiring_card_dispose (GObject *object)
{
  RwWiringCard *self = RW_WIRING_CARD (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_wiring_card_parent_class)->dispose (object);
}

static void
rw_wiring_card_class_init (RwWiringCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_wiring_card_dispose;
  gtk_widget_class_set_css_name (widget_class, "wiringcard");
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
}

static void
rw_wiring_card_init (RwWiringCard *self)
{
  GtkWidget *title = gtk_label_new (_ ("On the way"));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "rail-label");
  gtk_box_append (GTK_BOX (self->box), title);
}

GtkWidget *
rw_wiring_card_new (RwJob *job)
{
  RwWiringCard *self = g_object_new (RW_TYPE_WIRING_CARD, NULL);
  const RwRail *reference = rw_profile_get_reference (rw_job_get_profile (job));
  /* Translators: label of the reference rail: "+5 V drop". */
  g_autofree char *drop = g_strdup_printf (_ ("%s drop"), reference->label);
  /* Translators: label of the reference rail: "+5 V ripple". */
  g_autofree char *ripple = g_strdup_printf (_ ("%s ripple"), reference->label);

  self->job = g_object_ref (job);
  self->rows[ROW_DROP] = (Row){ reference->id, RW_PLACE_WIRE, RW_KIND_DC };
  self->rows[ROW_GROUND] = (Row){ g_intern_static_string (RW_RAIL_GROUND), RW_PLACE_WIRE, RW_KIND_DC };
  self->rows[ROW_RIPPLE] = (Row){ reference->id, RW_PLACE_BOARD, RW_KIND_RIPPLE };
  add_row (self, &self->rows[ROW_DROP], drop);
  add_row (self, &self->rows[ROW_GROUND], _ ("Ground drop"));
  add_row (self, &self->rows[ROW_RIPPLE], ripple);
  g_signal_connect_object (job, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
  return GTK_WIDGET (self);
}
