/* rw-meter-found.c: collects what the steps of a search say, and makes answers of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-found.h"

#include "rw-meter-guess.h"

static const double sure_enough = 0.99;
static const guint sure_values = 3;
static const double worth_telling = 0.2;

/* Worth staying with: explained at least so much, and not less likely than this against none (log2). */
static const double stay_explained = 0.25;
static const double stay_bits = -4;

/* Four fields in answer to a question on a quiet line: one stranger in a thousand (log2). */
static const double name_bits = 10;

typedef struct
{
  RwMeterGuess     guess;
  RwSerialSettings line;
  char            *identity; /* owned */
} Candidate;

struct _RwMeterFinds
{
  RwMeterAddress *address;
  GArray         *candidates; /* of Candidate, one a format */
};

RwMeterFound *
rw_meter_found_copy (const RwMeterFound *self)
{
  RwMeterFound *copy = g_memdup2 (self, sizeof *self);

  copy->address = rw_meter_address_copy (self->address);
  copy->identity = g_strdup (self->identity);
  return copy;
}

void
rw_meter_found_free (RwMeterFound *self)
{
  if (self == NULL)
    return;
  rw_meter_address_free (self->address);
  g_free (self->identity);
  g_free (self);
}

gboolean
rw_meter_found_is_sure (const RwMeterFound *self)
{
  return self->sure >= sure_enough && (self->values >= sure_values || self->identity != NULL);
}

static void
clear_candidate (gpointer data)
{
  g_free (((Candidate *) data)->identity);
}

RwMeterFinds *
rw_meter_finds_new (const RwMeterAddress *address)
{
  RwMeterFinds *self = g_new0 (RwMeterFinds, 1);

  self->address = rw_meter_address_copy (address);
  self->candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_array_set_clear_func (self->candidates, clear_candidate);
  return self;
}

void
rw_meter_finds_free (RwMeterFinds *self)
{
  if (self == NULL)
    return;
  rw_meter_address_free (self->address);
  g_array_unref (self->candidates);
  g_free (self);
}

/* Of this format, made when there is none. Valid until the next. */
static Candidate *
get_candidate (RwMeterFinds *self,
               const char   *format)
{
  Candidate fresh = { .guess = { .format = format, .bits = -G_MAXDOUBLE } };

  for (guint i = 0; i < self->candidates->len; i++)
    {
      Candidate *candidate = &g_array_index (self->candidates, Candidate, i);

      if (g_str_equal (candidate->guess.format, format))
        return candidate;
    }
  g_array_append_val (self->candidates, fresh);
  return &g_array_index (self->candidates, Candidate, self->candidates->len - 1);
}

gboolean
rw_meter_finds_take_ranking (RwMeterFinds       *self,
                             const RwSearchStep *step,
                             const GArray       *ranking)
{
  gboolean stay = FALSE;

  for (guint i = 0; i < ranking->len; i++)
    {
      const RwMeterGuess *guess = &g_array_index (ranking, RwMeterGuess, i);

      if (guess->explained <= 0)
        continue;

      Candidate *candidate = get_candidate (self, guess->format);
      /* More of the same step replaces what its beginning said, be it better or worse. */
      const gboolean same_step = candidate->line.baud == step->line.baud;

      stay = stay || (guess->explained >= stay_explained && guess->bits >= stay_bits);
      if (guess->bits < candidate->guess.bits && !same_step)
        continue;
      candidate->guess = *guess;
      candidate->line = guess->line;
      /* The lines as they were when it talked. */
      candidate->line.baud = step->line.baud;
      candidate->line.dtr = step->line.dtr;
      candidate->line.rts = step->line.rts;
    }
  return stay;
}

void
rw_meter_finds_take_name (RwMeterFinds       *self,
                          const RwSearchStep *step,
                          const char         *name)
{
  Candidate *candidate = get_candidate (self, "scpi");

  candidate->guess.bits = name_bits;
  candidate->guess.explained = 1;
  candidate->line = step->line;
  g_free (candidate->identity);
  candidate->identity = g_strdup (name);
}

static RwMeterFound *
make_found (const RwMeterFinds *self,
            const Candidate    *candidate,
            double              sure)
{
  const RwMeterGuess *guess = &candidate->guess;
  RwMeterFound *found = g_new0 (RwMeterFound, 1);

  found->address = rw_meter_address_copy (self->address);
  if (found->address->kind == RW_METER_ADDRESS_SERIAL)
    found->address->line = candidate->line;
  found->format = guess->format;
  found->sure = sure;
  found->explained = guess->explained;
  found->values = guess->values;
  found->newest = guess->newest;
  found->sign_unsure = guess->sign_unsure;
  found->identity = g_strdup (candidate->identity);
  return found;
}

static int
compare (gconstpointer a,
         gconstpointer b)
{
  const double first = (*(const RwMeterFound *const *) a)->sure;
  const double second = (*(const RwMeterFound *const *) b)->sure;

  return first > second ? -1 : first < second;
}

GPtrArray *
rw_meter_finds_list (const RwMeterFinds *self)
{
  GPtrArray *list = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_found_free);
  const guint n = self->candidates->len;
  g_autofree double *bits = g_new (double, n);

  for (guint i = 0; i < n; i++)
    bits[i] = g_array_index (self->candidates, Candidate, i).guess.bits;
  for (guint i = 0; i < n; i++)
    {
      const Candidate *candidate = &g_array_index (self->candidates, Candidate, i);
      const double sure = rw_meter_guess_get_sure (bits, n, i);

      if (sure >= worth_telling)
        g_ptr_array_add (list, make_found (self, candidate, sure));
    }
  g_ptr_array_sort (list, compare);
  return list;
}
