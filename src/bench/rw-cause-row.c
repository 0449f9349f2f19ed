/* rw-cause-row.c: one cause with its chance, and, opened, why.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What is inside is made when the row is opened, and anew with each advice while it is open.
 */
#include "config.h"

#include "rw-cause-row.h"

#include <glib/gi18n-lib.h>

#include "rw-cause-words.h"
#include "rw-quantity.h"

struct _RwCauseRow
{
  GtkWidget       parent_instance;
  GtkWidget      *box;
  GtkToggleButton *head;
  GtkWidget      *arrow;
  GtkWidget      *title;
  GtkWidget      *trend;
  GtkWidget      *chance;
  GtkWidget      *word;
  GtkWidget      *bar;
  GtkWidget      *inside;
  RwJob          *job;
  const char     *id;    /* interned: of the cause, or the first of a pair */
  const char     *other; /* interned: the second of a pair; NULL: one cause */
  guint           rank;  /* of the cause, or number of the pair */
};

static guint repair_signal;

G_DEFINE_FINAL_TYPE (RwCauseRow, rw_cause_row, GTK_TYPE_WIDGET)

/* --- why ------------------------------------------------------------------------------------------ */

static GtkWidget *
add_words (RwCauseRow *self,
           const char *words,
           const char *style)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  gtk_box_append (GTK_BOX (self->inside), label);
  return label;
}

static void
add_reasons (RwCauseRow *self,
             GPtrArray  *reasons)
{
  GtkWidget *grid = gtk_grid_new ();

  gtk_grid_set_column_spacing (GTK_GRID (grid), 9);
  gtk_grid_set_row_spacing (GTK_GRID (grid), 2);
  for (guint i = 0; i < reasons->len; i++)
    {
      const RwReason *reason = reasons->pdata[i];
      g_autofree char *factor = rw_cause_words_factor (reason->factor);
      /* Translators: a factor on the odds, "×12", "÷5.0". */
      g_autofree char *words = g_strdup_printf (reason->factor >= 1 ? _ ("%s for") : _ ("%s against"), factor);
      GtkWidget *number = gtk_label_new (words);
      GtkWidget *title = gtk_label_new (reason->title);

      gtk_widget_add_css_class (number, "numeric");
      gtk_widget_add_css_class (number, reason->factor >= 1 ? "for" : "against");
      gtk_label_set_xalign (GTK_LABEL (number), 1);
      gtk_widget_set_valign (number, GTK_ALIGN_START);
      gtk_label_set_xalign (GTK_LABEL (title), 0);
      gtk_label_set_wrap (GTK_LABEL (title), TRUE);
      gtk_widget_set_hexpand (title, TRUE);
      gtk_grid_attach (GTK_GRID (grid), number, 0, (int) i, 1, 1);
      gtk_grid_attach (GTK_GRID (grid), title, 1, (int) i, 1, 1);
    }
  gtk_widget_add_css_class (grid, "caption");
  gtk_box_append (GTK_BOX (self->inside), grid);
}

static void
repair_cb (GtkWidget  *button,
           RwCauseRow *self)
{
  g_signal_emit (self, repair_signal, 0, self->id);
}

static void
add_repair (RwCauseRow    *self,
            const RwCause *cause)
{
  GtkWidget *button = gtk_button_new_with_label (_ ("Show its repair"));
  /* Translators: a repair. */
  g_autofree char *label = g_strdup_printf (_ ("Show its repair: %s"), cause->repair.title);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_sensitive (button, rw_job_can_write (self->job));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect (button, "clicked", G_CALLBACK (repair_cb), self);
  gtk_box_append (GTK_BOX (self->inside), button);
}

/* The odds of what was proved would be no product of what was seen. */
static void
add_proof (RwCauseRow          *self,
           const RwCauseBelief *held)
{
  /* Translators: a repair. */
  g_autofree char *proof = g_strdup_printf (_ ("Proved by its repair: %s."), held->cause->repair.title);

  add_words (self, held->cause->detail, NULL);
  add_words (self, proof, "caption");
}

static void
fill_cause (RwCauseRow *self,
            RwBelief   *belief)
{
  const RwCauseBelief *held = rw_belief_get_cause (belief, self->rank);

  if (held->cause == rw_belief_get_fixed (belief))
    {
      add_proof (self, held);
      return;
    }

  g_autoptr (GPtrArray) reasons = rw_cause_words_reasons (belief, self->rank);
  g_autofree char *prior = rw_cause_words_prior (held);
  g_autofree char *product = rw_cause_words_product (held, reasons);
  g_autofree char *record = rw_cause_words_record (rw_job_get_record (self->job), held->cause->id);

  add_words (self, held->cause->detail, NULL);
  add_words (self, prior, "caption");
  add_reasons (self, reasons);
  if (reasons->len > 0)
    gtk_widget_add_css_class (add_words (self, product, "caption"), "numeric");
  if (record != NULL)
    add_words (self, record, "caption");
  if (!held->cause->broad)
    add_repair (self, held->cause);
}

static void
fill_pair (RwCauseRow *self,
           RwBelief   *belief)
{
  const RwPairBelief *pair = rw_belief_get_pair (belief, self->rank);
  /* Translators: two repairs. */
  g_autofree char *order = g_strdup_printf (_ ("Both are there at once. First “%s”, since it is the likelier a minute, then "
                                               "“%s”."),
                                            pair->a->repair.title, pair->b->repair.title);
  g_autofree char *a = rw_quantity_format_chance (rw_belief_get_alone (belief, pair->index_a));
  g_autofree char *b = rw_quantity_format_chance (rw_belief_get_alone (belief, pair->index_b));
  /* Translators: two causes with the chance that each is the only fault. */
  g_autofree char *alone = g_strdup_printf (_ ("As the only fault: “%s” %s, “%s” %s."), pair->a->title, a, pair->b->title,
                                            b);

  add_words (self, order, NULL);
  add_words (self, alone, "caption");
  add_repair (self, pair->a);
}

static void
fill_inside (RwCauseRow *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->inside)) != NULL)
    gtk_box_remove (GTK_BOX (self->inside), child);
  if (advice == NULL || !gtk_toggle_button_get_active (self->head))
    return;
  if (self->other != NULL)
    fill_pair (self, rw_advice_get_belief (advice));
  else
    fill_cause (self, rw_advice_get_belief (advice));
}

static void
toggled_cb (RwCauseRow *self)
{
  const gboolean open = gtk_toggle_button_get_active (self->head);

  gtk_label_set_text (GTK_LABEL (self->arrow), open ? "▾" : "▸");
  gtk_accessible_update_state (GTK_ACCESSIBLE (self->head), GTK_ACCESSIBLE_STATE_EXPANDED, open, -1);
  gtk_widget_set_visible (self->inside, open);
  fill_inside (self);
}

/* --- the head ------------------------------------------------------------------------------------- */

static void
show_head (RwCauseRow *self,
           const char *title,
           double      p,
           double      trend)
{
  g_autofree char *chance = rw_quantity_format_chance (p);
  g_autofree char *arrow = trend > 0 ? rw_cause_words_trend_text (trend) : g_strdup ("");
  g_autofree char *spoken = trend > 0 ? rw_cause_words_trend_spoken (trend) : NULL;
  const char *word = rw_cause_words_chance (p);
  g_autofree char *bar = g_strdup_printf ("%s, %s", title, chance);
  g_autofree char *label = g_strdup_printf ("%s: %s, %s%s%s", title, chance, word, spoken != NULL ? ", " : "",
                                            spoken != NULL ? spoken : "");

  gtk_label_set_text (GTK_LABEL (self->title), title);
  gtk_label_set_text (GTK_LABEL (self->chance), chance);
  gtk_label_set_text (GTK_LABEL (self->word), word);
  gtk_label_set_text (GTK_LABEL (self->trend), arrow);
  gtk_level_bar_set_value (GTK_LEVEL_BAR (self->bar), CLAMP (p, 0, 1));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->head), label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->head), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->bar), GTK_ACCESSIBLE_PROPERTY_LABEL, bar, -1);
}

/* @other: (nullable) */
static void
set_subject (RwCauseRow    *self,
             RwJob         *job,
             const RwCause *cause,
             const RwCause *other,
             guint          rank)
{
  const char *second = other != NULL ? other->id : NULL;

  self->id = cause->id;
  self->other = second;
  self->rank = rank;
  g_set_object (&self->job, job);
}

void
rw_cause_row_show_cause (RwCauseRow *self,
                         RwJob      *job,
                         guint       rank)
{
  g_return_if_fail (RW_IS_CAUSE_ROW (self));

  RwBelief *belief = rw_advice_get_belief (rw_job_get_advice (job));
  const RwCauseBelief *held = rw_belief_get_cause (belief, rank);

  set_subject (self, job, held->cause, NULL, rank);
  show_head (self, held->cause->title, held->p, rw_cause_words_trend (belief, rank));
  fill_inside (self);
}

void
rw_cause_row_show_pair (RwCauseRow *self,
                        RwJob      *job,
                        guint       i)
{
  g_return_if_fail (RW_IS_CAUSE_ROW (self));

  const RwPairBelief *pair = rw_belief_get_pair (rw_advice_get_belief (rw_job_get_advice (job)), i);
  /* Translators: two causes that are there at once. */
  g_autofree char *title = g_strdup_printf (_ ("%s and %s"), pair->a->title, pair->b->title);

  set_subject (self, job, pair->a, pair->b, i);
  show_head (self, title, pair->p, 0);
  fill_inside (self);
}

static char *
dup_name (RwCauseRow *self)
{
  return g_strconcat (self->id, "+", self->other, NULL);
}

char *
rw_cause_row_dup_open (RwCauseRow *self)
{
  g_return_val_if_fail (RW_IS_CAUSE_ROW (self), NULL);
  return self->id != NULL && gtk_toggle_button_get_active (self->head) ? dup_name (self) : NULL;
}

void
rw_cause_row_open_if (RwCauseRow *self,
                      GHashTable *open)
{
  g_return_if_fail (RW_IS_CAUSE_ROW (self));

  g_autofree char *name = dup_name (self);

  gtk_toggle_button_set_active (self->head, g_hash_table_contains (open, name));
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_cause_row_dispose (GObject *object)
{
  RwCauseRow *self = RW_CAUSE_ROW (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_cause_row_parent_class)->dispose (object);
}

/* In characters, so that the bars of all rows are as long as each other. */
static int
longest_word (void)
{
  static const double chances[] = { 0, RW_CAUSE_POSSIBLE, RW_CAUSE_LIKELY, RW_CAUSE_CERTAIN };
  glong longest = 0;

  for (guint i = 0; i < G_N_ELEMENTS (chances); i++)
    longest = MAX (longest, g_utf8_strlen (rw_cause_words_chance (chances[i]), -1));
  return (int) longest;
}

static void
rw_cause_row_class_init (RwCauseRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_cause_row_dispose;
  repair_signal = g_signal_new ("repair", RW_TYPE_CAUSE_ROW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "causerow");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static GtkWidget *
make_head (RwCauseRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->arrow = gtk_label_new ("▸");
  self->title = gtk_label_new ("");
  self->trend = gtk_label_new ("");
  self->chance = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->title), 0);
  gtk_label_set_wrap (GTK_LABEL (self->title), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (self->title), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (self->title, TRUE);
  gtk_widget_add_css_class (self->trend, "caption");
  gtk_widget_add_css_class (self->trend, "numeric");
  gtk_widget_add_css_class (self->chance, "numeric");
  gtk_widget_add_css_class (self->chance, "strong");
  gtk_box_append (GTK_BOX (line), self->arrow);
  gtk_box_append (GTK_BOX (line), self->title);
  gtk_box_append (GTK_BOX (line), self->trend);
  gtk_box_append (GTK_BOX (line), self->chance);
  self->head = GTK_TOGGLE_BUTTON (gtk_toggle_button_new ());
  gtk_button_set_child (GTK_BUTTON (self->head), line);
  gtk_widget_add_css_class (GTK_WIDGET (self->head), "flat");
  gtk_widget_add_css_class (GTK_WIDGET (self->head), "cause-head");
  g_signal_connect_swapped (self->head, "toggled", G_CALLBACK (toggled_cb), self);
  return GTK_WIDGET (self->head);
}

static GtkWidget *
make_bar (RwCauseRow *self)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  self->bar = gtk_level_bar_new ();
  gtk_level_bar_remove_offset_value (GTK_LEVEL_BAR (self->bar), NULL);
  gtk_widget_set_hexpand (self->bar, TRUE);
  gtk_widget_set_valign (self->bar, GTK_ALIGN_CENTER);
  self->word = gtk_label_new ("");
  gtk_label_set_xalign (GTK_LABEL (self->word), 1);
  gtk_label_set_width_chars (GTK_LABEL (self->word), longest_word ());
  gtk_widget_add_css_class (self->word, "caption");
  gtk_box_append (GTK_BOX (line), self->bar);
  gtk_box_append (GTK_BOX (line), self->word);
  gtk_widget_add_css_class (line, "cause-bar");
  return line;
}

static void
rw_cause_row_init (RwCauseRow *self)
{
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_box_append (GTK_BOX (self->box), make_head (self));
  gtk_box_append (GTK_BOX (self->box), make_bar (self));
  self->inside = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->inside, "cause-inside");
  gtk_widget_set_visible (self->inside, FALSE);
  gtk_box_append (GTK_BOX (self->box), self->inside);
}

GtkWidget *
rw_cause_row_new (void)
{
  return g_object_new (RW_TYPE_CAUSE_ROW, NULL);
}
