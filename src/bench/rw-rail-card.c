/* rw-rail-card.c: one rail.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-rail-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-gauge.h"
#include "rw-quantity.h"
#include "rw-trim-recheck.h"
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

static double
position_of (const RwTrimSet *set,
             guint            rail,
             double           value)
{
  return isnan (set->lo[rail]) ? (double) NAN
                               : rw_position (value, set->lo[rail], set->hi[rail],
                                              rw_profile_get_rail (set->profile, rail)->nominal < 0);
}

/* Where the rail would stand at the set point; NaN when not known. */
static double
notch_position (const RwTrimSet *set,
                guint            rail)
{
  RwTrimExpected it;

  if (set == NULL || !set->window.exists || !set->complete || !isfinite (set->window.best)
      || !rw_trim_fit_expect (set->fit, rail, set->window.best, 0, &it))
    return NAN;
  return position_of (set, rail, it.value);
}

/* The set at the place of the reading that is shown, so that both speak of one spot. */
static const RwTrimSet *
find_set (RwRailCard        *self,
          const RwSpotState *spot)
{
  const RwPlace place = rw_job_get_place (self->job);
  const RwTrimSet *here = place != RW_PLACE_WIRE
                              ? rw_bench_state_find_trim_set (rw_job_get_state (self->job), place)
                              : NULL;

  if (here != NULL)
    return here;
  return rw_bench_state_find_trim_set (rw_job_get_state (self->job),
                                       spot != NULL ? spot->reading.place : RW_PLACE_BOARD);
}

static void
show_gauge (RwRailCard           *self,
            const RwSpotState    *spot,
            const RwTrimExpected *expected)
{
  const RwTrimSet *set = find_set (self, spot);
  const guint rail = (guint) rw_profile_index_of (rw_job_get_profile (self->job), self->rail);
  RwGaugeValue value = { .position = NAN, .theme = rw_view_get_theme (rw_job_get_view (self->job)) };

  value.shown = TRUE;
  value.notch = notch_position (set, rail);
  if (expected != NULL)
    {
      value.position = position_of (set, rail, expected->value);
      value.half = (expected->hi - expected->lo) / (set->hi[rail] - set->lo[rail]);
      value.expected = TRUE;
    }
  else if (spot != NULL && !isnan (spot->position))
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
  const RwLive *live = rw_job_find_live (self->job, self->rail);
  const gboolean ours = live != NULL;
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

/* --- expected values ------------------------------------------------------------------------------ */

/* What the trim's lines say of this rail now, where no reading does. FALSE: a reading does, or nothing can be
 * said. A rail that the meter is on is measured, not expected. */
static gboolean
find_expected (RwRailCard        *self,
               const RwSpotState *spot,
               RwTrimExpected    *out)
{
  const RwTrimSet *set = find_set (self, spot);
  const guint rail = (guint) rw_profile_index_of (rw_job_get_profile (self->job), self->rail);
  RwTrimLive others;
  const RwTrimSet *from;
  gboolean found = FALSE;

  if (set == NULL || rw_job_find_live (self->job, self->rail) != NULL
      || (spot != NULL && spot->reading.place == set->place && !spot->changed_since))
    return FALSE;
  from = rw_job_get_trim_live (self->job, &others);
  if (from == set && !isnan (others.rails[rail].value))
    {
      *out = others.rails[rail];
      found = TRUE;
    }
  if (from != NULL)
    rw_trim_live_clear (&others);
  return found || (!isnan (set->x) && rw_trim_fit_expect (set->fit, rail, set->x, set->u_x, out));
}

/* "read again: next", "read again: 2nd in turn"; NULL when it is not due. (transfer full) */
static char *
say_due (RwRailCard *self)
{
  RwTrimRecheck recheck;
  const int rail = rw_profile_index_of (rw_job_get_profile (self->job), self->rail);
  guint rank;

  rw_trim_recheck_init (&recheck, rw_job_get_state (self->job));
  rank = rw_trim_recheck_rank (&recheck, (guint) rail);
  rw_trim_recheck_clear (&recheck);
  if (rank == 0)
    return NULL;
  if (rank == 1)
    return g_strdup (_ ("read again: next"));
  /* Translators: which in turn: 2, 3, … */
  return g_strdup_printf (_ ("read again: no. %u"), rank);
}

static void
show_due (RwRailCard        *self,
          const RwSpotState *spot)
{
  g_autofree char *due = say_due (self);

  if (due == NULL)
    return;

  g_autofree char *value = rw_quantity_format (spot->reading.value, spot->reading.step, spot->reading.kind);
  /* Translators: what is to be done, the value before the trim was turned. */
  g_autofree char *text = g_strdup_printf (_ ("%s · was %s"), due, value);

  gtk_label_set_text (self->where, text);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->where), text);
}

static void
show_expected (RwRailCard           *self,
               const RwSpotState    *spot,
               const RwTrimExpected *expected)
{
  const double half = (expected->hi - expected->lo) / 2;
  g_autofree char *value = rw_quantity_format (expected->value, half < 0.2 ? 0.01 : 0.1, RW_KIND_DC);
  /* Translators: a value that nobody measured. */
  g_autofree char *about = g_strdup_printf (_ ("≈ %s"), value);
  g_autofree char *u = rw_quantity_format_u (half / 1.96, RW_KIND_DC);

  gtk_label_set_text (self->value, about);
  gtk_label_set_text (self->uncertainty, u);
  gtk_label_set_text (self->verdict, _ ("◇ expected, not measured"));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->verdict), _ ("Worked out from the rails that were read"));
  gtk_label_set_text (self->where, _ ("not measured here yet"));
  set_verdict_class (self, RW_VERDICT_NONE, FALSE);
}

static void
set_class (RwRailCard *self,
           const char *name,
           gboolean    on)
{
  if (on)
    gtk_widget_add_css_class (GTK_WIDGET (self), name);
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self), name);
}

void
rw_rail_card_refresh (RwRailCard *self)
{
  const RwSpotState *spot = find_spot (self);
  RwTrimExpected expected;
  const gboolean is_expected = find_expected (self, spot, &expected);

  if (is_expected)
    show_expected (self, spot, &expected);
  else if (spot != NULL)
    show_spot (self, spot);
  else
    show_nothing (self);
  if (spot != NULL)
    show_due (self, spot);
  show_gauge (self, spot, is_expected ? &expected : NULL);
  show_live (self);
  set_class (self, "expected", is_expected);
  set_class (self, "aimed", rw_job_get_rail (self->job) == self->rail);
  update_accessible (self);
}

/* While the screw is turned, what is expected of a rail follows the one that is watched. */
static void
live_cb (RwRailCard *self)
{
  RwTrimExpected expected;

  if (find_expected (self, find_spot (self), &expected))
    rw_rail_card_refresh (self);
  else
    show_live (self);
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
  g_signal_connect_object (job, "live", G_CALLBACK (live_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "spot", G_CALLBACK (rw_rail_card_refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_view (job), "notify::theme", G_CALLBACK (rw_rail_card_refresh), self,
                           G_CONNECT_SWAPPED);
  rw_rail_card_refresh (self);
  return GTK_WIDGET (self);
}
