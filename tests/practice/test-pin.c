/* test-pin.c: a seed gives the same cabinet and the same readings on every machine, today and later.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A drill is shared by its seed, so these digests may change only together with the practice cabinet's physics, and then
 * seeds that were shared before are void: say so in the release notes. Everything behind them is made of + − × /, floor
 * and sqrt, which IEEE 754 rounds in one way only, and is compiled without fused multiply-add; no other function of a
 * maths library is called, so machines and libraries cannot differ.
 */
#include "config.h"

#include <string.h>

#include "practice-fixtures.h"
#include "rw-practice-meter.h"
#include "rw-practice-nodes.h"

#define N_READINGS 200

typedef struct
{
  const char *profile;
  guint64     seed;
  const char *fault;
  double      strength;
  const char *cabinet;  /* first 16 digits of the SHA-256 of what it is made of */
  const char *readings; /* and of its first 200 readings, as the meter speaks them */
} Pin;

static const Pin pins[] = {
  { "classic-5-12-m5", 1, NULL, 0, "b843c77e4f6c4273", "36641013910720eb" },
  { "classic-5-12-m5", 20240309, "edge-oxidised", 0.6, "4287d1b891f631e7", "0c139b4c5eb4aec4" },
  { "dram-5-12-m5", 7, "minus5-lost-supply", 0.4, "7382186a5577d4b1", "f3a441fc543e8022" },
  { "linear-5-audio", 42, "raw-capacitor-tired", 0.7, "ad94e22e999832a4", "5e7b39caa06f2362" },
  { "switcher-5-12-m12", G_MAXUINT64, "poor-crimp", 1, "dcb1a5507bc7cb45", "fd821cef4996efde" },
  { "switcher-5-12-24", 3, "trim-high", 0.5, "39aabc89ff5d02cd", "df657a9b28d8fd47" },
};

static void
add_number (GString *text,
            double   number)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append (text, g_ascii_dtostr (digits, sizeof digits, number));
  g_string_append_c (text, '\n');
}

static void
check_digest (const char *text,
              gsize       length,
              const Pin  *pin,
              const char *wanted,
              const char *what)
{
  g_autofree char *digest = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) text, length);

  digest[16] = '\0';
  if (g_str_equal (digest, wanted))
    return;
  g_test_message ("%s, seed %" G_GUINT64_FORMAT ": the digest of its %s is %s, not %s", pin->profile, pin->seed, what,
                  digest, wanted);
  g_test_fail ();
}

/* What a person could measure of it in the end, to the last bit. */
static void
a_seed_makes_one_cabinet (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (pins); p++)
    {
      const Pin *pin = &pins[p];
      g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (pin->profile, pin->seed, pin->fault, pin->strength);
      const RwPracticeParams *params = &rw_practice_cabinet_get_true_model (cabinet)->params;
      g_autoptr (GString) text = g_string_new (NULL);

      add_number (text, params->trim_start);
      add_number (text, params->limit_watts);
      add_number (text, params->reset_below_volts);
      add_number (text, params->ground.wire_ohms);
      for (guint i = 0; i < params->n_rails; i++)
        {
          const RwPracticeRail *rail = &params->rail[i];

          add_number (text, rail->turns);
          add_number (text, rail->load_amps);
          add_number (text, rail->fixed_volts);
          add_number (text, rail->alive);
          add_number (text, rail->raw.winding_volts);
          add_number (text, rail->path.contact_ohms);
          add_number (text, rail->path.crimp_ohms);
        }
      check_digest (text->str, text->len, pin, pin->cabinet, "cabinet");
    }
}

/* A short life: every sort of spot, a turn of the trim, bare metal, ohms. */
static void
use (RwPracticeCabinet *cabinet,
     RwPracticeMeter   *meter,
     guint              turn)
{
  static const RwKind kinds[] = { RW_KIND_DC, RW_KIND_RIPPLE };
  RwProfile *profile = rw_practice_cabinet_get_profile (cabinet);
  const RwRail *rail = rw_profile_get_rail (profile, turn % rw_profile_get_n_rails (profile));

  rw_practice_meter_set_mode (meter, RW_PRACTICE_MODE_FOLLOW, RW_PRACTICE_JACK_VOLTS);
  if (turn % 7 == 3)
    rw_practice_cabinet_turn_trim_volts (cabinet, turn % 2 == 0 ? 0.04 : -0.03);
  if (turn % 7 == 5)
    {
      rw_practice_meter_set_mode (meter, turn % 2 == 0 ? RW_PRACTICE_MODE_DC : RW_PRACTICE_MODE_OHMS,
                                  RW_PRACTICE_JACK_VOLTS);
      rw_practice_cabinet_put_lead (cabinet, RW_PRACTICE_RED, "cabinet:chassis");
      rw_practice_cabinet_put_lead (cabinet, RW_PRACTICE_BLACK, turn % 2 == 0 ? "edge:p5" : "mains:earth");
    }
  else
    rw_practice_cabinet_set_leads (cabinet, rail->id, turn % RW_N_PLACES, kinds[turn / 2 % 2]);
  rw_practice_cabinet_advance (cabinet, 2.5);
}

static void
a_seed_gives_the_same_readings (void)
{
  for (guint p = 0; p < G_N_ELEMENTS (pins); p++)
    {
      const Pin *pin = &pins[p];
      g_autoptr (RwPracticeCabinet) cabinet = practice_cabinet (pin->profile, pin->seed, pin->fault, pin->strength);
      g_autoptr (RwPracticeMeter) meter
          = rw_practice_meter_new (cabinet, "m1", "bench meter", 0.5, 2, 6000, pin->seed);
      g_autoptr (GString) text = g_string_new (NULL);

      rw_practice_cabinet_set_power (cabinet, TRUE);
      for (guint turn = 0; turn < 40; turn++)
        {
          use (cabinet, meter, turn);

          g_autoptr (GBytes) bytes = rw_practice_meter_take_bytes (meter);

          g_string_append_len (text, g_bytes_get_data (bytes, NULL), (gssize) g_bytes_get_size (bytes));
        }

      g_auto (GStrv) lines = g_strsplit (text->str, "\r\n", N_READINGS + 1);

      g_assert_cmpuint (g_strv_length (lines), ==, N_READINGS + 1);
      check_digest (text->str, text->len - strlen (lines[N_READINGS]), pin, pin->readings, "readings");
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define ADD(name, func) g_test_add_func ("/practice/pin/" name, func)
  ADD ("a-seed-makes-one-cabinet", a_seed_makes_one_cabinet);
  ADD ("a-seed-gives-the-same-readings", a_seed_gives_the_same_readings);
#undef ADD
  return g_test_run ();
}
