/* rw-symptom-picker.c: what the cabinet does.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A chip stands for a symptom spoken of: "seen", "not there" (≠) or "cured" (✔). Pressing it takes the last
 * word on it back.
 */
#include "config.h"

#include "rw-symptom-picker.h"

#include <glib/gi18n-lib.h>

#include "rw-drill.h"
#include "rw-symptom-list.h"

struct _RwSymptomPicker
{
  GtkWidget      parent_instance;
  RwJob         *job;
  GtkWidget     *flow;
  GtkWidget     *complaint; /* of a drill: what its player said */
  GtkWidget     *complaint_scroller;
  GtkWidget     *add;
  RwSymptomList *list; /* in the popover */
};

/* Pixels: of the complaint, two lines at least and four at most. */
static const int least_complaint = 32, most_complaint = 68;
static const int complaint_chars = 36; /* of a line */

static guint closed_signal;

G_DEFINE_FINAL_TYPE (RwSymptomPicker, rw_symptom_picker, GTK_TYPE_WIDGET)

static void
remove_children (GtkWidget *box)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (box)) != NULL)
    gtk_flow_box_remove (GTK_FLOW_BOX (box), child);
}

/* --- chips ---------------------------------------------------------------------------------------- */

static void
chip_cb (GtkWidget       *chip,
         RwSymptomPicker *self)
{
  rw_job_retract (self->job, GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (chip), "event")));
}

static void
add_chip (RwSymptomPicker     *self,
          const RwSymptomSeen *seen)
{
  const char *title = rw_job_symptom_title (self->job, seen->id);
  const char *sign = seen->state == RW_SYMPTOM_PRESENT ? "" : seen->state == RW_SYMPTOM_ABSENT ? "≠ " : "✔ ";
  g_autofree char *text = g_strdup_printf ("%s%s ×", sign, title);
  /* Translators: title of a symptom; the button takes back what was said of it. */
  g_autofree char *label = g_strdup_printf (seen->state == RW_SYMPTOM_PRESENT  ? _ ("Seen: %s. Take back")
                                            : seen->state == RW_SYMPTOM_ABSENT ? _ ("Not there: %s. Take back")
                                                                               : _ ("Cured: %s. Take back"),
                                            title);
  GtkWidget *chip = gtk_button_new_with_label (text);
  GtkWidget *child = gtk_flow_box_child_new ();

  gtk_widget_add_css_class (chip, "chip");
  gtk_label_set_ellipsize (GTK_LABEL (gtk_button_get_child (GTK_BUTTON (chip))), PANGO_ELLIPSIZE_END);
  gtk_widget_set_tooltip_text (chip, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (chip), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_object_set_data (G_OBJECT (chip), "event", GUINT_TO_POINTER (seen->n));
  g_signal_connect (chip, "clicked", G_CALLBACK (chip_cb), self);
  gtk_widget_set_sensitive (chip, rw_job_can_write (self->job));
  gtk_widget_set_focusable (child, FALSE);
  gtk_flow_box_child_set_child (GTK_FLOW_BOX_CHILD (child), chip);
  gtk_flow_box_insert (GTK_FLOW_BOX (self->flow), child, -1);
}

/* --- the complaint -------------------------------------------------------------------------------- */

/* Chips say the same once it was taken down. */
static gboolean
is_taken_down (RwJob *job)
{
  const RwPracticeDrill *drill = rw_drill_of (job);

  for (guint i = 0; drill != NULL && i < drill->n_symptoms; i++)
    if (rw_symptom_list_find_seen (job, drill->symptoms[i]) == NULL)
      return FALSE;
  return drill == NULL || drill->n_symptoms > 0;
}

static void
show_complaint (RwSymptomPicker *self)
{
  g_autofree char *words = self->job != NULL ? rw_drill_dup_complaint (self->job) : NULL;

  gtk_label_set_text (GTK_LABEL (self->complaint), words != NULL ? words : "");
  gtk_widget_set_visible (self->complaint_scroller, words != NULL && !is_taken_down (self->job));
}

/* --- following ------------------------------------------------------------------------------------ */

static void
refresh (RwSymptomPicker *self)
{
  remove_children (self->flow);
  show_complaint (self);
  if (self->job == NULL)
    return;

  RwBenchState *state = rw_job_get_state (self->job);

  /* Shown before it is filled: GTK 4.8 does not measure anew what was put into a hidden box. */
  gtk_widget_set_visible (self->flow, rw_bench_state_get_n_symptoms (state) > 0);
  /* GTK 4.8 lets Tab stop for good at a flow box whose children cannot take the focus. */
  gtk_widget_set_can_focus (self->flow, rw_job_can_write (self->job));
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    add_chip (self, rw_bench_state_get_symptom (state, i));
  gtk_widget_set_sensitive (self->add, rw_job_can_write (self->job));
  rw_symptom_list_refresh (self->list);
}

void
rw_symptom_picker_set_job (RwSymptomPicker *self,
                           RwJob           *job)
{
  g_return_if_fail (RW_IS_SYMPTOM_PICKER (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  g_set_object (&self->job, job);
  rw_symptom_list_set_job (self->list, job);
  if (job != NULL)
    {
      g_signal_connect_object (job, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "advice", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
    }
  refresh (self);
}

void
rw_symptom_picker_open (RwSymptomPicker *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->add));
  rw_symptom_list_start (self->list);
}

static void
rw_symptom_picker_dispose (GObject *object)
{
  RwSymptomPicker *self = RW_SYMPTOM_PICKER (object);
  GtkWidget *child;

  g_clear_object (&self->job);
  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self))) != NULL)
    gtk_widget_unparent (child);
  G_OBJECT_CLASS (rw_symptom_picker_parent_class)->dispose (object);
}

static void
rw_symptom_picker_class_init (RwSymptomPickerClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_symptom_picker_dispose;
  closed_signal = g_signal_new ("closed", RW_TYPE_SYMPTOM_PICKER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "symptompicker");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BOX_LAYOUT);
}

static void
closed_cb (RwSymptomPicker *self)
{
  g_signal_emit (self, closed_signal, 0);
}

static GtkWidget *
make_popover (RwSymptomPicker *self)
{
  GtkWidget *popover = gtk_popover_new ();

  self->list = RW_SYMPTOM_LIST (rw_symptom_list_new (popover));
  gtk_popover_set_child (GTK_POPOVER (popover), GTK_WIDGET (self->list));
  g_signal_connect_swapped (popover, "closed", G_CALLBACK (closed_cb), self);
  return popover;
}

/* A label that wraps is taller in a narrow side than it says; a scroller says what it takes. */
static void
make_complaint (RwSymptomPicker *self)
{
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());

  self->complaint = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->complaint), 0);
  gtk_label_set_yalign (GTK_LABEL (self->complaint), 0);
  gtk_label_set_wrap (GTK_LABEL (self->complaint), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (self->complaint), complaint_chars);
  gtk_scrolled_window_set_policy (scroller, GTK_POLICY_NEVER, GTK_POLICY_EXTERNAL);
  gtk_scrolled_window_set_propagate_natural_height (scroller, TRUE);
  gtk_scrolled_window_set_min_content_height (scroller, least_complaint);
  gtk_scrolled_window_set_max_content_height (scroller, most_complaint);
  gtk_scrolled_window_set_child (scroller, self->complaint);
  self->complaint_scroller = GTK_WIDGET (scroller);
  gtk_widget_set_visible (self->complaint_scroller, FALSE);
  gtk_widget_set_parent (self->complaint_scroller, GTK_WIDGET (self));
}

static void
rw_symptom_picker_init (RwSymptomPicker *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *title = gtk_label_new (_ ("Symptoms"));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->flow = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->flow), 3);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->flow), 6);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (self->flow), 6);
  self->add = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->add), _ ("What does it do?"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->add), make_popover (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Choose symptoms"), -1);
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_set_hexpand (title, TRUE);
  gtk_widget_add_css_class (title, "section");
  gtk_box_append (GTK_BOX (head), title);
  gtk_box_append (GTK_BOX (head), self->add);
  gtk_widget_set_parent (head, GTK_WIDGET (self));
  make_complaint (self);
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
}
