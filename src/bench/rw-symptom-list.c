/* rw-symptom-list.c: every symptom, in groups.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-symptom-list.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-search-list.h"

struct _RwSymptomList
{
  GtkWidget     parent_instance;
  RwJob        *job;
  RwSearchList *list;
  gboolean      filling; /* toggles are being set, not pressed */
};

/* In the order in which they are shown. Any other group comes last, under its own id. */
static const struct
{
  const char *id;
  const char *title;
} groups[] = {
  { "game", N_ ("The game") },      { "power", N_ ("Power") }, { "heat", N_ ("Heat and smell") },
  { "picture", N_ ("Picture") },    { "sound", N_ ("Sound") }, { "controls", N_ ("Controls and coins") },
};

/* Pixels: of the list at most, and between its rows. */
static const int most_height = 480, row_spacing = 3;

G_DEFINE_FINAL_TYPE (RwSymptomList, rw_symptom_list, GTK_TYPE_WIDGET)

const RwSymptomSeen *
rw_symptom_list_find_seen (RwJob      *job,
                           const char *id)
{
  RwBenchState *state = rw_job_get_state (job);

  for (guint i = 0; i < rw_bench_state_get_n_symptoms (state); i++)
    if (g_str_equal (rw_bench_state_get_symptom (state, i)->id, id))
      return rw_bench_state_get_symptom (state, i);
  return NULL;
}

/* --- rows ----------------------------------------------------------------------------------------- */

static void
toggled_cb (GtkToggleButton *toggle,
            RwSymptomList   *self)
{
  const char *id = g_object_get_data (G_OBJECT (toggle), "symptom");
  const RwSymptomState state = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (toggle), "state"));

  if (self->filling || self->job == NULL)
    return;

  const RwSymptomSeen *seen = rw_symptom_list_find_seen (self->job, id);

  if (gtk_toggle_button_get_active (toggle))
    {
      RwEvent event = rw_event_make_symptom (0, id, state);

      rw_job_add (self->job, &event);
    }
  else if (seen != NULL && seen->state == state)
    rw_job_retract (self->job, seen->n);
}

static GtkWidget *
make_toggle (RwSymptomList   *self,
             const RwSymptom *symptom,
             RwSymptomState   state,
             const char      *word)
{
  GtkWidget *toggle = gtk_toggle_button_new_with_label (word);
  g_autofree char *label = g_strdup_printf ("%s: %s", symptom->title, word);

  g_object_set_data (G_OBJECT (toggle), "symptom", (gpointer) symptom->id);
  g_object_set_data (G_OBJECT (toggle), "state", GINT_TO_POINTER (state));
  gtk_widget_set_valign (toggle, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (toggle), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  g_signal_connect (toggle, "toggled", G_CALLBACK (toggled_cb), self);
  return toggle;
}

static void
add_row (RwSymptomList   *self,
         const RwSymptom *symptom)
{
  GtkWidget *row = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 6);
  GtkWidget *label = gtk_label_new (symptom->title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 30);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_tooltip_text (label, *symptom->detail != '\0' ? symptom->detail : NULL);
  gtk_box_append (GTK_BOX (row), label);
  gtk_box_append (GTK_BOX (row), make_toggle (self, symptom, RW_SYMPTOM_PRESENT, _ ("seen")));
  gtk_box_append (GTK_BOX (row), make_toggle (self, symptom, RW_SYMPTOM_ABSENT, _ ("not there")));
  rw_search_list_add (self->list, row, symptom->title, symptom->detail);
}

static void
add_heading (RwSymptomList *self,
             const char    *title)
{
  GtkWidget *label = gtk_label_new (title);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_add_css_class (label, "group");
  rw_search_list_add_heading (self->list, label);
}

/* @title NULL: every group that has no place in the order, each under its id. */
static void
add_group (RwSymptomList *self,
           RwKnowledge   *knowledge,
           const char    *group,
           const char    *title)
{
  gboolean begun = FALSE;

  for (guint i = 0; i < rw_knowledge_get_n_symptoms (knowledge); i++)
    {
      const RwSymptom *symptom = rw_knowledge_get_symptom (knowledge, i);

      if (g_strcmp0 (symptom->group, group) != 0)
        continue;
      if (!begun)
        add_heading (self, title);
      begun = TRUE;
      add_row (self, symptom);
    }
}

static gboolean
is_known_group (const char *group)
{
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    if (g_strcmp0 (groups[i].id, group) == 0)
      return TRUE;
  return FALSE;
}

static void
fill (RwSymptomList *self,
      RwKnowledge   *knowledge)
{
  g_autoptr (GHashTable) done = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    add_group (self, knowledge, groups[i].id, _ (groups[i].title));
  for (guint i = 0; i < rw_knowledge_get_n_symptoms (knowledge); i++)
    {
      const char *group = rw_knowledge_get_symptom (knowledge, i)->group;

      if (!is_known_group (group) && g_hash_table_add (done, (gpointer) (group != NULL ? group : "")))
        add_group (self, knowledge, group, group != NULL ? group : _ ("Others"));
    }
}

static void
set_toggles (RwSymptomList *self)
{
  self->filling = TRUE;
  for (GtkWidget *row = rw_search_list_get_first (self->list); row != NULL; row = gtk_widget_get_next_sibling (row))
    for (GtkWidget *child = gtk_widget_get_first_child (row); child != NULL; child = gtk_widget_get_next_sibling (child))
      if (GTK_IS_TOGGLE_BUTTON (child))
        {
          const RwSymptomSeen *seen = rw_symptom_list_find_seen (self->job, g_object_get_data (G_OBJECT (child), "symptom"));
          const RwSymptomState state = GPOINTER_TO_INT (g_object_get_data (G_OBJECT (child), "state"));

          gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (child), seen != NULL && seen->state == state);
        }
  self->filling = FALSE;
}

void
rw_symptom_list_refresh (RwSymptomList *self)
{
  g_return_if_fail (RW_IS_SYMPTOM_LIST (self));

  if (self->job == NULL)
    return;

  RwKnowledge *knowledge = rw_job_get_knowledge (self->job);

  if (knowledge != NULL && rw_search_list_is_empty (self->list))
    fill (self, knowledge);
  set_toggles (self);
}

void
rw_symptom_list_set_job (RwSymptomList *self,
                         RwJob         *job)
{
  g_return_if_fail (RW_IS_SYMPTOM_LIST (self));
  rw_search_list_clear (self->list);
  g_set_object (&self->job, job);
  rw_symptom_list_refresh (self);
}

/* --- searching ------------------------------------------------------------------------------------ */

/* What is typed while the keyboard is elsewhere goes on at the end. */
static void
changed_cb (GtkWidget *field)
{
  if (*gtk_editable_get_text (GTK_EDITABLE (field)) != '\0' && gtk_widget_get_mapped (field)
      && !gtk_widget_has_focus (field))
    gtk_editable_set_position (GTK_EDITABLE (field), -1);
}

static gboolean
search_key_cb (GtkEventControllerKey *controller,
               guint                  keyval,
               guint                  keycode,
               GdkModifierType        modifiers,
               RwSymptomList         *self)
{
  GtkWidget *row = rw_search_list_find (self->list);

  if ((keyval != GDK_KEY_Return && keyval != GDK_KEY_KP_Enter) || row == NULL
      || !rw_search_list_is_searching (self->list))
    return FALSE;

  GtkWidget *absent = gtk_widget_get_last_child (row);
  GtkWidget *toggle = (modifiers & GDK_CONTROL_MASK) != 0 ? absent : gtk_widget_get_prev_sibling (absent);

  gtk_toggle_button_set_active (GTK_TOGGLE_BUTTON (toggle), TRUE);
  gtk_editable_set_text (GTK_EDITABLE (rw_search_list_get_field (self->list)), "");
  return TRUE;
}

void
rw_symptom_list_start (RwSymptomList *self)
{
  g_return_if_fail (RW_IS_SYMPTOM_LIST (self));
  rw_search_list_reset (self->list);

  GtkWidget *row = rw_search_list_find (self->list);

  if (row != NULL)
    gtk_widget_grab_focus (gtk_widget_get_next_sibling (gtk_widget_get_first_child (row)));
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_symptom_list_dispose (GObject *object)
{
  RwSymptomList *self = RW_SYMPTOM_LIST (object);

  g_clear_object (&self->job);
  if (self->list != NULL)
    gtk_widget_unparent (GTK_WIDGET (g_steal_pointer (&self->list)));
  G_OBJECT_CLASS (rw_symptom_list_parent_class)->dispose (object);
}

static void
rw_symptom_list_class_init (RwSymptomListClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_symptom_list_dispose;
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "symptomlist");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
rw_symptom_list_init (RwSymptomList *self)
{
}

GtkWidget *
rw_symptom_list_new (GtkWidget *popover)
{
  RwSymptomList *self = g_object_new (RW_TYPE_SYMPTOM_LIST, NULL);

  GtkWidget *list = rw_search_list_new (popover, _ ("Search the symptoms"),
                                        _ ("Enter: the first one is seen. Ctrl+Enter: it is not there."), most_height,
                                        row_spacing);
  GtkWidget *field = rw_search_list_get_field (RW_SEARCH_LIST (list));
  GtkEventController *key = gtk_event_controller_key_new ();

  self->list = RW_SEARCH_LIST (list);
  gtk_widget_set_parent (list, GTK_WIDGET (self));
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (search_key_cb), self);
  gtk_widget_add_controller (field, key);
  g_signal_connect (field, "changed", G_CALLBACK (changed_cb), NULL);
  g_signal_connect (field, "search-started", G_CALLBACK (gtk_widget_grab_focus), NULL);
  return GTK_WIDGET (self);
}
