/* rw-search-plan.c: what to try next on a port where a meter is looked for.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-search-plan.h"

#include "rw-decoder.h"

/* The likeliest first. */
static const guint speeds[] = { 2400, 9600, 19200, 1200, 600, 4800, 38400, 57600, 115200 };
static const guint poll_speeds[] = { 1200, 600 };
static const guint name_speeds[] = { 9600, 115200 };

static const struct
{
  gboolean dtr, rts;
} powers[] = { { TRUE, FALSE }, { TRUE, TRUE } };

/* Bytes in a whole round that are a disturbance, not a conversation. */
static const gsize noise_bytes = 16;

/* Bytes in one step that are somebody's talk. */
static const gsize talk_bytes = 3;

/* No frame is shorter: fewer bytes a stretch come from a faster sender. */
static const gsize short_stretch = 5;

/* So many bytes show a rule, when this share of them keeps it (the rest is noise). */
static const gsize rule_bytes = 8;
static const double rule_share = 0.95;
static const guint rule_most = 8;

void
rw_search_plan_init (RwSearchPlan *self,
                     gboolean      serial)
{
  *self = (RwSearchPlan){ .serial = serial };
}

/* --- questions ----------------------------------------------------------------------- */

/* Question @i at one of @n speeds of a format; FALSE, and *i lowered, when it is a later one. */
static gboolean
take_question (guint                  *i,
               const RwSerialSettings *usual,
               const guint            *at,
               guint                   n,
               RwSearchStep           *step)
{
  if (*i >= n)
    {
      *i -= n;
      return FALSE;
    }
  step->line = *usual;
  step->line.baud = at[*i];
  return TRUE;
}

/* FALSE: there are fewer questions. */
static gboolean
get_question (const RwSearchPlan *self,
              guint               i,
              RwSearchStep       *step)
{
  const char *const *formats = rw_decoder_list_formats ();

  step->kind = RW_SEARCH_ASK_VALUE;
  for (guint f = 0; self->serial && formats[f] != NULL; f++)
    {
      step->question = rw_decoder_get_poll (formats[f]);
      if (step->question != NULL
          && take_question (&i, rw_decoder_get_usual_line (formats[f]), poll_speeds,
                            G_N_ELEMENTS (poll_speeds), step))
        return TRUE;
    }
  step->kind = RW_SEARCH_ASK_NAME;
  step->question = "*IDN?\n";
  return take_question (&i, rw_decoder_get_usual_line ("scpi"), name_speeds,
                        self->serial ? G_N_ELEMENTS (name_speeds) : 1, step);
}

/* --- the speed from garbage ---------------------------------------------------------- */

/* How many times slower the sender is, 2 … 8; 1: not slower; 0: cannot be told. */
static guint
get_ratio (const guint8 *tainted,
           gsize         n)
{
  gsize zeros[10] = { 0 }; /* how many bytes have at least so many low zeros */
  guint ratio = 1;

  if (n < rule_bytes)
    return 0;
  for (gsize i = 0; i < n; i++)
    for (guint k = 0; k <= 8; k++)
      zeros[k] += (tainted[i] & ((1u << k) - 1)) == 0;
  while (ratio <= rule_most && (double) zeros[ratio] >= rule_share * (double) n)
    ratio++;
  return ratio <= rule_most ? ratio : 0;
}

static gboolean
is_speed (guint baud)
{
  for (guint i = 0; i < G_N_ELEMENTS (speeds); i++)
    if (speeds[i] == baud)
      return TRUE;
  return FALSE;
}

static void
learn_speed (RwSearchPlan *self,
             guint         baud,
             const guint8 *tainted,
             gsize         n,
             guint         stretches)
{
  const guint ratio = get_ratio (tainted, n);

  if (ratio > 1 && !self->hinted && baud % ratio == 0 && is_speed (baud / ratio))
    {
      self->hint = baud / ratio;
      self->hinted = TRUE;
    }
  else if (ratio == 1 || (stretches > 1 && n < stretches * short_stretch))
    self->above = MAX (self->above, baud);
}

/* --- the order ----------------------------------------------------------------------- */

static RwSearchStep
make_listen (RwSearchPlan *self)
{
  RwSearchStep step = { .kind = RW_SEARCH_LISTEN };
  const guint baud = self->hint != 0 ? self->hint : speeds[self->at];

  if (!self->talks)
    self->power = self->listened % G_N_ELEMENTS (powers);
  step.line = (RwSerialSettings){ .baud = baud,
                                  .bits = 8,
                                  .parity = RW_PARITY_NONE,
                                  .stop_bits = 1,
                                  .dtr = powers[self->power].dtr,
                                  .rts = powers[self->power].rts };
  return step;
}

RwSearchStep
rw_search_plan_next (RwSearchPlan *self)
{
  RwSearchStep step;

  if (self->asks && get_question (self, self->asked, &step))
    {
      self->asked++;
      return step;
    }
  self->asks = FALSE;
  return make_listen (self);
}

/* Leaves the speed behind that was just tried. */
static void
advance (RwSearchPlan *self)
{
  const guint tried = self->hint;

  self->hint = 0;
  if (tried == 0 || (self->at < G_N_ELEMENTS (speeds) && speeds[self->at] == tried))
    self->at++;
}

/* TRUE when all speeds of the round were tried or left out. */
static gboolean
is_round_over (RwSearchPlan *self)
{
  while (self->at < G_N_ELEMENTS (speeds) && speeds[self->at] <= self->above)
    self->at++;
  return self->hint == 0 && (!self->serial || self->at == G_N_ELEMENTS (speeds));
}

static void
begin_round (RwSearchPlan *self)
{
  self->asks = self->heard < noise_bytes;
  self->heard = 0;
  self->talks = FALSE;
  self->hinted = FALSE;
  self->above = 0;
  self->at = 0;
}

void
rw_search_plan_heard (RwSearchPlan       *self,
                      const RwSearchStep *step,
                      const guint8       *tainted,
                      gsize               n,
                      guint               stretches)
{
  if (step->kind != RW_SEARCH_LISTEN)
    return;

  advance (self);
  self->listened++;
  self->heard += n;
  self->talks = self->talks || n >= talk_bytes;
  if (self->serial)
    learn_speed (self, step->line.baud, tainted, n, stretches);
  if (is_round_over (self))
    begin_round (self);
  if (self->listened == G_N_ELEMENTS (powers) && self->heard == 0)
    self->asks = TRUE;
  if (self->asks)
    self->asked = 0;
}
