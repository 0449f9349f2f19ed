/* rw-practice-view.c: working on the practice cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Hands do what they can do on a real bench, right or wrong. Two things are stopped: a lead that goes to the mains, by
 * the cabinet itself, and a board that is pulled or plugged with the power on. Both are explained and noted.
 */
#include "config.h"

#include "rw-practice-view.h"

#include <glib/gi18n-lib.h>

#include "rw-job-practice.h"
#include "rw-practice-view-canvas.h"
#include "rw-practice-view-dial.h"
#include "rw-practice-view-looks.h"
#include "rw-practice-wiggle.h"
#include "rw-wrap-box.h"

struct _RwPracticeView
{
  GtkWidget         parent_instance;
  RwJob            *job;
  GtkWidget        *box;
  RwPracticeCanvas *canvas;
  GtkLabel         *selected;
  GtkToggleButton  *power;
  GtkToggleButton  *board;
  RwPracticeDial   *dial;
  GtkLabel         *said;
  GtkLabel         *seen;
  GtkWidget        *write;
  GtkWidget        *end_drill;
  GtkWidget        *new_drill;
  gboolean          filling; /* the controls follow the cabinet, not a person */
  guint             turn[2]; /* of looking and wiggling: what comes next */
  RwPracticeSeen    found;   /* what "Write it down" writes */
};

enum
{
  WARN,
  NEW_DRILL,
  END_DRILL,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwPracticeView, rw_practice_view, GTK_TYPE_WIDGET)

/* --- what is shown -------------------------------------------------------------------------------- */

static RwPracticeCabinet *
cabinet_of (RwPracticeView *self)
{
  return rw_job_get_cabinet (self->job);
}

static void
show_text (GtkLabel   *label,
           const char *text)
{
  if (g_strcmp0 (gtk_label_get_text (label), text != NULL ? text : "") != 0)
    gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_selected (RwPracticeView *self)
{
  RwPracticeScene *scene = rw_practice_canvas_get_scene (self->canvas);
  const int i = rw_practice_canvas_get_selected (self->canvas);
  g_autofree char *words = scene != NULL && i >= 0 ? rw_practice_scene_describe_node (scene, (guint) i) : NULL;

  show_text (self->selected, words != NULL ? words
                                           : _ ("Arrows choose a spot; Enter puts the red lead there, Space the black "
                                                "one. Mouse: left button red, right button black."));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->selected), words);
}

static void
show_said (RwPracticeView *self)
{
  const char *id = rw_job_get_rail (self->job);
  const RwRail *rail = rw_profile_find_rail (rw_job_get_profile (self->job), id);
  g_autofree char *text = g_strdup_printf ("%s, %s", rail != NULL ? rail->label : _ ("ground"),
                                           rw_place_get_label (rw_job_get_place (self->job)));

  show_text (self->said, text);
}

static void
refresh (RwPracticeView *self)
{
  self->filling = TRUE;
  gtk_toggle_button_set_active (self->power, rw_practice_cabinet_get_power (cabinet_of (self)));
  gtk_toggle_button_set_active (self->board, rw_practice_cabinet_get_board_fitted (cabinet_of (self)));
  self->filling = FALSE;
  rw_practice_canvas_refresh (self->canvas);
  rw_practice_dial_refresh (self->dial);
  show_said (self);
}

/* As often as words may change for whoever listens to them. */
static void
tick_cb (RwPracticeView *self)
{
  refresh (self);
  rw_practice_canvas_describe (self->canvas);
}

static void
show_seen (RwPracticeView *self,
           const char     *text)
{
  show_text (self->seen, text != NULL ? text : _ ("Nothing yet: look, wiggle or listen."));
  gtk_widget_set_visible (self->write, self->found.check != NULL);
}

/* --- what is stopped ------------------------------------------------------------------------------ */

static void
warn (RwPracticeView *self,
      const char     *text,
      gboolean        danger)
{
  rw_job_note (self->job, text);
  g_signal_emit (self, signals[WARN], 0, text, danger);
}

static void
lethal_cb (RwPracticeCabinet *cabinet,
           const char        *node,
           const char        *text,
           RwPracticeView    *self)
{
  warn (self, text, TRUE);
}

/* --- hands ---------------------------------------------------------------------------------------- */

static void
set_power (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);
  const RwSaid wanted = rw_practice_cabinet_get_power (cabinet_of (self)) ? RW_SAID_NO : RW_SAID_YES;

  rw_job_set_setup (self->job, (RwSetup) { wanted, RW_SAID_NOT, RW_SAID_NOT });
  refresh (self);
}

static void
set_board (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);
  const gboolean fitted = rw_practice_cabinet_get_board_fitted (cabinet_of (self));

  if (rw_practice_cabinet_get_power (cabinet_of (self)))
    warn (self, fitted ? _ ("The board was to be pulled with the power on. That was stopped: contacts that part under "
                            "current arc, and rails that go one after the other destroy chips. Switch off, wait until "
                            "the rails have fallen, then pull.")
                       : _ ("The board was to be plugged with the power on. That was stopped: whichever contact "
                            "meets first feeds the chips through their inputs. Switch off, wait until the rails have "
                            "fallen, then plug."),
          FALSE);
  else
    rw_job_set_setup (self->job, (RwSetup) { RW_SAID_NOT, fitted ? RW_SAID_NO : RW_SAID_YES, RW_SAID_NOT });
  refresh (self);
}

static void
power_cb (RwPracticeView *self)
{
  if (!self->filling)
    gtk_widget_activate_action (GTK_WIDGET (self), "hands.power", NULL);
}

static void
board_cb (RwPracticeView *self)
{
  if (!self->filling)
    gtk_widget_activate_action (GTK_WIDGET (self), "hands.board", NULL);
}

static void
turn_trim (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);

  rw_job_turn_trim (self->job, g_variant_get_double (parameter));
  refresh (self);
}

static void
let_pass (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);

  rw_job_let_pass (self->job, g_variant_get_double (parameter));
  refresh (self);
}

static void
put (RwPracticeView *self,
     int             i,
     RwPracticeLead  lead)
{
  RwPracticeScene *scene = rw_practice_canvas_get_scene (self->canvas);

  rw_job_put_lead (self->job, lead, i >= 0 && scene != NULL ? scene->of[i]->id : NULL);
  refresh (self);
  show_selected (self);
}

static void
touch_cb (RwPracticeView *self,
          guint           i,
          guint           lead)
{
  put (self, (int) i, (RwPracticeLead) lead);
}

static void
put_here (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);
  const int i = rw_practice_canvas_get_selected (self->canvas);

  if (i >= 0)
    put (self, i, g_str_equal (name, "hands.red") ? RW_PRACTICE_RED : RW_PRACTICE_BLACK);
}

static void
take_off (GtkWidget  *widget,
          const char *name,
          GVariant   *parameter)
{
  put (RW_PRACTICE_VIEW (widget), -1, RW_PRACTICE_RED);
  put (RW_PRACTICE_VIEW (widget), -1, RW_PRACTICE_BLACK);
}

/* --- eyes and ears -------------------------------------------------------------------------------- */

/* What a stick moves there shows on the meter and on the screen. */
static void
shake (RwPracticeView       *self,
       const RwPracticeNode *node)
{
  static const RwPracticeSpot spots[RW_PRACTICE_N_AREAS] = {
    [RW_PRACTICE_AREA_STRIP] = RW_PRACTICE_SPOT_SCREWS,    [RW_PRACTICE_AREA_SUPPLY] = RW_PRACTICE_SPOT_SUPPLY,
    [RW_PRACTICE_AREA_HARNESS] = RW_PRACTICE_SPOT_HARNESS, [RW_PRACTICE_AREA_EDGE] = RW_PRACTICE_SPOT_EDGE,
    [RW_PRACTICE_AREA_BOARD] = RW_PRACTICE_SPOT_BOARD,     [RW_PRACTICE_AREA_SOUND] = RW_PRACTICE_SPOT_BOARD,
    [RW_PRACTICE_AREA_CABINET] = RW_PRACTICE_N_SPOTS,
  };

  if (node != NULL && spots[node->area] < RW_PRACTICE_N_SPOTS)
    rw_practice_cabinet_wiggle (cabinet_of (self), spots[node->area]);
}

static void
look (GtkWidget  *widget,
      const char *name,
      GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);
  const RwPracticeTask sense = g_str_equal (name, "hands.look") ? RW_PRACTICE_LOOKING : RW_PRACTICE_WIGGLING;
  RwPracticeScene *scene = rw_practice_canvas_get_scene (self->canvas);
  const int i = rw_practice_canvas_get_selected (self->canvas);
  const RwPracticeNode *node = i >= 0 ? scene->of[i] : NULL;
  g_autofree char *words = rw_practice_looks_take (self->job, node, sense, &self->turn[sense], &self->found);

  if (sense == RW_PRACTICE_WIGGLING)
    shake (self, node);
  show_seen (self, words);
}

static void
listen_to_it (GtkWidget  *widget,
              const char *name,
              GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);
  g_autofree char *words = rw_practice_looks_listen (self->job, &self->found);

  show_seen (self, words);
}

static void
turn_dial (GtkWidget  *widget,
           const char *name,
           GVariant   *parameter)
{
  rw_practice_dial_turn (RW_PRACTICE_VIEW (widget)->dial, g_str_equal (name, "hands.range"));
}

static void
write_down (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (widget);

  if (self->found.check == NULL)
    return;

  RwEvent event = rw_event_make_finding (0, self->found.check, self->found.outcome);

  rw_job_add (self->job, &event);
  self->found = (RwPracticeSeen) { 0 };
  gtk_widget_set_visible (self->write, FALSE);
}

/* --- the job -------------------------------------------------------------------------------------- */

static void
leave_job (RwPracticeView *self)
{
  g_signal_handlers_disconnect_by_data (self->job, self);
  g_signal_handlers_disconnect_by_data (cabinet_of (self), self);
  rw_job_set_leads_by_hand (self->job, FALSE);
}

void
rw_practice_view_set_job (RwPracticeView *self,
                          RwJob          *job)
{
  g_return_if_fail (RW_IS_PRACTICE_VIEW (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    leave_job (self);
  rw_practice_canvas_set_job (self->canvas, job);
  if (job == NULL)
    rw_practice_dial_set_job (self->dial, NULL);
  g_set_object (&self->job, job);
  self->found = (RwPracticeSeen) { 0 };
  if (job == NULL)
    return;
  rw_job_set_leads_by_hand (job, TRUE);
  g_signal_connect_object (job, "tick", G_CALLBACK (tick_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "live", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "changed", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "spot", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (cabinet_of (self), "lethal", G_CALLBACK (lethal_cb), self, 0);
  rw_practice_dial_set_job (self->dial, job);
  refresh (self);
  show_selected (self);
  show_seen (self, NULL);
}

void
rw_practice_view_focus (RwPracticeView *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->canvas));
}

gboolean
rw_practice_view_has_picture_focus (RwPracticeView *self)
{
  return gtk_widget_get_focus_child (GTK_WIDGET (self->canvas)) != NULL;
}

void
rw_practice_view_step (RwPracticeView *self,
                       RwBenchWay      way)
{
  rw_practice_canvas_step (self->canvas, way);
}

void
rw_practice_view_set_drill (RwPracticeView *self,
                            gboolean        drill)
{
  gtk_widget_set_visible (self->end_drill, drill);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
new_drill_cb (RwPracticeView *self)
{
  g_signal_emit (self, signals[NEW_DRILL], 0);
}

static void
end_drill_cb (RwPracticeView *self)
{
  g_signal_emit (self, signals[END_DRILL], 0);
}

static void
rw_practice_view_dispose (GObject *object)
{
  RwPracticeView *self = RW_PRACTICE_VIEW (object);

  if (self->job != NULL)
    leave_job (self);
  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_PRACTICE_VIEW);
  G_OBJECT_CLASS (rw_practice_view_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, box);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, canvas);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, selected);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, power);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, board);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, dial);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, said);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, seen);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, write);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, end_drill);
  gtk_widget_class_bind_template_child (widget_class, RwPracticeView, new_drill);
}

static void
install_actions (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "hands.power", NULL, set_power);
  gtk_widget_class_install_action (widget_class, "hands.board", NULL, set_board);
  gtk_widget_class_install_action (widget_class, "hands.trim", "d", turn_trim);
  gtk_widget_class_install_action (widget_class, "hands.pass", "d", let_pass);
  gtk_widget_class_install_action (widget_class, "hands.red", NULL, put_here);
  gtk_widget_class_install_action (widget_class, "hands.black", NULL, put_here);
  gtk_widget_class_install_action (widget_class, "hands.off", NULL, take_off);
  gtk_widget_class_install_action (widget_class, "hands.look", NULL, look);
  gtk_widget_class_install_action (widget_class, "hands.wiggle", NULL, look);
  gtk_widget_class_install_action (widget_class, "hands.listen", NULL, listen_to_it);
  gtk_widget_class_install_action (widget_class, "hands.write", NULL, write_down);
  gtk_widget_class_install_action (widget_class, "hands.mode", NULL, turn_dial);
  gtk_widget_class_install_action (widget_class, "hands.range", NULL, turn_dial);
}

static void
rw_practice_view_class_init (RwPracticeViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_practice_view_dispose;
  signals[WARN] = g_signal_new ("warn", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                G_TYPE_STRING, G_TYPE_BOOLEAN);
  signals[NEW_DRILL] = g_signal_new ("new-drill", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  signals[END_DRILL] = g_signal_new ("end-drill", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                     G_TYPE_NONE, 0);
  g_type_ensure (RW_TYPE_PRACTICE_CANVAS);
  g_type_ensure (RW_TYPE_PRACTICE_DIAL);
  g_type_ensure (RW_TYPE_WRAP_BOX);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-practice-view.ui");
  bind_children (widget_class);
  install_actions (widget_class);
}

static void
rw_practice_view_init (RwPracticeView *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->canvas, "touch", G_CALLBACK (touch_cb), self);
  g_signal_connect_swapped (self->canvas, "chosen", G_CALLBACK (show_selected), self);
  g_signal_connect_swapped (self->power, "toggled", G_CALLBACK (power_cb), self);
  g_signal_connect_swapped (self->board, "toggled", G_CALLBACK (board_cb), self);
  g_signal_connect_swapped (self->new_drill, "clicked", G_CALLBACK (new_drill_cb), self);
  g_signal_connect_swapped (self->end_drill, "clicked", G_CALLBACK (end_drill_cb), self);
}
