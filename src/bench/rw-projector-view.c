/* rw-projector-view.c: the picture on the projector.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All is laid out for one height and inked at that of the widget. Chart and trim map are those of the main window, of
 * the projection's own session and view. What is seen is also the accessible description, told anew once a second at
 * most.
 */
#include "config.h"

#include "rw-projector-view.h"

#include <glib/gi18n-lib.h>

#include "rw-chart.h"
#include "rw-projector-picture.h"
#include "rw-trim-map.h"

static const gint64 describe_every = G_USEC_PER_SEC;

struct _RwProjectorView
{
  GtkWidget         parent_instance;
  RwProjection     *projection;
  RwChart          *chart; /* both NULL without a job */
  RwTrimMap        *map;
  RwSession        *session; /* theirs; not owned, only compared */
  RwProjectorLayout layout;  /* valid when laid_out, for the content there is */
  gboolean          laid_out;
  char             *described;
  gint64            described_at;   /* monotonic µs */
  guint             describe_later; /* source */
};

G_DEFINE_FINAL_TYPE (RwProjectorView, rw_projector_view, GTK_TYPE_WIDGET)

/* --- in words ------------------------------------------------------------------------------------- */

/* What the chart or the trim map shows, if one of them is seen. (transfer full) (nullable) */
static char *
summarize (RwProjectorView *self)
{
  const RwProjectionContent *content = rw_projection_get_content (self->projection);

  if (content->blank || rw_projection_content_is_words (content) || self->chart == NULL)
    return NULL;
  if (content->part == RW_PROJECTION_CHART)
    return rw_chart_dup_summary (self->chart);
  return content->part == RW_PROJECTION_TRIM ? rw_trim_map_dup_summary (self->map) : NULL;
}

static void
describe (RwProjectorView *self)
{
  self->described_at = g_get_monotonic_time ();

  g_autofree char *words = rw_projection_content_dup_text (rw_projection_get_content (self->projection));
  g_autofree char *summary = summarize (self);
  g_autofree char *text = summary != NULL ? g_strdup_printf ("%s\n%s", words, summary) : g_strdup (words);

  if (g_strcmp0 (text, self->described) == 0)
    return;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  g_free (self->described);
  self->described = g_steal_pointer (&text);
}

static gboolean
describe_cb (gpointer data)
{
  RwProjectorView *self = data;

  self->describe_later = 0;
  describe (self);
  return G_SOURCE_REMOVE;
}

/* At once, unless that was done a moment ago. */
static void
describe_soon (RwProjectorView *self)
{
  const gint64 since = g_get_monotonic_time () - self->described_at;

  if (self->describe_later == 0)
    self->describe_later = g_timeout_add ((guint) (MAX (describe_every - since, 0) / 1000), describe_cb, self);
}

/* --- following the projection --------------------------------------------------------------------- */

static void
forget_layout (RwProjectorView *self)
{
  if (self->laid_out)
    rw_projector_layout_clear (&self->layout);
  self->laid_out = FALSE;
}

static void
picture_changed_cb (RwProjectorView *self)
{
  gtk_widget_queue_draw (GTK_WIDGET (self));
  describe_soon (self);
}

static void
drop_pictures (RwProjectorView *self)
{
  if (self->chart != NULL)
    g_signal_handlers_disconnect_by_data (self->chart, self);
  if (self->map != NULL)
    g_signal_handlers_disconnect_by_data (self->map, self);
  g_clear_object (&self->chart);
  g_clear_object (&self->map);
}

static void
make_pictures (RwProjectorView *self)
{
  RwSession *session = rw_projection_get_session (self->projection);
  RwView *view = rw_projection_get_view (self->projection);

  if (session == self->session)
    return;
  drop_pictures (self);
  self->session = session;
  if (session == NULL)
    return;
  rw_view_set_text_scale (view, RW_PROJECTOR_TEXT_SCALE);
  self->chart = rw_chart_new (session, view);
  self->map = rw_trim_map_new (view);
  rw_trim_map_set_note (self->map, FALSE); /* it would name hidden rails */
  g_signal_connect_object (self->chart, "changed", G_CALLBACK (picture_changed_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->map, "changed", G_CALLBACK (picture_changed_cb), self, G_CONNECT_SWAPPED);
}

static void
changed_cb (RwProjectorView *self)
{
  const RwClassTrim *trim = rw_projection_get_trim (self->projection);

  make_pictures (self);
  if (self->chart != NULL)
    {
      rw_chart_set_state (self->chart, rw_projection_get_state (self->projection));
      rw_trim_map_set_set (self->map, trim->set);
      rw_trim_map_set_live (self->map, trim->has_live ? &trim->live : NULL);
    }
  forget_layout (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  describe_soon (self);
}

/* --- drawing -------------------------------------------------------------------------------------- */

static const RwTheme *
find_theme (RwProjectorView *self)
{
  return rw_theme_get (rw_projection_get_dark (self->projection) ? RW_THEME_DARK : RW_THEME_LIGHT);
}

/* @scale: device pixels a pixel of the layout. */
static void
ink_part (RwProjectorView *self,
          cairo_t         *cr,
          double           scale)
{
  const RwRect *part = &self->layout.part;

  if (part->width <= 0 || self->chart == NULL)
    return;
  cairo_translate (cr, part->x, part->y);
  if (rw_projection_get_content (self->projection)->part == RW_PROJECTION_TRIM)
    {
      rw_trim_map_ink (self->map, cr, part->width, part->height);
      return;
    }
  rw_chart_set_device_scale (self->chart, scale);
  rw_chart_ink (self->chart, cr, part->width, part->height, RW_INK_SCREEN);
}

static void
rw_projector_view_snapshot (GtkWidget   *widget,
                            GtkSnapshot *snapshot)
{
  RwProjectorView *self = RW_PROJECTOR_VIEW (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);
  const double scale = height / RW_PROJECTOR_HEIGHT;

  if (width < 40 || height < 40)
    return;
  if (self->laid_out && self->layout.width != width / scale)
    forget_layout (self);
  if (!self->laid_out)
    rw_projector_layout_init (&self->layout, gtk_widget_get_pango_context (widget),
                              rw_projection_get_content (self->projection), width / scale,
                              gtk_widget_get_direction (widget) == GTK_TEXT_DIR_RTL);
  self->laid_out = TRUE;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  cairo_scale (cr, scale, scale);
  rw_projector_layout_ink (&self->layout, cr, find_theme (self));
  ink_part (self, cr, scale * gtk_widget_get_scale_factor (widget));
  cairo_destroy (cr);
}

static void
rw_projector_view_measure (GtkWidget     *widget,
                           GtkOrientation orientation,
                           int            for_size,
                           int           *minimum,
                           int           *natural,
                           int           *minimum_baseline,
                           int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 180;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 960 : 540;
}

/* Another font, or another direction of writing. */
static void
rw_projector_view_css_changed (GtkWidget         *widget,
                               GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (rw_projector_view_parent_class)->css_changed (widget, change);
  forget_layout (RW_PROJECTOR_VIEW (widget));
  gtk_widget_queue_draw (widget);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_projector_view_dispose (GObject *object)
{
  RwProjectorView *self = RW_PROJECTOR_VIEW (object);

  g_clear_handle_id (&self->describe_later, g_source_remove);
  forget_layout (self);
  drop_pictures (self);
  g_clear_object (&self->projection);
  G_OBJECT_CLASS (rw_projector_view_parent_class)->dispose (object);
}

static void
rw_projector_view_finalize (GObject *object)
{
  g_free (RW_PROJECTOR_VIEW (object)->described);
  G_OBJECT_CLASS (rw_projector_view_parent_class)->finalize (object);
}

static void
rw_projector_view_class_init (RwProjectorViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_projector_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_projector_view_finalize;
  widget_class->snapshot = rw_projector_view_snapshot;
  widget_class->measure = rw_projector_view_measure;
  widget_class->css_changed = rw_projector_view_css_changed;
  gtk_widget_class_set_css_name (widget_class, "projectorview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_STATUS);
}

static void
rw_projector_view_init (RwProjectorView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("What the class sees"), -1);
}

GtkWidget *
rw_projector_view_new (RwProjection *projection)
{
  RwProjectorView *self = g_object_new (RW_TYPE_PROJECTOR_VIEW, NULL);

  self->projection = g_object_ref (projection);
  g_signal_connect_object (projection, "changed", G_CALLBACK (changed_cb), self, G_CONNECT_SWAPPED);
  changed_cb (self);
  describe (self);
  return GTK_WIDGET (self);
}
