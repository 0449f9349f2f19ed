/* test-belief-published.c: textbook networks and circuits with published posteriors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every joint state of a network's hidden variables is one cause (all of one part: exactly one of them is so), and what
 * is observed is a symptom of it. So beliefs are the exact posterior of the network, whatever its shape. Compared with
 * the published figures to their last digit, and with sums over the joint states to 1e-12.
 *
 * Sources: F. V. Jensen, Bayesian Networks and Decision Graphs (2001), the reduced car start; S. Lauritzen and
 * D. Spiegelhalter (1988), the chest clinic; K. Murphy (1998), the sprinkler; S. Russell and P. Norvig, the burglary;
 * J. de Kleer and B. Williams (1987), the multipliers and adders; R. Reiter (1987), the full adder. The noisy-OR
 * figures are by Quickscore and by brute force, which agree.
 */
#include "config.h"

#include <math.h>

#include "job-fixtures.h"
#include "rw-belief.h"

#define MOST_STATES 64
#define MOST_SIGNS 8

typedef struct
{
  guint  n_states; /* bits are the variables */
  double (*prior) (guint state);
  double (*sign) (guint state, guint sign); /* P (present | state) */
  guint  n_signs;
} Network;

/* What is known of a sign. */
typedef enum
{
  UNKNOWN,
  ABSENT,
  PRESENT,
} Seen;

static void
append_number (GString *text,
               double   value)
{
  char buffer[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append (text, g_ascii_formatd (buffer, sizeof buffer, "%.17g", value));
}

static RwKnowledge *
knowledge_of (const Network *net)
{
  g_autoptr (GString) text = g_string_new ("{\"causes\":[");
  const char *comma = "";

  for (guint s = 0; s < net->n_states; s++)
    if (net->prior (s) > 0)
      {
        g_string_append_printf (text, "%s{\"id\":\"s%u\",\"title\":\"s\",\"area\":\"board\",\"part\":\"one\",\"prior\":", comma, s);
        append_number (text, net->prior (s));
        g_string_append (text, ",\"repair\":{\"title\":\"r\",\"minutes\":1,\"hazard\":\"none\",\"who\":\"anyone\"}}");
        comma = ",";
      }
  g_string_append (text, "],\"symptoms\":[");
  for (guint k = 0; k < net->n_signs; k++)
    {
      g_string_append_printf (text, "%s{\"id\":\"k%u\",\"title\":\"k\",\"group\":\"game\",\"chance\":{\"default\":0.5",
                              k > 0 ? "," : "", k);
      for (guint s = 0; s < net->n_states; s++)
        if (net->prior (s) > 0)
          {
            g_string_append_printf (text, ",\"s%u\":", s);
            append_number (text, net->sign (s, k));
          }
      g_string_append (text, "}}");
    }
  g_string_append (text, "]}");
  return fixture_knowledge_from (text->str);
}

/* Posterior of every state, after asserting that it is the sum over the joint states. */
static void
solve (const Network *net,
       const Seen    *seen,
       double        *p)
{
  g_autoptr (RwKnowledge) knowledge = knowledge_of (net);
  g_autoptr (RwSession) job = fixture_job ();
  double sum = 0;

  for (guint k = 0; k < net->n_signs; k++)
    {
      g_autofree char *id = g_strdup_printf ("k%u", k);

      if (seen[k] != UNKNOWN)
        fixture_symptom (job, id, seen[k] == PRESENT ? RW_SYMPTOM_PRESENT : RW_SYMPTOM_ABSENT);
    }
  for (guint s = 0; s < net->n_states; s++)
    {
      p[s] = net->prior (s);
      for (guint k = 0; k < net->n_signs; k++)
        p[s] *= seen[k] == UNKNOWN ? 1 : seen[k] == PRESENT ? net->sign (s, k) : 1 - net->sign (s, k);
      sum += p[s];
    }

  g_autoptr (RwBenchState) state = rw_bench_state_new (job);
  g_autoptr (RwBelief) belief = rw_belief_new (knowledge, state);

  for (guint s = 0; s < net->n_states; s++)
    {
      g_autofree char *id = g_strdup_printf ("s%u", s);
      const RwCauseBelief *it = rw_belief_find_cause (belief, id);
      const double believed = it != NULL ? it->p : 0;

      g_assert_cmpfloat_with_epsilon (believed, p[s] / sum, 1e-12);
      p[s] = believed;
    }
}

/* Chance of variable @bit. */
static double
marginal (const Network *net,
          const double  *p,
          guint          bit)
{
  double sum = 0;

  for (guint s = 0; s < net->n_states; s++)
    if ((s >> bit & 1) != 0)
      sum += p[s];
  return sum;
}

static double
bernoulli (gboolean is,
           double   p)
{
  return is ? p : 1 - p;
}

/* --- reduced car start: bits no-fuel, bad-plugs; signs no-start, meter empty, meter half -------- */

static double
car_prior (guint s)
{
  return bernoulli (s & 1, 0.02) * bernoulli ((s & 2) != 0, 0.04);
}

static double
car_sign (guint s,
          guint k)
{
  const gboolean dry = s & 1;

  if (k == 0)
    return dry ? 1 : (s & 2) != 0 ? 0.99 : 0.01;
  if (k == 1)
    return dry ? 0.998 : 0.01;
  return dry ? 0.001 : 0.6;
}

static void
test_car_start (void)
{
  const Network net = { 4, car_prior, car_sign, 3 };
  double p[MOST_STATES];

  solve (&net, (Seen[]){ PRESENT, UNKNOWN, UNKNOWN }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.5806262, 5.1e-8);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 0), 0.2931863, 5.1e-8);
  solve (&net, (Seen[]){ PRESENT, UNKNOWN, PRESENT }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.8043496, 5.1e-8);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 0), 0.0006908558, 5.1e-11);
  solve (&net, (Seen[]){ PRESENT, PRESENT, UNKNOWN }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.0580408, 5.1e-8);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 0), 0.9764135, 5.1e-8);
}

/* --- chest clinic: bits asia, smoke, tub, lung, bronc; signs asia, smoke, xray, dysp ------------ */

static double
chest_prior (guint s)
{
  const gboolean asia = s & 1, smoke = (s & 2) != 0;

  return bernoulli (asia, 0.01) * bernoulli (smoke, 0.5) * bernoulli ((s & 4) != 0, asia ? 0.05 : 0.01)
         * bernoulli ((s & 8) != 0, smoke ? 0.1 : 0.01) * bernoulli ((s & 16) != 0, smoke ? 0.6 : 0.3);
}

static double
chest_sign (guint s,
            guint k)
{
  const gboolean either = (s & 12) != 0, bronc = (s & 16) != 0;

  if (k < 2)
    return (s >> k & 1) != 0 ? 1 : 0;
  if (k == 2)
    return either ? 0.98 : 0.05;
  return bronc ? (either ? 0.9 : 0.8) : (either ? 0.7 : 0.1);
}

static void
test_chest_clinic (void)
{
  static const struct
  {
    Seen   seen[4];
    double tub, lung, bronc, either, xray, dysp;
  } rows[] = {
    { { UNKNOWN, UNKNOWN, UNKNOWN, UNKNOWN }, 0.0104, 0.055, 0.45, 0.064828, 0.11029004, 0.4359706 },
    { { PRESENT, UNKNOWN, UNKNOWN, PRESENT }, 0.08775096, 0.09952515, 0.81140207, 0.18229985, 0.21953886, 1 },
    { { PRESENT, ABSENT, UNKNOWN, UNKNOWN }, 0.05, 0.01, 0.3, 0.0595, 0.105335, 0.336775 },
    { { PRESENT, UNKNOWN, PRESENT, PRESENT }, 0.39171172, 0.44427051, 0.62882178, 0.81376870, 1, 1 },
    { { PRESENT, UNKNOWN, ABSENT, PRESENT }, 0.00224870, 0.00255042, 0.86276077, 0.00467159, 0, 1 },
    { { UNKNOWN, UNKNOWN, UNKNOWN, PRESENT }, 0.01884531, 0.10275922, 0.83396734, 0.12053583, 0.16209833, 1 },
    { { UNKNOWN, PRESENT, UNKNOWN, PRESENT }, 0.01542669, 0.14833360, 0.88016382, 0.16221762, 0.20086239, 1 },
    { { UNKNOWN, PRESENT, PRESENT, PRESENT }, 0.07526626, 0.72371402, 0.71370551, 0.79145365, 1, 1 },
  };
  const Network net = { 32, chest_prior, chest_sign, 4 };
  double p[MOST_STATES];

  for (guint r = 0; r < G_N_ELEMENTS (rows); r++)
    {
      double either = 0, xray = 0, dysp = 0;

      solve (&net, rows[r].seen, p);
      for (guint s = 0; s < 32; s++)
        {
          either += (s & 12) != 0 ? p[s] : 0;
          xray += p[s] * chest_sign (s, 2);
          dysp += p[s] * chest_sign (s, 3);
        }
      g_assert_cmpfloat_with_epsilon (marginal (&net, p, 2), rows[r].tub, 5.1e-9);
      g_assert_cmpfloat_with_epsilon (marginal (&net, p, 3), rows[r].lung, 5.1e-9);
      g_assert_cmpfloat_with_epsilon (marginal (&net, p, 4), rows[r].bronc, 5.1e-9);
      g_assert_cmpfloat_with_epsilon (either, rows[r].either, 5.1e-9);
      if (rows[r].seen[2] == UNKNOWN)
        g_assert_cmpfloat_with_epsilon (xray, rows[r].xray, 5.1e-9);
      if (rows[r].seen[3] == UNKNOWN)
        g_assert_cmpfloat_with_epsilon (dysp, rows[r].dysp, 5.1e-9);
    }
}

/* --- sprinkler: bits cloudy, sprinkler, rain; signs wet, rain ----------------------------------- */

static double
grass_prior (guint s)
{
  const gboolean cloudy = s & 1;

  return 0.5 * bernoulli ((s & 2) != 0, cloudy ? 0.1 : 0.5) * bernoulli ((s & 4) != 0, cloudy ? 0.8 : 0.2);
}

static double
grass_sign (guint s,
            guint k)
{
  static const double wet[] = { 0, 0.9, 0.9, 0.99 };

  return k == 0 ? wet[s >> 1] : (s & 4) != 0 ? 1 : 0;
}

static void
test_sprinkler (void)
{
  const Network net = { 8, grass_prior, grass_sign, 2 };
  double p[MOST_STATES];

  solve (&net, (Seen[]){ PRESENT, UNKNOWN }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.4297636, 5.1e-8);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 2), 0.7079277, 5.1e-8);
  solve (&net, (Seen[]){ PRESENT, PRESENT }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.1944990, 5.1e-8);
}

/* --- burglary: bits burglary, earthquake, alarm; signs John calls, Mary calls ------------------- */

static double
alarm_prior (guint s)
{
  static const double rings[] = { 0.001, 0.94, 0.29, 0.95 };

  return bernoulli (s & 1, 0.001) * bernoulli ((s & 2) != 0, 0.002) * bernoulli ((s & 4) != 0, rings[s & 3]);
}

static double
alarm_sign (guint s,
            guint k)
{
  const gboolean rings = (s & 4) != 0;

  return k == 0 ? (rings ? 0.9 : 0.05) : (rings ? 0.7 : 0.01);
}

static void
test_burglary (void)
{
  const Network net = { 8, alarm_prior, alarm_sign, 2 };
  double p[MOST_STATES];

  solve (&net, (Seen[]){ PRESENT, PRESENT }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 0), 0.2841718, 5.1e-8);
}

/* --- circuits: bits are faulty parts ------------------------------------------------------------ */

static double
fault_prior (guint s)
{
  double p = 1;

  for (guint bit = 0; bit < 5; bit++)
    p *= bernoulli ((s >> bit & 1) != 0, 0.01);
  return p;
}

static double
entropy (const double *p,
         guint         n)
{
  double sum = 0;

  for (guint s = 0; s < n; s++)
    sum -= p[s] > 0 ? p[s] * log2 (p[s]) : 0;
  return sum;
}

/* Chance that an adder of @a and @b shows @wanted. */
static double
adder_shows (gboolean faulty,
             guint    a,
             guint    b,
             guint    wanted)
{
  return faulty ? 1.0 / 32 : a + b == wanted ? 1 : 0;
}

/* M1, M2, M3, A1, A2: X, Y, Z are 6 from a good multiplier, F = X + Y, G = Y + Z; a bad part shows 0 … 31. The sign
 * is F = 10 and G = 12. */
static double
polybox_sign (guint s,
              guint k)
{
  double sum = 0;

  for (guint x = 0; x < 32; x++)
    for (guint y = 0; y < 32; y++)
      for (guint z = 0; z < 32; z++)
        {
          const double inner = ((s & 1) != 0 ? 1.0 / 32 : x == 6) * ((s & 2) != 0 ? 1.0 / 32 : y == 6)
                               * ((s & 4) != 0 ? 1.0 / 32 : z == 6);

          if (inner > 0)
            sum += inner * adder_shows ((s & 8) != 0, x, y, 10) * adder_shows ((s & 16) != 0, y, z, 12);
        }
  return sum;
}

static void
test_polybox (void)
{
  static const guint doubles[] = { 2 | 16, 2 | 4 };
  const Network net = { 32, fault_prior, polybox_sign, 1 };
  double p[MOST_STATES];

  solve (&net, (Seen[]){ PRESENT }, p);
  g_assert_cmpfloat_with_epsilon (p[1], 0.496857, 5.1e-7);
  g_assert_cmpfloat_with_epsilon (p[8], 0.496857, 5.1e-7);
  g_assert_cmpfloat_with_epsilon (p[1 | 8], 0.005019, 5.1e-7);
  for (guint k = 0; k < G_N_ELEMENTS (doubles); k++)
    g_assert_cmpfloat_with_epsilon (p[doubles[k]], 0.000157, 5.1e-7);
  g_assert_cmpfloat_with_epsilon (entropy (p, 32), 1.057198, 5.1e-7);
}

/* X1, X2, A1, A2, O1 with 1, 0 and a carry of 1; a bad gate shows 0 or 1. The sign is sum 1, carry 0. */
static double
adder_sign (guint s,
            guint k)
{
  double sum = 0;

  for (guint inner = 0; inner < 8; inner++)
    {
      const guint x1 = inner & 1, a1 = inner >> 1 & 1, a2 = inner >> 2 & 1;
      const double p = ((s & 1) != 0 ? 0.5 : x1 == 1) * ((s & 4) != 0 ? 0.5 : a1 == 0)
                       * ((s & 8) != 0 ? 0.5 : a2 == x1) * ((s & 2) != 0 ? 0.5 : (x1 ^ 1) == 1)
                       * ((s & 16) != 0 ? 0.5 : (a1 | a2) == 0);

      sum += p;
    }
  return sum;
}

static void
test_full_adder (void)
{
  const Network net = { 32, fault_prior, adder_sign, 1 };
  double p[MOST_STATES];
  guint doubles = 0;

  solve (&net, (Seen[]){ PRESENT }, p);
  g_assert_cmpfloat_with_epsilon (p[1], 0.970226, 5.1e-7);
  for (guint s = 0; s < 32; s++)
    if (fabs (p[s] - 0.0049) < 5e-5)
      doubles++;
  g_assert_cmpuint (doubles, ==, 6);
  g_assert_cmpfloat_with_epsilon (entropy (p, 32), 0.273331, 5.1e-7);
}

/* --- noisy-OR: bits are diseases ---------------------------------------------------------------- */

static double
disease_prior (guint s)
{
  return bernoulli (s & 1, 0.02) * bernoulli ((s & 2) != 0, 0.05) * bernoulli ((s & 4) != 0, 0.01);
}

static double
disease_sign (guint s,
              guint k)
{
  static const double leak[] = { 0.01, 0.02, 0.005 };
  static const double q[3][3] = { { 0.8, 0.3, 0 }, { 0.1, 0.9, 0.6 }, { 0, 0.5, 0.95 } };
  double none = 1 - leak[k];

  for (guint d = 0; d < 3; d++)
    none *= (s >> d & 1) != 0 ? 1 - q[k][d] : 1;
  return 1 - none;
}

static void
test_noisy_or (void)
{
  const Network net = { 8, disease_prior, disease_sign, 3 };
  double p[MOST_STATES];

  solve (&net, (Seen[]){ PRESENT, PRESENT, ABSENT }, p);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 0), 0.2393945, 5.1e-8);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 1), 0.78282956, 5.1e-9);
  g_assert_cmpfloat_with_epsilon (marginal (&net, p, 2), 0.0012754, 5.1e-8);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/belief-published/the car that will not start", test_car_start);
  g_test_add_func ("/belief-published/the chest clinic", test_chest_clinic);
  g_test_add_func ("/belief-published/the sprinkler", test_sprinkler);
  g_test_add_func ("/belief-published/the burglary", test_burglary);
  g_test_add_func ("/belief-published/multipliers and adders", test_polybox);
  g_test_add_func ("/belief-published/the full adder", test_full_adder);
  g_test_add_func ("/belief-published/noisy or", test_noisy_or);
  return g_test_run ();
}
