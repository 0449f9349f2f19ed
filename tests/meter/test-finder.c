/* test-finder.c: the search for a meter, over lines that are emulated down to their bits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * All searches take their real time, so all of them run at once, before the first test looks at its own.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "fake-line.h"

static const guint speeds[] = { 2400, 9600, 19200, 1200, 600, 4800, 38400, 57600, 115200 };

typedef struct
{
  GPtrArray     *lines; /* of FakeLine */
  RwMeterFinder *finder;
  gboolean       tcp;
  gboolean       done;
  double         took;  /* seconds */
  double         share; /* the newest progress */
  guint          steps; /* of progress */

  /* expected */
  const char      *format; /* NULL: nothing */
  const char      *port;
  RwSerialSettings line;
  double           value;
  gboolean         sign_unsure;
} Case;

static GPtrArray *cases; /* of Case */

static Case *
add_case (const char *test,
          GTestDataFunc check)
{
  Case *self = g_new0 (Case, 1);

  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) fake_line_free);
  g_ptr_array_add (cases, self);
  g_test_add_data_func (test, self, check);
  return self;
}

static FakeLine *
add_line (Case       *self,
          const char *name,
          const char *format)
{
  FakeLine *line = fake_line_new (name, format);

  g_ptr_array_add (self->lines, line);
  return line;
}

/* --- running ------------------------------------------------------------------------- */

static void
progress_cb (RwMeterFinder *finder,
             double         share,
             const char    *words,
             gpointer       data)
{
  Case *self = data;

  g_assert_false (self->done);
  g_assert_cmpfloat (share, >=, self->share);
  g_assert_cmpfloat (share, <=, 1);
  g_assert_cmpuint (strlen (words), >, 8);
  self->share = share;
  self->steps++;
}

static void
done_cb (RwMeterFinder *finder,
         gpointer       data)
{
  Case *self = data;

  g_assert_false (self->done);
  g_assert_false (rw_meter_finder_is_running (finder));
  for (guint i = 0; i < self->lines->len; i++)
    g_assert_cmpuint (((FakeLine *) self->lines->pdata[i])->open_now, ==, 0);
  self->done = TRUE;
}

static void
start (Case *self)
{
  g_autoptr (GPtrArray) ports = g_ptr_array_new ();
  g_autoptr (GPtrArray) hosts = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_address_free);

  self->finder = rw_meter_finder_new ();
  rw_meter_finder_set_maker (self->finder, fake_line_make_port, self->lines);
  g_signal_connect (self->finder, "progress", G_CALLBACK (progress_cb), self);
  g_signal_connect (self->finder, "done", G_CALLBACK (done_cb), self);
  for (guint i = 0; i < self->lines->len; i++)
    {
      FakeLine *line = self->lines->pdata[i];

      if (self->tcp)
        g_ptr_array_add (hosts, rw_meter_address_new_tcp (line->name, 5025));
      else
        g_ptr_array_add (ports, line->name);
    }
  rw_meter_finder_start (self->finder, ports, hosts);
  g_assert_true (rw_meter_finder_is_running (self->finder));
}

static void
run_all (void)
{
  static gboolean ran;
  const gint64 begin_us = g_get_monotonic_time ();
  gboolean all = FALSE;

  if (ran)
    return;
  ran = TRUE;
  for (guint i = 0; i < cases->len; i++)
    start (cases->pdata[i]);
  while (!all)
    {
      all = TRUE;
      g_main_context_iteration (NULL, TRUE);
      for (guint i = 0; i < cases->len; i++)
        {
          Case *self = cases->pdata[i];

          if (self->done && self->took <= 0)
            self->took = (double) (g_get_monotonic_time () - begin_us) / 1e6;
          all = all && self->done;
        }
    }
}

/* --- checking ------------------------------------------------------------------------ */

/* Nothing but the two questions, never on a line that was not listened to, never to one who talks. */
static void
check_manners (const Case *self)
{
  for (guint i = 0; i < self->lines->len; i++)
    {
      const FakeLine *line = self->lines->pdata[i];
      g_auto (GStrv) said = g_strsplit (line->written->str, " ", -1);

      g_test_message ("%s: %u openings, wrote: %s", line->name, line->opens, line->written->str);
      for (guint k = 0; said[k] != NULL && *said[k] != '\0'; k++)
        {
          static const char *const allowed[]
              = { "D@1200", "D@600", "*IDN?@9600", "*IDN?@115200", NULL };

          g_assert_true (g_strv_contains (allowed, said[k]));
        }
      g_assert_false (line->asked_unheard);
      g_assert_false (line->asked_talking);
    }
}

static void
check_line (const RwSerialSettings *line,
            const RwSerialSettings *expected)
{
  g_assert_cmpuint (line->baud, ==, expected->baud);
  g_assert_cmpuint (line->bits, ==, expected->bits);
  g_assert_cmpint (line->parity, ==, expected->parity);
  g_assert_cmpuint (line->stop_bits, ==, expected->stop_bits);
}

static void
tell (const Case *self)
{
  g_autofree char *words = rw_meter_finder_describe (self->finder);

  g_test_message ("%.1f s: %s", self->took, words);
  for (guint i = 0; i < rw_meter_finder_get_n_found (self->finder); i++)
    {
      const RwMeterFound *found = rw_meter_finder_get_found (self->finder, i);
      g_autofree char *place = rw_meter_address_to_words (found->address);

      g_test_message ("  %s %s sure %.6f explained %.2f values %u newest %g", place, found->format,
                      found->sure, found->explained, found->values, found->newest.value);
    }
}

static void
check_found (gconstpointer data)
{
  const Case *self = data;

  run_all ();
  tell (self);
  check_manners (self);
  g_assert_cmpfloat (self->took, <=, RW_METER_FINDER_SECONDS + 0.5);
  g_assert_cmpuint (self->steps, >, 0);
  g_assert_cmpuint (rw_meter_finder_get_n_found (self->finder), >=, 1);
  if (rw_meter_finder_get_n_found (self->finder) == 0)
    return;

  const RwMeterFound *found = rw_meter_finder_get_found (self->finder, 0);

  g_assert_cmpstr (found->format, ==, self->format);
  g_assert_cmpfloat (found->sure, >=, 0.95);
  g_assert_cmpint (found->sign_unsure, ==, self->sign_unsure);
  if (self->tcp)
    g_assert_cmpstr (found->address->host, ==, self->port);
  else
    {
      g_assert_cmpstr (found->address->port, ==, self->port);
      check_line (&found->address->line, &self->line);
    }
  if (found->identity == NULL)
    {
      g_assert_cmpuint (found->values, >=, 1);
      g_assert_cmpfloat_with_epsilon (found->newest.value, self->value, 1e-9);
    }
}

static void
check_none (gconstpointer data)
{
  const Case *self = data;

  run_all ();
  tell (self);
  check_manners (self);
  g_assert_cmpfloat (self->took, <=, RW_METER_FINDER_SECONDS + 0.5);
  for (guint i = 0; i < rw_meter_finder_get_n_found (self->finder); i++)
    g_assert_cmpfloat (rw_meter_finder_get_found (self->finder, i)->sure, <, 0.5);
}

/* --- every format -------------------------------------------------------------------- */

static const struct
{
  const char *format;
  const char *hex, *hex_too; /* frames of the published layouts */
  const char *text, *text_too;
  double      value;         /* of both */
  gboolean    polled;
} meters[] = {
  { "segments-14", "17 20 35 45 5B 6F 7D 87 9E A0 B0 C0 D4 E0", "17 20 35 45 5B 6F 7D 87 9E A0 B0 C0 D4 E0",
    .value = 12.06 },
  { "digits-14", "31 31 32 30 35 38 3B 30 30 30 3A 30 0D 0A", "31 31 32 30 35 38 3B 30 30 30 3A 30 0D 0A",
    .value = 12.058 },
  { "digits-11a", "31 31 32 30 36 3B 30 30 3A 0D 0A", "31 31 32 30 36 3B 30 30 3A 0D 0A", .value = 12.06 },
  { "text-14", NULL, NULL, "DC 3.302    V\r", "DC 3.302    V\r", .value = 3.302, .polled = TRUE },
  { "text-16", "02 34 31 33 34 30 32 30 30 30 30 31 32 30 36 0D",
    "02 34 31 33 34 30 32 30 30 30 30 31 32 30 36 0D", .value = 12.06 },
  { "lines", NULL, NULL, "5.012 V DC\r\n", "5.012 V DC\r\n", .value = 5.012 },
};

static FakeLine *
add_meter (Case       *self,
           const char *name,
           guint       which,
           guint       baud)
{
  const gboolean hex = meters[which].hex != NULL;
  FakeLine *line = add_line (self, name, meters[which].format);

  line->line.baud = baud;
  for (guint i = 0; i < 2; i++)
    if (hex)
      fake_line_add_hex (line, i == 0 ? meters[which].hex : meters[which].hex_too);
    else
      fake_line_add_text (line, i == 0 ? meters[which].text : meters[which].text_too);
  line->needs_power = TRUE;
  if (meters[which].polled)
    {
      line->pause = 0;
      line->question = rw_decoder_get_poll (meters[which].format);
    }
  self->format = meters[which].format;
  self->port = line->name;
  self->line = line->line;
  self->value = meters[which].value;
  self->sign_unsure = g_str_has_prefix (self->format, "digits-11");
  return line;
}

static void
add_every_format (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (meters); i++)
    for (guint s = 0; s < G_N_ELEMENTS (speeds); s++)
      {
        g_autofree char *test = g_strdup_printf ("/finder/finds/%s/%u", meters[i].format, speeds[s]);

        if (!meters[i].polled || speeds[s] == 1200 || speeds[s] == 600)
          add_meter (add_case (test, check_found), "ttyMeter", i, speeds[s]);
      }
}

static void
add_slow (void)
{
  static const guint at[] = { 600, 2400, 115200 };

  for (guint i = 0; i < G_N_ELEMENTS (meters); i++)
    for (guint s = 0; s < G_N_ELEMENTS (at); s++)
      {
        g_autofree char *test = g_strdup_printf ("/finder/finds-slow/%s/%u", meters[i].format, at[s]);

        if (!meters[i].polled)
          add_meter (add_case (test, check_found), "ttySlow", i, at[s])->pause = 1.5;
      }
}

static void
add_noisy (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (meters); i++)
    {
      g_autofree char *test = g_strdup_printf ("/finder/finds-through-noise/%s", meters[i].format);
      Case *self = add_case (test, check_found);
      FakeLine *line = add_meter (self, "ttyNoisy", i, rw_decoder_get_usual_line (meters[i].format)->baud);

      line->spoil = 0.01;
      line->glitches = meters[i].polled ? 0 : 0.5;
    }
}

/* --- others -------------------------------------------------------------------------- */

static void
add_instruments (void)
{
  static const guint at[] = { 9600, 115200 };

  for (guint i = 0; i < G_N_ELEMENTS (at); i++)
    {
      g_autofree char *test = g_strdup_printf ("/finder/finds/scpi/%u", at[i]);
      Case *self = add_case (test, check_found);
      FakeLine *line = add_line (self, "ttyBench", "scpi");

      line->pause = 0;
      line->line.baud = at[i];
      line->question = "*IDN?\n";
      fake_line_add_text (line, "Quayside,M3,0012,1.4\r\n");
      self->format = "scpi";
      self->port = line->name;
      self->line = line->line;
    }
}

static void
add_networks (void)
{
  Case *scpi = add_case ("/finder/finds/scpi/tcp", check_found);
  FakeLine *line = add_line (scpi, "bench-box", "scpi");

  scpi->tcp = TRUE;
  line->pause = 0;
  line->question = "*IDN?\n";
  fake_line_add_text (line, "Quayside,M3,0012,1.4\n");
  scpi->format = "scpi";
  scpi->port = line->name;

  Case *server = add_case ("/finder/finds/segments-14/tcp", check_found);

  add_meter (server, "serial-server", 0, 2400)->needs_power = FALSE;
  server->tcp = TRUE;
}

static void
check_second_port (gconstpointer data)
{
  const Case *self = data;

  check_found (data);
  for (guint i = 1; i < rw_meter_finder_get_n_found (self->finder); i++)
    g_assert_cmpstr (rw_meter_finder_get_found (self->finder, i)->address->port, ==, self->port);
  g_assert_cmpfloat (self->took, <, 12);
}

static void
check_refused (gconstpointer data)
{
  const Case *self = data;
  g_autofree char *words = NULL;

  check_none (data);
  words = rw_meter_finder_describe (self->finder);
  g_assert_nonnull (strstr (words, "“ttyLocked” is locked."));
  g_assert_cmpfloat (self->took, <, 2);
}

static void
check_refused_and_found (gconstpointer data)
{
  const Case *self = data;
  g_autofree char *words = NULL;

  check_found (data);
  words = rw_meter_finder_describe (self->finder);
  g_assert_nonnull (strstr (words, "“ttyLocked” is locked."));
  g_assert_nonnull (strstr (words, "ttyMeter"));
}

static void
check_silence (gconstpointer data)
{
  const Case *self = data;
  const FakeLine *line = self->lines->pdata[0];

  check_none (data);
  g_assert_cmpuint (rw_meter_finder_get_n_found (self->finder), ==, 0);
  g_assert_cmpfloat (self->took, >, RW_METER_FINDER_SECONDS - 2);
  g_assert_nonnull (strstr (line->written->str, "D@1200"));
  g_assert_nonnull (strstr (line->written->str, "D@600"));
  g_assert_nonnull (strstr (line->written->str, "*IDN?@9600"));
  g_assert_nonnull (strstr (line->written->str, "*IDN?@115200"));
}

static void
check_stranger (gconstpointer data)
{
  const Case *self = data;
  const FakeLine *line = self->lines->pdata[0];
  g_autofree char *words = NULL;

  check_none (data);
  words = rw_meter_finder_describe (self->finder);
  g_assert_nonnull (strstr (words, "$GP"));
  g_assert_cmpstr (line->written->str, ==, "");
}

static void
add_ports (void)
{
  Case *two = add_case ("/finder/finds-the-one-of-two-ports", check_second_port);
  FakeLine *quiet = add_line (two, "ttyQuiet", "lines");

  quiet->pause = 0;
  fake_line_add_text (quiet, "?");
  add_meter (two, "ttyMeter", 1, 19200);

  Case *refused = add_case ("/finder/a-locked-port-is-told", check_refused);

  add_line (refused, "ttyLocked", "lines")->error = RW_PORT_ERROR_REFUSED;

  Case *both = add_case ("/finder/a-locked-port-is-told-beside-the-meter", check_refused_and_found);

  add_line (both, "ttyLocked", "lines")->error = RW_PORT_ERROR_REFUSED;
  add_meter (both, "ttyMeter", 0, 2400);

  FakeLine *silent = add_line (add_case ("/finder/silence-is-no-meter", check_silence), "ttySilent", "lines");

  silent->pause = 0;
  fake_line_add_text (silent, "?");

  FakeLine *stranger
      = add_line (add_case ("/finder/other-text-is-no-meter", check_stranger), "ttyStranger", "lines");

  stranger->line.baud = 4800;
  stranger->pause = 0.5;
  fake_line_add_text (stranger, "$GPGGA,101530.00,5321.00,N,00615.00,W,1,08,1.0,20.0,M,47.0,M,,*5A\r\n"
                                "$GPRMC,101530.00,A,5321.00,N,00615.00,W,0.0,0.0,010126,,,A*7C\r\n");
  fake_line_add_text (stranger, "$GPVTG,0.0,T,,M,0.0,N,0.0,K,A*23\r\n$GPTXT,01,01,02,ANTSTATUS=OK*3B\r\n");

  /* An adapter that does not care for speeds gives the meter's bytes at any. */
  Case *careless = add_case ("/finder/finds/an-adapter-without-speeds", check_found);
  FakeLine *any = add_meter (careless, "ttyCareless", 0, 2400);

  any->any_speed = TRUE;
}

static void
add_random (void)
{
  for (guint i = 0; i < 6; i++)
    {
      g_autofree char *test = g_strdup_printf ("/finder/random-bytes-are-no-meter/%u", i);
      FakeLine *line = add_line (add_case (test, check_none), "ttyRandom", "lines");
      g_autoptr (GRand) rand = g_rand_new_with_seed (100 + i);

      line->line.baud = speeds[i];
      line->pause = 0.02 + 0.1 * i;
      for (guint k = 0; k < 50; k++)
        {
          guint8 bytes[40];

          for (guint b = 0; b < sizeof bytes; b++)
            bytes[b] = (guint8) g_rand_int_range (rand, 0, 256);
          g_ptr_array_add (line->frames, g_bytes_new (bytes, sizeof bytes));
        }
    }
}

/* --- without waiting ----------------------------------------------------------------- */

static void
fail_cb (RwMeterFinder *finder)
{
  g_assert_not_reached ();
}

static void
test_stop (void)
{
  g_autoptr (GPtrArray) lines = g_ptr_array_new_with_free_func ((GDestroyNotify) fake_line_free);
  g_autoptr (GPtrArray) ports = g_ptr_array_new ();
  RwMeterFinder *finder = rw_meter_finder_new ();
  FakeLine *line = fake_line_new ("ttyMeter", "lines");

  g_ptr_array_add (lines, line);
  g_ptr_array_add (ports, line->name);
  fake_line_add_text (line, "5.012 V DC\r\n");
  rw_meter_finder_set_maker (finder, fake_line_make_port, lines);
  g_signal_connect (finder, "done", G_CALLBACK (fail_cb), NULL);
  rw_meter_finder_start (finder, ports, NULL);
  g_usleep (200 * 1000);
  rw_meter_finder_stop (finder);
  g_assert_false (rw_meter_finder_is_running (finder));
  g_assert_cmpuint (line->opens, ==, 1);
  g_assert_cmpuint (line->open_now, ==, 0);
  for (guint i = 0; i < 20; i++)
    {
      g_main_context_iteration (NULL, FALSE);
      g_usleep (10 * 1000);
    }
  /* Again, and let go while it runs. */
  rw_meter_finder_start (finder, ports, NULL);
  g_usleep (100 * 1000);
  g_assert_finalize_object (finder);
  g_assert_cmpuint (line->open_now, ==, 0);
}

static void
set_cb (RwMeterFinder *finder,
        gpointer       data)
{
  *(gboolean *) data = TRUE;
}

static void
test_no_ports (void)
{
  g_autoptr (RwMeterFinder) finder = rw_meter_finder_new ();
  g_autofree char *words = NULL;
  gboolean done = FALSE;

  g_signal_connect (finder, "done", G_CALLBACK (set_cb), &done);
  rw_meter_finder_start (finder, NULL, NULL);
  while (!done)
    g_main_context_iteration (NULL, TRUE);
  g_assert_cmpuint (rw_meter_finder_get_n_found (finder), ==, 0);
  words = rw_meter_finder_describe (finder);
  g_assert_nonnull (strstr (words, "no port"));
}

static void
free_case (gpointer data)
{
  Case *self = data;

  g_clear_object (&self->finder);
  g_ptr_array_unref (self->lines);
  g_free (self);
}

int
main (int    argc,
      char **argv)
{
  int result;

  g_test_init (&argc, &argv, NULL);
  g_test_set_nonfatal_assertions (); /* the searches are under way for all */
  cases = g_ptr_array_new_with_free_func (free_case);
  add_every_format ();
  add_slow ();
  add_noisy ();
  add_instruments ();
  add_networks ();
  add_ports ();
  add_random ();
  g_test_add_func ("/finder/stop-is-silent-and-closes", test_stop);
  g_test_add_func ("/finder/no-ports", test_no_ports);
  result = g_test_run ();
  g_ptr_array_unref (cases);
  return result;
}
