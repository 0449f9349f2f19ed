/* rw-session-from.c: where a session was branched from.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A key of the header that says it: "from":{"session":"<uuid>","n":12,"t":83.5,"name":"…"}. The events up to number
 * n stand in the new file as they stood in the other one, so that it can be read without it.
 */
#include "config.h"

#include "rw-session-from-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-json.h"
#include "rw-plain-text.h"

RwSessionFrom *
rw_session_from_new (const char *session,
                     guint       n,
                     double      t,
                     const char *name)
{
  RwSessionFrom *self = g_new0 (RwSessionFrom, 1);

  self->session = rw_plain_text_dup (session, RW_PLAIN_NAME);
  self->n = n;
  self->t = t;
  self->name = rw_plain_text_dup (name != NULL ? name : "", RW_PLAIN_NAME);
  return self;
}

RwSessionFrom *
rw_session_from_copy (const RwSessionFrom *self)
{
  return rw_session_from_new (self->session, self->n, self->t, self->name);
}

void
rw_session_from_free (RwSessionFrom *self)
{
  if (self == NULL)
    return;
  g_free (self->session);
  g_free (self->name);
  g_free (self);
}

/* What cannot be right is taken as not said: the session itself is as good without it. */
RwSessionFrom *
rw_session_from_read (JsonObject *object)
{
  const char *session = object != NULL ? rw_json_get_string (object, "session", "") : "";
  double n = 0, t = 0;

  if (*session == '\0')
    return NULL;
  if (!rw_json_get_number (object, "n", &n) || n < 0 || n > 4e9 || n != floor (n))
    n = 0;
  if (!rw_json_get_number (object, "t", &t) || t < 0 || t > RW_EVENT_MAX_SECONDS)
    t = 0;
  return rw_session_from_new (session, (guint) n, t, rw_json_get_string (object, "name", ""));
}

void
rw_session_from_append (const RwSessionFrom *self,
                        GString             *out)
{
  g_string_append (out, ",\"from\":{\"session\":");
  rw_json_append_string (out, self->session);
  g_string_append_printf (out, ",\"n\":%u,\"t\":", self->n);
  rw_json_append_number (out, self->t);
  g_string_append (out, ",\"name\":");
  rw_json_append_string (out, self->name);
  g_string_append_c (out, '}');
}

char *
rw_session_from_describe (const RwSessionFrom *self)
{
  const char *name = *self->name != '\0' ? self->name : self->session;
  const guint64 seconds = (guint64) self->t;
  g_autofree char *time = g_strdup_printf ("%" G_GUINT64_FORMAT ":%02u", seconds / 60, (guint) (seconds % 60));

  /* Translators: name of a session or of its file, minutes and seconds, number of an event. */
  return g_strdup_printf (_ ("branched from %s at %s, event %u"), name, time, self->n);
}
