/* rw-meter-capture.c: some seconds of what a port sends.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-capture.h"

#include <poll.h>

/* More than anybody reads, and less than a text box minds. */
static const guint max_bytes = 4096;

/* How often the thread looks whether it is to end. */
static const int look_ms = 100;

typedef struct
{
  RwMeterAddress *address;
  guint           seconds;
} Job;

static void
free_job (gpointer data)
{
  Job *job = data;

  rw_meter_address_free (job->address);
  g_free (job);
}

char *
rw_meter_capture_to_text (const guint8 *bytes,
                          gsize         n)
{
  g_autofree char *valid = g_utf8_make_valid (n > 0 ? (const char *) bytes : "", (gssize) n);
  GString *text = g_string_new (NULL);
  gboolean after_cr = FALSE;

  for (const char *at = valid; *at != '\0'; at = g_utf8_next_char (at))
    {
      const gunichar c = g_utf8_get_char (at);

      if (c == '\r' || (c == '\n' && !after_cr))
        g_string_append_c (text, '\n');
      else if (c == '\t' || !g_unichar_iscntrl (c))
        g_string_append_unichar (text, c);
      after_cr = c == '\r';
    }
  return g_string_free (text, FALSE);
}

static void
listen_until (RwBytePort   *port,
              gint64        end_us,
              GCancellable *cancellable,
              GByteArray   *out)
{
  while (g_get_monotonic_time () < end_us && out->len < max_bytes && !g_cancellable_is_cancelled (cancellable))
    {
      struct pollfd fd = { .fd = port->class->get_fd (port), .events = POLLIN };
      guint8 bytes[512];

      if (poll (&fd, 1, look_ms) <= 0)
        continue;

      const gssize n = port->class->read (port, bytes, sizeof bytes);

      /* Readable without bytes: it hung up. */
      if (n <= 0)
        return;
      g_byte_array_append (out, bytes, (guint) n);
    }
}

static void
capture (GTask        *task,
         gpointer      source,
         gpointer      data,
         GCancellable *cancellable)
{
  const Job *job = data;
  RwBytePort *port = rw_meter_address_make_port (job->address);
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  GError *error = NULL;

  if (port->class->open (port, &error))
    {
      listen_until (port, g_get_monotonic_time () + (gint64) job->seconds * G_USEC_PER_SEC, cancellable, bytes);
      port->class->close (port);
    }
  port->class->free (port);
  if (error != NULL)
    g_task_return_error (task, error);
  else
    g_task_return_pointer (task, rw_meter_capture_to_text (bytes->data, bytes->len), g_free);
}

void
rw_meter_capture_async (const RwMeterAddress *address,
                        guint                 seconds,
                        GCancellable         *cancellable,
                        GAsyncReadyCallback   callback,
                        gpointer              data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, data);
  Job *job = g_new0 (Job, 1);

  job->address = rw_meter_address_copy (address);
  job->seconds = seconds;
  g_task_set_task_data (task, job, free_job);
  g_task_run_in_thread (task, capture);
}

char *
rw_meter_capture_finish (GAsyncResult *result,
                         GError      **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}
