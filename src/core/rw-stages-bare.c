/* rw-stages-bare.c: may a board be put on this supply? What the readings without it say.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each rail by itself, the gravest first: never read; stale; overload; wrong sign; missing (surely below a tenth of its
 * nominal volts); beyond never_above; beyond bare_limits. "Surely" is a chance of 0.95 (rw-verdict.h). What is
 * neither surely beyond nor surely inside is too close to call, and warns.
 */
#include "config.h"

#include "rw-stages-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-never-above.h"

/* Below this share of its nominal volts a rail is not there. An estimate of the trade. */
static const double missing_share = 0.1;

typedef struct
{
  const RwStagesBook *book;
  guint               index;
  const RwRail       *rail;
  const RwStageRead  *read; /* (nullable) */
  GArray             *reasons;
} Look;

static void
stop (const Look *look,
      const char *id,
      char       *text)
{
  rw_stages_add_reason (look->reasons, id, RW_GATE_STOP, look->rail, look->read != NULL ? look->read->n : 0, text);
}

/* A switcher on which no dummy load was said to hang. */
static gboolean
is_without_load (const RwStagesBook *book)
{
  const RwStageAnswer *answer = rw_stages_book_find_answer (book, "stage-dummy-load");

  return g_strcmp0 (book->supply, "switcher") == 0 && (answer == NULL || !answer->yes);
}

static char *
take_with_load_advice (const Look *look,
                       char       *text)
{
  g_autofree char *plain = text;

  if (!is_without_load (look->book))
    return g_steal_pointer (&plain);
  return g_strdup_printf ("%s %s", plain,
                          _ ("A switcher without a load may stand anywhere: read it again with a dummy load before it "
                             "is called bad."));
}

/* --- what is not known -------------------------------------------------------------------------- */

/* TRUE: nothing can be said of a value. */
static gboolean
look_for_gaps (const Look *look,
               gboolean    shown)
{
  if (look->read == NULL || look->read->stale)
    {
      if (!shown)
        stop (look, look->read == NULL ? "bare-unread" : "bare-stale",
              look->read == NULL
                  /* Translators: rail. */
                  ? g_strdup_printf (_ ("Do not fit the board: %s was not read at the terminals without it."),
                                     look->rail->label)
                  : g_strdup_printf (_ ("Do not fit the board: %s was read without it before the trim was turned or "
                                        "something was repaired. Read it again."),
                                     look->rail->label));
      return TRUE;
    }
  if (!look->read->reading.over)
    return FALSE;
  stop (look, "bare-over",
        g_strdup_printf (_ ("Do not fit the board: the meter shows overload on %s, and nobody knows how much that is. "
                            "Choose a higher range and read again."),
                         look->rail->label));
  return TRUE;
}

/* --- what is wrong ------------------------------------------------------------------------------ */

/* Volts the right way round: a good −5 V rail gives +5. */
static double
get_forward (const Look *look)
{
  return look->rail->nominal < 0 ? -look->read->reading.value : look->read->reading.value;
}

static gboolean
look_for_sign (const Look *look)
{
  const double forward = get_forward (look), missing = missing_share * fabs (look->rail->nominal);

  if (rw_chance_inside (forward, look->read->u, -INFINITY, -missing) < RW_VERDICT_SURE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);

  stop (look, "bare-sign",
        /* Translators: rail, value. */
        g_strdup_printf (_ ("Do not fit the board: %s reads %s, the wrong way round. See that the leads are right; if "
                            "they are, the supply is wired wrong."),
                         look->rail->label, value));
  return TRUE;
}

static gboolean
look_for_missing (const Look *look)
{
  const double missing = missing_share * fabs (look->rail->nominal);

  if (rw_chance_inside (get_forward (look), look->read->u, -INFINITY, missing) < RW_VERDICT_SURE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);
  char *text = rw_stages_is_guard (look->book->profile, look->index)
                   /* Translators: rail, value. */
                   ? g_strdup_printf (_ ("Do not fit the board: %s is missing (%s), and memory is destroyed within "
                                         "seconds when the other rails come without it."),
                                      look->rail->label, value)
                   : g_strdup_printf (_ ("Do not fit the board: %s is missing (%s)."), look->rail->label, value);

  stop (look, "bare-missing", take_with_load_advice (look, text));
  return TRUE;
}

static gboolean
look_for_never_above (const Look *look)
{
  const double most = look->rail->never_above;

  if (rw_never_above_judge (look->rail, look->read->reading.value, look->read->u) != RW_VERDICT_OUTSIDE)
    return FALSE;

  g_autofree char *value = rw_stages_dup_value (look->read);
  g_autofree char *limit = rw_stages_dup_volts (look->rail->nominal < 0 ? -most : most);

  stop (look, "bare-never-above",
        /* Translators: rail, value, limit. */
        g_strdup_printf (_ ("Do not fit the board: %s stands at %s, and past %s a board is destroyed. Power off; the "
                            "supply is mended first, by a trained person where its cover has to come off."),
                         look->rail->label, value, limit));
  return TRUE;
}

static void
look_at_limits (const Look *look)
{
  const RwRail *rail = look->rail;
  const double value = look->read->reading.value, u = look->read->u;
  const RwVerdict verdict = rw_verdict_judge (value, u, rail->bare_lo, rail->bare_hi);

  if (verdict == RW_VERDICT_INSIDE && rw_never_above_judge (rail, value, u) != RW_VERDICT_CLOSE)
    return;

  g_autofree char *shown = rw_stages_dup_value (look->read);
  g_autofree char *lo = rw_stages_dup_volts (rail->bare_lo);
  g_autofree char *hi = rw_stages_dup_volts (rail->bare_hi);

  if (verdict == RW_VERDICT_OUTSIDE)
    {
      /* Translators: rail, value, lower and upper limit. */
      char *text = g_strdup_printf (_ ("Do not fit the board: %s stands at %s without it, outside %s to %s."),
                                    rail->label, shown, lo, hi);

      stop (look, "bare-beyond", take_with_load_advice (look, text));
      return;
    }
  rw_stages_add_reason (look->reasons, "bare-close", RW_GATE_WARN, rail, look->read->n,
                        /* Translators: rail, value, lower and upper limit. */
                        g_strdup_printf (_ ("%s at %s is too close to call against %s to %s with this meter: that does "
                                            "not pass it. Read again with a finer range or a better meter."),
                                         rail->label, shown, lo, hi));
}

void
rw_stages_add_bare (const RwStagesBook *self,
                    gboolean            shown,
                    GArray             *reasons)
{
  for (guint i = 0; i < rw_profile_get_n_rails (self->profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (self->profile, i);
      const RwStageRead *read = rw_stages_book_find (self, rail->id, RW_PLACE_TERMINALS, RW_KIND_DC, TRUE);
      const Look look = { self, i, rail, read, reasons };

      if (!look_for_gaps (&look, shown) && !look_for_sign (&look) && !look_for_missing (&look)
          && !look_for_never_above (&look))
        look_at_limits (&look);
    }
}

/* --- somebody else's board ---------------------------------------------------------------------- */

void
rw_stages_add_donor (const RwStagesBook *self,
                     GArray             *reasons)
{
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (RwGateReason));
  g_autoptr (GString) labels = g_string_new (NULL);

  g_array_set_clear_func (found, (GDestroyNotify) rw_gate_reason_clear);
  rw_stages_add_bare (self, FALSE, found);
  for (guint i = 0; i < found->len; i++)
    g_string_append_printf (labels, "%s%s", i > 0 ? ", " : "",
                            g_array_index (found, RwGateReason, i).rail->label);
  if (found->len > 0)
    rw_stages_add_reason (reasons, "donor-unproven", RW_GATE_STOP, NULL, 0,
                          /* Translators: rails, with commas between. */
                          g_strdup_printf (_ ("Do not put a good board on this supply: not proven without a board: %s. "
                                              "A supply that killed one board kills the next."),
                                           labels->str));
}
