/* rw-call-panel.c: the teacher's side of "call it first".
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-call-panel.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"

struct _RwCallPanel
{
  GtkWidget     parent_instance;
  RwCallDesk   *desk;
  RwProjection *projection;
  RwProfile    *profile; /* (nullable) that the drop-down lists */

  GtkWidget      *scroller;
  GtkWidget      *ask_box;
  GtkWidget      *open_box;
  GtkWidget      *shown_box;
  GtkWidget      *score_box;
  GtkDropDown    *rail;
  GtkDropDown    *place;
  GtkWidget      *ask;
  GtkLabel       *question;
  GtkLabel       *shown_last;
  GtkEntry       *who;
  GtkEntry       *value;
  GtkEntry       *give;
  GtkLabel       *trouble;
  GtkEntry       *lower;
  GtkEntry       *same;
  GtkEntry       *higher;
  GtkLabel       *calls;
  GtkLabel       *waiting;
  GtkCheckButton *hide_here;
  GtkLabel       *answer;
  GtkLabel       *answer_lines;
  GtkGrid        *points;
  GtkGrid        *score;
};

G_DEFINE_FINAL_TYPE (RwCallPanel, rw_call_panel, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_CLOSE,
  SIGNAL_HIDE_HERE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* --- showing -------------------------------------------------------------------------------------- */

/* NULL or "" hides it. */
static void
say (GtkLabel   *label,
     const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static GtkWidget *
make_cell (const char *text,
           gboolean    head,
           gboolean    first,
           gboolean    last)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), last ? 1 : 0);
  gtk_label_set_wrap (GTK_LABEL (label), !last);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  gtk_widget_set_hexpand (label, first);
  gtk_widget_add_css_class (label, head ? "strong" : "numeric");
  return label;
}

void
rw_call_panel_fill_grid (GtkGrid           *grid,
                         const RwCallWords *words)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (grid))) != NULL)
    gtk_grid_remove (grid, child);
  for (guint i = 0; words->cells != NULL && words->cells[i] != NULL; i++)
    {
      const guint column = i % words->n_columns, row = i / words->n_columns;
      GtkWidget *cell = make_cell (words->cells[i], row == 0, column == 0, column + 1 == words->n_columns);

      gtk_grid_attach (grid, cell, (int) column, (int) row, 1, 1);
    }
}

static char *
list_calls (const RwCallRound *round)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < round->calls->len; i++)
    {
      const RwCall *call = round->calls->pdata[i];
      g_autofree char *value = rw_call_words_call (call, round->kind);

      /* Translators: who called, what they called. */
      g_string_append_printf (text, _ ("%s: %s"), call->by, value);
      g_string_append_c (text, '\n');
    }
  if (round->has_hands)
    g_string_append_printf (text, _ ("Hands: lower %u · the same %u · higher %u"), round->hands[RW_CALL_LOWER],
                            round->hands[RW_CALL_SAME], round->hands[RW_CALL_HIGHER]);
  if (text->len > 0 && text->str[text->len - 1] == '\n')
    g_string_truncate (text, text->len - 1);
  return g_string_free (text, FALSE);
}

static void
show_open (RwCallPanel       *self,
           const RwCallRound *round)
{
  g_auto (RwCallWords) words = { 0 };
  g_autofree char *calls = list_calls (round);

  rw_call_words_ask (&words, round, rw_job_get_profile (rw_call_desk_get_job (self->desk)));
  say (self->question, words.title);
  say (self->shown_last, words.lines[0]);
  say (self->calls, calls);
  say (self->waiting, rw_call_desk_get_waiting (self->desk) ? _ ("Now read it: leads there, and keep the value. The calls are revealed with that reading.") : NULL);
}

static void
show_revealed (RwCallPanel       *self,
               const RwCallRound *round)
{
  RwJob *job = rw_call_desk_get_job (self->desk);
  RwReplay *replay = rw_job_get_replay (job);
  g_auto (RwCallWords) words = { 0 };

  rw_call_words_reveal (&words, round, replay != NULL ? rw_replay_get_source (replay) : rw_job_get_session (job));

  g_autofree char *lines = g_strjoinv ("\n", words.lines);

  say (self->answer, words.title);
  say (self->answer_lines, lines);
  rw_call_panel_fill_grid (self->points, &words);
}

static void
show_score (RwCallPanel *self)
{
  g_autoptr (GPtrArray) standings = rw_call_desk_list_standings (self->desk);
  g_auto (RwCallWords) words = { 0 };

  rw_call_words_standings (&words, standings);
  rw_call_panel_fill_grid (self->score, &words);
  gtk_widget_set_visible (self->score_box, standings->len > 0);
}

static void
list_rails (RwCallPanel *self)
{
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);
  RwJob *job = rw_call_desk_get_job (self->desk);
  RwProfile *profile = rw_job_get_profile (job);
  const int index = rw_profile_index_of (profile, rw_job_get_rail (job));

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    gtk_string_list_append (labels, rw_profile_get_rail (profile, i)->label);
  g_clear_pointer (&self->profile, rw_profile_unref);
  self->profile = rw_profile_ref (profile);
  gtk_drop_down_set_model (self->rail, G_LIST_MODEL (labels));
  gtk_drop_down_set_selected (self->rail, index >= 0 ? (guint) index : 0);
  gtk_drop_down_set_selected (self->place, rw_job_get_place (job) == RW_PLACE_WIRE ? RW_PLACE_BOARD : rw_job_get_place (job));
}

void
rw_call_panel_refresh (RwCallPanel *self)
{
  const RwCallRound *open = rw_call_desk_get_open (self->desk), *shown = rw_call_desk_get_shown (self->desk);

  if (rw_call_desk_get_job (self->desk) == NULL)
    return;
  if (open == NULL && (!gtk_widget_get_visible (self->ask_box) || self->profile == NULL))
    list_rails (self);
  gtk_widget_set_visible (self->ask_box, open == NULL);
  gtk_widget_set_visible (self->open_box, open != NULL);
  gtk_widget_set_visible (self->shown_box, open == NULL && shown != NULL);
  if (open != NULL)
    show_open (self, open);
  if (open == NULL && shown != NULL)
    show_revealed (self, shown);
  show_score (self);
  g_signal_emit (self, signals[SIGNAL_HIDE_HERE], 0);
}

static void
changed_cb (RwCallPanel *self)
{
  if (gtk_widget_get_child_visible (GTK_WIDGET (self)))
    rw_call_panel_refresh (self);
  else
    g_signal_emit (self, signals[SIGNAL_HIDE_HERE], 0);
}

/* Whether a projector is open is part of it. */
static void
asked_cb (RwCallPanel *self)
{
  gtk_widget_set_visible (GTK_WIDGET (self->hide_here), !rw_projection_get_open (self->projection));
  g_signal_emit (self, signals[SIGNAL_HIDE_HERE], 0);
}

const char *
rw_call_panel_get_hidden_here (RwCallPanel *self)
{
  const RwCallRound *open = rw_call_desk_get_open (self->desk);

  return open != NULL && !rw_projection_get_open (self->projection) && gtk_check_button_get_active (self->hide_here)
             ? open->rail
             : NULL;
}

/* --- asking --------------------------------------------------------------------------------------- */

static void
list_places (RwCallPanel *self)
{
  g_autoptr (GtkStringList) labels = gtk_string_list_new (NULL);

  for (int place = 0; place < RW_PLACE_WIRE; place++)
    gtk_string_list_append (labels, rw_place_get_label ((RwPlace) place));
  gtk_drop_down_set_model (self->place, G_LIST_MODEL (labels));
}

static void
ask (GtkWidget  *widget,
     const char *name,
     GVariant   *parameter)
{
  RwCallPanel *self = RW_CALL_PANEL (widget);
  const guint rail = gtk_drop_down_get_selected (self->rail);

  if (self->profile == NULL || rail >= rw_profile_get_n_rails (self->profile))
    return;
  rw_call_desk_ask (self->desk, rw_profile_get_rail (self->profile, rail)->id,
                    (RwPlace) gtk_drop_down_get_selected (self->place));
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
}

void
rw_call_panel_begin (RwCallPanel *self)
{
  g_return_if_fail (RW_IS_CALL_PANEL (self));
  asked_cb (self);
  rw_call_panel_refresh (self);
  say (self->trouble, NULL);
  if (rw_call_desk_get_open (self->desk) != NULL)
    gtk_widget_grab_focus (GTK_WIDGET (self->who));
  else
    {
      list_rails (self);
      gtk_widget_grab_focus (self->ask);
    }
}

/* --- taking calls --------------------------------------------------------------------------------- */

/* FALSE: what is wrong is said, and the field has the focus. */
static gboolean
parse (RwCallPanel *self,
       GtkEntry    *entry,
       double      *out,
       gboolean    *has_sign)
{
  g_autoptr (GError) error = NULL;
  RwQuantityTyped typed;

  if (!rw_quantity_parse (gtk_editable_get_text (GTK_EDITABLE (entry)), RW_KIND_DC, &typed, &error) || typed.over)
    {
      say (self->trouble, error != NULL ? error->message : _ ("A call is a number."));
      gtk_widget_grab_focus (GTK_WIDGET (entry));
      return FALSE;
    }
  *out = typed.value;
  *has_sign = typed.has_sign;
  return TRUE;
}

static gboolean
is_empty (GtkEntry *entry)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));

  return *text == '\0';
}

static gboolean
parse_give (RwCallPanel *self,
            double      *give)
{
  gboolean has_sign;

  *give = NAN;
  if (is_empty (self->give))
    return TRUE;
  if (!parse (self, self->give, give, &has_sign))
    return FALSE;
  if (*give > 0)
    return TRUE;
  say (self->trouble, _ ("How far it may be off is a number above 0, or nothing at all."));
  gtk_widget_grab_focus (GTK_WIDGET (self->give));
  return FALSE;
}

static void
add (GtkWidget  *widget,
     const char *name,
     GVariant   *parameter)
{
  RwCallPanel *self = RW_CALL_PANEL (widget);
  const RwCallRound *open = rw_call_desk_get_open (self->desk);
  double value, give;
  gboolean has_sign;

  if (open == NULL)
    return;
  if (is_empty (self->who))
    {
      say (self->trouble, _ ("Who calls? A name, a team or a row."));
      gtk_widget_grab_focus (GTK_WIDGET (self->who));
      return;
    }
  if (!parse (self, self->value, &value, &has_sign) || !parse_give (self, &give))
    return;

  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (rw_call_desk_get_job (self->desk)), open->rail);
  g_autofree char *by = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->who))));

  /* Nobody says the minus of a minus rail; the list shows it. */
  if (rail != NULL && rail->nominal < 0 && !has_sign)
    value = -fabs (value);
  say (self->trouble, NULL);
  gtk_editable_set_text (GTK_EDITABLE (self->who), "");
  gtk_editable_set_text (GTK_EDITABLE (self->value), "");
  gtk_editable_set_text (GTK_EDITABLE (self->give), "");
  rw_call_desk_call (self->desk, by, value, give);
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
}

/* An empty field is no hand. FALSE: what is wrong is said, and the field has the focus. */
static gboolean
parse_hands (RwCallPanel *self,
             GtkEntry    *entry,
             guint       *out)
{
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (entry))));
  guint64 n = 0;

  if (*text != '\0' && !g_ascii_string_to_unsigned (text, 10, 0, RW_CALL_MAX_HANDS, &n, NULL))
    {
      say (self->trouble, _ ("Hands are counted in whole numbers."));
      gtk_widget_grab_focus (GTK_WIDGET (entry));
      return FALSE;
    }
  *out = (guint) n;
  return TRUE;
}

static void
count (GtkWidget  *widget,
       const char *name,
       GVariant   *parameter)
{
  RwCallPanel *self = RW_CALL_PANEL (widget);
  GtkEntry *const entries[RW_N_CALL_SIDES] = { self->lower, self->same, self->higher };
  guint hands[RW_N_CALL_SIDES];

  for (guint i = 0; i < RW_N_CALL_SIDES; i++)
    if (!parse_hands (self, entries[i], &hands[i]))
      return;
  if (hands[0] + hands[1] + hands[2] == 0)
    {
      say (self->trouble, _ ("No hand is counted yet."));
      gtk_widget_grab_focus (GTK_WIDGET (self->lower));
      return;
    }
  say (self->trouble, NULL);
  for (guint i = 0; i < RW_N_CALL_SIDES; i++)
    gtk_editable_set_text (GTK_EDITABLE (entries[i]), "");
  rw_call_desk_count (self->desk, hands[RW_CALL_LOWER], hands[RW_CALL_SAME], hands[RW_CALL_HIGHER]);
  gtk_widget_grab_focus (GTK_WIDGET (self->who));
}

/* Enter in "who" goes on to the value; in the others it adds the call. */
static void
who_activate_cb (RwCallPanel *self)
{
  if (is_empty (self->value))
    gtk_widget_grab_focus (GTK_WIDGET (self->value));
  else
    gtk_widget_activate_action (GTK_WIDGET (self), "panel.add", NULL);
}

static void
add_cb (RwCallPanel *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "panel.add", NULL);
}

static void
count_cb (RwCallPanel *self)
{
  gtk_widget_activate_action (GTK_WIDGET (self), "panel.count", NULL);
}

static void
drop (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwCallPanel *self = RW_CALL_PANEL (widget);

  rw_call_desk_drop (self->desk);
  rw_call_panel_begin (self);
}

static void
clear (GtkWidget  *widget,
       const char *name,
       GVariant   *parameter)
{
  RwCallPanel *self = RW_CALL_PANEL (widget);

  rw_call_desk_clear (self->desk);
  rw_call_panel_begin (self);
}

static void
close_panel (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  rw_call_desk_clear (RW_CALL_PANEL (widget)->desk);
  g_signal_emit (widget, signals[SIGNAL_CLOSE], 0);
}

static gboolean
escape_cb (GtkWidget *widget,
           GVariant  *arguments,
           gpointer   data)
{
  close_panel (widget, NULL, NULL);
  return TRUE;
}

static void
hide_here_cb (RwCallPanel *self)
{
  g_signal_emit (self, signals[SIGNAL_HIDE_HERE], 0);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_call_panel_dispose (GObject *object)
{
  RwCallPanel *self = RW_CALL_PANEL (object);

  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_CALL_PANEL);
  g_clear_object (&self->desk);
  g_clear_object (&self->projection);
  g_clear_pointer (&self->profile, rw_profile_unref);
  G_OBJECT_CLASS (rw_call_panel_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, scroller);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, ask_box);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, open_box);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, shown_box);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, score_box);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, rail);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, place);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, ask);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, question);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, shown_last);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, who);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, value);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, give);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, trouble);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, lower);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, same);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, higher);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, calls);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, waiting);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, hide_here);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, answer);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, answer_lines);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, points);
  gtk_widget_class_bind_template_child (widget_class, RwCallPanel, score);
}

static void
rw_call_panel_class_init (RwCallPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_call_panel_dispose;
  signals[SIGNAL_CLOSE] = g_signal_new ("close", RW_TYPE_CALL_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  signals[SIGNAL_HIDE_HERE] = g_signal_new ("hide-here", RW_TYPE_CALL_PANEL, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                            G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "panel.ask", NULL, ask);
  gtk_widget_class_install_action (widget_class, "panel.add", NULL, add);
  gtk_widget_class_install_action (widget_class, "panel.count", NULL, count);
  gtk_widget_class_install_action (widget_class, "panel.drop", NULL, drop);
  gtk_widget_class_install_action (widget_class, "panel.clear", NULL, clear);
  gtk_widget_class_install_action (widget_class, "panel.close", NULL, close_panel);
  gtk_widget_class_add_binding (widget_class, GDK_KEY_Escape, 0, escape_cb, NULL);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "callpanel");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-call-panel.ui");
  bind_children (widget_class);
}

static void
rw_call_panel_init (RwCallPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Call it first"), -1);
  list_places (self);
  g_signal_connect_swapped (self->who, "activate", G_CALLBACK (who_activate_cb), self);
  g_signal_connect_swapped (self->value, "activate", G_CALLBACK (add_cb), self);
  g_signal_connect_swapped (self->give, "activate", G_CALLBACK (add_cb), self);
  g_signal_connect_swapped (self->lower, "activate", G_CALLBACK (count_cb), self);
  g_signal_connect_swapped (self->same, "activate", G_CALLBACK (count_cb), self);
  g_signal_connect_swapped (self->higher, "activate", G_CALLBACK (count_cb), self);
  g_signal_connect_swapped (self->hide_here, "toggled", G_CALLBACK (hide_here_cb), self);
}

GtkWidget *
rw_call_panel_new (RwCallDesk   *desk,
                   RwProjection *projection)
{
  RwCallPanel *self = g_object_new (RW_TYPE_CALL_PANEL, NULL);

  self->desk = g_object_ref (desk);
  self->projection = g_object_ref (projection);
  g_signal_connect_object (desk, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (projection, "asked", G_CALLBACK (asked_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
