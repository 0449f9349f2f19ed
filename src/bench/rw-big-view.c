/* rw-big-view.c: the live value, its rail and its target, to be read from four metres.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Nothing moves but the needle, which stands where the newest sample put it. What the picture says is also the
 * widget's accessible description, told anew once a second at most.
 */
#include "config.h"

#include "rw-big-view.h"

#include <glib/gi18n-lib.h>

#include "rw-big-content.h"
#include "rw-big-picture.h"
#include "rw-color-scheme.h"

static const gint64 describe_every = G_USEC_PER_SEC;

struct _RwBigView
{
  GtkWidget    parent_instance;
  RwJob       *job; /* (nullable) */
  char        *message;
  RwBigContent content;
  RwBigLayout  layout;     /* valid when laid_out, for the content and the size it has */
  gboolean     laid_out;
  char        *described;
  gint64       described_at; /* monotonic µs */
};

G_DEFINE_FINAL_TYPE (RwBigView, rw_big_view, GTK_TYPE_WIDGET)

/* --- following the job ---------------------------------------------------------------------------- */

static void
describe (RwBigView *self)
{
  const gint64 now = g_get_monotonic_time ();

  if (self->described_at != 0 && now - self->described_at < describe_every)
    return;

  g_autofree char *text = rw_big_content_dup_text (&self->content);

  if (g_strcmp0 (text, self->described) == 0)
    return;
  self->described_at = now;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_DESCRIPTION, text, -1);
  g_free (self->described);
  self->described = g_steal_pointer (&text);
}

static void
forget_layout (RwBigView *self)
{
  if (self->laid_out)
    rw_big_layout_clear (&self->layout);
  self->laid_out = FALSE;
}

static void
refresh (RwBigView *self)
{
  RwBigContent content;

  rw_big_content_init (&content, self->job, self->message);
  if (rw_big_content_equal (&content, &self->content))
    rw_big_content_clear (&content);
  else
    {
      rw_big_content_clear (&self->content);
      self->content = content;
      forget_layout (self);
      gtk_widget_queue_draw (GTK_WIDGET (self));
    }
  describe (self);
}

static void
refresh_cb (RwBigView *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

void
rw_big_view_set_job (RwBigView *self,
                     RwJob     *job)
{
  static const char *const names[] = { "live", "changed", "spot", "link", "tick" };

  g_return_if_fail (RW_IS_BIG_VIEW (self));
  if (self->job == job)
    return;
  if (self->job != NULL)
    {
      g_signal_handlers_disconnect_by_data (rw_job_get_view (self->job), self);
      g_signal_handlers_disconnect_by_data (self->job, self);
    }
  g_set_object (&self->job, job);
  if (job != NULL)
    {
      for (guint i = 0; i < G_N_ELEMENTS (names); i++)
        g_signal_connect_object (job, names[i], G_CALLBACK (refresh_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (rw_job_get_view (job), "notify::theme", G_CALLBACK (gtk_widget_queue_draw), self,
                               G_CONNECT_SWAPPED);
    }
  refresh (self);
}

void
rw_big_view_set_message (RwBigView  *self,
                         const char *message)
{
  g_return_if_fail (RW_IS_BIG_VIEW (self));
  if (g_strcmp0 (self->message, message) == 0)
    return;
  g_free (self->message);
  self->message = g_strdup (message);
  refresh (self);
}

/* --- drawing -------------------------------------------------------------------------------------- */

static const RwTheme *
find_theme (RwBigView *self)
{
  if (self->job != NULL)
    return rw_theme_get (rw_view_get_theme (rw_job_get_view (self->job)));
  return rw_theme_get (rw_color_scheme_is_dark () ? RW_THEME_DARK : RW_THEME_LIGHT);
}

static void
rw_big_view_snapshot (GtkWidget   *widget,
                      GtkSnapshot *snapshot)
{
  RwBigView *self = RW_BIG_VIEW (widget);
  const int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (width < 40 || height < 40)
    return;
  if (self->laid_out && (self->layout.width != width || self->layout.height != height))
    forget_layout (self);
  if (!self->laid_out)
    rw_big_layout_init (&self->layout, gtk_widget_get_pango_context (widget), &self->content, width, height);
  self->laid_out = TRUE;

  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));

  rw_big_layout_ink (&self->layout, cr, &self->content, find_theme (self));
  cairo_destroy (cr);
}

/* As small as it is asked to be: the texts follow. */
static void
rw_big_view_measure (GtkWidget     *widget,
                     GtkOrientation orientation,
                     int            for_size,
                     int           *minimum,
                     int           *natural,
                     int           *minimum_baseline,
                     int           *natural_baseline)
{
  *minimum = orientation == GTK_ORIENTATION_HORIZONTAL ? 320 : 200;
  *natural = orientation == GTK_ORIENTATION_HORIZONTAL ? 640 : 480;
}

/* Another font, or another resolution. */
static void
rw_big_view_css_changed (GtkWidget         *widget,
                         GtkCssStyleChange *change)
{
  GTK_WIDGET_CLASS (rw_big_view_parent_class)->css_changed (widget, change);
  forget_layout (RW_BIG_VIEW (widget));
  gtk_widget_queue_draw (widget);
}

static void
rw_big_view_map (GtkWidget *widget)
{
  refresh (RW_BIG_VIEW (widget));
  GTK_WIDGET_CLASS (rw_big_view_parent_class)->map (widget);
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_big_view_dispose (GObject *object)
{
  RwBigView *self = RW_BIG_VIEW (object);

  forget_layout (self);
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (rw_job_get_view (self->job), self);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (rw_big_view_parent_class)->dispose (object);
}

static void
rw_big_view_finalize (GObject *object)
{
  RwBigView *self = RW_BIG_VIEW (object);

  rw_big_content_clear (&self->content);
  g_free (self->message);
  g_free (self->described);
  G_OBJECT_CLASS (rw_big_view_parent_class)->finalize (object);
}

static void
rw_big_view_class_init (RwBigViewClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_big_view_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_big_view_finalize;
  widget_class->snapshot = rw_big_view_snapshot;
  widget_class->measure = rw_big_view_measure;
  widget_class->css_changed = rw_big_view_css_changed;
  widget_class->map = rw_big_view_map;
  gtk_widget_class_set_css_name (widget_class, "bigview");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_STATUS);
}

static void
rw_big_view_init (RwBigView *self)
{
  GtkWidget *widget = GTK_WIDGET (self);

  gtk_widget_set_focusable (widget, TRUE);
  gtk_widget_set_hexpand (widget, TRUE);
  gtk_widget_set_vexpand (widget, TRUE);
  gtk_widget_set_overflow (widget, GTK_OVERFLOW_HIDDEN);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Big view"), -1);
  rw_big_content_init (&self->content, NULL, NULL);
}

GtkWidget *
rw_big_view_new (void)
{
  return g_object_new (RW_TYPE_BIG_VIEW, NULL);
}
