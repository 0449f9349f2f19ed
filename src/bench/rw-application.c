/* rw-application.c: the program.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-application.h"

#include <glib/gi18n-lib.h>

#include "rw-color-scheme.h"
#include "rw-compat.h"
#include "rw-main-window.h"
#include "rw-safety-window.h"
#include "rw-screenshot.h"

struct _RwApplication
{
  GtkApplication  parent_instance;
  GSettings      *settings; /* NULL when the schema is not installed */
  GtkCssProvider *css;
  gboolean        start_practice;
  gboolean        unattended; /* a picture is taken, then it ends */
  gboolean        greeted;    /* in this run */
};

G_DEFINE_FINAL_TYPE (RwApplication, rw_application, GTK_TYPE_APPLICATION)

static const struct
{
  const char *action;
  const char *accels[3];
} accels[] = {
  { "win.new-job", { "<Control>n" } },
  { "win.open", { "<Control>o" } },
  { "win.practice", { "<Control>t" } },
  { "win.practice-bench", { "<Control>b" } },
  { "win.new-drill", { "<Control><Shift>t" } },
  { "win.end-drill", { "F8" } },
  { "win.repair", { "<Control>r" } },
  { "win.continue", { "<Control>e" } },
  { "win.branch", { "<Control><Shift>e" } },
  { "win.decide", { "<Control>d" } },
  { "win.annotate", { "<Control><Shift>n" } },
  { "win.annotations", { "<Control><Shift>a" } },
  { "win.save-copy", { "<Control>s" } },
  { "win.save-picture", { "<Control>p" } },
  { "win.save-label", { "<Control><Shift>l" } },
  { "win.save-record", { "<Control><Shift>r" } },
  { "win.stage-against", { "F7" } },
  { "win.log", { "<Control>l" } },
  { "win.compare", { "<Control><Shift>c" } },
  { "win.meter", { "<Control>m" } },
  { "win.undo", { "<Control>z" } },
  { "win.redo", { "<Control><Shift>z" } },
  { "win.zoom-in", { "<Control>plus", "<Control>equal" } },
  { "win.zoom-out", { "<Control>minus" } },
  { "win.zoom-fit", { "<Control>0" } },
  { "win.side", { "F9" } },
  { "win.fullscreen", { "F11" } },
  { "win.class-project", { "F5" } },
  { "win.class-theme", { "<Shift>F5" } },
  { "win.class-blank", { "F2" } },
  { "win.class-hide-rail", { "<Shift>F2" } },
  { "win.class-freeze", { "F3" } },
  { "win.class-spotlight", { "F4" } },
  { "win.class-next-part", { "F6" } },
  { "win.class-enlarge", { "<Shift>F6" } },
  { "win.class-send", { "<Control><Shift>y" } },
  { "win.call", { "<Control>k" } },
  { "win.reveal", { "<Control><Shift>k" } },
  { "win.lesson", { "<Control><Shift>o" } },
  { "win.previous-chapter", { "<Control>Page_Up" } },
  { "win.next-chapter", { "<Control>Page_Down" } },
  { "win.next-warning", { "<Control>1" } },
  { "win.next-trim", { "<Control>2" } },
  { "win.next-keep", { "<Control>3" } },
  { "win.previous-warning", { "<Control><Alt>1" } },
  { "win.previous-trim", { "<Control><Alt>2" } },
  { "win.previous-keep", { "<Control><Alt>3" } },
  { "win.skip-waiting", { "<Control><Shift>i" } },
  { "win.chapters", { "<Control>g" } },
  { "win.rail(1)", { "<Alt>1" } },
  { "win.rail(2)", { "<Alt>2" } },
  { "win.rail(3)", { "<Alt>3" } },
  { "win.rail(4)", { "<Alt>4" } },
  { "win.rail(5)", { "<Alt>5" } },
  { "win.rail(6)", { "<Alt>6" } },
  { "win.rail(7)", { "<Alt>7" } },
  { "win.rail(8)", { "<Alt>8" } },
  { "win.rail(9)", { "<Alt>9" } },
  { "app.safety", { "<Shift>F1" } },
  { "win.show-help-overlay", { "F1", "<Control>question" } },
  { "app.quit", { "<Control>q" } },
  { "window.close", { "<Control>w" } },
};

/* g_settings_new ends the program when the schema is missing, so it is looked up first. */
static GSettings *
load_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema = source != NULL ? g_settings_schema_source_lookup (source, RW_APP_ID, TRUE) : NULL;

  return schema != NULL ? g_settings_new_full (schema, NULL, NULL) : NULL;
}

static RwMainWindow *
make_window (RwApplication *self)
{
  return RW_MAIN_WINDOW (rw_main_window_new (GTK_APPLICATION (self), self->settings));
}

/* A window that shows the doors, or a new one: an open job is never replaced from outside. */
static RwMainWindow *
free_window (RwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  if (active != NULL && RW_IS_MAIN_WINDOW (active) && rw_main_window_is_free (RW_MAIN_WINDOW (active)))
    return RW_MAIN_WINDOW (active);
  return make_window (self);
}

static GtkWindow *
make_safety (RwApplication *self)
{
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));

  return GTK_WINDOW (rw_safety_window_new (active, self->settings));
}

/* Once for each person: the cautions stand before the first job. Not while a picture is taken: nobody is there. */
static void
greet (RwApplication *self)
{
  GtkWindow *safety;

  if (self->settings == NULL || self->unattended || self->greeted
      || g_settings_get_boolean (self->settings, "safety-page-seen"))
    return;
  self->greeted = TRUE;
  safety = make_safety (self);
  gtk_window_set_modal (safety, TRUE);
  gtk_window_present (safety);
}

static void
rw_application_activate (GApplication *application)
{
  RwApplication *self = RW_APPLICATION (application);
  GtkWindow *active = gtk_application_get_active_window (GTK_APPLICATION (self));
  RwMainWindow *window;

  if (active != NULL && !self->start_practice)
    {
      gtk_window_present (active);
      return;
    }
  window = free_window (self);
  gtk_window_present (GTK_WINDOW (window));
  if (self->start_practice)
    rw_main_window_practice (window);
  self->start_practice = FALSE;
  greet (self);
}

static void
rw_application_open (GApplication *application,
                     GFile       **files,
                     int           n_files,
                     const char   *hint)
{
  RwApplication *self = RW_APPLICATION (application);

  for (int i = 0; i < n_files; i++)
    {
      RwMainWindow *window = free_window (self);
      g_autofree char *path = g_file_get_path (files[i]);
      g_autofree char *uri = g_file_get_uri (files[i]);

      gtk_window_present (GTK_WINDOW (window));
      rw_main_window_open (window, path != NULL ? path : uri);
    }
  greet (self);
}

static int
rw_application_handle_local_options (GApplication *application,
                                     GVariantDict *options)
{
  if (g_variant_dict_contains (options, "version"))
    {
      g_print ("%s %s\n", "railwright", RW_VERSION);
      return 0;
    }
  return -1;
}

static int
rw_application_command_line (GApplication            *application,
                             GApplicationCommandLine *line)
{
  RwApplication *self = RW_APPLICATION (application);
  g_auto (GStrv) arguments = g_application_command_line_get_arguments (line, NULL);
  GVariantDict *options = g_application_command_line_get_options_dict (line);
  g_autoptr (GPtrArray) files = g_ptr_array_new_with_free_func (g_object_unref);
  const char *picture = NULL;

  self->start_practice = g_variant_dict_contains (options, "practice");
  self->unattended = g_variant_dict_contains (options, "screenshot");
  for (int i = 1; arguments[i] != NULL; i++)
    g_ptr_array_add (files, g_application_command_line_create_file_for_arg (line, arguments[i]));
  if (g_variant_dict_contains (options, "new-window"))
    gtk_window_present (GTK_WINDOW (make_window (self)));
  else if (files->len > 0)
    g_application_open (application, (GFile **) files->pdata, (int) files->len, "");
  else
    g_application_activate (application);
  if (g_variant_dict_lookup (options, "screenshot", "^&ay", &picture))
    {
      g_autoptr (GFile) file = g_application_command_line_create_file_for_arg (line, picture);
      g_autofree char *path = g_file_get_path (file);

      rw_screenshot_then_close (gtk_application_get_active_window (GTK_APPLICATION (self)), path);
    }
  return 0;
}

/* --- actions of the program ----------------------------------------------------------------------- */

static void
about_cb (GSimpleAction *action,
          GVariant      *parameter,
          gpointer       data)
{
  gtk_show_about_dialog (gtk_application_get_active_window (data),
                         "program-name", _ ("Railwright"),
                         "version", RW_VERSION,
                         "logo-icon-name", RW_APP_ID,
                         "license-type", GTK_LICENSE_GPL_3_0,
                         "copyright", _ ("© 2026 The Railwright developers"),
                         "comments", _ ("Measures, trims and diagnoses the supplies of coin-operated video cabinets. "
                                        "An aid, no safety device."),
                         /* Translators: your names, one a line. */
                         "translator-credits", _ ("translator-credits"),
                         NULL);
}

static void
safety_cb (GSimpleAction *action,
           GVariant      *parameter,
           gpointer       data)
{
  gtk_window_present (make_safety (data));
}

static void
new_window_cb (GSimpleAction *action,
               GVariant      *parameter,
               gpointer       data)
{
  gtk_window_present (GTK_WINDOW (make_window (data)));
}

static void
quit_cb (GSimpleAction *action,
         GVariant      *parameter,
         gpointer       data)
{
  GList *windows = g_list_copy (gtk_application_get_windows (data));

  /* Each window may refuse, so that no unsaved job is lost. */
  for (GList *l = windows; l != NULL; l = l->next)
    gtk_window_close (l->data);
  g_list_free (windows);
}

static void
rw_application_startup (GApplication *application)
{
  static const GActionEntry entries[] = {
    { .name = "about", .activate = about_cb },
    { .name = "safety", .activate = safety_cb },
    { .name = "new-window", .activate = new_window_cb },
    { .name = "quit", .activate = quit_cb },
  };
  RwApplication *self = RW_APPLICATION (application);

  G_APPLICATION_CLASS (rw_application_parent_class)->startup (application);
  self->settings = load_settings ();
  g_action_map_add_action_entries (G_ACTION_MAP (self), entries, G_N_ELEMENTS (entries), self);
  if (self->settings != NULL)
    {
      g_autoptr (GAction) scheme = g_settings_create_action (self->settings, "color-scheme");

      g_action_map_add_action (G_ACTION_MAP (self), scheme);
    }
  for (guint i = 0; i < G_N_ELEMENTS (accels); i++)
    gtk_application_set_accels_for_action (GTK_APPLICATION (self), accels[i].action, (const char *const *) accels[i].accels);
  self->css = rw_compat_load_css (gdk_display_get_default (), "/org/railwright/bench/style.css", 0);
  gtk_window_set_default_icon_name (RW_APP_ID);
  rw_compat_remember_folders (self->settings);
  rw_color_scheme_follow (self->settings);
}

static void
rw_application_finalize (GObject *object)
{
  g_clear_object (&RW_APPLICATION (object)->settings);
  g_clear_object (&RW_APPLICATION (object)->css);
  G_OBJECT_CLASS (rw_application_parent_class)->finalize (object);
}

static void
rw_application_class_init (RwApplicationClass *klass)
{
  GApplicationClass *application_class = G_APPLICATION_CLASS (klass);

  G_OBJECT_CLASS (klass)->finalize = rw_application_finalize;
  application_class->startup = rw_application_startup;
  application_class->activate = rw_application_activate;
  application_class->open = rw_application_open;
  application_class->command_line = rw_application_command_line;
  application_class->handle_local_options = rw_application_handle_local_options;
}

static void
rw_application_init (RwApplication *self)
{
  static const GOptionEntry options[] = {
    { "practice", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Start on the practice cabinet"), NULL },
    { "new-window", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Open one more window"), NULL },
    { "screenshot", 0, 0, G_OPTION_ARG_FILENAME, NULL, N_ ("Save a picture of the window as PNG, and end"), N_ ("FILE") },
    { "version", 0, 0, G_OPTION_ARG_NONE, NULL, N_ ("Show the version"), NULL },
    { NULL }
  };

  g_application_add_main_option_entries (G_APPLICATION (self), options);
  g_application_set_option_context_parameter_string (G_APPLICATION (self), _ ("[FILE…]"));
}

RwApplication *
rw_application_new (void)
{
  return g_object_new (RW_TYPE_APPLICATION, "application-id", RW_APP_ID, "resource-base-path", "/org/railwright/bench",
                       "flags", G_APPLICATION_HANDLES_OPEN | G_APPLICATION_HANDLES_COMMAND_LINE, NULL);
}
