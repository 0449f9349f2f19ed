/* rw-watch-window.c: a warm-up followed, a wiggle test, and what the meter can see of ripple.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything it says comes from rw-watch-model and rw-watch-wiggle.
 */
#include "config.h"

#include "rw-watch-window.h"

#include <glib/gi18n-lib.h>

#include "rw-watch-model.h"

struct _RwWatchWindow
{
  GtkWindow      parent_instance;
  RwJob         *job;
  RwWatchWiggle *wiggle;
  GtkStringList *rows;
  guint          seen;     /* dips, peaks and steps that were put into the list */
  double         looked;   /* seconds of the job: when the warm-up was worked out last */
  char          *warm_up;  /* (nullable) what stands in the warm-up, so that only news is drawn */

  GtkLabel       *wiggle_words;
  GtkButton      *start;
  GtkLabel       *counts;
  GtkLabel       *together;
  GtkListView    *dips;
  GtkBox         *spots;
  GtkLabel       *where;
  GtkCheckButton *reminders;
  GtkLabel       *ripple;
};

G_DEFINE_FINAL_TYPE (RwWatchWindow, rw_watch_window, GTK_TYPE_WINDOW)

static const double look_every = 2; /* seconds */

/* NULL hides it. */
static void
say (GtkLabel   *label,
     const char *text)
{
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL);
  if (text != NULL && !g_str_equal (gtk_label_get_text (label), text))
    gtk_label_set_text (label, text);
}

/* --- the wiggle test ------------------------------------------------------------------------------ */

static guint
count_all (const RwDips *dips)
{
  return rw_dips_get_count (dips, RW_DIP_DIP) + rw_dips_get_count (dips, RW_DIP_PEAK)
         + rw_dips_get_count (dips, RW_DIP_STEP);
}

static void
list_dips (RwWatchWindow *self,
           const RwDips  *dips)
{
  const guint all = dips != NULL ? count_all (dips) : 0;
  const guint kept = dips != NULL ? rw_dips_get_n (dips) : 0;

  if (all < self->seen)
    {
      gtk_string_list_splice (self->rows, 0, g_list_model_get_n_items (G_LIST_MODEL (self->rows)), NULL);
      self->seen = 0;
    }
  for (guint i = kept - MIN (all - self->seen, kept); i < kept; i++)
    {
      g_autofree char *words = rw_watch_wiggle_describe_dip (self->wiggle, rw_dips_get (dips, i));
      const char *const row[] = { words, NULL };

      gtk_string_list_splice (self->rows, 0, 0, row);
    }
  self->seen = all;
}

static void
show_wiggle (RwWatchWindow *self)
{
  const gboolean any = rw_watch_wiggle_get_rail (self->wiggle) != NULL;
  g_autofree char *words = rw_watch_wiggle_describe (self->wiggle);
  g_autofree char *counts = any ? rw_watch_wiggle_describe_counts (self->wiggle) : NULL;
  g_autofree char *together = any ? rw_watch_wiggle_describe_together (self->wiggle) : NULL;
  const char *label = rw_watch_wiggle_is_running (self->wiggle) ? _ ("Stop (S)") : _ ("Start (S)");

  say (self->wiggle_words, words);
  say (self->counts, counts);
  say (self->together, together);
  if (g_strcmp0 (gtk_button_get_label (self->start), label) != 0)
    gtk_button_set_label (self->start, label);
  list_dips (self, rw_watch_wiggle_get_dips (self->wiggle));
}

static void
start (RwWatchWindow *self)
{
  const RwLive *live = rw_job_get_live (self->job);
  const gboolean there = live->has_value && !g_str_equal (live->sample.rail, RW_LIVE_SOMEWHERE);

  rw_watch_wiggle_start (self->wiggle, rw_job_get_now (self->job),
                         there ? live->sample.rail : rw_job_get_rail (self->job),
                         there ? live->sample.place : rw_job_get_place (self->job));
}

static void
stop (RwWatchWindow *self)
{
  g_autofree char *record = rw_watch_wiggle_dup_record (self->wiggle);

  rw_watch_wiggle_stop (self->wiggle);
  if (record == NULL || !rw_job_can_write (self->job))
    return;

  RwEvent event = rw_event_make_note (0, record);

  rw_job_add (self->job, &event);
}

static void
toggle (GtkWidget  *widget,
        const char *name,
        GVariant   *parameter)
{
  RwWatchWindow *self = RW_WATCH_WINDOW (widget);

  if (rw_watch_wiggle_is_running (self->wiggle))
    stop (self);
  else
    start (self);
}

static void
reset_seen (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  RwEvent event = rw_event_make_mark (0, _ ("reset seen"));

  rw_job_add (RW_WATCH_WINDOW (widget)->job, &event);
}

/* --- the warm-up ---------------------------------------------------------------------------------- */

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

static const char *
verdict_class (RwWarmUpVerdict verdict)
{
  return verdict == RW_WARM_UP_GOOD  ? "inside"
         : verdict == RW_WARM_UP_BAD || verdict == RW_WARM_UP_STEPPED ? "outside"
         : verdict == RW_WARM_UP_TOO_FEW ? NULL : "close";
}

/* A line is broken between points, never within one. */
static char *
say_points (const RwWatchSpot *spot)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (int i = 0; i < RW_WARM_UP_N_POINTS; i++)
    {
      g_autofree char *words = rw_watch_point_words (&spot->read.points[i]);
      g_autoptr (GString) whole = g_string_new (words);

      g_string_replace (whole, " ", "\u00a0", 0);
      g_string_append_printf (text, "%s%s", i > 0 ? " · " : "", whole->str);
    }
  return g_strdup (text->str);
}

static void
add_spot (RwWatchWindow     *self,
          const RwWatchSpot *spot)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *head = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  g_autofree char *name = rw_watch_spot_name (spot);
  g_autofree char *verdict = rw_watch_verdict_words (spot->read.verdict);
  g_autofree char *points = say_points (spot);
  g_autofree char *words = rw_warm_up_describe (&spot->read, spot->rail->nominal);

  gtk_box_append (GTK_BOX (head), make_label (name, "strong"));
  gtk_box_append (GTK_BOX (head), make_label (verdict, verdict_class (spot->read.verdict)));
  gtk_box_append (GTK_BOX (box), head);
  gtk_box_append (GTK_BOX (box), make_label (points, "numeric"));
  gtk_box_append (GTK_BOX (box), make_label (words, NULL));
  gtk_box_append (self->spots, box);
}

/* All that add_spot () says, to tell whether there is news. (transfer full) */
static char *
say_spots (const GArray *spots)
{
  g_autoptr (GString) text = g_string_new (NULL);

  for (guint i = 0; i < spots->len; i++)
    {
      const RwWatchSpot *spot = &g_array_index (spots, RwWatchSpot, i);
      g_autofree char *name = rw_watch_spot_name (spot);
      g_autofree char *points = say_points (spot);
      g_autofree char *words = rw_warm_up_describe (&spot->read, spot->rail->nominal);

      g_string_append_printf (text, "%s\n%s\n%d %s\n", name, points, spot->read.verdict, words);
    }
  return g_strdup (text->str);
}

static void
fill_spots (RwWatchWindow *self,
            const GArray  *spots)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (GTK_WIDGET (self->spots))) != NULL)
    gtk_box_remove (self->spots, child);
  if (spots->len == 0)
    gtk_box_append (self->spots, make_label (_ ("A warm-up begins when power comes on (P), and is read at 0, 5, 15, 30 "
                                                "and 60 minutes at the same spots with the same meter."), NULL));
  for (guint i = 0; i < spots->len; i++)
    add_spot (self, &g_array_index (spots, RwWatchSpot, i));
}

static void
show_warm_up (RwWatchWindow *self)
{
  g_autoptr (GArray) spots = rw_watch_list_spots (rw_job_get_session (self->job), rw_job_get_now (self->job));
  g_autofree char *all = say_spots (spots);
  g_autofree char *where = rw_watch_where_words (spots);

  self->looked = rw_job_get_now (self->job);
  say (self->where, where);
  if (g_strcmp0 (all, self->warm_up) == 0)
    return;
  g_free (self->warm_up);
  self->warm_up = g_steal_pointer (&all);
  fill_spots (self, spots);
}

/* --- ripple --------------------------------------------------------------------------------------- */

/* Title of the check for ripple that is up. (nullable) */
static const char *
find_wanted (RwWatchWindow *self)
{
  RwAdvice *advice = rw_job_get_advice (self->job);
  const RwAdviceCheck *up = advice != NULL ? rw_advice_get_check (advice) : NULL;

  if (up != NULL && up->check->measures && up->check->kind == RW_KIND_RIPPLE)
    return up->check->title;
  return rw_job_get_kind (self->job) == RW_KIND_RIPPLE ? _ ("Ripple") : NULL;
}

static void
show_ripple (RwWatchWindow *self)
{
  RwSession *session = rw_job_get_session (self->job);
  const RwLive *live = rw_job_get_live (self->job);
  const RwReading *sample = live->has_value ? &live->sample : NULL;
  g_autofree char *words = rw_watch_ripple_words (session, sample, sample != NULL ? rw_watch_rate (session, sample) : 0,
                                                  find_wanted (self));

  say (self->ripple, words);
}

/* --- the window ----------------------------------------------------------------------------------- */

static void
tick_cb (RwWatchWindow *self)
{
  const double now = rw_job_get_now (self->job);

  if (now >= self->looked && now - self->looked < look_every)
    return;
  show_warm_up (self);
  show_ripple (self);
}

static void
changed_cb (RwWatchWindow *self)
{
  show_warm_up (self);
  show_ripple (self);
  show_wiggle (self);
}

static void
setup_cb (GtkSignalListItemFactory *factory,
          GtkListItem              *item)
{
  gtk_list_item_set_child (item, make_label ("", "numeric"));
}

static void
bind_cb (GtkSignalListItemFactory *factory,
         GtkListItem              *item)
{
  gtk_label_set_text (GTK_LABEL (gtk_list_item_get_child (item)),
                      gtk_string_object_get_string (gtk_list_item_get_item (item)));
}

static void
rw_watch_window_dispose (GObject *object)
{
  RwWatchWindow *self = RW_WATCH_WINDOW (object);

  g_clear_object (&self->job);
  g_clear_object (&self->wiggle);
  g_clear_pointer (&self->warm_up, g_free);
  G_OBJECT_CLASS (rw_watch_window_parent_class)->dispose (object);
}

static void
bind_children (GtkWidgetClass *widget_class)
{
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, wiggle_words);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, start);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, counts);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, together);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, dips);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, spots);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, where);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, reminders);
  gtk_widget_class_bind_template_child (widget_class, RwWatchWindow, ripple);
}

static void
rw_watch_window_class_init (RwWatchWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_watch_window_dispose;
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-watch-window.ui");
  bind_children (widget_class);
  gtk_widget_class_install_action (widget_class, "watch.toggle", NULL, toggle);
  gtk_widget_class_install_action (widget_class, "watch.reset", NULL, reset_seen);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_s, 0, "watch.toggle", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_m, 0, "watch.reset", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "window.close", NULL);
}

static void
rw_watch_window_init (RwWatchWindow *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkSelectionModel *model;

  gtk_widget_init_template (GTK_WIDGET (self));
  self->rows = gtk_string_list_new (NULL);
  model = GTK_SELECTION_MODEL (gtk_no_selection_new (G_LIST_MODEL (self->rows)));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_list_view_set_factory (self->dips, factory);
  gtk_list_view_set_model (self->dips, model);
  g_object_unref (factory);
  g_object_unref (model);
}

GtkWidget *
rw_watch_window_new (GtkWindow     *parent,
                     RwJob         *job,
                     RwWatchWiggle *wiggle,
                     GSettings     *settings)
{
  RwWatchWindow *self = g_object_new (RW_TYPE_WATCH_WINDOW, "transient-for", parent, NULL);

  self->job = g_object_ref (job);
  self->wiggle = g_object_ref (wiggle);
  if (settings != NULL)
    g_settings_bind (settings, "warm-up-reminders", self->reminders, "active", G_SETTINGS_BIND_DEFAULT);
  gtk_widget_set_visible (GTK_WIDGET (self->reminders), settings != NULL);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "watch.reset", rw_job_can_write (job));
  g_signal_connect_object (wiggle, "changed", G_CALLBACK (show_wiggle), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "advice", G_CALLBACK (show_ripple), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "spot", G_CALLBACK (show_ripple), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (job, "tick", G_CALLBACK (tick_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  return GTK_WIDGET (self);
}
