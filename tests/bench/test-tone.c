/* test-tone.c: the tone leads to the set point by pitch and by rhythm, and the signals cannot be mistaken.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib.h>
#include <math.h>

#include "rw-tone.h"

typedef struct
{
  gint16 *at;
  gsize   n;
} Sound;

static void
sound_clear (Sound *self)
{
  g_free (self->at);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Sound, sound_clear)

static Sound
render (RwTone *tone,
        double  seconds)
{
  Sound sound = { .n = (gsize) (seconds * RW_TONE_RATE) };

  sound.at = g_new (gint16, sound.n);
  rw_tone_render (tone, sound.at, sound.n);
  return sound;
}

static void
skip (RwTone *tone,
      double  seconds)
{
  g_auto (Sound) sound = render (tone, seconds);
}

/* Hertz, by upward crossings of zero, the ends of whole waves interpolated. */
static double
pitch_of (const Sound *sound)
{
  double first = NAN, last = NAN;
  int waves = -1;

  for (gsize i = 1; i < sound->n; i++)
    if (sound->at[i - 1] < 0 && sound->at[i] >= 0)
      {
        last = (double) i - (double) sound->at[i] / (sound->at[i] - sound->at[i - 1]);
        if (isnan (first))
          first = last;
        waves++;
      }
  return waves * RW_TONE_RATE / (last - first);
}

static int
loudest (const Sound *sound)
{
  int most = 0;

  for (gsize i = 0; i < sound->n; i++)
    most = MAX (most, ABS (sound->at[i]));
  return most;
}

static int
largest_jump (const Sound *sound)
{
  int most = 0;

  for (gsize i = 1; i < sound->n; i++)
    most = MAX (most, ABS (sound->at[i] - sound->at[i - 1]));
  return most;
}

/* Seconds of every stretch that is heard; pauses of less than @least seconds are none. */
static GArray *
notes_of (const Sound *sound,
          double       least)
{
  GArray *notes = g_array_new (FALSE, FALSE, sizeof (double));
  const gsize gap = (gsize) (least * RW_TONE_RATE);
  gsize from = 0, heard = 0;
  gboolean on = FALSE;

  for (gsize i = 0; i < sound->n; i++)
    {
      if (ABS (sound->at[i]) > 300)
        {
          if (!on)
            from = i;
          on = TRUE;
          heard = i;
        }
      if (on && (i - heard > gap || i + 1 == sound->n))
        {
          const double seconds = (double) (heard - from) / RW_TONE_RATE;

          g_array_append_val (notes, seconds);
          on = FALSE;
        }
    }
  return notes;
}

/* --- the tone ------------------------------------------------------------------------------------- */

static void
test_silent_without (void)
{
  g_autoptr (RwTone) tone = rw_tone_new ();
  g_auto (Sound) before = render (tone, 0.1);

  g_assert_true (rw_tone_is_silent (tone));
  g_assert_cmpint (loudest (&before), ==, 0);
  rw_tone_set_target (tone, TRUE, 0.1, 0.1, FALSE);
  g_assert_false (rw_tone_is_silent (tone));
  skip (tone, 0.3);
  rw_tone_set_target (tone, FALSE, 0, 0, FALSE);
  skip (tone, 0.006);
  g_assert_true (rw_tone_is_silent (tone));

  g_auto (Sound) after = render (tone, 0.1);

  g_assert_cmpint (loudest (&after), ==, 0);
}

static void
test_silent_on_nonsense (void)
{
  static const double wrong[][2] = { { NAN, 0.1 }, { 0.1, NAN }, { 0.1, 0 }, { 0.1, -1 }, { INFINITY, 0.1 } };

  for (guint i = 0; i < G_N_ELEMENTS (wrong); i++)
    {
      g_autoptr (RwTone) tone = rw_tone_new ();

      rw_tone_set_target (tone, TRUE, wrong[i][0], wrong[i][1], TRUE);

      g_auto (Sound) sound = render (tone, 0.05);

      g_assert_cmpint (loudest (&sound), ==, 0);
    }
}

static double
heard_pitch (double distance)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_set_target (tone, TRUE, distance, 0.1, TRUE);
  skip (tone, 0.05);

  g_auto (Sound) sound = render (tone, 0.5);

  return pitch_of (&sound);
}

/* Octaves up for too much are octaves down for too little. */
static void
test_pitch_rises (void)
{
  const double middle = heard_pitch (0);
  double last = 0;

  for (double distance = -2; distance <= 2.001; distance += 0.05)
    {
      const double now = heard_pitch (distance);

      g_assert_cmpfloat (now, >, last);
      g_assert_cmpfloat_with_epsilon (now / rw_tone_get_pitch (distance / 0.1), 1, 0.003);
      g_assert_cmpfloat_with_epsilon (now * heard_pitch (-distance) / (middle * middle), 1, 0.006);
      last = now;
    }
  g_assert_cmpfloat (heard_pitch (-0.1) * 1.3, <, middle);
  g_assert_cmpfloat (heard_pitch (0.1), >, middle * 1.3);
}

static void
test_pitch_is_bounded (void)
{
  g_assert_cmpfloat (heard_pitch (-1e6), >, 150);
  g_assert_cmpfloat (heard_pitch (1e6), <, 1600);
}

/* No stretch of 4 ms, longer than half a wave, is quieter than half of the loudest. */
static void
test_steady_inside (void)
{
  static const double distances[] = { -0.09, 0, 0.07 };

  for (guint i = 0; i < G_N_ELEMENTS (distances); i++)
    {
      g_autoptr (RwTone) tone = rw_tone_new ();

      rw_tone_set_target (tone, TRUE, distances[i], 0.1, TRUE);
      skip (tone, 0.02);

      g_auto (Sound) sound = render (tone, 3);
      const int most = loudest (&sound);

      for (gsize at = 0; at + 192 <= sound.n; at += 192)
        g_assert_cmpint (loudest (&(Sound){ sound.at + at, 192 }), >, most / 2);
    }
}

static double
heard_pulses (double distance)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_set_target (tone, TRUE, distance, 0.1, FALSE);
  skip (tone, 0.01);

  g_auto (Sound) sound = render (tone, 8);
  g_autoptr (GArray) notes = notes_of (&sound, 0.02);

  return notes->len / 8.0;
}

static void
test_pulses_nearer_faster (void)
{
  double last = 0;

  for (double distance = 3; distance > 0.11; distance *= 0.7)
    {
      const double now = heard_pulses (distance);

      g_assert_cmpfloat (now, >=, last);
      g_assert_cmpfloat_with_epsilon (now, rw_tone_get_pulses (distance / 0.1), 0.2);
      g_assert_cmpfloat_with_epsilon (now, heard_pulses (-distance), 0.2);
      last = now;
    }
  g_assert_cmpfloat (heard_pulses (3), <, 2);
  g_assert_cmpfloat (heard_pulses (0.1), >, 7);
}

/* What may happen in a hurry: values that leap, come and go. The steepest a wave of this loudness and pitch is, with
 * its harmonics and a ramp, bounds every step from one sample to the next; a tone cut hard would pass it. */
static void
test_no_clicks (void)
{
  g_autoptr (RwTone) tone = rw_tone_new ();
  const double peak = 0.30 * 32767, steepest = 2 * G_PI * rw_tone_get_pitch (-4) / RW_TONE_RATE * (0.8 + 0.3 + 0.3);
  const double bound = peak * (steepest + 1.05 / (0.005 * RW_TONE_RATE)) + 2;
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  int last = 0;

  for (guint i = 0; i < 2000; i++)
    {
      rw_tone_set_target (tone, g_rand_int_range (rand, 0, 4) > 0, g_rand_double_range (rand, -2, -0.4), 0.1,
                          g_rand_boolean (rand));

      g_auto (Sound) sound = render (tone, g_rand_double_range (rand, 0.001, 0.05));

      g_assert_cmpint (largest_jump (&sound), <=, (int) bound);
      g_assert_cmpint (ABS (sound.at[0] - last), <=, (int) bound);
      last = sound.at[sound.n - 1];
    }
}

static void
test_volume (void)
{
  int last = -1;

  for (double volume = 0; volume <= 1; volume += 0.25)
    {
      g_autoptr (RwTone) tone = rw_tone_new ();

      rw_tone_set_volume (tone, volume);
      skip (tone, 0.01);
      rw_tone_set_target (tone, TRUE, 0, 0.1, TRUE);
      skip (tone, 0.01);

      g_auto (Sound) sound = render (tone, 0.1);

      g_assert_cmpint (loudest (&sound), >, last);
      last = loudest (&sound);
      if (volume == 0)
        g_assert_cmpint (loudest (&sound), ==, 0);
    }
}

/* --- signals -------------------------------------------------------------------------------------- */

static GArray *
heard_notes (RwSoundEvent event)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_play (tone, event);

  g_auto (Sound) sound = render (tone, 4);

  g_assert_true (rw_tone_is_silent (tone));
  return notes_of (&sound, 0.012);
}

static double
mean_of (const GArray *notes)
{
  double sum = 0;

  for (guint i = 0; i < notes->len; i++)
    sum += g_array_index (notes, double, i);
  return sum / notes->len;
}

/* By rhythm alone: another count of notes, or notes at least half as long again. */
static void
test_signals_differ_in_rhythm (void)
{
  for (int a = 0; a < RW_N_SOUND_EVENTS; a++)
    for (int b = 0; b < a; b++)
      {
        g_autoptr (GArray) one = heard_notes (a);
        g_autoptr (GArray) other = heard_notes (b);
        const double ratio = mean_of (one) / mean_of (other);

        g_assert_true (one->len != other->len || ratio > 1.5 || ratio < 1 / 1.5);
        g_assert_true (one->len > 1 && other->len > 1);
      }
}

static double
pitch_between (RwSoundEvent event,
               double       from,
               double       to)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_play (tone, event);
  skip (tone, from);

  g_auto (Sound) sound = render (tone, to - from);

  return pitch_of (&sound);
}

static void
test_signals_differ_in_pitch (void)
{
  g_assert_cmpfloat (pitch_between (RW_SOUND_KEPT, 0.10, 0.19), >, 1.3 * pitch_between (RW_SOUND_KEPT, 0.01, 0.06));
  g_assert_cmpfloat_with_epsilon (pitch_between (RW_SOUND_ASKED, 0.01, 0.20), pitch_between (RW_SOUND_ASKED, 0.40, 0.58),
                                  5);
  g_assert_cmpfloat (rw_tone_get_length (RW_SOUND_KEPT), <, 0.3);
  g_assert_cmpfloat (rw_tone_get_length (RW_SOUND_DANGER), >, 1.5);
}

/* Strength at @hertz, by Goertzel's filter, as a share of full scale. */
static double
strength_at (const Sound *sound,
             double       hertz)
{
  const double w = 2 * cos (2 * G_PI * hertz / RW_TONE_RATE);
  double a = 0, b = 0;

  for (gsize i = 0; i < sound->n; i++)
    {
      const double now = sound->at[i] / 32767.0 + w * a - b;

      b = a;
      a = now;
    }
  return 2 * sqrt (MAX (0, a * a + b * b - w * a * b)) / (double) sound->n;
}

static void
test_harsh_ones_have_overtones (void)
{
  static const RwSoundEvent events[] = { RW_SOUND_OUTSIDE, RW_SOUND_DANGER };
  static const double hertz[] = { 190, 120 };

  for (guint i = 0; i < G_N_ELEMENTS (events); i++)
    {
      g_autoptr (RwTone) tone = rw_tone_new ();

      rw_tone_play (tone, events[i]);
      skip (tone, 0.01);

      g_auto (Sound) sound = render (tone, 0.08);

      g_assert_cmpfloat (strength_at (&sound, hertz[i]), >, 0.05);
      g_assert_cmpfloat (strength_at (&sound, 5 * hertz[i]), >, 0.3 * strength_at (&sound, hertz[i]));
      g_assert_cmpfloat (strength_at (&sound, 2.5 * hertz[i]), <, 0.2 * strength_at (&sound, hertz[i]));
    }
}

static void
test_danger_comes_first (void)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_play (tone, RW_SOUND_ASKED);
  skip (tone, 0.1);
  rw_tone_play (tone, RW_SOUND_DANGER);
  rw_tone_play (tone, RW_SOUND_KEPT);
  skip (tone, 0.02);

  g_auto (Sound) sound = render (tone, 0.3);

  g_assert_cmpfloat (strength_at (&sound, 120), >, 0.05);
  g_assert_cmpfloat (strength_at (&sound, 740), <, 0.02);
}

static void
test_kept_waits_for_danger (void)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  rw_tone_play (tone, RW_SOUND_DANGER);
  rw_tone_play (tone, RW_SOUND_KEPT);
  skip (tone, rw_tone_get_length (RW_SOUND_DANGER) + 0.01);

  g_auto (Sound) sound = render (tone, 0.05);

  g_assert_cmpfloat_with_epsilon (pitch_of (&sound), 660, 10);
}

/* Also when cut short: the steepest a harsh note is, and the ramps of its ends and of the cut. */
static void
test_signals_do_not_click (void)
{
  const double bound = 32767 * (0.08 + 2 * 0.55 / (0.005 * RW_TONE_RATE));

  for (int event = 0; event < RW_N_SOUND_EVENTS; event++)
    for (double cut = 0.01; cut < 0.2; cut += 0.0037)
      {
        g_autoptr (RwTone) tone = rw_tone_new ();

        rw_tone_play (tone, event);

        g_auto (Sound) before = render (tone, cut);

        rw_tone_play (tone, RW_SOUND_DANGER);

        g_auto (Sound) after = render (tone, 0.7);

        g_assert_cmpint (largest_jump (&before), <=, (int) bound);
        g_assert_cmpint (largest_jump (&after), <=, (int) bound);
        g_assert_cmpint (ABS (after.at[0] - before.at[before.n - 1]), <=, (int) bound);
      }
}

/* The tone steps back but is not lost, and nothing is ever cut off at full scale. */
static void
test_signal_over_tone (void)
{
  g_autoptr (RwTone) tone = rw_tone_new ();

  for (int event = 0; event < RW_N_SOUND_EVENTS; event++)
    {
      rw_tone_set_target (tone, TRUE, 0.3, 0.1, TRUE);
      skip (tone, 0.1);
      rw_tone_play (tone, event);

      g_auto (Sound) sound = render (tone, 2);

      g_assert_cmpint (loudest (&sound), <, 32000);
      g_assert_cmpint (loudest (&sound), >, 8000);
    }
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/tone/silent without a target", test_silent_without);
  g_test_add_func ("/tone/silent on nonsense", test_silent_on_nonsense);
  g_test_add_func ("/tone/pitch rises with the distance", test_pitch_rises);
  g_test_add_func ("/tone/pitch stays where it is heard", test_pitch_is_bounded);
  g_test_add_func ("/tone/unbroken inside", test_steady_inside);
  g_test_add_func ("/tone/pulses faster nearer", test_pulses_nearer_faster);
  g_test_add_func ("/tone/no clicks", test_no_clicks);
  g_test_add_func ("/tone/volume", test_volume);
  g_test_add_func ("/signals/differ in rhythm", test_signals_differ_in_rhythm);
  g_test_add_func ("/signals/differ in pitch", test_signals_differ_in_pitch);
  g_test_add_func ("/signals/harsh ones have overtones", test_harsh_ones_have_overtones);
  g_test_add_func ("/signals/danger cuts others short", test_danger_comes_first);
  g_test_add_func ("/signals/the rest wait for danger", test_kept_waits_for_danger);
  g_test_add_func ("/signals/do not click", test_signals_do_not_click);
  g_test_add_func ("/signals/over the tone, below full scale", test_signal_over_tone);
  return g_test_run ();
}
