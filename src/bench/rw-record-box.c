/* rw-record-box.c: the record of a job's bring-up, folded up until somebody wants it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-record-box.h"

#include <glib/gi18n-lib.h>

#include "rw-compat.h"
#include "rw-report-stages-page.h"
#include "rw-stage-record.h"

/* Pixels; longer records are scrolled. */
static const int highest = 220;

struct _RwRecordBox
{
  GtkWidget  parent_instance;
  RwJob     *job;    /* (nullable) */
  RwStages  *stages; /* (nullable) */
  GtkWidget *fold;
  GtkWidget *words;
};

static guint trouble_signal, done_signal;

G_DEFINE_FINAL_TYPE (RwRecordBox, rw_record_box, GTK_TYPE_WIDGET)

/* --- words ------------------------------------------------------------------------------------------ */

/* As Pango markup. */
static void
append_line (GString            *text,
             const RwRecordLine *line)
{
  g_autofree char *words = g_markup_escape_text (line->text, -1);

  if (line->kind == RW_RECORD_HEADING)
    g_string_append_printf (text, "%s<b>%s</b>", text->len > 0 ? "\n\n" : "", words);
  else
    g_string_append_printf (text, "\n· %s", words);
}

/* From the first line that the list of the stages and the card do not show already. */
static void
append_lines (GString      *text,
              const GArray *lines)
{
  guint i = 1;

  while (i < lines->len && g_array_index (lines, RwRecordLine, i).kind != RW_RECORD_HEADING)
    i++;
  for (; i < lines->len; i++)
    append_line (text, &g_array_index (lines, RwRecordLine, i));
}

static char *
say_head (const RwStages *stages)
{
  const guint n = stages->unproven->len;

  if (n == 0)
    return g_strdup (_ ("Record"));
  /* Translators: number of sentences in the record that say what nobody proved. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Record: %u left unproven", "Record: %u left unproven", n), n);
}

void
rw_record_box_show (RwRecordBox *self,
                    RwJob       *job,
                    RwStages    *stages)
{
  g_return_if_fail (RW_IS_RECORD_BOX (self) && stages != NULL);

  g_autoptr (GArray) lines = rw_stage_record_list (stages);
  g_autoptr (GString) text = g_string_new (NULL);
  g_autofree char *head = say_head (stages);

  g_set_object (&self->job, job);
  g_clear_pointer (&self->stages, rw_stages_unref);
  self->stages = rw_stages_ref (stages);
  append_lines (text, lines);
  gtk_expander_set_label (GTK_EXPANDER (self->fold), head);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->fold), GTK_ACCESSIBLE_PROPERTY_LABEL, head, -1);
  if (g_strcmp0 (gtk_label_get_label (GTK_LABEL (self->words)), text->str) != 0)
    gtk_label_set_markup (GTK_LABEL (self->words), text->str);
  gtk_widget_set_visible (GTK_WIDGET (self), text->len > 0);
}

/* --- the file --------------------------------------------------------------------------------------- */

static void
save_chosen (const char *path,
             gpointer    data)
{
  RwRecordBox *self = data;
  g_autoptr (GError) error = NULL;

  if (self->job == NULL)
    return;
  if (!rw_report_stages_save_pdf (self->stages, rw_job_get_session (self->job), path, &error))
    {
      g_signal_emit (self, trouble_signal, 0, error->message);
      return;
    }

  /* Translators: path of a file. */
  g_autofree char *text = g_strdup_printf (_ ("The record was saved as %s."), path);

  g_signal_emit (self, done_signal, 0, text);
}

void
rw_record_box_save (RwRecordBox *self)
{
  g_return_if_fail (RW_IS_RECORD_BOX (self));
  if (self->stages == NULL || self->stages->current < 0)
    g_signal_emit (self, trouble_signal, 0, _ ("There is no record yet: no stage of the bring-up was entered."));
  else
    rw_compat_save_file (GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self))), _ ("Save the record"), "record.pdf", NULL,
                         NULL, save_chosen, self);
}

/* --- the type --------------------------------------------------------------------------------------- */

static void
rw_record_box_dispose (GObject *object)
{
  RwRecordBox *self = RW_RECORD_BOX (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->stages, rw_stages_unref);
  g_clear_pointer (&self->fold, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_record_box_parent_class)->dispose (object);
}

static void
rw_record_box_class_init (RwRecordBoxClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_record_box_dispose;
  trouble_signal = g_signal_new ("trouble", RW_TYPE_RECORD_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                 G_TYPE_STRING);
  done_signal = g_signal_new ("done", RW_TYPE_RECORD_BOX, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                              G_TYPE_STRING);
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_record_box_init (RwRecordBox *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *scroller = gtk_scrolled_window_new ();
  GtkWidget *save = gtk_button_new_with_label (_ ("Save the record…"));

  self->words = gtk_label_new (NULL);
  gtk_label_set_wrap (GTK_LABEL (self->words), TRUE);
  gtk_label_set_xalign (GTK_LABEL (self->words), 0);
  gtk_label_set_selectable (GTK_LABEL (self->words), TRUE);
  gtk_widget_add_css_class (self->words, "caption");
  gtk_widget_set_margin_top (box, 6);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), highest);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->words);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (save), "win.save-record");
  gtk_box_append (GTK_BOX (box), scroller);
  gtk_box_append (GTK_BOX (box), save);
  self->fold = gtk_expander_new (_ ("Record"));
  gtk_expander_set_child (GTK_EXPANDER (self->fold), box);
  gtk_widget_set_parent (self->fold, GTK_WIDGET (self));
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}
