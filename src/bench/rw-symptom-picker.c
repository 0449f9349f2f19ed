/* rw-symptom-picker.c: what the cabinet does.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A chip stands for a symptom spoken of: "seen", "not there" (≠) or "cured" (✔). Pressing it takes the last
 * word on it back. The list has two toggles a symptom.
 */
#include "config.h"

#include "rw-symptom-picker.h"

#include <glib/gi18n-lib.h>

struct _RwSymptomPicker
{
  GtkWidget  parent_instance;
  RwJob     *job;
  GtkWidget *flow;
  GtkWidget *add;
  GtkWidget *list;    /* in the popover */
  guint      n_rows;  /* symptoms in the list; 0: to be filled */
  gboolean   filling; /* toggles are being set, not pressed */
};

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

/* --- the list ------------------------------------------------------------------------------------- */

static const RwSymptomSeen *
find_seen (RwSymptomPicker *self,
           const char      *id)
{
  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    if (g_str_equal (rw_bench_state_get_symptom (state, i)->id, id))
      return rw_bench_state_get_symptom (state, i);
  return NULL;
}

static void
toggled_cb (GtkToggleButton *toggle,
            RwSymptomPicker *self)
{
  const char *id = g_object_get_data (G_OBJECT (toggle), "symptom");
  const RwSymptomState state = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (toggle), "state"));
  const RwSymptomSeen *seen = find_seen (self, id);

  if (self->filling)
    return;
  if (gtk_toggle_button_get_active (toggle))
    {
      RwEvent event = rw_event_make_symptom (0, id, state);

      rw_job_add (self->job, &event);
    }
  else if (seen != NULL && seen->state == state)
    rw_job_retract (self->job, seen->n);
}

static GtkWidget *
add_toggle (RwSymptomPicker *self,
            const RwSymptom *symptom,
            RwSymptomState   state,
            const char      *word)
{
  GtkWidget *toggle = gtk_toggle_button_new_with_label (word);
  g_autofree char *label = g_strdup_printf ("%s: %s", symptom->title, word);

  g_object_set_data (G_OBJECT (toggle), "symptom", (gpointer) symptom->id);
  g_object_set_data (G_OBJECT (toggle), "state", GINT_TO_POINTER (state));
  gtk_accessible_update_property (GTK_ACCESSIBLE (toggle), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect (toggle, "toggled", G_CALLBACK (toggled_cb), self);
  return toggle;
}

static void
add_row (RwSymptomPicker *self,
         const RwSymptom *symptom,
         int              row)
{
  GtkWidget *label = gtk_label_new (symptom->title);
  GtkWidget *seen = add_toggle (self, symptom, RW_SYMPTOM_PRESENT, _ ("seen"));
  GtkWidget *absent = add_toggle (self, symptom, RW_SYMPTOM_ABSENT, _ ("not there"));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_tooltip_text (label, symptom->detail);
  gtk_grid_attach (GTK_GRID (self->list), label, 0, row, 1, 1);
  gtk_grid_attach (GTK_GRID (self->list), seen, 1, row, 1, 1);
  gtk_grid_attach (GTK_GRID (self->list), absent, 2, row, 1, 1);
}

static void
fill_list (RwSymptomPicker *self,
           RwKnowledge     *knowledge)
{
  if (self->n_rows > 0)
    return;
  self->n_rows = rw_knowledge_get_n_symptoms (knowledge);
  for (guint i = 0; i < self->n_rows; i++)
    add_row (self, rw_knowledge_get_symptom (knowledge, i), (int) i);
}

static void
set_toggles (RwSymptomPicker *self)
{
  self->filling = TRUE;
  for (GtkWidget *child = gtk_widget_get_first_child (self->list); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (GTK_IS_TOGGLE_BUTTON (child))
      {
        const RwSymptomSeen *seen = find_seen (self, g_object_get_data (G_OBJECT (child), "symptom"));
        const RwSymptomState state = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (child), "state"));

        gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (child), seen != NULL && seen->state == state);
      }
  self->filling = FALSE;
}

static void
refresh (RwSymptomPicker *self)
{
  remove_children (self->flow);
  if (self->job == NULL)
    return;

  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    add_chip (self, rw_bench_state_get_symptom (state, i));
  gtk_widget_set_visible (self->flow, rw_bench_state_get_n_symptoms (state) > 0);
  gtk_widget_set_sensitive (self->add, rw_job_can_write (self->job));
  set_toggles (self);
}

static void
advice_cb (RwSymptomPicker *self)
{
  RwAdvice *advice = rw_job_get_advice (self->job);

  if (advice != NULL)
    fill_list (self, rw_advice_get_knowledge (advice));
  refresh (self);
}

static void
clear_list (RwSymptomPicker *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_grid_remove (GTK_GRID (self->list), child);
  self->n_rows = 0;
}

void
rw_symptom_picker_set_job (RwSymptomPicker *self,
                           RwJob           *job)
{
  g_return_if_fail (RW_IS_SYMPTOM_PICKER (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  clear_list (self);
  g_set_object (&self->job, job);
  if (job != NULL)
    {
      g_signal_connect_object (job, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (job, "advice", G_CALLBACK (advice_cb), self, G_CONNECT_SWAPPED);
    }
  refresh (self);
}

void
rw_symptom_picker_open (RwSymptomPicker *self)
{
  gtk_menu_button_popup (GTK_MENU_BUTTON (self->add));
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
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->list = gtk_grid_new ();
  gtk_grid_set_column_spacing (GTK_GRID (self->list), 6);
  gtk_grid_set_row_spacing (GTK_GRID (self->list), 3);
  gtk_widget_set_margin_end (self->list, 12);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 480);
  gtk_scrolled_window_set_min_content_width (GTK_SCROLLED_WINDOW (scroller), 420);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  gtk_popover_set_child (GTK_POPOVER (popover), scroller);
  g_signal_connect_swapped (popover, "closed", G_CALLBACK (closed_cb), self);
  return popover;
}

static void
rw_symptom_picker_init (RwSymptomPicker *self)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (self));

  gtk_orientable_set_orientation (GTK_ORIENTABLE (layout), GTK_ORIENTATION_VERTICAL);
  gtk_box_layout_set_spacing (GTK_BOX_LAYOUT (layout), 6);
  self->flow = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->flow), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->flow), 3);
  gtk_flow_box_set_column_spacing (GTK_FLOW_BOX (self->flow), 6);
  gtk_flow_box_set_row_spacing (GTK_FLOW_BOX (self->flow), 6);
  gtk_widget_set_parent (self->flow, GTK_WIDGET (self));
  self->add = gtk_menu_button_new ();
  gtk_menu_button_set_label (GTK_MENU_BUTTON (self->add), _ ("What does it do?"));
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->add), make_popover (self));
  gtk_widget_set_halign (self->add, GTK_ALIGN_START);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->add), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Choose symptoms"), -1);
  gtk_widget_set_parent (self->add, GTK_WIDGET (self));
}
