/* rw-color-scheme.c: light or dark.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The portal org.freedesktop.portal.Settings answers Read ("org.freedesktop.appearance", "color-scheme")
 * with a variant in a variant: 0 no preference, 1 dark, 2 light. Without a portal the toolkit's own stays.
 */
#include "config.h"

#include "rw-color-scheme.h"

#include <string.h>

#include "rw-compat.h"

static const char portal_name[] = "org.freedesktop.portal.Desktop";
static const char portal_path[] = "/org/freedesktop/portal/desktop";
static const char portal_interface[] = "org.freedesktop.portal.Settings";

/* GTK_THEME outranks the settings and does not show in them. */
static char *
dup_theme_name (void)
{
  const char *forced = g_getenv ("GTK_THEME");
  char *name = NULL;

  if (forced != NULL && *forced != '\0')
    return g_strdup (forced);
  g_object_get (gtk_settings_get_default (), "gtk-theme-name", &name, NULL);
  return name != NULL ? name : g_strdup ("");
}

gboolean
rw_color_scheme_is_dark (void)
{
  g_autofree char *name = dup_theme_name ();
  gboolean dark = FALSE;

  g_object_get (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", &dark, NULL);
  return dark || g_str_has_suffix (name, "-dark") || g_str_has_suffix (name, ":dark")
         || strstr (name, "Inverse") != NULL;
}

gboolean
rw_color_scheme_is_contrast (void)
{
  g_autofree char *name = dup_theme_name ();

  return g_str_has_suffix (name, "-hc") || strstr (name, "-hc-") != NULL || strstr (name, "HighContrast") != NULL;
}

/* The program's own colours for a dark ground, laid over the sheet while it is dark. */
static void
dark_changed_cb (GtkSettings *settings)
{
  static GtkCssProvider *dark_sheet;
  GdkDisplay *display = gdk_display_get_default ();
  const gboolean dark = rw_color_scheme_is_dark ();

  if (dark && dark_sheet == NULL)
    dark_sheet = rw_compat_load_css (display, "/org/railwright/bench/style-dark.css", 1);
  else if (!dark && dark_sheet != NULL)
    {
      rw_compat_unload_css (display, dark_sheet);
      g_clear_object (&dark_sheet);
    }
}

static void
prefer_dark (gboolean dark)
{
  g_object_set (gtk_settings_get_default (), "gtk-application-prefer-dark-theme", dark, NULL);
}

static gboolean
follows_system (GSettings *settings)
{
  g_autofree char *scheme = settings != NULL ? g_settings_get_string (settings, "color-scheme") : g_strdup ("system");

  return g_str_equal (scheme, "system");
}

static void
take_portal_value (GVariant *value)
{
  g_autoptr (GVariant) inner = g_variant_ref (value);

  while (g_variant_is_of_type (inner, G_VARIANT_TYPE_VARIANT))
    {
      GVariant *next = g_variant_get_variant (inner);

      g_variant_unref (inner);
      inner = next;
    }
  if (g_variant_is_of_type (inner, G_VARIANT_TYPE_UINT32))
    prefer_dark (g_variant_get_uint32 (inner) == 1);
}

static void
read_cb (GObject      *source,
         GAsyncResult *result,
         gpointer      data)
{
  g_autoptr (GVariant) reply = g_dbus_proxy_call_finish (G_DBUS_PROXY (source), result, NULL);
  g_autoptr (GVariant) value = NULL;

  if (reply == NULL)
    return; /* no portal here: no preference */
  g_variant_get (reply, "(@v)", &value);
  if (follows_system (data))
    take_portal_value (value);
}

static void
signal_cb (GDBusProxy *proxy,
           const char *sender,
           const char *signal,
           GVariant   *parameters,
           GSettings  *settings)
{
  const char *space, *key;
  g_autoptr (GVariant) value = NULL;

  if (!g_str_equal (signal, "SettingChanged") || !g_variant_is_of_type (parameters, G_VARIANT_TYPE ("(ssv)")))
    return;
  g_variant_get (parameters, "(&s&s@v)", &space, &key, &value);
  if (g_str_equal (space, "org.freedesktop.appearance") && g_str_equal (key, "color-scheme")
      && follows_system (settings))
    take_portal_value (value);
}

static void
ask_portal (GDBusProxy *proxy,
            GSettings  *settings)
{
  g_dbus_proxy_call (proxy, "Read", g_variant_new ("(ss)", "org.freedesktop.appearance", "color-scheme"),
                     G_DBUS_CALL_FLAGS_NONE, 2000, NULL, read_cb, settings);
}

static void
apply (GSettings  *settings,
       GDBusProxy *proxy)
{
  g_autofree char *scheme = settings != NULL ? g_settings_get_string (settings, "color-scheme") : g_strdup ("system");

  if (!g_str_equal (scheme, "system"))
    prefer_dark (g_str_equal (scheme, "dark"));
  else if (proxy != NULL)
    ask_portal (proxy, settings);
}

static void
changed_cb (GSettings  *settings,
            const char *key,
            GDBusProxy *proxy)
{
  if (follows_system (settings))
    prefer_dark (FALSE);
  apply (settings, proxy);
}

static void
proxy_cb (GObject      *source,
          GAsyncResult *result,
          gpointer      data)
{
  GSettings *settings = data;
  GDBusProxy *proxy = g_dbus_proxy_new_for_bus_finish (result, NULL); /* kept as long as the program */

  if (proxy != NULL)
    g_signal_connect (proxy, "g-signal", G_CALLBACK (signal_cb), settings);
  if (settings != NULL)
    g_signal_connect (settings, "changed::color-scheme", G_CALLBACK (changed_cb), proxy);
  apply (settings, proxy);
}

void
rw_color_scheme_follow (GSettings *settings)
{
  GtkSettings *toolkit = gtk_settings_get_default ();

  g_signal_connect (toolkit, "notify::gtk-application-prefer-dark-theme", G_CALLBACK (dark_changed_cb), NULL);
  g_signal_connect (toolkit, "notify::gtk-theme-name", G_CALLBACK (dark_changed_cb), NULL);
  dark_changed_cb (toolkit);
  apply (settings, NULL);
  g_dbus_proxy_new_for_bus (G_BUS_TYPE_SESSION,
                            G_DBUS_PROXY_FLAGS_DO_NOT_LOAD_PROPERTIES | G_DBUS_PROXY_FLAGS_DO_NOT_AUTO_START_AT_CONSTRUCTION,
                            NULL, portal_name, portal_path, portal_interface, NULL, proxy_cb, settings);
}
