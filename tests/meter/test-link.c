/* test-link.c: links over pushed bytes, and the reading thread over a port that the test plays.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <fcntl.h>
#include <glib-unix.h>
#include <string.h>
#include <unistd.h>

#include "link-probe.h"
#include "rw-link-bytes.h"
#include "rw-link-worker.h"
#include "rw-scpi-talk.h"

/* --- pushed bytes -------------------------------------------------------------------- */

static void
push (LinkProbe  *probe,
      const char *text,
      gint64      when_us)
{
  rw_link_bytes_push (RW_LINK_BYTES (probe->link), (const guint8 *) text, strlen (text), when_us);
}

static void
test_bytes (void)
{
  g_autoptr (LinkProbe) probe = link_probe_new (rw_link_bytes_new (rw_decoder_new ("lines")));
  RwDecoderCounts counts;

  push (probe, "0 V\n", 1); /* closed: nobody hears it */
  rw_link_open (probe->link);
  push (probe, "5 V\nnon", 1000);
  push (probe, "sense\n6 ", 2000);
  push (probe, "V\n", 3000);
  g_assert_cmpstr (probe->story->str, ==, "listening reading 5 6");
  g_assert_cmpint (g_array_index (probe->when, gint64, 0), ==, 1000);
  g_assert_cmpint (g_array_index (probe->when, gint64, 1), ==, 3000);
  rw_link_get_counts (probe->link, &counts);
  g_assert_cmpuint (counts.values, ==, 2);
  g_assert_cmpuint (counts.not_understood, ==, 1);

  /* Half a line before the end is no beginning after it. */
  push (probe, "1", 4000);
  rw_link_close (probe->link);
  rw_link_open (probe->link);
  push (probe, "7 V\n", 5000);
  g_assert_cmpstr (probe->story->str, ==, "listening reading 5 6 closed listening reading 7");
}

static void
close_cb (RwLink             *link,
          const RwMeterValue *value,
          gint64              when_us,
          gpointer            data)
{
  rw_link_close (link);
}

static void
test_bytes_closed_in_handler (void)
{
  g_autoptr (LinkProbe) probe = link_probe_new (rw_link_bytes_new (rw_decoder_new ("lines")));

  g_signal_connect (probe->link, "value", G_CALLBACK (close_cb), NULL);
  rw_link_open (probe->link);
  push (probe, "1 V\n2 V\n", 1);
  g_assert_cmpstr (probe->story->str, ==, "listening reading 1 closed");
}

/* --- a port played by the test ------------------------------------------------------- */

/* A port over a pipe. Shared with the thread: atomic, and read by the test when the thread is
 * done. */
typedef struct
{
  RwBytePort parent;
  int        ends[2]; /* read, write */
  int        missing; /* atomic: opening fails, and it is not there */
  int        deaf;    /* atomic: writing fails */
  int        slow_ms; /* opening takes this long */
  int        opens;   /* atomic */
  int        freed;   /* atomic */
} FakePort;

static gboolean
fake_open (RwBytePort *port,
           GError    **error)
{
  FakePort *self = (FakePort *) port;

  g_usleep ((gulong) self->slow_ms * 1000);
  if (g_atomic_int_get (&self->missing))
    {
      g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE, "no port today");
      return FALSE;
    }
  g_atomic_int_inc (&self->opens);
  return TRUE;
}

static int
fake_get_fd (RwBytePort *port)
{
  return ((FakePort *) port)->ends[0];
}

static gssize
fake_read (RwBytePort *port,
           guint8     *bytes,
           gsize       n)
{
  return read (((FakePort *) port)->ends[0], bytes, n);
}

static gboolean
fake_write (RwBytePort *port,
            const char *text,
            gsize       n)
{
  return !g_atomic_int_get (&((FakePort *) port)->deaf);
}

static gboolean
fake_is_there (RwBytePort *port)
{
  return !g_atomic_int_get (&((FakePort *) port)->missing);
}

static void
fake_nothing (RwBytePort *port)
{
}

static void
fake_free (RwBytePort *port)
{
  g_atomic_int_set (&((FakePort *) port)->freed, 1);
}

static const RwBytePortClass fake_class = {
  .open = fake_open,
  .get_fd = fake_get_fd,
  .read = fake_read,
  .write = fake_write,
  .drop_input = fake_nothing,
  .is_there = fake_is_there,
  .close = fake_nothing,
  .free = fake_free,
};

typedef struct
{
  FakePort      port;
  RwMailbox    *mailbox;
  RwLinkWorker *worker;
  GString      *story; /* "1" a value, "S2" a state */
} Stage;

static void
deliver (const RwMail          *mail,
         const RwDecoderCounts *counts,
         gpointer               data)
{
  Stage *self = data;

  if (mail->is_state)
    g_string_append_printf (self->story, "S%d ", (int) mail->state);
  else
    g_string_append_printf (self->story, "%g ", mail->value.value);
}

static void
stage_start (Stage  *self,
             RwTalk *talk)
{
  self->port.parent.class = &fake_class;
  self->port.parent.name = (char *) "fake";
  g_assert_true (g_unix_open_pipe (self->port.ends, FD_CLOEXEC, NULL));
  self->story = g_string_new (NULL);
  self->mailbox = rw_mailbox_new (NULL, deliver, self);
  self->worker = rw_link_worker_start (&self->port.parent,
                                       rw_decoder_new (talk != NULL ? "scpi" : "lines"), talk,
                                       3000, self->mailbox);
}

static void
stage_end (Stage *self)
{
  rw_link_worker_stop (self->worker);
  rw_mailbox_shut (self->mailbox);
  for (guint i = 0; i < 200 && !g_atomic_int_get (&self->port.freed); i++)
    g_usleep (10000);
  g_assert_true (g_atomic_int_get (&self->port.freed));
  rw_mailbox_unref (self->mailbox);
  close (self->port.ends[0]);
  if (self->port.ends[1] >= 0)
    close (self->port.ends[1]);
  g_string_free (self->story, TRUE);
}

static gboolean
wait_story (Stage      *self,
            const char *part)
{
  for (guint i = 0; i < 500 && strstr (self->story->str, part) == NULL; i++)
    link_probe_run (0.01);
  return strstr (self->story->str, part) != NULL;
}

/* A driver that says nothing when the adapter goes: only the device's name disappears. */
static void
test_device_disappears (void)
{
  Stage stage = { 0 };
  gint64 began_us;

  stage_start (&stage, NULL);
  g_assert_true (wait_story (&stage, "S1 S2 "));
  began_us = g_get_monotonic_time ();
  g_atomic_int_set (&stage.port.missing, 1);
  g_assert_true (wait_story (&stage, "S1 S2 S5 "));
  g_assert_cmpint (g_get_monotonic_time () - began_us, <, G_USEC_PER_SEC);
  g_atomic_int_set (&stage.port.missing, 0);
  g_assert_true (wait_story (&stage, "S1 S2 S5 S2 "));
  g_assert_cmpint (write (stage.port.ends[1], "5 V\n", 4), ==, 4);
  g_assert_true (wait_story (&stage, "S1 S2 S5 S2 S3 5 "));
  stage_end (&stage);
}

/* While it is away it is tried twice a second, no more. */
static void
test_reopening_pace (void)
{
  Stage stage = { 0 };

  stage_start (&stage, NULL);
  g_assert_true (wait_story (&stage, "S2 "));
  close (stage.port.ends[1]); /* reads give 0 bytes from now on, at once */
  stage.port.ends[1] = -1;
  g_assert_true (wait_story (&stage, "S5 "));
  link_probe_run (2);
  g_assert_cmpint (g_atomic_int_get (&stage.port.opens), >=, 3);
  g_assert_cmpint (g_atomic_int_get (&stage.port.opens), <=, 7);
  stage_end (&stage);
}

static void
test_cannot_write (void)
{
  Stage stage = { .port = { .deaf = 1 } };

  stage_start (&stage, rw_scpi_talk_new (G_USEC_PER_SEC));
  g_assert_true (wait_story (&stage, "S1 S2 S5 "));
  g_atomic_int_set (&stage.port.deaf, 0);
  g_assert_true (wait_story (&stage, "S5 S2 "));
  stage_end (&stage);
}

/* Closing a link must not stop the windows, even while its driver hangs. */
static void
test_hanging_driver (void)
{
  Stage stage = { .port = { .slow_ms = 1500 } };
  gint64 began_us;

  stage_start (&stage, NULL);
  link_probe_run (0.1);
  began_us = g_get_monotonic_time ();
  rw_link_worker_stop (stage.worker);
  g_assert_cmpint (g_get_monotonic_time () - began_us, <, 300 * 1000);
  rw_mailbox_shut (stage.mailbox);
  rw_mailbox_unref (stage.mailbox);
  g_assert_false (g_atomic_int_get (&stage.port.freed));
  for (guint i = 0; i < 500 && !g_atomic_int_get (&stage.port.freed); i++)
    g_usleep (10000);
  g_assert_true (g_atomic_int_get (&stage.port.freed));
  g_usleep (50 * 1000); /* the thread's last lines, for the leak checker */
  close (stage.port.ends[0]);
  close (stage.port.ends[1]);
  g_string_free (stage.story, TRUE);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/bytes/come out as values with their time", test_bytes);
  g_test_add_func ("/bytes/stop when a handler closes the link", test_bytes_closed_in_handler);
  g_test_add_func ("/worker/notices that the device is gone without a hang-up",
                   test_device_disappears);
  g_test_add_func ("/worker/tries again twice a second", test_reopening_pace);
  g_test_add_func ("/worker/takes a port it cannot write to for lost", test_cannot_write);
  g_test_add_func ("/worker/is left behind when its driver hangs", test_hanging_driver);
  return g_test_run ();
}
