/* rw-compat.c: the few toolkit calls that newer GTK replaced.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-compat.h"

#include <glib/gi18n-lib.h>

#include "rw-paths.h"

static GSettings *folders; /* borrowed: the program's settings live as long as it does */

void
rw_compat_remember_folders (GSettings *settings)
{
  folders = settings;
}

/* Before anything was chosen, a file is looked for where the jobs are kept. */
static void
open_last_folder (GtkFileChooser *chooser)
{
  g_autofree char *last = folders != NULL ? g_settings_get_string (folders, "last-folder") : g_strdup ("");

  if (*last == '\0' && gtk_file_chooser_get_action (chooser) == GTK_FILE_CHOOSER_ACTION_OPEN)
    {
      g_free (last);
      last = rw_paths_dup_sessions ();
    }

  g_autoptr (GFile) folder = g_file_test (last, G_FILE_TEST_IS_DIR) ? g_file_new_for_path (last) : NULL;

  if (folder != NULL)
    gtk_file_chooser_set_current_folder (chooser, folder, NULL);
}

static void
note_folder (const char *path)
{
  g_autofree char *folder = g_path_get_dirname (path);

  if (folders != NULL)
    g_settings_set_string (folders, "last-folder", folder);
}

typedef struct
{
  RwPathFunc func;
  gpointer   user_data;
} Answer;

static void
response_cb (GtkNativeDialog *dialog,
             int              response,
             Answer          *answer)
{
  g_autoptr (GFile) file = response == GTK_RESPONSE_ACCEPT
                               ? gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog))
                               : NULL;
  g_autofree char *path = file != NULL ? g_file_get_path (file) : NULL;

  if (path != NULL)
    {
      note_folder (path);
      answer->func (path, answer->user_data);
    }
  g_free (answer);
  g_object_unref (dialog); /* the reference that kept it until now */
}

static void
ask (GtkFileChooserNative *dialog,
     const char           *filter_name,
     const char           *pattern,
     RwPathFunc            func,
     gpointer              user_data)
{
  Answer *answer = g_new0 (Answer, 1);

  answer->func = func;
  answer->user_data = user_data;
  if (pattern != NULL)
    {
      g_autoptr (GtkFileFilter) filter = gtk_file_filter_new ();
      g_auto (GStrv) patterns = g_strsplit (pattern, ";", -1);

      gtk_file_filter_set_name (filter, filter_name);
      for (guint i = 0; patterns[i] != NULL; i++)
        gtk_file_filter_add_pattern (filter, patterns[i]);
      gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (dialog), filter);
    }
  open_last_folder (GTK_FILE_CHOOSER (dialog));
  g_signal_connect (dialog, "response", G_CALLBACK (response_cb), answer);
  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (dialog), TRUE);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (dialog));
}

void
rw_compat_open_file (GtkWindow  *parent,
                     const char *title,
                     const char *filter_name,
                     const char *pattern,
                     RwPathFunc  func,
                     gpointer    user_data)
{
  ask (gtk_file_chooser_native_new (title, parent, GTK_FILE_CHOOSER_ACTION_OPEN, NULL, NULL), filter_name,
       pattern, func, user_data);
}

void
rw_compat_save_file (GtkWindow  *parent,
                     const char *title,
                     const char *name,
                     const char *filter_name,
                     const char *pattern,
                     RwPathFunc  func,
                     gpointer    user_data)
{
  GtkFileChooserNative *dialog = gtk_file_chooser_native_new (title, parent, GTK_FILE_CHOOSER_ACTION_SAVE,
                                                              NULL, NULL);

  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (dialog), name);
  ask (dialog, filter_name, pattern, func, user_data);
}

void
rw_compat_name_drop_down (GtkDropDown *drop_down,
                          const char  *name)
{
  GtkWidget *button = gtk_widget_get_first_child (GTK_WIDGET (drop_down));

  gtk_accessible_update_property (GTK_ACCESSIBLE (drop_down), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (GTK_IS_BUTTON (button))
    gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
}

GtkCssProvider *
rw_compat_load_css (GdkDisplay *display,
                    const char *resource_path,
                    guint       above)
{
  GtkCssProvider *provider = gtk_css_provider_new ();

  gtk_css_provider_load_from_resource (provider, resource_path);
  gtk_style_context_add_provider_for_display (display, GTK_STYLE_PROVIDER (provider),
                                              GTK_STYLE_PROVIDER_PRIORITY_APPLICATION + above);
  return provider;
}

void
rw_compat_unload_css (GdkDisplay     *display,
                      GtkCssProvider *provider)
{
  gtk_style_context_remove_provider_for_display (display, GTK_STYLE_PROVIDER (provider));
}
