/* rw-screenshot.c: a picture of a window, drawn by the program itself.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-screenshot.h"

#include <glib/gi18n-lib.h>

/* Long enough for the first frames, a replay at its end, and the advice from its thread. */
static const guint wait_msec = 2500;

typedef struct
{
  GtkWindow *window;
  char      *path;
} Shot;

static void
shot_free (gpointer data)
{
  Shot *shot = data;

  g_object_unref (shot->window);
  g_free (shot->path);
  g_free (shot);
}

/* (transfer full) (nullable): nothing was drawn yet. */
static GdkTexture *
draw (GtkWindow *window)
{
  g_autoptr (GdkPaintable) paintable = gtk_widget_paintable_new (GTK_WIDGET (window));
  g_autoptr (GtkSnapshot) snapshot = gtk_snapshot_new ();
  const int width = gdk_paintable_get_intrinsic_width (paintable);
  const int height = gdk_paintable_get_intrinsic_height (paintable);

  gdk_paintable_snapshot (paintable, snapshot, width, height);

  g_autoptr (GskRenderNode) node = gtk_snapshot_to_node (snapshot);

  if (node == NULL)
    return NULL;
  return gsk_renderer_render_texture (gtk_native_get_renderer (GTK_NATIVE (window)), node,
                                      &GRAPHENE_RECT_INIT (0, 0, (float) width, (float) height));
}

static gboolean
shoot_cb (gpointer data)
{
  Shot *shot = data;
  g_autoptr (GdkTexture) texture = draw (shot->window);

  if (texture == NULL || !gdk_texture_save_to_png (texture, shot->path))
    g_printerr (_ ("The picture could not be saved as %s.\n"), shot->path);
  gtk_window_close (shot->window);
  return G_SOURCE_REMOVE;
}

void
rw_screenshot_then_close (GtkWindow  *window,
                          const char *path)
{
  Shot *shot = g_new0 (Shot, 1);

  shot->window = g_object_ref (window);
  shot->path = g_strdup (path);
  g_timeout_add_full (G_PRIORITY_DEFAULT, wait_msec, shoot_cb, shot, shot_free);
}
