/* rw-mistakes-trim.c: what was turned, and what the readings before and after say of it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-trim-recheck.h"

/* A set point that falls by more than this under load was no set point: volts of 5. */
static const double no_load_share = 0.15 / 5;

/* The way of the reference is a matter of wiring above this loss; shares of its nominal volts. */
static const double wiring_share = 0.25 / 5;
static const double terminals_share = 1.06, board_share = 0.03;

/* Volts that a turn moves at least. */
static const double turned_share = 0.02 / 5;

/* Readings of something else, and seconds, after which a recheck counts as forgotten. */
static const guint  many_readings = 2;
static const double long_after = 60;

static const RwRail *
reference_of (const RwMistakes *self)
{
  return rw_profile_get_reference (rw_bench_state_get_profile (self->state));
}

static gboolean
is_dc_of (const RwPast *past,
          const RwRail *rail,
          RwPlace       place)
{
  return past->spot.rail == rail && past->spot.reading.kind == RW_KIND_DC && past->spot.reading.place == place
         && !past->spot.reading.over;
}

/* --- set without a load ------------------------------------------------------------------------- */

/* The newest reading of the reference at the terminals with the board out, since the last turn. (nullable) */
static const RwPast *
find_unloaded (const RwMistakes *self)
{
  const RwMistakesBook *book = self->book;
  const RwPastSpot *spot
      = rw_mistakes_book_find_spot (book, reference_of (self)->id, RW_PLACE_TERMINALS, RW_KIND_DC);
  const RwPast *past
      = spot != NULL ? rw_mistakes_book_find_past (book, rw_mistakes_book_get_past (book, spot->last)->unloaded) : NULL;

  return past != NULL && past->turns == book->turns->len && past->fixes == book->fixes ? past : NULL;
}

static void
look_for_no_load (RwMistakes *self)
{
  const RwRail *reference = reference_of (self);
  const RwTurn *turn = rw_mistakes_book_get_last_turn (self->book);
  const RwSpotState *loaded = rw_mistakes_fresh (self, reference->id, RW_PLACE_BOARD, RW_KIND_DC);
  const RwPast *unloaded = find_unloaded (self);

  if (loaded == NULL)
    loaded = rw_mistakes_fresh (self, reference->id, RW_PLACE_TERMINALS, RW_KIND_DC);
  if (turn == NULL || turn->setup.board_fitted != RW_SAID_NO || unloaded == NULL || loaded == NULL
      || loaded->setup.board_fitted != RW_SAID_YES || !rw_mistakes_is_alive (loaded)
      || !(unloaded->spot.reading.value - loaded->reading.value - rw_mistakes_tolerance_2 (&unloaded->spot, loaded)
           > no_load_share * reference->nominal))
    return;

  g_autofree char *before = rw_mistakes_value (&unloaded->spot);
  g_autofree char *after = rw_mistakes_value (loaded);

  rw_mistakes_warn (self, loaded, "trim-no-load", FALSE,
                    /* Translators: rail, value without board, value with it. */
                    g_strdup_printf (_ ("%s was set to %s with the board out and falls to %s under load: a set point "
                                        "without load says nothing. See that the drops are small, then set it at the "
                                        "board with the board fitted."),
                                     reference->label, before, after));
}

/* --- chasing a drop ----------------------------------------------------------------------------- */

/* At least so much is lost between them, whatever the meters' errors. */
static double
sure_difference (const RwSpotState *terminals,
                 const RwSpotState *board)
{
  return terminals->reading.value - board->reading.value - rw_mistakes_tolerance_2 (terminals, board);
}

static gboolean
is_up (const RwPast      *before,
       const RwSpotState *now)
{
  return now != NULL
         && now->reading.value - before->spot.reading.value
              > MAX (turned_share * fabs (now->rail->nominal), rw_mistakes_tolerance_2 (&before->spot, now));
}

/* The first pair since the last change of wiring or setup, before the last turn, that showed the loss: looked for at
 * every turn, in what was read since the turn before. */
void
rw_mistakes_find_loss (RwMistakesBook *book)
{
  RwPastLoss *loss = &book->loss;

  for (; !loss->found && loss->at < rw_mistakes_book_get_n_past (book); loss->at++)
    {
      const RwPast *past = rw_mistakes_book_get_past (book, loss->at);

      if (past->spot.setup.power_on == RW_SAID_NO)
        continue;
      if (past->epoch != loss->epoch)
        loss->terminals = loss->board = RW_NO_PAST;
      loss->epoch = past->epoch;
      if (is_dc_of (past, book->reference, RW_PLACE_TERMINALS))
        loss->terminals = loss->at;
      if (is_dc_of (past, book->reference, RW_PLACE_BOARD))
        loss->board = loss->at;
      loss->found = loss->terminals != RW_NO_PAST && loss->board != RW_NO_PAST
                    && sure_difference (&rw_mistakes_book_get_past (book, loss->terminals)->spot,
                                        &rw_mistakes_book_get_past (book, loss->board)->spot)
                         > wiring_share * book->reference->nominal;
    }
}

/* The terminals far up to have the board just right, whoever or whatever did it (a sense line does as well). */
static gboolean
look_for_high_terminals (RwMistakes        *self,
                         const RwRail      *reference,
                         const RwSpotState *terminals,
                         const RwSpotState *board)
{
  if (terminals == NULL || board == NULL
      || !(terminals->reading.value - sqrt (3) * terminals->u > terminals_share * reference->nominal)
      || !(fabs (board->reading.value / reference->nominal - 1) < board_share))
    return FALSE;

  g_autofree char *at_terminals = rw_mistakes_value (terminals);
  g_autofree char *at_board = rw_mistakes_value (board);

  rw_mistakes_warn (self, terminals->n > board->n ? terminals : board, "chasing-drop", FALSE,
                    /* Translators: rail, value at the terminals, value at the board. */
                    g_strdup_printf (_ ("%s stands at %s at the terminals to give %s at the board: the wiring's loss is "
                                        "being made up by the supply, and the board gets it all on the day the contact "
                                        "is good again. Power off and mend plugs and wires before the trim is turned."),
                                     reference->label, at_terminals, at_board));
  return TRUE;
}

static void
warn_chasing_drop (RwMistakes        *self,
                   const RwSpotState *spot)
{
  rw_mistakes_warn (self, spot, "chasing-drop", FALSE,
                    /* Translators: rail. */
                    g_strdup_printf (_ ("The trim was turned up for what %s loses on its way, and the board gets it all "
                                        "on the day the contact is good again. Turn it back, power off, and mend plugs "
                                        "and wires first."),
                                     spot->rail->label));
}

static void
look_for_chasing_drop (RwMistakes *self)
{
  const RwRail *reference = reference_of (self);
  const RwSpotState *terminals = rw_mistakes_fresh (self, reference->id, RW_PLACE_TERMINALS, RW_KIND_DC);
  const RwSpotState *board = rw_mistakes_fresh (self, reference->id, RW_PLACE_BOARD, RW_KIND_DC);
  const RwPastLoss *loss = &self->book->loss;

  if (look_for_high_terminals (self, reference, terminals, board) || !loss->found)
    return;
  if (terminals != NULL && board != NULL && sure_difference (terminals, board) <= wiring_share * reference->nominal)
    return;
  if (is_up (rw_mistakes_book_get_past (self->book, loss->board), board))
    warn_chasing_drop (self, board);
  else if (is_up (rw_mistakes_book_get_past (self->book, loss->terminals), terminals))
    warn_chasing_drop (self, terminals);
}

/* --- chasing the minus rail --------------------------------------------------------------------- */

gboolean
rw_mistakes_is_weak (const RwSpotState *spot)
{
  return spot->rail != NULL && spot->rail->nominal < 0 && spot->reading.kind == RW_KIND_DC && !spot->reading.over
         && spot->verdict == RW_VERDICT_OUTSIDE && spot->reading.value > spot->hi;
}

/* Its newest reading, of now, says that it is strong enough. */
static gboolean
is_mended (RwMistakes   *self,
           const RwRail *rail)
{
  const RwSpotState *now = rw_bench_state_find_rail (self->state, rail->id);

  return now != NULL && !now->stale && !rw_mistakes_is_weak (now);
}

/* The weak minus rail that was read before the last turn, since the last change of setup. (nullable) */
static const RwPast *
find_weak (RwMistakes *self)
{
  const RwMistakesBook *book = self->book;
  const RwPast *weak = NULL;

  for (guint i = 0; i < book->weak->len; i++)
    {
      const RwPast *past = rw_mistakes_book_get_past (book, g_array_index (book->weak, guint, i));

      if (past->epoch == book->epoch)
        past = rw_mistakes_book_find_past (book, past->weak_before);
      if (past != NULL && past->stretch == book->stretch && (weak == NULL || past > weak)
          && !is_mended (self, past->spot.rail))
        weak = past;
    }
  return weak;
}

/* The first reading of the same spot before the last turn, since the last change of setup. (nullable) */
static const RwPast *
find_earlier (RwMistakes        *self,
              const RwSpotState *spot)
{
  const RwMistakesBook *book = self->book;
  const RwReading *reading = &spot->reading;
  const RwPastSpot *read = rw_mistakes_book_find_spot (book, reading->rail, reading->place, reading->kind);
  const RwPast *first = read != NULL ? rw_mistakes_book_find_past (book, read->first) : NULL;

  return first != NULL && first->stretch == book->stretch && first->epoch != book->epoch ? first : NULL;
}

static void
look_for_chasing_minus (RwMistakes *self)
{
  const RwRail *reference = reference_of (self);
  const RwPast *weak = find_weak (self);

  if (weak == NULL)
    return;
  for (guint place = 0; place < RW_PLACE_WIRE; place++)
    {
      const RwSpotState *spot = rw_mistakes_fresh (self, reference->id, place, RW_KIND_DC);
      const RwPast *before = spot != NULL ? find_earlier (self, spot) : NULL;

      if (before == NULL || spot->verdict != RW_VERDICT_OUTSIDE || spot->reading.value < spot->hi
          || !is_up (before, spot))
        continue;

      g_autofree char *value = rw_mistakes_value (spot);

      rw_mistakes_warn (self, spot, "chasing-minus", FALSE,
                        /* Translators: rail, value, the weak rail. */
                        g_strdup_printf (_ ("%s is up at %s since the trim was turned for %s: turn it back down now. %s "
                                            "has to be mended by itself, the trim cannot do it."),
                                         reference->label, value, weak->spot.rail->label, weak->spot.rail->label));
      return;
    }
}

/* --- the recheck that was forgotten ------------------------------------------------------------- */

/* Whether there were many readings since the last turn that are no recheck: of another kind or along a wire, or of a
 * rail again. */
static gboolean
went_on_reading (RwMistakes *self)
{
  const RwMistakesBook *book = self->book;
  g_autoptr (GHashTable) read = g_hash_table_new (g_direct_hash, g_direct_equal);
  guint n = 0;

  for (guint i = rw_mistakes_book_get_n_past (book); i-- > 0 && n < many_readings;)
    {
      const RwPast *past = rw_mistakes_book_get_past (book, i);

      if (past->epoch != book->epoch)
        break;
      if (past->spot.reading.kind != RW_KIND_DC || past->spot.reading.place == RW_PLACE_WIRE
          || !g_hash_table_add (read, (gpointer) past->spot.reading.rail))
        n++;
    }
  return n >= many_readings;
}

/* Due, and read before the turn: a rail never read is no matter of a recheck. (nullable) */
static const RwSpotState *
find_forgotten (RwMistakes          *self,
                const RwTrimRecheck *recheck)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);

  for (guint i = 0; i < recheck->n_due; i++)
    {
      const RwSpotState *spot = rw_bench_state_find_spot (
        self->state, rw_profile_get_rail (profile, recheck->due[i])->id, recheck->place, RW_KIND_DC);

      if (spot != NULL && spot->stale)
        return spot;
    }
  return NULL;
}

static void
look_for_stale (RwMistakes *self)
{
  const RwMistakesBook *book = self->book;
  const RwTurn *turn = rw_mistakes_book_get_last_turn (book);
  const guint n_past = rw_mistakes_book_get_n_past (book);

  /* The turn is the last thing that changed anything, and there were readings before it. */
  if (turn == NULL || n_past == 0 || turn->setup.power_on == RW_SAID_NO || book->last_t - turn->t < long_after
      || book->turned_at_stretch != book->stretch
      || (book->deeds == 0 && !went_on_reading (self)))
    return;

  RwTrimRecheck recheck;

  rw_trim_recheck_init (&recheck, self->state);

  const RwSpotState *forgotten = find_forgotten (self, &recheck);

  if (forgotten != NULL)
    {
      const RwSpotState at_turn = { .n = turn->n };

      rw_mistakes_warn (self, &at_turn, "stale-after-trim", FALSE,
                        /* Translators: rail, place. */
                        g_strdup_printf (_ ("The trim was turned and %s (%s) was not read again: one screw moves every "
                                            "rail. Read it before going on."),
                                         rw_mistakes_label (forgotten),
                                         rw_place_get_label (forgotten->reading.place)));
    }
  rw_trim_recheck_clear (&recheck);
}

void
rw_mistakes_look_at_turns (RwMistakes *self)
{
  look_for_no_load (self);
  look_for_chasing_drop (self);
  look_for_chasing_minus (self);
  look_for_stale (self);
}
