/* rw-practice-view-canvas.c: the picture of the practice bench with its spots.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The picture is one drawing; over it lies a widget a spot that draws nothing but has the focus, the name and the
 * clicks. Both come from one layout, made when the size, the text or the scene's words change.
 */
#include "config.h"

#include "rw-practice-view-canvas.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-practice-view-dot.h"

static const int least_width = 600, least_height = 370; /* pixels at text scale 1 */
static const double most_growth = 1.8;

struct _RwPracticeCanvas
{
  GtkWidget        parent_instance;
  RwJob           *job;
  RwPracticeScene *scene; /* NULL without a job */
  GPtrArray       *spots; /* of RwPracticeDot, one a node */
  RwBenchLayout    layout;
};

enum
{
  TOUCH,
  CHOSEN,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwPracticeCanvas, rw_practice_canvas, GTK_TYPE_WIDGET)

/* --- drawing -------------------------------------------------------------------------------------- */

static const PangoFontDescription *
font_of (RwPracticeCanvas *self)
{
  return pango_context_get_font_description (gtk_widget_get_pango_context (GTK_WIDGET (self)));
}

/* Words and spots grow with the picture, so that a large window is read from further away. */
static double
scale_for (RwPracticeCanvas *self,
           int               width,
           int               height)
{
  const double text = rw_view_get_text_scale (rw_job_get_view (self->job));
  const double room = MIN (width / (text * least_width), height / (text * least_height));

  return text * CLAMP (room, 1, most_growth);
}

static void
make_layout (RwPracticeCanvas *self)
{
  const int width = gtk_widget_get_width (GTK_WIDGET (self)), height = gtk_widget_get_height (GTK_WIDGET (self));

  if (self->scene != NULL)
    rw_bench_layout_make (&self->scene->scene, font_of (self), scale_for (self, width, height), TRUE, width, height,
                          &self->layout);
}

static void
rw_practice_canvas_snapshot (GtkWidget   *widget,
                             GtkSnapshot *snapshot)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (self->scene == NULL || width < 1 || height < 1)
    return;

  const RwTheme *theme = rw_theme_get (rw_view_get_theme (rw_job_get_view (self->job)));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  cairo_set_source_rgb (cr, theme->paper.r, theme->paper.g, theme->paper.b);
  cairo_paint (cr);
  rw_bench_picture_draw (cr, theme, font_of (self), &self->scene->scene, &self->layout);
  cairo_destroy (cr);
}

static void
allocate_spots (RwPracticeCanvas *self)
{
  const double half = MAX (4, MIN (1.5 * self->layout.spot, 0.5 * self->layout.pitch));

  for (guint i = 0; i < self->spots->len; i++)
    {
      const GtkAllocation at = { (int) (self->layout.node[i].x - half), (int) (self->layout.node[i].y - half),
                                 (int) ceil (2 * half), (int) ceil (2 * half) };

      gtk_widget_set_child_visible (self->spots->pdata[i], self->layout.n_labels > 0);
      gtk_widget_size_allocate (self->spots->pdata[i], &at, -1);
    }
}

static void
rw_practice_canvas_size_allocate (GtkWidget *widget,
                                  int        width,
                                  int        height,
                                  int        baseline)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (widget);

  make_layout (self);
  allocate_spots (self);
}

static void
rw_practice_canvas_measure (GtkWidget     *widget,
                            GtkOrientation orientation,
                            int            for_size,
                            int           *minimum,
                            int           *natural,
                            int           *minimum_baseline,
                            int           *natural_baseline)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (widget);

  /* Spots are never larger than the picture; the toolkit wants them to be asked all the same. */
  for (guint i = 0; i < self->spots->len; i++)
    gtk_widget_measure (self->spots->pdata[i], orientation, -1, NULL, NULL, NULL, NULL);

  const double scale = self->job != NULL ? rw_view_get_text_scale (rw_job_get_view (self->job)) : 1;

  *minimum = *natural = (int) (scale * (orientation == GTK_ORIENTATION_HORIZONTAL ? least_width : least_height));
}

/* --- focus ---------------------------------------------------------------------------------------- */

static void
select_spot (RwPracticeCanvas *self,
             int               i)
{
  if (self->scene->scene.selected == i)
    return;
  self->scene->scene.selected = i;
  gtk_widget_queue_draw (GTK_WIDGET (self));
  g_signal_emit (self, signals[CHOSEN], 0);
}

static void
chosen_cb (RwPracticeCanvas *self,
           guint             i)
{
  select_spot (self, (int) i);
}

static void
touch_cb (RwPracticeCanvas *self,
          guint             i,
          guint             lead)
{
  g_signal_emit (self, signals[TOUCH], 0, i, lead);
}

static gboolean
rw_practice_canvas_grab_focus (GtkWidget *widget)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (widget);
  const int i = self->scene != NULL ? MAX (0, self->scene->scene.selected) : -1;

  return i >= 0 && (guint) i < self->spots->len && gtk_widget_grab_focus (self->spots->pdata[i]);
}

static gboolean
has_focus (RwPracticeCanvas *self)
{
  return gtk_widget_get_focus_child (GTK_WIDGET (self)) != NULL;
}

/* One stop of the Tab chain: in to the selected spot, and out again. */
static gboolean
rw_practice_canvas_focus (GtkWidget       *widget,
                          GtkDirectionType direction)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (widget);

  if (has_focus (self) && (direction == GTK_DIR_TAB_FORWARD || direction == GTK_DIR_TAB_BACKWARD))
    return FALSE;
  return rw_practice_canvas_grab_focus (widget);
}

void
rw_practice_canvas_step (RwPracticeCanvas *self,
                         RwBenchWay        way)
{
  g_return_if_fail (RW_IS_PRACTICE_CANVAS (self));
  if (self->scene == NULL)
    return;

  const int to = rw_bench_layout_step (&self->layout, self->spots->len, self->scene->scene.selected, way);

  if (to >= 0)
    gtk_widget_grab_focus (self->spots->pdata[to]);
}

/* --- what is shown -------------------------------------------------------------------------------- */

static void
name_spots (RwPracticeCanvas *self)
{
  for (guint i = 0; i < self->spots->len; i++)
    {
      g_autofree char *name = rw_practice_scene_describe_node (self->scene, i);

      rw_practice_dot_set_name (self->spots->pdata[i], name);
    }
}

void
rw_practice_canvas_describe (RwPracticeCanvas *self)
{
  if (self->scene == NULL)
    return;

  g_autofree char *words = rw_practice_scene_describe (self->scene);

  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, words, -1);
}

void
rw_practice_canvas_refresh (RwPracticeCanvas *self)
{
  g_return_if_fail (RW_IS_PRACTICE_CANVAS (self));
  if (self->scene == NULL)
    return;

  const gboolean fitted = self->scene->scene.fitted;

  if (!rw_practice_scene_refresh (self->scene, self->job))
    return;
  make_layout (self);
  name_spots (self);
  if (self->scene->scene.fitted != fitted)
    gtk_widget_queue_allocate (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
relayout (RwPracticeCanvas *self)
{
  gtk_widget_queue_resize (GTK_WIDGET (self));
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
clear_spots (RwPracticeCanvas *self)
{
  for (guint i = 0; i < self->spots->len; i++)
    gtk_widget_unparent (self->spots->pdata[i]);
  g_ptr_array_set_size (self->spots, 0);
}

static void
add_spots (RwPracticeCanvas *self)
{
  for (guint i = 0; i < self->scene->scene.n_nodes; i++)
    {
      GtkWidget *spot = rw_practice_dot_new (i);

      g_signal_connect_swapped (spot, "touch", G_CALLBACK (touch_cb), self);
      g_signal_connect_swapped (spot, "chosen", G_CALLBACK (chosen_cb), self);
      gtk_widget_set_parent (spot, GTK_WIDGET (self));
      g_ptr_array_add (self->spots, spot);
    }
  name_spots (self);
}

/* Where the red tip is; else the first spot that may be touched. */
static int
first_spot (const RwPracticeScene *scene)
{
  if (scene->scene.red >= 0)
    return scene->scene.red;
  for (guint i = 0; i < scene->scene.n_nodes; i++)
    if (!scene->nodes[i].hazard)
      return (int) i;
  return -1;
}

void
rw_practice_canvas_set_job (RwPracticeCanvas *self,
                            RwJob            *job)
{
  g_return_if_fail (RW_IS_PRACTICE_CANVAS (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (rw_job_get_view (self->job), self);
  clear_spots (self);
  g_clear_pointer (&self->scene, rw_practice_scene_free);
  g_set_object (&self->job, job);
  if (job == NULL)
    return;
  self->scene = rw_practice_scene_new (job);
  self->scene->scene.selected = first_spot (self->scene);
  add_spots (self);
  g_signal_connect_object (rw_job_get_view (job), "notify::theme", G_CALLBACK (gtk_widget_queue_draw), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (rw_job_get_view (job), "notify::text-scale", G_CALLBACK (relayout), self, G_CONNECT_SWAPPED);
  relayout (self);
}

RwPracticeScene *
rw_practice_canvas_get_scene (RwPracticeCanvas *self)
{
  return self->scene;
}

int
rw_practice_canvas_get_selected (RwPracticeCanvas *self)
{
  return self->scene != NULL ? self->scene->scene.selected : -1;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_practice_canvas_dispose (GObject *object)
{
  RwPracticeCanvas *self = RW_PRACTICE_CANVAS (object);

  rw_practice_canvas_set_job (self, NULL);
  G_OBJECT_CLASS (rw_practice_canvas_parent_class)->dispose (object);
}

static void
rw_practice_canvas_finalize (GObject *object)
{
  g_ptr_array_unref (RW_PRACTICE_CANVAS (object)->spots);
  G_OBJECT_CLASS (rw_practice_canvas_parent_class)->finalize (object);
}

static void
rw_practice_canvas_class_init (RwPracticeCanvasClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_practice_canvas_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_practice_canvas_finalize;
  widget_class->snapshot = rw_practice_canvas_snapshot;
  widget_class->measure = rw_practice_canvas_measure;
  widget_class->size_allocate = rw_practice_canvas_size_allocate;
  widget_class->grab_focus = rw_practice_canvas_grab_focus;
  widget_class->focus = rw_practice_canvas_focus;
  signals[TOUCH] = g_signal_new ("touch", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 2,
                                 G_TYPE_UINT, G_TYPE_UINT);
  signals[CHOSEN] = g_signal_new ("chosen", G_TYPE_FROM_CLASS (klass), G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 0);
  gtk_widget_class_set_css_name (widget_class, "practicecanvas");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
}

static void
rw_practice_canvas_init (RwPracticeCanvas *self)
{
  self->spots = g_ptr_array_new ();
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Supply, harness and board"),
                                  -1);
}
