/* test-link-scpi.c: a serial link that asks an instrument written by the book (fake-instrument.py).
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <signal.h>
#include <string.h>

#include "link-probe.h"
#include "rw-link-serial.h"

static const double soon = 10;

typedef struct
{
  GSubprocess      *process;
  GDataInputStream *notes;
  char             *folder;
  char             *port;
} Instrument;

/* Runs the instrument with up to two options; returns when its port is there. */
static Instrument *
instrument_new (const char *option,
                const char *second)
{
  Instrument *self = g_new0 (Instrument, 1);
  g_autofree char *script
      = g_test_build_filename (G_TEST_DIST, "meter", "fake-instrument.py", NULL);
  g_autoptr (GSubprocessLauncher) launcher
      = g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE);
  g_autoptr (GError) error = NULL;
  g_autofree char *line = NULL;

  self->folder = g_dir_make_tmp ("railwright-scpi-XXXXXX", &error);
  g_assert_no_error (error);
  self->port = g_build_filename (self->folder, "port", NULL);
  g_subprocess_launcher_unsetenv (launcher, "LD_PRELOAD");
  self->process = g_subprocess_launcher_spawn (launcher, &error, "python3", script, self->port,
                                               option, second, NULL);
  g_assert_no_error (error);
  self->notes = g_data_input_stream_new (g_subprocess_get_stdout_pipe (self->process));
  line = g_data_input_stream_read_line (self->notes, NULL, NULL, NULL);
  g_assert_cmpstr (line, ==, "ready");
  return self;
}

/* Switches it off; all that it noted, as lines. (transfer full) */
static char *
instrument_end (Instrument *self)
{
  GString *notes = g_string_new (NULL);
  char *line;

  g_subprocess_send_signal (self->process, SIGTERM);
  while ((line = g_data_input_stream_read_line (self->notes, NULL, NULL, NULL)) != NULL)
    {
      g_string_append_printf (notes, "%s\n", line);
      g_free (line);
    }
  g_subprocess_wait (self->process, NULL, NULL);
  g_unlink (self->port);
  g_rmdir (self->folder);
  g_object_unref (self->notes);
  g_object_unref (self->process);
  g_free (self->folder);
  g_free (self->port);
  g_free (self);
  return g_string_free (notes, FALSE);
}

static LinkProbe *
open_link (Instrument *instrument,
           guint       patience_ms)
{
  RwLink *link = rw_link_serial_new (instrument->port, rw_decoder_get_usual_line ("scpi"),
                                     rw_decoder_new ("scpi"));

  rw_link_serial_set_patience (RW_LINK_SERIAL (link), patience_ms);
  rw_link_open (link);
  return link_probe_new (link);
}

/* 0, 1.5, 3 … with each tenth an overload: none missed, none twice. */
static void
check_values (LinkProbe *probe)
{
  for (guint i = 0; i < probe->values->len; i++)
    {
      const double value = g_array_index (probe->values, double, i);

      g_assert_true (i % 10 == 9 ? isnan (value) : value == 1.5 * i);
    }
}

static void
check_manners (const char *notes)
{
  g_test_message ("%.200s", notes);
  g_assert_true (g_str_has_prefix (notes, "told *CLS\ntold *IDN?\n"));
  g_assert_null (strstr (notes, "before CONF"));
  g_assert_null (strstr (notes, "unknown"));
  g_assert_null (strstr (notes, "interrupted"));
}

static void
test_reads (void)
{
  Instrument *instrument = instrument_new (NULL, NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_values (probe, 500, soon));
  g_assert_cmpstr (rw_link_get_identity (probe->link), ==, "QUAYSIDE M3");
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "QUAYSIDE M3"));
  g_assert_true (
      g_str_has_prefix (probe->story->str, "opening listening listening reading 0 1.5 3 "));
  rw_link_close (probe->link);
  check_values (probe);
  notes = instrument_end (instrument);
  check_manners (notes);
  g_assert_true (g_str_has_prefix (
      notes, "told *CLS\ntold *IDN?\ntold CONF:VOLT:DC\ntold READ?\ntold READ?\n"));
}

static void
test_messages_between (void)
{
  Instrument *instrument = instrument_new ("loud", "crlf");
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);
  g_autofree char *notes = NULL;
  RwDecoderCounts counts;

  g_assert_true (link_probe_wait_values (probe, 60, soon));
  rw_link_close (probe->link);
  check_values (probe);
  rw_link_get_counts (probe->link, &counts);
  g_assert_cmpuint (counts.not_understood, >=, 18);
  notes = instrument_end (instrument);
  check_manners (notes);
}

static void
test_nameless (void)
{
  Instrument *instrument = instrument_new ("nameless", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 1000);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_values (probe, 20, soon));
  g_assert_null (rw_link_get_identity (probe->link));
  rw_link_close (probe->link);
  check_values (probe);
  notes = instrument_end (instrument);
  check_manners (notes);
}

/* Two questions are lost on the line: it asks again, says so meanwhile, and goes on. */
static void
test_lost_questions (void)
{
  Instrument *instrument = instrument_new ("deaf=2", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 400);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  g_assert_true (link_probe_wait_values (probe, 20, soon));
  g_assert_cmpint (rw_link_get_state (probe->link), ==, RW_LINK_READING);
  rw_link_close (probe->link);
  check_values (probe);
  notes = instrument_end (instrument);
  check_manners (notes);
}

/* It takes longer than the first wait: found out, and not flooded with questions. */
static void
test_slow_meter (void)
{
  Instrument *instrument = instrument_new ("slow=0.5", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 300);
  g_autofree char *notes = NULL;
  guint asked = 0;

  g_assert_true (link_probe_wait_values (probe, 6, soon));
  rw_link_close (probe->link);
  check_values (probe);
  notes = instrument_end (instrument);
  g_assert_null (strstr (notes, "before CONF"));
  for (const char *at = notes; (at = strstr (at, "told READ?")) != NULL; at++)
    asked++;
  g_assert_cmpuint (asked, <=, probe->values->len + 2);
}

/* Switched off and on again: lost, and read again. */
static void
test_switched_off (void)
{
  Instrument *instrument = instrument_new (NULL, NULL);
  g_autofree char *folder = g_strdup (instrument->folder);
  g_autofree char *port = g_strdup (instrument->port);
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);

  g_assert_true (link_probe_wait_values (probe, 10, soon));
  g_free (instrument_end (instrument));
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, 1));
  g_assert_cmpstr (rw_link_get_identity (probe->link), ==, "QUAYSIDE M3");

  instrument = instrument_new (NULL, NULL);
  g_assert_cmpint (g_mkdir (folder, 0700), ==, 0);
  {
    g_autofree char *device = g_file_read_link (instrument->port, NULL);
    g_autoptr (GFile) file = g_file_new_for_path (port);

    g_assert_true (g_file_make_symbolic_link (file, device, NULL, NULL));
  }
  g_assert_true (link_probe_wait_state (probe, RW_LINK_READING, soon));
  rw_link_close (probe->link);
  g_free (instrument_end (instrument));
  g_unlink (port);
  g_rmdir (folder);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/scpi link/reads value after value", test_reads);
  g_test_add_func ("/scpi link/is not confused by messages between the values",
                   test_messages_between);
  g_test_add_func ("/scpi link/reads an instrument without a name", test_nameless);
  g_test_add_func ("/scpi link/asks again when a question is lost", test_lost_questions);
  g_test_add_func ("/scpi link/gives a slow instrument its time", test_slow_meter);
  g_test_add_func ("/scpi link/comes back when the instrument does", test_switched_off);
  return g_test_run ();
}
