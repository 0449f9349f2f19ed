/* rw-compat.h: the few toolkit calls that newer GTK replaced, all in one place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* Where file dialogs open: the folder of the last file chosen. @settings: (nullable), key "last-folder". */
void rw_compat_remember_folders (GSettings *settings);

/* Called with the chosen path, or not at all when the person thought better of it. */
typedef void (*RwPathFunc) (const char *path, gpointer user_data);

/* @filter_name and @pattern: what is offered ("Sessions", "*.rwlog", several divided by ";"); both may be NULL. */
void rw_compat_open_file (GtkWindow *parent, const char *title, const char *filter_name, const char *pattern,
                          RwPathFunc func, gpointer user_data);
void rw_compat_save_file (GtkWindow *parent, const char *title, const char *name, const char *filter_name,
                          const char *pattern, RwPathFunc func, gpointer user_data);

/* The button inside a drop-down is what has the focus, and it has no name of its own. */
void rw_compat_name_drop_down (GtkDropDown *drop_down, const char *name);

/* Loads CSS from a resource for all of a display. @above: 0, or how far above the program's own sheet it ranks.
 * (transfer full) */
GtkCssProvider *rw_compat_load_css (GdkDisplay *display, const char *resource_path, guint above);
void            rw_compat_unload_css (GdkDisplay *display, GtkCssProvider *provider);

G_END_DECLS
