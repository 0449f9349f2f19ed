/* link-probe.c: for tests: watches a link and runs the main loop until something has happened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "link-probe.h"

#include <string.h>

static const char *const state_names[]
    = { "closed", "opening", "listening", "reading", "silent", "lost" };

static void
value_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          LinkProbe          *self)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  RwKind measured;
  const int kind = rw_meter_value_get_kind (value, &measured) ? (int) measured : -1;

  /* Long streams are compared as numbers. */
  if (self->values->len < 1000)
    g_string_append_printf (
        self->story, " %s",
        value->over ? "over" : g_ascii_formatd (text, sizeof text, "%g", value->value));
  g_array_append_val (self->values, value->value);
  g_array_append_val (self->when, when_us);
  g_array_append_val (self->kinds, kind);
}

static void
state_cb (RwLink     *link,
          RwLinkState state,
          const char *message,
          LinkProbe  *self)
{
  const gboolean first = self->story->len == 0;

  g_assert_nonnull (message);
  g_assert_cmpint (rw_link_get_state (link), ==, state);
  g_assert_cmpstr (rw_link_get_message (link), ==, message);
  g_string_append_printf (self->story, "%s%s", first ? "" : " ", state_names[state]);
  self->state_us = g_get_monotonic_time ();
}

LinkProbe *
link_probe_new (RwLink *link)
{
  LinkProbe *self = g_new0 (LinkProbe, 1);

  self->link = link;
  self->story = g_string_new (NULL);
  self->values = g_array_new (FALSE, FALSE, sizeof (double));
  self->when = g_array_new (FALSE, FALSE, sizeof (gint64));
  self->kinds = g_array_new (FALSE, FALSE, sizeof (int));
  g_signal_connect (link, "value", G_CALLBACK (value_cb), self);
  g_signal_connect (link, "state", G_CALLBACK (state_cb), self);
  return self;
}

void
link_probe_free (LinkProbe *self)
{
  g_assert_finalize_object (self->link);
  g_string_free (self->story, TRUE);
  g_array_unref (self->values);
  g_array_unref (self->when);
  g_array_unref (self->kinds);
  g_free (self);
}

static gboolean
wake_cb (gpointer data)
{
  return G_SOURCE_CONTINUE;
}

typedef gboolean (*Condition) (LinkProbe *self, gconstpointer data);

static gboolean
wait_for (LinkProbe    *self,
          Condition     condition,
          gconstpointer data,
          double        seconds)
{
  const gint64 until_us = g_get_monotonic_time () + (gint64) (seconds * G_USEC_PER_SEC);
  const guint wake_id = g_timeout_add (5, wake_cb, NULL);
  gboolean holds;

  while (!(holds = condition (self, data)) && g_get_monotonic_time () < until_us)
    g_main_context_iteration (NULL, TRUE);
  g_source_remove (wake_id);
  return holds;
}

static gboolean
has_state (LinkProbe    *self,
           gconstpointer data)
{
  return rw_link_get_state (self->link) == *(const RwLinkState *) data;
}

static gboolean
has_values (LinkProbe    *self,
            gconstpointer data)
{
  return self->values->len >= *(const guint *) data;
}

static gboolean
has_story (LinkProbe    *self,
           gconstpointer data)
{
  return strstr (self->story->str, data) != NULL;
}

static gboolean
never (LinkProbe    *self,
       gconstpointer data)
{
  return FALSE;
}

gboolean
link_probe_wait_state (LinkProbe  *self,
                       RwLinkState state,
                       double      seconds)
{
  return wait_for (self, has_state, &state, seconds);
}

gboolean
link_probe_wait_values (LinkProbe *self,
                        guint      n,
                        double     seconds)
{
  return wait_for (self, has_values, &n, seconds);
}

gboolean
link_probe_wait_story (LinkProbe  *self,
                       const char *part,
                       double      seconds)
{
  return wait_for (self, has_story, part, seconds);
}

void
link_probe_run (double seconds)
{
  wait_for (NULL, never, NULL, seconds);
}
