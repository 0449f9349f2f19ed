/* rw-stage-card.c: one stage of the bring-up in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The lines are gathered first, as text with their style and what pressing them does; only when they differ from those
 * shown are widgets made, so that a key that is being aimed at is never taken away by a sample that came in.
 */
#include "config.h"

#include "rw-stage-card.h"

#include <glib/gi18n-lib.h>

#include "rw-stage-say.h"

typedef enum
{
  LINE_TEXT,
  LINE_SPOT,     /* a button */
  LINE_QUESTION, /* with Yes and No */
} LineType;

typedef struct
{
  LineType    type;
  char       *text;
  const char *style;  /* (nullable) static */
  guint       index;  /* of spot or question */
  RwAnswer    answer;
} Line;

struct _RwStageCard
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  GArray    *lines; /* of Line, as shown */
  gboolean   editable;
};

static guint spot_signal, answer_signal;

G_DEFINE_FINAL_TYPE (RwStageCard, rw_stage_card, GTK_TYPE_WIDGET)

/* --- what is to be said --------------------------------------------------------------------------- */

static void
line_clear (gpointer data)
{
  g_free (((Line *) data)->text);
}

static GArray *
lines_new (void)
{
  GArray *lines = g_array_new (FALSE, FALSE, sizeof (Line));

  g_array_set_clear_func (lines, line_clear);
  return lines;
}

/* @text: (transfer full). */
static void
add_line (GArray     *lines,
          char       *text,
          const char *style)
{
  const Line line = { .type = LINE_TEXT, .text = text, .style = style };

  g_array_append_val (lines, line);
}

static void
add_list (GArray            *lines,
          const char        *head,
          char *const       *texts,
          gboolean           numbered)
{
  if (texts == NULL || texts[0] == NULL)
    return;
  add_line (lines, g_strdup (head), "group");
  for (guint i = 0; texts[i] != NULL; i++)
    add_line (lines, numbered ? g_strdup_printf ("%u. %s", i + 1, texts[i]) : g_strdup_printf ("· %s", texts[i]), NULL);
}

/* With the sign and colour that a check's hazard has, from the same level on. */
static void
add_hazard (GArray            *lines,
            const RwStageText *words)
{
  const gboolean grave = words->hazard > RW_STAGE_HAZARD_LOW_VOLTAGE || words->who != RW_STAGE_ANYONE;
  g_autofree char *hazard = rw_stage_say_hazard (words);

  add_line (lines, g_strconcat (grave ? "⚠ " : "", hazard, NULL),
            grave ? "safety" : words->hazard != RW_STAGE_HAZARD_NONE ? "hazard" : "quiet");
}

static void
add_caution (GArray             *lines,
             const RwStageState *state)
{
  if (state->words->caution != NULL)
    add_line (lines, g_strdup (state->words->caution), state->hazard_read ? NULL : "safety-words");
}

static void
add_gate (GArray             *lines,
          const RwStageState *state)
{
  if (state->reasons->len == 0)
    add_line (lines, g_strdup (_ ("✓ Nothing that is known speaks against this stage.")), "quiet");
  for (guint i = 0; i < state->reasons->len; i++)
    {
      const RwGateReason *reason = &g_array_index (state->reasons, RwGateReason, i);

      if (!reason->hard)
        add_line (lines, rw_stage_say_reason (reason),
                  reason->covered                  ? "quiet"
                  : reason->gate == RW_GATE_STOP ? "stage-stop"
                                                 : "stage-careful");
    }
}

static void
add_spots (GArray             *lines,
           const RwStageState *state)
{
  if (state->spots->len > 0)
    add_line (lines, g_strdup (_ ("To be measured")), "group");
  for (guint i = 0; i < state->spots->len; i++)
    {
      const Line line = { .type = LINE_SPOT,
                          .text = rw_stage_say_asked (&g_array_index (state->spots, RwAsked, i)),
                          .index = i };

      g_array_append_val (lines, line);
    }
}

static void
add_questions (GArray             *lines,
               const RwStageState *state)
{
  if (state->questions->len > 0)
    add_line (lines, g_strdup (_ ("To be answered")), "group");
  for (guint i = 0; i < state->questions->len; i++)
    {
      const RwQuestioned *questioned = &g_array_index (state->questions, RwQuestioned, i);
      const Line line = { .type = LINE_QUESTION,
                          .text = g_strdup (questioned->question->text),
                          .index = i,
                          .answer = questioned->answer };

      g_array_append_val (lines, line);
    }
}

static void
add_work (GArray             *lines,
          const RwStages     *stages,
          const RwStageState *state)
{
  const RwGateReason *reason = rw_stages_get_reason (stages, state->stage);
  const gboolean blocked = state->status == RW_STAGE_BLOCKED;

  if (reason != NULL && reason->off)
    return;
  if (blocked)
    add_line (lines, g_strdup (_ ("The steps stay hidden until this is put right.")), "quiet");
  else
    {
      add_list (lines, _ ("It needs"), state->words->needs, FALSE);
      add_list (lines, _ ("Steps"), state->words->steps, TRUE);
    }
  add_spots (lines, state);
  add_questions (lines, state);
  add_list (lines, _ ("It ends when"), state->words->ends, FALSE);
  add_list (lines, _ ("Stop when"), state->words->stops, FALSE);
}

static GArray *
gather (const RwStages *stages,
        RwStage         stage)
{
  const RwStageState *state = &stages->stages[stage];
  GArray *lines = lines_new ();
  const gboolean is_current = stages->current == (int) stage;

  /* Translators: number of a stage, its title. */
  add_line (lines, g_strdup_printf (_ ("%u. %s"), (guint) stage + 1, state->words->title), "card-title");
  add_hazard (lines, state->words);
  if (is_current && state->hazard_read)
    add_gate (lines, state);
  add_caution (lines, state);
  if (is_current && !state->hazard_read)
    add_line (lines, g_strdup (_ ("The steps are shown once this was read.")), "quiet");
  add_line (lines, g_strdup (state->words->purpose), "quiet");
  if (is_current && state->hazard_read)
    add_work (lines, stages, state);
  else
    add_list (lines, _ ("It needs"), state->words->needs, FALSE);
  return lines;
}

/* --- what is shown -------------------------------------------------------------------------------- */

static gboolean
are_alike (const GArray *one,
           const GArray *two)
{
  for (guint i = 0; i < one->len && one->len == two->len; i++)
    {
      const Line *a = &g_array_index (one, Line, i), *b = &g_array_index (two, Line, i);

      if (a->type != b->type || a->style != b->style || a->answer != b->answer
          || !g_str_equal (a->text, b->text))
        return FALSE;
    }
  return one->len == two->len;
}

static GtkWidget *
make_label (const char *text,
            const char *style)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  if (style != NULL)
    gtk_widget_add_css_class (label, style);
  return label;
}

static guint
index_of (GtkWidget *widget)
{
  return GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (widget), "index"));
}

static void
spot_cb (GtkWidget   *button,
         RwStageCard *self)
{
  g_signal_emit (self, spot_signal, 0, index_of (button));
}

static void
yes_cb (GtkWidget   *button,
        RwStageCard *self)
{
  g_signal_emit (self, answer_signal, 0, index_of (button), TRUE);
}

static void
no_cb (GtkWidget   *button,
       RwStageCard *self)
{
  g_signal_emit (self, answer_signal, 0, index_of (button), FALSE);
}

static GtkWidget *
make_spot (RwStageCard *self,
           const Line  *line)
{
  GtkWidget *button = gtk_button_new ();

  gtk_button_set_child (GTK_BUTTON (button), make_label (line->text, "numeric"));
  gtk_button_set_has_frame (GTK_BUTTON (button), FALSE);
  gtk_widget_add_css_class (button, "stage-row");
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, line->text, -1);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (line->index));
  g_signal_connect (button, "clicked", G_CALLBACK (spot_cb), self);
  return button;
}

static GtkWidget *
make_answer (RwStageCard *self,
             const Line  *line,
             const char  *word,
             gboolean     given,
             GCallback    func)
{
  g_autofree char *label = g_strdup_printf (given ? "✓ %s" : "%s", word);
  /* Translators: a question, an answer to it. */
  g_autofree char *name = g_strdup_printf (_ ("%s %s"), line->text, label);
  GtkWidget *button = gtk_button_new_with_label (label);

  gtk_widget_add_css_class (button, "stage-answer");
  gtk_widget_set_sensitive (button, self->editable);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  g_object_set_data (G_OBJECT (button), "index", GUINT_TO_POINTER (line->index));
  g_signal_connect (button, "clicked", func, self);
  return button;
}

static GtkWidget *
make_question (RwStageCard *self,
               const Line  *line)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  GtkWidget *answers = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);

  gtk_box_append (GTK_BOX (box), make_label (line->text, NULL));
  gtk_box_append (GTK_BOX (answers), make_answer (self, line, _ ("Yes"), line->answer == RW_ANSWER_YES, G_CALLBACK (yes_cb)));
  gtk_box_append (GTK_BOX (answers), make_answer (self, line, _ ("No"), line->answer == RW_ANSWER_NO, G_CALLBACK (no_cb)));
  gtk_box_append (GTK_BOX (box), answers);
  return box;
}

static void
rebuild (RwStageCard *self)
{
  for (GtkWidget *child; (child = gtk_widget_get_first_child (self->box)) != NULL;)
    gtk_box_remove (GTK_BOX (self->box), child);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const Line *line = &g_array_index (self->lines, Line, i);

      gtk_box_append (GTK_BOX (self->box), line->type == LINE_SPOT       ? make_spot (self, line)
                                           : line->type == LINE_QUESTION ? make_question (self, line)
                                                                         : make_label (line->text, line->style));
    }
}

gboolean
rw_stage_card_show (RwStageCard    *self,
                    const RwStages *stages,
                    RwStage         stage,
                    gboolean        editable)
{
  g_return_val_if_fail (RW_IS_STAGE_CARD (self), FALSE);

  GArray *lines = gather (stages, stage);

  if (are_alike (lines, self->lines) && editable == self->editable)
    {
      g_array_unref (lines);
      return FALSE;
    }
  g_array_unref (self->lines);
  self->lines = lines;
  self->editable = editable;
  rebuild (self);
  return TRUE;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_stage_card_dispose (GObject *object)
{
  RwStageCard *self = RW_STAGE_CARD (object);

  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_stage_card_parent_class)->dispose (object);
}

static void
rw_stage_card_finalize (GObject *object)
{
  g_array_unref (RW_STAGE_CARD (object)->lines);
  G_OBJECT_CLASS (rw_stage_card_parent_class)->finalize (object);
}

static void
rw_stage_card_class_init (RwStageCardClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_stage_card_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_stage_card_finalize;
  spot_signal = g_signal_new ("spot", RW_TYPE_STAGE_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_UINT);
  answer_signal = g_signal_new ("answer", RW_TYPE_STAGE_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                G_TYPE_UINT, G_TYPE_BOOLEAN);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_stage_card_init (RwStageCard *self)
{
  self->lines = lines_new ();
  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  gtk_widget_add_css_class (self->box, "card-inside");
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
}
