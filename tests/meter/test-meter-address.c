/* test-meter-address.c: what people type as a meter's place.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <string.h>

#include "rw-link-port.h"
#include "rw-meter-address.h"

static const RwSerialSettings line
    = { .baud = 2400, .bits = 7, .parity = RW_PARITY_ODD, .stop_bits = 1, .dtr = TRUE };

static void
test_good (void)
{
  static const struct
  {
    const char *typed, *words;
  } cases[] = {
    { "/dev/ttyUSB0", "/dev/ttyUSB0 · 2400 7O1" },
    { "  /dev/serial/by-id/usb-x:1.0-port0 ", "/dev/serial/by-id/usb-x:1.0-port0 · 2400 7O1" },
    { "ttyACM1", "/dev/ttyACM1 · 2400 7O1" },
    { "bench-box", "bench-box:5025" },
    { "bench-box:5025", "bench-box:5025" },
    { "bench_box.local:23", "bench_box.local:23" },
    { "tcp:bench-box:7", "bench-box:7" },
    { "TCP:10.0.0.7", "10.0.0.7:5025" },
    { "10.0.0.7:65535", "10.0.0.7:65535" },
    { "messgerät:1", "messgerät:1" },
    { "[::1]:5025", "[::1]:5025" },
    { "[fe80::1%eth0]:9", "[fe80::1%eth0]:9" },
    { "[::1]", "[::1]:5025" },
    { "::1", "[::1]:5025" },
    { "tcp:::1", "[::1]:5025" },
    { "tcp:ttyUSB0:4", "ttyUSB0:4" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwMeterAddress) address
          = rw_meter_address_parse (cases[i].typed, &line, &error);
      g_autofree char *words = NULL;

      g_assert_no_error (error);
      words = rw_meter_address_to_words (address);
      g_assert_cmpstr (words, ==, cases[i].words);
    }
}

static void
test_bad (void)
{
  static const char *const cases[]
      = { "",          "  ",         "bench box",   "host:",      "host:0",        "host:65536",
          "host:-1",   "host:+7",    "host: 7",     "host:7x",    "host:5e3",      ":5025",
          "tcp:",      "tcp::5025",  "[::1",        "[::1]5025",  "[::1]:",        "[host]:7",
          "[]:7",      "a:b:c",      "1:2:3",       "-x:7",       ".x",            "a..b:7",
          "5.02",      "12",         "999.1.1.1:7", "a,b",        "<b>x",          "host:7:8",
          "[fe80::1%]", "\xff\xfe:7", "x\ty:7" };
  g_autofree char *longest = g_strnfill (300, 'a');
  g_autoptr (GError) too_long = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (GError) error = NULL;
      g_autoptr (RwMeterAddress) address = rw_meter_address_parse (cases[i], &line, &error);

      if (address != NULL)
        g_error ("“%s” was taken", cases[i]);
      g_assert_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE);
      g_assert_nonnull (strstr (error->message, "bench-box:5025")); /* says what to write */
      g_assert_true (g_utf8_validate (error->message, -1, NULL));
    }
  g_assert_null (rw_meter_address_parse (longest, &line, &too_long));
  g_assert_error (too_long, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE);
}

/* The words of a TCP address are read back as the same address. */
static void
test_round_trip (void)
{
  static const char *const hosts[] = { "bench-box", "10.0.0.7", "::1", "fe80::1%eth0" };

  for (guint i = 0; i < G_N_ELEMENTS (hosts); i++)
    {
      g_autoptr (RwMeterAddress) address = rw_meter_address_new_tcp (hosts[i], 1234);
      g_autofree char *words = rw_meter_address_to_words (address);
      g_autoptr (RwMeterAddress) back = rw_meter_address_parse (words, NULL, NULL);

      g_assert_true (rw_meter_address_equal (address, back));
    }
}

static void
test_equal (void)
{
  g_autoptr (RwMeterAddress) serial = rw_meter_address_new_serial ("/dev/x", &line);
  g_autoptr (RwMeterAddress) copy = rw_meter_address_copy (serial);
  g_autoptr (RwMeterAddress) tcp = rw_meter_address_new_tcp ("Bench-Box", 7);
  g_autoptr (RwMeterAddress) small = rw_meter_address_new_tcp ("bench-box", 7);
  g_autoptr (RwMeterAddress) other = rw_meter_address_new_tcp ("bench-box", 8);

  g_assert_true (rw_meter_address_equal (serial, copy));
  copy->line.dtr = FALSE;
  g_assert_false (rw_meter_address_equal (serial, copy));
  g_assert_false (rw_meter_address_equal (serial, tcp));
  g_assert_true (rw_meter_address_equal (tcp, small));
  g_assert_false (rw_meter_address_equal (small, other));
}

static void
test_link (void)
{
  g_autoptr (RwMeterAddress) tcp = rw_meter_address_new_tcp ("bench-box", 7);
  g_autoptr (RwLink) link = rw_meter_address_link (tcp, rw_decoder_new ("scpi"));
  RwBytePort *port = rw_meter_address_make_port (tcp);

  g_assert_true (RW_IS_LINK_PORT (link));
  g_assert_true (rw_meter_address_equal (rw_link_port_get_address (RW_LINK_PORT (link)), tcp));
  g_assert_cmpint (rw_link_get_state (link), ==, RW_LINK_CLOSED);
  g_assert_cmpstr (port->name, ==, "bench-box:7");
  port->class->free (port);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/address/takes paths, hosts and ports", test_good);
  g_test_add_func ("/address/refuses the rest and says what to write", test_bad);
  g_test_add_func ("/address/is read back from its words", test_round_trip);
  g_test_add_func ("/address/is equal when it leads to the same place", test_equal);
  g_test_add_func ("/address/makes a port and a link", test_link);
  return g_test_run ();
}
