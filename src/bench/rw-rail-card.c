/* rw-rail-card.c: one rail.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-rail-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-gauge.h"
#include "rw-quantity.h"
#include "rw-verdict-style.h"

struct _RwRailCard
{
  GtkButton   parent_instance;
  RwJob      *job;
  const char *rail;
  GtkLabel   *label;
  GtkLabel   *live;
  GtkLabel   *value;
  GtkLabel   *uncertainty;
  RwGauge    *gauge;
  GtkLabel   *verdict;
  GtkLabel   *where;
};

G_DEFINE_FINAL_TYPE (RwRailCard, rw_rail_card, GTK_TYPE_BUTTON)

/* The reading to show: at the place the leads are set to, else the newest anywhere. */
static const RwSpotState *
find_spot (RwRailCard *self)
{
  RwBenchState *state = rw_job_get_state (self->job);
  const RwPlace place = rw_job_get_place (self->job);
  const RwSpotState *here = place != RW_PLACE_WIRE
                                ? rw_bench_state_find_spot (state, self->rail, place, RW_KIND_DC)
                                : NULL;

  return here != NULL ? here : rw_bench_state_find_rail (state, self->rail);
}

static void
set_verdict_class (RwRailCard *self,
                   RwVerdict   verdict,
                   gboolean    stale)
{
  rw_verdict_style_set (GTK_WIDGET (self->verdict), verdict, stale);
  if (stale)
    gtk_widget_add_css_class (GTK_WIDGET (self), "stale");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "stale");
}

static void
show_verdict (RwRailCard        *self,
              const RwSpotState *spot)
{
  const char *word = rw_verdict_get_label (spot->verdict);
  /* Translators: shape that stands for the verdict, its word. */
  g_autofree char *text = spot->stale         ? g_strdup_printf (_ ("◌ stale, was %s"), word)
                          : spot->reading.over ? g_strdup (_ ("▲ overload"))
                                               : g_strdup_printf ("%s %s", rw_verdict_get_glyph (spot->verdict), word);

  gtk_label_set_text (self->verdict, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->verdict), text);
  set_verdict_class (self, spot->verdict, spot->stale);
}

static void
show_gauge (RwRailCard        *self,
            const RwSpotState *spot)
{
  RwGaugeValue value = { .position = NAN, .theme = rw_view_get_theme (rw_job_get_view (self->job)) };

  value.shown = TRUE;
  if (spot != NULL && !isnan (spot->position))
    {
      value.position = spot->position;
      value.half = 1.96 * spot->u / ((spot->hi - spot->lo) / 2);
      value.verdict = spot->verdict;
      value.stale = spot->stale;
    }
  rw_gauge_set_value (self->gauge, &value);
}

static void
show_where (RwRailCard        *self,
            const RwSpotState *spot)
{
  g_autofree char *age = rw_quantity_format_age (rw_job_get_now (self->job) - spot->t);
  /* Translators: place, age: "board · 12 s ago". */
  g_autofree char *text = g_strdup_printf (_ ("%s · %s ago"), rw_place_get_label (spot->reading.place), age);

  gtk_label_set_text (self->where, text);
}

static void
show_live (RwRailCard *self)
{
  const RwLive *live = rw_job_get_live (self->job);
  const gboolean ours = live->has_value && live->sample.rail == self->rail;
  g_autofree char *value = ours ? rw_quantity_format (live->sample.value, live->sample.step, live->sample.kind)
                                : NULL;
  /* Translators: the value the meter shows at this moment. */
  g_autofree char *text = ours ? g_strdup_printf (_ ("live %s"), value) : g_strdup ("");

  gtk_label_set_text (self->live, text);
}

static void
update_accessible (RwRailCard *self)
{
  g_autofree char *text = g_strdup_printf ("%s: %s %s, %s, %s", gtk_label_get_text (self->label),
                                           gtk_label_get_text (self->value),
                                           gtk_label_get_text (self->uncertainty),
                                           gtk_label_get_text (self->verdict),
                                           gtk_label_get_text (self->where));

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, text, -1);
}

static void
show_spot (RwRailCard        *self,
           const RwSpotState *spot)
{
  g_autofree char *value = rw_quantity_format (spot->reading.value, spot->reading.step, spot->reading.kind);
  g_autofree char *u = isnan (spot->u) ? g_strdup ("") : rw_quantity_format_u (spot->u, spot->reading.kind);

  gtk_label_set_text (self->value, value);
  gtk_label_set_text (self->uncertainty, u);
  show_verdict (self, spot);
  show_where (self, spot);
}

static void
show_nothing (RwRailCard *self)
{
  gtk_label_set_text (self->value, "–");
  gtk_label_set_text (self->uncertainty, "");
  gtk_label_set_text (self->verdict, _ ("not measured yet"));
  gtk_label_set_text (self->where, "");
  set_verdict_class (self, RW_VERDICT_NONE, FALSE);
}

void
rw_rail_card_refresh (RwRailCard *self)
{
  const RwSpotState *spot = find_spot (self);
  const gboolean aimed = rw_job_get_rail (self->job) == self->rail;

  if (spot != NULL)
    show_spot (self, spot);
  else
    show_nothing (self);
  show_gauge (self, spot);
  show_live (self);
  if (aimed)
    gtk_widget_add_css_class (GTK_WIDGET (self), "aimed");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), "aimed");
  update_accessible (self);
}

static void
clicked_cb (RwRailCard *self)
{
  const RwPlace place = rw_job_get_place (self->job);

  rw_job_set_spot (self->job, self->rail, place == RW_PLACE_WIRE ? RW_PLACE_BOARD : place, RW_KIND_DC);
}

static void
rw_rail_card_dispose (GObject *object)
{
  RwRailCard *self = RW_RAIL_CARD (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_RAIL_CARD);
  G_OBJECT_CLASS (rw_rail_card_parent_class)->dispose (object);
}

static void
rw_rail_card_class_init (RwRailCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_rail_card_dispose;
  g_type_ensure (RW_TYPE_GAUGE);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-rail-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, label);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, live);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, value);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, uncertainty);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, gauge);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, verdict);
  gtk_widget_class_bind_template_child (widget_class, RwRailCard, where);
}

static void
rw_rail_card_init (RwRailCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (self, "clicked", G_CALLBACK (clicked_cb), NULL);
}

GtkWidget *
rw_rail_card_new (RwJob      *job,
                  const char *rail)
{
  RwRailCard *self = g_object_new (RW_TYPE_RAIL_CARD, NULL);
  const RwRail *facts = rw_profile_find_rail (rw_job_get_profile (job), rail);

  self->job = g_object_ref (job);
  self->rail = facts->id;
  gtk_label_set_text (self->label, facts->label);
  g_signal_connect_object (job, "changed", G_CALLBACK (rw_rail_card_refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (show_live), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "spot", G_CALLBACK (rw_rail_card_refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_view (job), "notify::theme", G_CALLBACK (rw_rail_card_refresh), self,
                           G_CONNECT_SWAPPED);
  rw_rail_card_refresh (self);
  return GTK_WIDGET (self);
}
