/* rw-entry-row.c: where readings are typed.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-entry-row.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-compat.h"
#include "rw-quantity.h"
#include "rw-typed-check.h"
#include "rw-wrap-box.h"

struct _RwEntryRow
{
  GtkWidget    parent_instance;
  RwJob       *job;
  GtkWidget   *box;
  GtkWidget   *question_box;
  GtkLabel    *question;
  GtkButton   *take_meant;
  GtkButton   *take_typed;
  GtkButton   *retype;
  GtkDropDown *rail;
  GtkDropDown *place;
  GtkDropDown *kind;
  GtkEntry    *entry;
  GtkButton   *keep;
  GtkButton   *keep_settled;
  GtkLabel    *status;
  GtkButton   *trim;
  GtkButton   *note;

  gboolean        veiled;  /* no value is shown */
  gboolean        filling; /* the drop-downs follow the job, not a person */
  gboolean        asking;
  RwQuantityTyped typed;   /* what the question is about */
  double          meant;
  guint           waiting_for; /* number of the event whose keeping is to be told; 0 none */
  char           *waiting_text;
};

G_DEFINE_FINAL_TYPE (RwEntryRow, rw_entry_row, GTK_TYPE_WIDGET)

/* What can be typed: volts and ripple; the rest comes from a meter. */
static const RwKind kinds[] = { RW_KIND_DC, RW_KIND_RIPPLE };

/* --- following the job ---------------------------------------------------------------------------- */

static const RwRail *
current_rail (RwEntryRow *self)
{
  return rw_profile_find_rail (rw_job_get_profile (self->job), rw_job_get_rail (self->job));
}

static void
select_silently (RwEntryRow  *self,
                 GtkDropDown *drop,
                 guint        position)
{
  self->filling = TRUE;
  gtk_drop_down_set_selected (drop, position);
  self->filling = FALSE;
}

static void
spot_cb (RwEntryRow *self)
{
  RwProfile *profile = rw_job_get_profile (self->job);
  const int index = rw_profile_index_of (profile, rw_job_get_rail (self->job));
  const RwRail *rail = current_rail (self);
  const RwKind kind = rw_job_get_kind (self->job);
  g_autofree char *label = NULL;

  select_silently (self, self->rail, index >= 0 ? (guint) index : rw_profile_get_n_rails (profile));
  select_silently (self, self->place, rw_job_get_place (self->job));
  if (kind <= RW_KIND_RIPPLE)
    select_silently (self, self->kind, kind);

  /* Translators: rail, place: what the entry is for. */
  label = g_strdup_printf (_ ("Reading of %s, %s"), rail != NULL ? rail->label : _ ("ground"),
                           rw_place_get_label (rw_job_get_place (self->job)));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
  gtk_entry_set_placeholder_text (self->entry, rw_job_get_place (self->job) == RW_PLACE_WIRE ? "mV" : "V");
}

static void
chosen_cb (RwEntryRow *self)
{
  if (self->filling || self->job == NULL)
    return;

  RwProfile *profile = rw_job_get_profile (self->job);
  const guint index = gtk_drop_down_get_selected (self->rail);
  const gboolean ground = index >= rw_profile_get_n_rails (profile);
  const char *rail = ground ? RW_RAIL_GROUND : rw_profile_get_rail (profile, index)->id;
  const RwPlace place = ground ? RW_PLACE_WIRE : (RwPlace) gtk_drop_down_get_selected (self->place);

  rw_job_set_spot (self->job, rail, place, kinds[MIN (gtk_drop_down_get_selected (self->kind), 1)]);
}

static void
live_cb (RwEntryRow *self)
{
  RwReading settled;
  const gboolean offers = rw_live_get_settled (rw_job_get_live (self->job), &settled)
                          && rw_job_can_write (self->job);

  if (offers)
    {
      g_autofree char *value = rw_quantity_format (settled.value, settled.step, settled.kind);
      /* Translators: the settled value of the meter. */
      g_autofree char *label = g_strdup_printf (_ ("Keep %s"), self->veiled ? "…" : value);

      gtk_button_set_label (self->keep_settled, label);
    }
  gtk_widget_set_visible (GTK_WIDGET (self->keep_settled), offers);
}

static void
show_status (RwEntryRow *self,
             const char *text,
             gboolean    error)
{
  gtk_label_set_text (self->status, text);
  gtk_widget_set_visible (GTK_WIDGET (self->status), error || !self->veiled);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->status), text);
  if (error)
    gtk_widget_add_css_class (GTK_WIDGET (self->status), "outside");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->status), "outside");
}

static void
kept_cb (RwEntryRow *self,
         guint       n)
{
  if (self->waiting_for == 0 || n < self->waiting_for)
    return;

  /* Translators: what was kept; it is on the disk now. */
  g_autofree char *text = g_strdup_printf (_ ("kept: %s"), self->waiting_text);

  self->waiting_for = 0;
  show_status (self, text, FALSE);
}

/* A reading was added, by whatever hand: its keeping is told when the disk has it, until it is taken back. */
static void
added_cb (RwEntryRow *self,
          guint       index)
{
  const RwEvent *event = rw_session_get_event (rw_job_get_session (self->job), index);

  if (event->type == RW_EVENT_RETRACT)
    {
      self->waiting_for = 0;
      show_status (self, "", FALSE);
    }
  if (event->type != RW_EVENT_READING)
    return;
  self->waiting_for = event->n;
  g_free (self->waiting_text);
  self->waiting_text = rw_event_describe (event, rw_job_get_profile (self->job));
  show_status (self, _ ("writing…"), FALSE);
}

/* --- keeping -------------------------------------------------------------------------------------- */

static void
end_question (RwEntryRow *self)
{
  self->asking = FALSE;
  gtk_widget_set_visible (self->question_box, FALSE);
}

static void
keep_value (RwEntryRow *self,
            double      value,
            double      step,
            gboolean    over)
{
  end_question (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), "");
  rw_job_keep (self->job, value, step, over);
  if (rw_job_get_place (self->job) != RW_PLACE_WIRE)
    rw_job_move_on (self->job);
  rw_entry_row_focus (self);
}

static char *
question_text (RwSlip      slip,
               const char *typed,
               const char *label)
{
  switch (slip)
    {
    case RW_SLIP_MINUS:
      /* Translators: value typed, rail. */
      return g_strdup_printf (_ ("%s on %s? That rail is negative: is a minus missing?"), typed, label);
    case RW_SLIP_SIGN:
      return g_strdup_printf (_ ("%s on %s? The sign is the other way round: are the leads crossed?"), typed, label);
    case RW_SLIP_SCALE:
      return g_strdup_printf (_ ("%s on %s? Did the decimal point or the unit slip?"), typed, label);
    case RW_SLIP_MAINS:
    case RW_SLIP_NONE:
    default:
      return g_strdup_printf (_ ("%s on %s? That is a mains-sized voltage. If it is true: take the leads away and pull "
                                 "the plug."),
                              typed, label);
    }
}

static void
ask (RwEntryRow *self,
     RwSlip      slip)
{
  const RwKind kind = rw_job_get_kind (self->job);
  const RwRail *rail = current_rail (self);
  g_autofree char *typed = rw_quantity_format (self->typed.value, self->typed.step, kind);
  g_autofree char *text = question_text (slip, typed, rail != NULL ? rail->label : _ ("ground"));
  /* Translators: the value as it was typed; Ctrl+Enter is the key. */
  g_autofree char *as_typed = g_strdup_printf (_ ("Keep %s (Ctrl+Enter)"), typed);

  self->asking = TRUE;
  gtk_label_set_text (self->question, text);
  gtk_button_set_label (self->take_typed, as_typed);
  gtk_widget_set_visible (GTK_WIDGET (self->take_meant), slip != RW_SLIP_MAINS);
  if (slip != RW_SLIP_MAINS)
    {
      const double scale = fabs (self->meant / self->typed.value);
      g_autofree char *meant = rw_quantity_format (self->meant, self->typed.step * scale, kind);
      /* Translators: the value that was probably meant; Enter is the key. */
      g_autofree char *label = g_strdup_printf (_ ("Keep %s (Enter)"), meant);

      gtk_button_set_label (self->take_meant, label);
    }
  gtk_widget_set_visible (self->question_box, TRUE);
}

static void
take_meant_cb (RwEntryRow *self)
{
  if (self->asking && gtk_widget_get_visible (GTK_WIDGET (self->take_meant)))
    keep_value (self, self->meant, self->typed.step * fabs (self->meant / self->typed.value), FALSE);
}

static void
take_typed_cb (RwEntryRow *self)
{
  if (self->asking)
    keep_value (self, self->typed.value, self->typed.step, self->typed.over);
}

static void
retype_cb (RwEntryRow *self)
{
  end_question (self);
  rw_entry_row_focus (self);
}

void
rw_entry_row_keep (RwEntryRow *self)
{
  g_autoptr (GError) error = NULL;
  const RwKind kind = rw_job_get_kind (self->job);

  if (self->asking)
    {
      take_meant_cb (self);
      return;
    }
  if (!rw_quantity_parse (gtk_editable_get_text (GTK_EDITABLE (self->entry)), kind, &self->typed, &error))
    {
      show_status (self, error->message, TRUE);
      return;
    }

  const RwSlip slip = rw_typed_check (current_rail (self), rw_job_get_rail (self->job), rw_job_get_place (self->job),
                                      kind, &self->typed, &self->meant);

  if (slip != RW_SLIP_NONE)
    ask (self, slip);
  else
    keep_value (self, self->typed.value, self->typed.step, self->typed.over);
}

static gboolean
key_cb (GtkEventControllerKey *controller,
        guint                  keyval,
        guint                  keycode,
        GdkModifierType        modifiers,
        RwEntryRow            *self)
{
  if (self->asking && keyval == GDK_KEY_Escape)
    {
      retype_cb (self);
      return TRUE;
    }
  if (self->asking && (keyval == GDK_KEY_Return || keyval == GDK_KEY_KP_Enter)
      && (modifiers & GDK_CONTROL_MASK) != 0)
    {
      take_typed_cb (self);
      return TRUE;
    }
  return FALSE;
}

/* --- public --------------------------------------------------------------------------------------- */

void
rw_entry_row_focus (RwEntryRow *self)
{
  gtk_entry_grab_focus_without_selecting (self->entry);
}

void
rw_entry_row_set_veiled (RwEntryRow *self,
                         gboolean    veiled)
{
  if (self->veiled == veiled)
    return;
  self->veiled = veiled;
  if (self->job == NULL)
    return;
  live_cb (self);
  show_status (self, "", FALSE);
}

void
rw_entry_row_get_note_place (RwEntryRow   *self,
                             GdkRectangle *place)
{
  graphene_rect_t bounds;

  if (!gtk_widget_compute_bounds (GTK_WIDGET (self->note), GTK_WIDGET (self), &bounds))
    bounds = GRAPHENE_RECT_INIT (0, 0, 1, 1);
  *place = (GdkRectangle) { (int) bounds.origin.x, (int) bounds.origin.y, (int) bounds.size.width,
                            (int) bounds.size.height };
}

void
rw_entry_row_start (RwEntryRow *self,
                    const char *text)
{
  end_question (self);
  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  rw_entry_row_focus (self);
  gtk_editable_set_position (GTK_EDITABLE (self->entry), -1);
}

gboolean
rw_entry_row_has_focus (RwEntryRow *self)
{
  GtkWidget *text = gtk_widget_get_first_child (GTK_WIDGET (self->entry));

  return text != NULL && gtk_widget_is_focus (text);
}

gboolean
rw_entry_row_is_empty (RwEntryRow *self)
{
  return gtk_entry_get_text_length (self->entry) == 0;
}

void
rw_entry_row_say (RwEntryRow *self,
                  const char *text)
{
  show_status (self, text, FALSE);
}

static void
fill_rails (RwEntryRow *self)
{
  RwProfile *profile = rw_job_get_profile (self->job);
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    gtk_string_list_append (names, rw_profile_get_rail (profile, i)->label);
  gtk_string_list_append (names, _ ("ground"));
  self->filling = TRUE;
  gtk_drop_down_set_model (self->rail, G_LIST_MODEL (names));
  self->filling = FALSE;
}

void
rw_entry_row_set_job (RwEntryRow *self,
                      RwJob      *job)
{
  g_return_if_fail (RW_IS_ENTRY_ROW (self));
  if (self->job != NULL)
    {
      g_signal_handlers_disconnect_by_data (self->job, self);
      g_signal_handlers_disconnect_by_data (rw_job_get_session (self->job), self);
    }
  end_question (self);
  show_status (self, "", FALSE);
  self->waiting_for = 0;
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  fill_rails (self);
  g_signal_connect_object (job, "spot", G_CALLBACK (spot_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (live_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "kept", G_CALLBACK (kept_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_session (job), "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_visible (GTK_WIDGET (self->trim), rw_job_get_mode (job) == RW_JOB_BENCH);
  spot_cb (self);
  live_cb (self);
}

static void
rw_entry_row_dispose (GObject *object)
{
  RwEntryRow *self = RW_ENTRY_ROW (object);

  g_clear_object (&self->job);
  g_clear_pointer (&self->waiting_text, g_free);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_ENTRY_ROW);
  G_OBJECT_CLASS (rw_entry_row_parent_class)->dispose (object);
}

static void
rw_entry_row_class_init (RwEntryRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_entry_row_dispose;
  g_type_ensure (RW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-entry-row.ui");
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, box);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, question_box);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, question);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, take_meant);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, take_typed);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, retype);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, rail);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, place);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, kind);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, entry);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, keep);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, keep_settled);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, status);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, trim);
  gtk_widget_class_bind_template_child (widget_class, RwEntryRow, note);
}

static void
fill_fixed (RwEntryRow *self)
{
  g_autoptr (GtkStringList) places = gtk_string_list_new (NULL);
  g_autoptr (GtkStringList) kind_names = gtk_string_list_new (NULL);

  /* Shorter words than elsewhere: the row must fit a small screen. In the order of RwPlace. */
  gtk_string_list_append (places, _ ("terminals"));
  gtk_string_list_append (places, _ ("board"));
  gtk_string_list_append (places, _ ("chip"));
  gtk_string_list_append (places, _ ("wire"));
  gtk_string_list_append (kind_names, _ ("DC"));
  gtk_string_list_append (kind_names, _ ("ripple"));
  gtk_drop_down_set_model (self->place, G_LIST_MODEL (places));
  gtk_drop_down_set_model (self->kind, G_LIST_MODEL (kind_names));
  rw_compat_name_drop_down (self->rail, _ ("Rail"));
  rw_compat_name_drop_down (self->place, _ ("Place"));
  rw_compat_name_drop_down (self->kind, _ ("What is measured"));
}

static void
rw_entry_row_init (RwEntryRow *self)
{
  GtkEventController *key = gtk_event_controller_key_new ();

  gtk_widget_init_template (GTK_WIDGET (self));
  fill_fixed (self);
  gtk_event_controller_set_propagation_phase (key, GTK_PHASE_CAPTURE);
  g_signal_connect (key, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), key);
  g_signal_connect_swapped (self->rail, "notify::selected", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->place, "notify::selected", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->kind, "notify::selected", G_CALLBACK (chosen_cb), self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (rw_entry_row_keep), self);
  g_signal_connect_swapped (self->keep, "clicked", G_CALLBACK (rw_entry_row_keep), self);
  g_signal_connect_swapped (self->take_meant, "clicked", G_CALLBACK (take_meant_cb), self);
  g_signal_connect_swapped (self->take_typed, "clicked", G_CALLBACK (take_typed_cb), self);
  g_signal_connect_swapped (self->retype, "clicked", G_CALLBACK (retype_cb), self);
}
