/* test-link-scpi.c: links that ask an instrument written by the book (fake-instrument.py), serial and TCP.
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
#include "rw-link-tcp.h"

static const double soon = 10;

typedef struct
{
  GSubprocess      *process;
  GDataInputStream *notes;
  char             *folder;
  char             *port;     /* a path, or "tcp" */
  guint16           tcp_port; /* else 0 */
} Instrument;

/* Runs the instrument at @place (NULL: at a pseudo-terminal of its own) with up to two
 * options; returns when it is there. */
static Instrument *
instrument_new_at (const char *place,
                   const char *option,
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
  self->port = place != NULL ? g_strdup (place) : g_build_filename (self->folder, "port", NULL);
  g_subprocess_launcher_unsetenv (launcher, "LD_PRELOAD");
  self->process = g_subprocess_launcher_spawn (launcher, &error, "python3", script, self->port,
                                               option, second, NULL);
  g_assert_no_error (error);
  self->notes = g_data_input_stream_new (g_subprocess_get_stdout_pipe (self->process));
  line = g_data_input_stream_read_line (self->notes, NULL, NULL, NULL);
  g_assert_true (g_str_has_prefix (line, "ready"));
  self->tcp_port = (guint16) g_ascii_strtoull (line + strlen ("ready"), NULL, 10);
  return self;
}

static Instrument *
instrument_new (const char *option,
                const char *second)
{
  return instrument_new_at (NULL, option, second);
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
  RwDecoder *decoder = rw_decoder_new ("scpi");
  RwLink *link = instrument->tcp_port != 0
                     ? rw_link_tcp_new ("127.0.0.1", instrument->tcp_port, decoder)
                     : rw_link_serial_new (instrument->port, rw_decoder_get_usual_line ("scpi"),
                                           decoder);

  rw_link_port_set_patience (RW_LINK_PORT (link), patience_ms);
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
      notes, "told *CLS\ntold *IDN?\ntold *CLS\ntold CONF:VOLT:DC\ntold SYST:ERR?\n"
             "told READ?\ntold READ?\n"));
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

/* --- in the network ------------------------------------------------------------------ */

static void
test_tcp_reads (void)
{
  Instrument *instrument = instrument_new_at ("tcp", NULL, NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_values (probe, 2000, soon));
  g_assert_cmpstr (rw_link_get_identity (probe->link), ==, "QUAYSIDE M3");
  g_assert_null (rw_link_get_trouble (probe->link));
  rw_link_close (probe->link);
  check_values (probe);
  notes = instrument_end (instrument);
  g_assert_null (strstr (notes, "interrupted"));
}

/* Switched off in the middle of a question, and on again at the same port. */
static void
test_tcp_switched_off (void)
{
  Instrument *instrument = instrument_new_at ("tcp", "slow=0.05", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);
  g_autofree char *place = g_strdup_printf ("tcp:%u", instrument->tcp_port);
  guint before;

  g_assert_true (link_probe_wait_values (probe, 5, soon));
  g_free (instrument_end (instrument));
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, 1));
  g_assert_cmpstr (rw_link_get_identity (probe->link), ==, "QUAYSIDE M3");
  before = probe->values->len;
  instrument = instrument_new_at (place, "slow=0.05", NULL);
  g_assert_true (link_probe_wait_values (probe, before + 5, soon));
  for (guint i = before; i < probe->values->len; i++)
    g_assert_cmpfloat (g_array_index (probe->values, double, i), ==, 1.5 * (i - before));
  g_free (instrument_end (instrument));
}

static void
test_errors_shown (void)
{
  Instrument *instrument = instrument_new_at ("tcp", "faults=3", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 2000);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_values (probe, 20, soon));
  g_assert_nonnull (strstr (rw_link_get_trouble (probe->link), "500 “Fan \"0\" stands still”"));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "Fan \"0\" stands still"));
  g_assert_cmpint (rw_link_get_state (probe->link), ==, RW_LINK_READING);
  rw_link_close (probe->link);
  g_assert_null (rw_link_get_trouble (probe->link));
  check_values (probe);
  notes = instrument_end (instrument);
  g_assert_nonnull (strstr (notes, "SYST:ERR?\ntold SYST:ERR?\ntold SYST:ERR?\ntold SYST:ERR?\n"
                                   "told READ?"));
}

static void
test_mute (void)
{
  Instrument *instrument = instrument_new_at ("tcp", "mute", "nameless");
  g_autoptr (LinkProbe) probe = open_link (instrument, 500);
  g_autofree char *notes = NULL;

  g_assert_true (link_probe_wait_values (probe, 100, soon));
  check_values (probe);
  rw_link_close (probe->link);
  g_free (instrument_end (instrument));
}

/* --- what is measured ---------------------------------------------------------------- */

/* What the fake instrument measured when it sent this value. */
static RwKind
tell_kind (double value)
{
  return value < 0 ? RW_KIND_RIPPLE : value >= 1e6 ? RW_KIND_OHMS : RW_KIND_DC;
}

/* Each value says what it is; how many of that kind there are from @from on. */
static guint
count_kind (LinkProbe *probe,
            RwKind     kind,
            guint      from)
{
  guint n = 0;

  for (guint i = from; i < probe->values->len; i++)
    {
      const RwKind told = (RwKind) g_array_index (probe->kinds, int, i);

      g_assert_cmpint (told, ==, tell_kind (g_array_index (probe->values, double, i)));
      n += told == kind;
    }
  return n;
}

static void
check_kinds (const char *place,
             const char *option)
{
  static const RwKind kinds[]
      = { RW_KIND_RIPPLE, RW_KIND_OHMS, RW_KIND_DC, RW_KIND_OHMS, RW_KIND_RIPPLE };
  Instrument *instrument = instrument_new_at (place, option, NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 1000);

  g_assert_true (link_probe_wait_values (probe, 5, soon));
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++)
    {
      const guint from = probe->values->len;
      guint n = 0;

      rw_link_set_kind (probe->link, kinds[i]);
      for (guint turn = 0; turn < 100 && (n = count_kind (probe, kinds[i], from)) < 5; turn++)
        link_probe_run (0.05);
      g_assert_cmpuint (n, >=, 5);
      link_probe_run (0.007 * i); /* the next change at another moment */
    }
  count_kind (probe, RW_KIND_DC, 0);
  rw_link_close (probe->link);
  g_free (instrument_end (instrument));
}

static void
test_kinds (void)
{
  check_kinds (NULL, NULL);
  check_kinds ("tcp", NULL);
  check_kinds ("tcp", "slow=0.1");
}

/* Set before it is opened; and again in force after the instrument was off. */
static void
test_kind_stays (void)
{
  Instrument *instrument = instrument_new_at ("tcp", NULL, NULL);
  g_autofree char *place = g_strdup_printf ("tcp:%u", instrument->tcp_port);
  g_autoptr (LinkProbe) probe
      = link_probe_new (rw_link_tcp_new ("127.0.0.1", instrument->tcp_port, rw_decoder_new ("scpi")));

  rw_link_set_kind (probe->link, RW_KIND_OHMS);
  rw_link_open (probe->link);
  g_assert_true (link_probe_wait_values (probe, 5, soon));
  g_free (instrument_end (instrument));
  g_assert_true (link_probe_wait_state (probe, RW_LINK_LOST, 1));
  instrument = instrument_new_at (place, NULL, NULL);
  g_assert_true (link_probe_wait_values (probe, probe->values->len + 5, soon));
  g_assert_cmpuint (count_kind (probe, RW_KIND_OHMS, 0), ==, probe->values->len);
  rw_link_close (probe->link);
  g_free (instrument_end (instrument));
}

/* It cannot do AC: no value comes as AC, and people read why; back to DC it goes on. */
static void
test_kind_refused (void)
{
  Instrument *instrument = instrument_new_at ("tcp", "noac", NULL);
  g_autoptr (LinkProbe) probe = open_link (instrument, 700);
  guint n;

  g_assert_true (link_probe_wait_values (probe, 5, soon));
  rw_link_set_kind (probe->link, RW_KIND_RIPPLE);
  g_assert_true (link_probe_wait_state (probe, RW_LINK_SILENT, soon));
  g_assert_nonnull (strstr (rw_link_get_message (probe->link), "-113 “Undefined header;CONF:VOLT:AC”"));
  g_assert_nonnull (strstr (rw_link_get_trouble (probe->link), "refuses"));
  n = probe->values->len;
  link_probe_run (0.5);
  g_assert_cmpuint (probe->values->len, ==, n);
  rw_link_set_kind (probe->link, RW_KIND_DC);
  g_assert_true (link_probe_wait_values (probe, n + 5, soon));
  g_assert_cmpuint (count_kind (probe, RW_KIND_DC, 0), ==, probe->values->len);
  g_assert_null (rw_link_get_trouble (probe->link));
  rw_link_close (probe->link);
  g_free (instrument_end (instrument));
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
  g_test_add_func ("/scpi over tcp/reads value after value", test_tcp_reads);
  g_test_add_func ("/scpi over tcp/comes back when the instrument does", test_tcp_switched_off);
  g_test_add_func ("/scpi over tcp/shows the instrument's errors", test_errors_shown);
  g_test_add_func ("/scpi over tcp/reads one that says nothing but values", test_mute);
  g_test_add_func ("/scpi kinds/every value says what it is, through changes", test_kinds);
  g_test_add_func ("/scpi kinds/stay in force", test_kind_stays);
  g_test_add_func ("/scpi kinds/a refused one gives no values", test_kind_refused);
  return g_test_run ();
}
