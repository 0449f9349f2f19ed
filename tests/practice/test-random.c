/* test-random.c: the generator against its authors' numbers, and its shape.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <math.h>

#include "rw-practice-random.h"

/* Published with the reference code of splitmix64 and in many ports of it: seed 1234567. */
static void
splitmix_gives_its_published_numbers (void)
{
  static const guint64 wanted[] = { G_GUINT64_CONSTANT (6457827717110365317),
                                    G_GUINT64_CONSTANT (3203168211198807973),
                                    G_GUINT64_CONSTANT (9817491932198370423),
                                    G_GUINT64_CONSTANT (4593380528125082431),
                                    G_GUINT64_CONSTANT (16408922859458223821) };
  guint64 state = 1234567;

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpuint (rw_practice_splitmix (&state), ==, wanted[i]);
}

/* Published vectors of xoshiro256** from the state 1, 2, 3, 4. */
static void
xoshiro_gives_its_published_numbers (void)
{
  static const guint64 wanted[] = { 11520,
                                    0,
                                    1509978240,
                                    G_GUINT64_CONSTANT (1215971899390074240),
                                    G_GUINT64_CONSTANT (1216172134540287360),
                                    G_GUINT64_CONSTANT (607988272756665600),
                                    G_GUINT64_CONSTANT (16172922978634559625),
                                    G_GUINT64_CONSTANT (8476171486693032832),
                                    G_GUINT64_CONSTANT (10595114339597558777),
                                    G_GUINT64_CONSTANT (2904607092377533576) };
  RwPracticeRandom random = { { 1, 2, 3, 4 } };

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpuint (rw_practice_random_next (&random), ==, wanted[i]);
}

/* Seed 42, worked out by a second implementation with big integers. */
static void
seed_fills_the_state_by_splitmix (void)
{
  RwPracticeRandom random;

  rw_practice_random_seed (&random, 42);
  g_assert_cmphex (random.s[0], ==, G_GUINT64_CONSTANT (0xbdd732262feb6e95));
  g_assert_cmphex (random.s[1], ==, G_GUINT64_CONSTANT (0x28efe333b266f103));
  g_assert_cmphex (random.s[2], ==, G_GUINT64_CONSTANT (0x47526757130f9f52));
  g_assert_cmphex (random.s[3], ==, G_GUINT64_CONSTANT (0x581ce1ff0e4ae394));
}

/* To the last bit, from the same second implementation. */
static void
numbers_are_the_same_to_the_last_bit (void)
{
  static const double uniform[] = { 0.08386297105988216, 0.3789802506626686,
                                    0.6800434110281394 };
  static const double gauss[] = { 2.4069435397065573, 0.27355494576895845, 1.3598051861631424 };
  RwPracticeRandom random;

  rw_practice_random_seed (&random, 42);
  for (guint i = 0; i < G_N_ELEMENTS (uniform); i++)
    g_assert_cmpfloat (rw_practice_random_uniform (&random), ==, uniform[i]);
  for (guint i = 0; i < G_N_ELEMENTS (gauss); i++)
    g_assert_cmpfloat (rw_practice_random_gauss (&random), ==, gauss[i]);
}

static void
uniform_stays_below_one_and_is_even (void)
{
  const guint n = 100000;
  guint tenths[10] = { 0 };
  RwPracticeRandom random;

  rw_practice_random_seed (&random, 7);
  for (guint i = 0; i < n; i++)
    {
      const double u = rw_practice_random_uniform (&random);

      g_assert_cmpfloat (u, >=, 0);
      g_assert_cmpfloat (u, <, 1);
      tenths[(int)(u * 10)]++;
    }
  /* Binomial, σ = √(n·0.1·0.9) = 95: five of them. */
  for (guint i = 0; i < 10; i++)
    g_assert_cmpint (ABS ((int)tenths[i] - (int)n / 10), <, 475);
}

static void
gauss_has_mean_nought_and_variance_one (void)
{
  const guint n = 200000;
  double sum = 0, squares = 0, outside_one = 0;
  RwPracticeRandom random;

  rw_practice_random_seed (&random, 8);
  for (guint i = 0; i < n; i++)
    {
      const double g = rw_practice_random_gauss (&random);

      g_assert_cmpfloat (fabs (g), <=, 6);
      sum += g;
      squares += g * g;
      outside_one += fabs (g) > 1;
    }
  /* Standard errors: mean 1/√n = 0.0022, variance √(2/n) = 0.0032, share 0.001. */
  g_assert_cmpfloat_with_epsilon (sum / n, 0, 0.011);
  g_assert_cmpfloat_with_epsilon (squares / n, 1, 0.016);
  /* Normal: 0.3173; the sum of twelve is a little flatter: 0.3191. */
  g_assert_cmpfloat_with_epsilon (outside_one / n, 0.3191, 0.006);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/practice/random/splitmix-gives-its-published-numbers",
                   splitmix_gives_its_published_numbers);
  g_test_add_func ("/practice/random/xoshiro-gives-its-published-numbers",
                   xoshiro_gives_its_published_numbers);
  g_test_add_func ("/practice/random/seed-fills-the-state-by-splitmix",
                   seed_fills_the_state_by_splitmix);
  g_test_add_func ("/practice/random/numbers-are-the-same-to-the-last-bit",
                   numbers_are_the_same_to_the_last_bit);
  g_test_add_func ("/practice/random/uniform-stays-below-one-and-is-even",
                   uniform_stays_below_one_and_is_even);
  g_test_add_func ("/practice/random/gauss-has-mean-nought-and-variance-one",
                   gauss_has_mean_nought_and_variance_one);
  return g_test_run ();
}
