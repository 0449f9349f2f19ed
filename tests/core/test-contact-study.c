/* test-contact-study.c: how often is a wrong value kept, and how late a right one? Over simulated hands and meters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Wrong: kept in the air, or while the truth (noise-free, as the meter's own filter shows it) was further than
 * max (3 steps, 0.3 %) from where the contact comes to rest, or a value that is further from it than that and
 * twice its stated u. The delay counts samples from the first at which the truth stays within max (1.5 steps,
 * 0.05 %) to the one that is kept; for contacts outside the band of the air, ripple left out, since it never is
 * there. Rails that still charge (τ 2–12 s) are judged apart, by what is stated: where noise hides the slope, no
 * detector can wait for what it cannot see, but u has to cover it.
 *
 * u is judged on all right keeps, charging rails too: the truth lies within 2 u of the value 19 times in 20, and u is
 * small enough to be of use: its median at most max (2 steps, 0.3 %), its 95th percentile at most that too.
 */
#include "config.h"

#include <math.h>

#include "contact-sim.h"
#include "fixtures.h"
#include "rw-contact.h"

enum
{
  CONTACTS_OF_A_METER = 10,
  MOST_DELAY = 12,
  LEAST_REST = 5, /* samples at rest that must suffice */
  MOST_U = 20     /* tenths of max (2 steps, 0.3 %) */
};

typedef struct
{
  guint contacts, wrong, air, again;
  guint early;         /* charging: kept with more than the tolerance to go */
  guint left_wrong;    /* contacts whose last kept value is wrong */
  guint quiet, missed; /* values at rest for LEAST_REST samples, noise up to 1 count; never kept */
  guint noisy, missed_noisy;
  guint right, within; /* right keeps; those whose truth is within 2 u */
} Count;

typedef struct
{
  Count  kinds[SIM_N_KINDS];
  Count  meters[SIM_N_METERS];
  guint  delays[MOST_DELAY + 1]; /* the last: so many or more; the first: none or earlier */
  guint  n_delays;
  guint  u[MOST_U + 1]; /* right keeps by u, in tenths of max (2 steps, 0.3 %); the last: so much or more */
  guint  n_pushes;
  double seconds;
} Study;

/* Of one contact. */
typedef struct
{
  guint    n[2]; /* kept, by the rests */
  gboolean wrong; /* the last of them */
} Kept;

static double
get_tolerance (const SimSample *sample)
{
  return MAX (3 * sample->step, 0.003 * fabs (sample->aim));
}

static void
say (const char       *what,
     const SimContact *contact,
     const SimSample  *sample,
     guint             i,
     const RwSettled  *settled)
{
  if (g_test_verbose ())
    g_test_message ("%s: %s, %s, %.1f/s, tau %.2f, noise %.2f, sample %u of %u…%u, settles at %u: %.4f ± %.4f, "
                    "quiet %.4f, aim %.4f, step %g",
                    what, contact_sim_kind_name (contact->kind), contact_sim_meter_name (contact->meter),
                    contact->rate, contact->tau, contact->noise, i, contact->first, contact->end,
                    contact->rests[0].settles, settled->value, settled->u, sample->quiet, sample->aim, sample->step);
}

static gboolean
is_right (const SimContact *contact,
          const SimSample  *sample,
          const RwSettled  *settled)
{
  const double within = get_tolerance (sample);

  if (contact->kind != SIM_SLOW && fabs (sample->quiet - sample->aim) > within)
    return FALSE;
  return fabs (settled->value - sample->offset - sample->aim) <= within + 2 * settled->u;
}

static gboolean
counts_delay (const SimContact *contact)
{
  return contact->kind != SIM_RIPPLE && contact->kind != SIM_DROP && contact->kind != SIM_DEAD;
}

static void
count_delay (Study *study,
             int    delay)
{
  study->delays[CLAMP (delay, 0, MOST_DELAY)]++;
  study->n_delays++;
}

static void
count_u (Study            *study,
         Count            *count,
         const SimContact *contact,
         const SimSample  *sample,
         guint             i,
         const RwSettled  *settled)
{
  const double useful = MAX (2 * sample->step, 0.003 * fabs (sample->aim));
  const gboolean within = fabs (settled->value - sample->offset - sample->aim) <= 2 * settled->u;

  count->right++;
  count->within += within;
  study->u[(guint) MIN (10 * settled->u / useful, MOST_U)]++;
  if (!within)
    say ("beyond 2 u", contact, sample, i, settled);
}

static void
judge (Study            *study,
       Count            *count,
       const SimContact *contact,
       const SimSample  *sample,
       guint             i,
       const RwSettled  *settled,
       Kept             *kept)
{
  const guint rest = contact->n_rests == 2 && i >= contact->rests[0].end;

  if (i < contact->first || i >= contact->end)
    {
      count->air++;
      say ("air", contact, sample, i, settled);
      return;
    }
  kept->wrong = !is_right (contact, sample, settled);
  count->wrong += kept->wrong;
  count->early += fabs (sample->quiet - sample->aim) > get_tolerance (sample);
  if (kept->wrong)
    say ("wrong", contact, sample, i, settled);
  else
    count_u (study, count, contact, sample, i, settled);
  if (kept->n[rest]++ > 0)
    {
      count->again++;
      say ("again", contact, sample, i, settled);
      return;
    }
  if (!counts_delay (contact))
    return;

  const int delay = (int) i - (int) contact->rests[rest].settles;

  count_delay (study, delay);
  if (delay > 3)
    say ("late", contact, sample, i, settled);
}

static void
count_missed (Count            *count,
              const SimContact *contact,
              const Kept       *kept)
{
  for (guint i = 0; i < contact->n_rests; i++)
    {
      const gboolean noisy = contact->noise > 1 || contact->kind == SIM_RIPPLE;

      if (contact->rests[i].settles + LEAST_REST > contact->rests[i].end)
        continue;
      *(noisy ? &count->noisy : &count->quiet) += 1;
      if (kept->n[i] > 0)
        continue;
      *(noisy ? &count->missed_noisy : &count->missed) += 1;
      if (g_test_verbose ())
        g_test_message ("missed: %s, %s, %.1f/s, tau %.2f, noise %.2f, rest %u", contact_sim_kind_name (contact->kind),
                        contact_sim_meter_name (contact->meter), contact->rate, contact->tau, contact->noise, i);
    }
}

static void
add (Count       *sum,
     const Count *count)
{
  const guint *from = (const guint *) count;
  guint *to = (guint *) sum;

  for (guint i = 0; i < sizeof *sum / sizeof *to; i++)
    to[i] += from[i];
}

static void
watch_contact (Study            *study,
               RwContact        *watcher,
               const SimContact *contact,
               GArray           *samples)
{
  Count count = { .contacts = 1 };
  Kept kept = { 0 };

  study->n_pushes += samples->len;
  for (guint i = 0; i < samples->len; i++)
    {
      const SimSample *sample = &g_array_index (samples, SimSample, i);
      RwSettled settled;

      if (rw_contact_push (watcher, sample->t, sample->shown, sample->step, &settled) == RW_CONTACT_SETTLED)
        judge (study, &count, contact, sample, i, &settled, &kept);
    }
  count.left_wrong = kept.wrong;
  count_missed (&count, contact, &kept);
  add (&study->kinds[contact->kind], &count);
  if (contact->kind != SIM_SLOW)
    add (&study->meters[contact->meter], &count);
}

static void
run_study (Study *study,
           guint  contacts,
           guint  seed)
{
  g_autoptr (GRand) random = g_rand_new_with_seed (seed);
  g_autoptr (GArray) samples = g_array_new (FALSE, FALSE, sizeof (SimSample));

  for (guint i = 0; i < contacts; i += CONTACTS_OF_A_METER)
    {
      ContactSim *sim = contact_sim_new (random);
      g_autoptr (RwContact) watcher = rw_contact_new ();

      for (guint k = 0; k < CONTACTS_OF_A_METER; k++)
        {
          SimContact contact;

          contact_sim_next (sim, samples, &contact);
          watch_contact (study, watcher, &contact, samples);
        }
      contact_sim_free (sim);
    }
}

static void
report_count (const char  *name,
              const Count *it)
{
  g_test_message ("  %-7s %8u %6u %7u %6u %6u %11u %5u of %-6u %5u of %-6u %.4f", name, it->contacts, it->wrong,
                  it->air, it->early, it->again, it->left_wrong, it->missed, it->quiet, it->missed_noisy,
                  it->noisy, (double) it->within / MAX (it->right, 1));
}

static void
report (const Study *study)
{
  double sum = 0;

  g_test_message ("  kind    contacts  wrong  in air  early  again  left wrong  missed          missed, noisy   in 2 u");
  for (guint k = 0; k < SIM_N_KINDS; k++)
    report_count (contact_sim_kind_name (k), &study->kinds[k]);
  for (guint k = 0; k < SIM_N_METERS; k++)
    report_count (contact_sim_meter_name (k), &study->meters[k]);
  for (guint i = 0; i <= MOST_DELAY; i++)
    {
      sum += study->delays[i];
      g_test_message ("  delay %s%u: %.4f, up to it %.4f", i == MOST_DELAY ? "≥ " : i == 0 ? "≤ " : "", i,
                      (double) study->delays[i] / study->n_delays, sum / study->n_delays);
    }
}

/* What so large a share of the right keeps has a smaller u than: in parts of max (2 steps, 0.3 %). */
static double
get_u_quantile (const Study *study,
                double       share)
{
  guint n = 0, sum = 0, at = 0;

  for (guint i = 0; i <= MOST_U; i++)
    n += study->u[i];
  while (at < MOST_U && (sum += study->u[at]) < share * n)
    at++;
  return (at + 1) / 10.0;
}

/* All but the charging rails. */
static Count
sum_up (const Study *study)
{
  Count all = { 0 };

  for (guint k = 0; k < SIM_N_METERS; k++)
    add (&all, &study->meters[k]);
  return all;
}

static void
check_u (const Study *study)
{
  Count all = sum_up (study);
  const double half = get_u_quantile (study, 0.5), most = get_u_quantile (study, 0.95);

  add (&all, &study->kinds[SIM_SLOW]);
  g_test_message ("%.4f of %u right keeps within 2 u; u below %.1f × max (2 steps, 0.3 %%) in half, %.1f in 95 %%",
                  (double) all.within / all.right, all.right, half, most);
  g_assert_cmpfloat (all.within, >=, 0.95 * all.right);
  g_assert_cmpfloat (half, <=, 1);
  g_assert_cmpfloat (most, <=, 1);
}

static void
check (const Study *study)
{
  const Count all = sum_up (study), *slow = &study->kinds[SIM_SLOW];
  guint prompt = 0;

  for (guint i = 0; i <= 3; i++)
    prompt += study->delays[i];
  g_test_message ("%u contacts: %u wrong keeps, %u in the air, %u kept twice, %u + %u missed, %.4f within 3 samples", all.contacts,
                  all.wrong, all.air, all.again, all.missed, all.missed_noisy, (double) prompt / study->n_delays);
  g_assert_cmpuint ((all.wrong + all.air) * 1000, <, all.contacts);
  /* Falls short: all should be within 3 samples. 94 % are, 98 % within 6: the ends of trim turns look like creep, and
   * meters without a filter of their own are noisy. */
  g_assert_cmpfloat (prompt, >=, 0.93 * study->n_delays);
  g_assert_cmpuint (all.missed, ==, 0);
  g_assert_cmpfloat (all.missed_noisy, <=, 0.006 * all.noisy); /* nearly all of them rails with slow ripple */
  g_assert_cmpfloat (all.again, <=, 0.002 * all.contacts);
  /* Falls short: none should be. A rail that charges over many seconds is kept just as the meter's own approach ends
   * in one contact out of eight, before the slow part shows. */
  g_assert_cmpfloat (slow->wrong + slow->air, <=, 0.15 * slow->contacts);
  check_u (study);
}

static void
test_study (void)
{
  const guint first = g_test_slow () ? 201 : 11, seeds = g_test_slow () ? 20 : 3;
  Study study = { 0 };

  for (guint seed = first; seed < first + seeds; seed++)
    run_study (&study, 4000, seed);
  report (&study);
  check (&study);
}

int
main (int   argc,
      char *argv[])
{
  fixture_init (&argc, &argv);
  g_test_add_func ("/contact-study/few wrong keeps, and prompt ones", test_study);
  return g_test_run ();
}
