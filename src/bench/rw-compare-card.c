/* rw-compare-card.c: one rail at two visits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *     ┌ +5 V, board, warm ───────────┐
 *     │ 2026-03-14      2027-03-20   │
 *     │ 5.009 V         4.839 V      │
 *     │ ─┤···◆···├─     ─◆┤······├─  │
 *     │ ● inside        ▲ outside    │
 *     │ weaker by 170 mV (±3 mV)     │
 *     └──────────────────────────────┘
 */
#include "config.h"

#include "rw-compare-card.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-color-scheme.h"
#include "rw-compare-words.h"
#include "rw-gauge.h"
#include "rw-verdict-style.h"

/* The more, the rather; −1: not at all. */
static int
rank (const RwCompareItem *item)
{
  static const int places[RW_N_PLACES]
      = { [RW_PLACE_BOARD] = 8, [RW_PLACE_CHIP] = 4, [RW_PLACE_TERMINALS] = 2, [RW_PLACE_WIRE] = -100 };

  if (item->what != RW_COMPARE_READING || item->kind != RW_KIND_DC)
    return -1;
  return places[item->place] + (item->setup.board_fitted != RW_SAID_NO) + (item->setup.warm == RW_SAID_YES);
}

const RwCompareItem *
rw_compare_card_find (const RwCompare *compare,
                      const char      *rail)
{
  const RwCompareItem *best = NULL;

  for (guint i = 0; i < rw_compare_get_n_items (compare); i++)
    {
      const RwCompareItem *item = rw_compare_get_item (compare, i);

      if (g_str_equal (item->rail, rail) && rank (item) >= 0 && (best == NULL || rank (item) > rank (best)))
        best = item;
    }
  return best;
}

static GtkWidget *
add_label (GtkBox     *box,
           const char *text,
           const char *css)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, css);
  gtk_box_append (box, label);
  return label;
}

static RwGaugeValue
gauge_value (const RwCompareItem  *item,
             const RwCompareValue *value)
{
  const gboolean limited = !isnan (value->value) && !isnan (value->lo);
  const gboolean dark = rw_color_scheme_is_dark ();

  return (RwGaugeValue){
    .shown = TRUE,
    .position = limited ? rw_position (value->value, value->lo, value->hi, value->hi < 0) : (double) NAN,
    .half = limited && !isnan (value->u) ? 1.96 * value->u / ((value->hi - value->lo) / 2) : 0,
    .verdict = value->verdict,
    .notch = NAN,
    .theme = rw_color_scheme_is_contrast () ? dark ? RW_THEME_DARK_CONTRAST : RW_THEME_LIGHT_CONTRAST
             : dark                         ? RW_THEME_DARK
                                            : RW_THEME_LIGHT,
  };
}

static GtkWidget *
make_side (const RwCompareItem  *item,
           const RwCompareValue *value,
           RwSession            *session)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *gauge = g_object_new (RW_TYPE_GAUGE, NULL);
  g_autofree char *date = rw_compare_words_date (session);
  g_autofree char *shown = rw_compare_words_value (item, value);
  g_autofree char *verdict = g_strconcat (rw_verdict_get_glyph (value->verdict), " ",
                                          rw_verdict_get_label (value->verdict), NULL);
  const RwGaugeValue at = gauge_value (item, value);

  add_label (GTK_BOX (box), date, "caption");
  gtk_widget_add_css_class (add_label (GTK_BOX (box), shown, "compare-value"), "numeric");
  rw_gauge_set_value (RW_GAUGE (gauge), &at);
  gtk_box_append (GTK_BOX (box), gauge);
  if (value->verdict != RW_VERDICT_NONE)
    rw_verdict_style_set (add_label (GTK_BOX (box), verdict, "verdict"), value->verdict, FALSE);
  return box;
}

GtkWidget *
rw_compare_card_new (const RwCompare     *compare,
                     const RwCompareItem *item)
{
  GtkWidget *card = g_object_new (GTK_TYPE_BOX, "orientation", GTK_ORIENTATION_VERTICAL, "spacing", 6,
                                  "accessible-role", GTK_ACCESSIBLE_ROLE_GROUP, NULL);
  GtkWidget *pair = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18);
  g_autofree char *spot = rw_compare_words_spot (item);
  g_autofree char *difference = rw_compare_words_difference (item);
  g_autofree char *words = rw_compare_words_item (item);

  gtk_widget_add_css_class (card, "card");
  add_label (GTK_BOX (card), spot, "rail-label");
  gtk_box_set_homogeneous (GTK_BOX (pair), TRUE);
  gtk_box_append (GTK_BOX (pair), make_side (item, &item->then, rw_compare_get_then (compare)));
  gtk_box_append (GTK_BOX (pair), make_side (item, &item->now, rw_compare_get_now (compare)));
  gtk_box_append (GTK_BOX (card), pair);
  if (item->result == RW_COMPARE_CHANGED)
    add_label (GTK_BOX (card), difference, "strong");
  else
    add_label (GTK_BOX (card), rw_compare_result_get_label (item->result), "quiet");
  gtk_accessible_update_property (GTK_ACCESSIBLE (card), GTK_ACCESSIBLE_PROPERTY_LABEL, words, -1);
  return card;
}
