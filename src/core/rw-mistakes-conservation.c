/* rw-mistakes-conservation.c: what goes in at the terminals comes out at the board, less the drops.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With magnitudes of a positive rail: terminals − board = drop of its path + drop of ground. The ground that
 * the board stands on is lifted by its own drop, so for a negative rail it is path − ground. All of them of one
 * setup, with no turn or repair between.
 *
 * Allowed beside the meters' errors, since loads change between two readings: 0.4 % of the nominal volts (20 mV
 * of 5 V; a raw rail: 4 %), a tenth of the drops, and whatever the rail was seen to move by itself.
 */
#include "config.h"

#include "rw-mistakes-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-quantity.h"
#include "rw-ripple.h"

static const double load_share = 0.004, raw_load_share = 0.04, drop_share = 0.10;

/* A path of which more than this is lost carries a current, and no current leaves no drop at all. */
static const double no_drop = 0.001, still_no_drop = 0.005;
static const double real_loss = 0.030;
static const double real_amps = 1.0;

/* What is lost between the edge and a chip in the middle of a good board, at most. */
static const double chip_volts = 0.100;

/* What was read of one rail's way from the terminals to the board. NULL where nothing was. */
typedef struct
{
  const RwRail      *rail;
  const RwSpotState *terminals, *board, *path, *ground;
  double             sign;      /* of the rail */
  double             loss;      /* terminals − board, magnitudes */
  double             path_drop, ground_drop; /* NaN when not read; ground signed as it counts in loss */
  double             tolerance; /* of the balance, meters and loads */
} Way;

/* How far a rail may move by itself between two readings. */
static double
moves_by (const RwRail *rail)
{
  return (rw_ripple_is_raw (rail) ? raw_load_share : load_share) * fabs (rail->nominal);
}

/* How far the rail was seen to move with nothing changed: between readings of one spot and meter, the last one
 * left out, since that is the one in question. */
static double
unrest_of (const RwMistakes *self,
           const RwRail     *rail)
{
  double unrest = 0;

  for (guint place = 0; place < RW_PLACE_WIRE; place++)
    {
      const RwPastSpot *spot = rw_mistakes_book_find_spot (self->book, rail->id, place, RW_KIND_DC);
      const RwPast *newest = spot != NULL ? rw_mistakes_book_find_past (self->book, spot->alive) : NULL;

      if (newest != NULL && newest->epoch == self->book->epoch)
        unrest = MAX (unrest, newest->most - newest->least);
    }
  return unrest;
}

static gboolean
is_same_setup (const RwSpotState *a,
               const RwSpotState *b)
{
  return b == NULL || (a->setup.board_fitted == b->setup.board_fitted && a->setup.warm == b->setup.warm);
}

static gboolean
is_loaded (const RwSpotState *spot)
{
  return spot->setup.board_fitted == RW_SAID_YES
         || (spot->setup.board_fitted == RW_SAID_NOT && spot->reading.place != RW_PLACE_TERMINALS);
}

static double
drop_of (const RwSpotState *wire)
{
  return wire != NULL ? fabs (wire->reading.value) : (double) NAN;
}

static double
or_nothing (double volts)
{
  return isnan (volts) ? 0 : volts;
}

static double
tolerance_of (const RwMistakes *self,
              const Way        *way)
{
  const RwSpotState *used[4] = { way->terminals, way->board };
  guint n = 2;

  if (way->path != NULL)
    used[n++] = way->path;
  if (way->ground != NULL)
    used[n++] = way->ground;
  return rw_mistakes_tolerance (used, n) + moves_by (way->rail) + unrest_of (self, way->rail)
         + drop_share * (or_nothing (way->path_drop) + fabs (or_nothing (way->ground_drop)));
}

/* FALSE: terminals or board were not read. */
static gboolean
find_way (RwMistakes   *self,
          const RwRail *rail,
          Way          *out)
{
  *out = (Way){
    .rail = rail,
    .terminals = rw_mistakes_fresh (self, rail->id, RW_PLACE_TERMINALS, RW_KIND_DC),
    .board = rw_mistakes_fresh (self, rail->id, RW_PLACE_BOARD, RW_KIND_DC),
    .path = rw_mistakes_fresh (self, rail->id, RW_PLACE_WIRE, RW_KIND_DC),
    .ground = rw_mistakes_fresh (self, RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC),
    .sign = rail->nominal < 0 ? -1 : 1,
  };
  if (out->terminals == NULL || out->board == NULL || !is_loaded (out->board)
      || !is_same_setup (out->terminals, out->board) || !is_same_setup (out->board, out->path)
      || !is_same_setup (out->board, out->ground) || !rw_mistakes_is_alive (out->terminals))
    return FALSE;
  out->loss = out->sign * (out->terminals->reading.value - out->board->reading.value);
  out->path_drop = drop_of (out->path);
  out->ground_drop = out->sign * drop_of (out->ground);
  out->tolerance = tolerance_of (self, out);
  return TRUE;
}

/* The newest of what was compared: most likely what the person is still at. */
static const RwSpotState *
newest_of (const Way *way)
{
  const RwSpotState *all[] = { way->board, way->path, way->ground };
  const RwSpotState *newest = way->terminals;

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    if (all[i] != NULL && all[i]->n > newest->n)
      newest = all[i];
  return newest;
}

/* --- the board's reading is the terminals' ------------------------------------------------------ */

static gboolean
look_for_terminal_as_board (RwMistakes *self,
                            const Way  *way)
{
  const double drops = or_nothing (way->path_drop) + or_nothing (way->ground_drop);
  const gboolean equal = fabs (way->loss) < 1e-9 && drops > way->tolerance;

  /* A negative rail can stand higher at the board: ground is lifted there. */
  if (!equal && !(way->sign > 0 && way->loss < -way->tolerance))
    return FALSE;

  g_autofree char *board = rw_mistakes_value (way->board);
  g_autofree char *terminals = rw_mistakes_value (way->terminals);

  rw_mistakes_warn (self, way->board->n > way->terminals->n ? way->board : way->terminals, "terminal-as-board", FALSE,
                    /* Translators: rail, value at the board, value at the terminals. */
                    g_strdup_printf (_ ("%s cannot be %s at the board and %s at the terminals while current flows: was "
                                        "one written for the other? Read both again, the board's on its own edge."),
                                     way->rail->label, board, terminals));
  return TRUE;
}

/* --- a drop of nothing -------------------------------------------------------------------------- */

static gboolean
is_no_drop (const RwSpotState *wire)
{
  return wire != NULL && fabs (wire->reading.value) < no_drop
         && fabs (wire->reading.value) + rw_mistakes_tolerance (&wire, 1) < still_no_drop;
}

static void
warn_zero_drop (RwMistakes        *self,
                const RwSpotState *wire)
{
  if (rw_mistakes_is_spoilt (self, wire->n))
    return;
  rw_mistakes_warn (self, wire, "zero-drop", FALSE,
                    /* Translators: rail or ground. */
                    g_strdup_printf (_ ("No drop at all along %s while current flows: both leads are on the same side of "
                                        "it. One on the terminal of the supply, the other on the board's own edge, and "
                                        "read again."),
                                     rw_mistakes_label (wire)));
}

/* Is there a loss that @other, the rest of the way, does not account for? */
static gboolean
is_lossy (const Way *way,
          double     other)
{
  return way->loss - or_nothing (other) > MAX (real_loss, way->tolerance);
}

static gboolean
look_for_zero_drop (RwMistakes *self,
                    const Way  *way)
{
  const gboolean path = is_no_drop (way->path) && is_lossy (way, way->ground_drop);
  const gboolean ground = way->sign > 0 && is_no_drop (way->ground) && is_lossy (way, way->path_drop);

  if (path)
    warn_zero_drop (self, way->path);
  if (ground)
    warn_zero_drop (self, way->ground);
  return path || ground;
}

/* Amperes were read: then there is a drop. */
static void
look_for_zero_with_amps (RwMistakes   *self,
                         const RwRail *rail)
{
  const RwSpotState *path = rw_mistakes_fresh (self, rail->id, RW_PLACE_WIRE, RW_KIND_DC);
  const RwSpotState *ground = rw_mistakes_fresh (self, RW_RAIL_GROUND, RW_PLACE_WIRE, RW_KIND_DC);

  for (guint place = 0; place < RW_N_PLACES; place++)
    {
      const RwSpotState *amps = rw_mistakes_fresh (self, rail->id, place, RW_KIND_AMPS);

      if (amps == NULL || !(fabs (amps->reading.value) - rw_mistakes_tolerance (&amps, 1) >= real_amps))
        continue;
      if (is_no_drop (path) && is_loaded (path))
        warn_zero_drop (self, path);
      if (is_no_drop (ground) && is_loaded (ground))
        warn_zero_drop (self, ground);
    }
}

/* --- the balance -------------------------------------------------------------------------------- */

static void
look_for_chassis (RwMistakes *self,
                  const Way  *way)
{
  const double drops = way->path_drop + way->ground_drop;
  const gboolean off = !isnan (drops) && fabs (way->loss - drops) > way->tolerance;
  /* The path not read: it can take, but not give. */
  const gboolean gives = isnan (drops) && way->sign > 0 && !isnan (way->ground_drop)
                         && way->loss < way->ground_drop - way->tolerance;

  if (!off && !gives)
    return;

  const double step = MAX (way->terminals->reading.step, way->board->reading.step);
  g_autofree char *loss = rw_quantity_format (way->loss, step, RW_KIND_DC);
  g_autofree char *explained = rw_quantity_format (off ? drops : way->ground_drop, step, RW_KIND_DC);

  rw_mistakes_warn (self, newest_of (way), "chassis-ground", FALSE,
                    /* Translators: rail, loss, sum of the drops. */
                    g_strdup_printf (_ ("%s loses %s between terminals and board, but the drops that were read make %s: "
                                        "was the black lead on the chassis instead of 0 V? Clip it to 0 V where you "
                                        "measure, and take these readings again."),
                                     way->rail->label, loss, explained));
}

void
rw_mistakes_look_at_drops (RwMistakes *self)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      Way way;

      look_for_zero_with_amps (self, rail);
      if (!find_way (self, rail, &way) || look_for_terminal_as_board (self, &way) || look_for_zero_drop (self, &way))
        continue;
      look_for_chassis (self, &way);
    }
}

/* --- edge and chip ------------------------------------------------------------------------------ */

static void
look_at_chip (RwMistakes        *self,
              const RwSpotState *board,
              const RwSpotState *chip)
{
  const double lost = board->reading.value - chip->reading.value;
  const double tolerance = rw_mistakes_tolerance_2 (board, chip) + unrest_of (self, board->rail);
  const RwSpotState *newest = board->n > chip->n ? board : chip;
  g_autofree char *at_board = rw_mistakes_value (board);
  g_autofree char *at_chip = rw_mistakes_value (chip);

  /* A board that is low at its edge already has a fault, not a reading taken too early. */
  if (board->verdict != RW_VERDICT_OUTSIDE && lost - tolerance > chip_volts)
    rw_mistakes_warn (self, newest, "drop-skipped", FALSE,
                      /* Translators: rail, value at the board, value at the chip. */
                      g_strdup_printf (_ ("%s is %s at the board but only %s at the chip: was the board read on the "
                                          "plug's crimp, before the contact? Read on the board's own edge; if that is "
                                          "no lower, look at the way on the board."),
                                       rw_mistakes_label (board), at_board, at_chip));
  else if (-lost > tolerance + moves_by (board->rail))
    rw_mistakes_warn (self, newest, "chip-above-board", FALSE,
                      /* Translators: rail, value at the chip, value at the board. */
                      g_strdup_printf (_ ("%s cannot be %s at the chip and %s at the board: nothing on the board lifts "
                                          "it. Take both again, the black lead on the board's own ground."),
                                       rw_mistakes_label (board), at_chip, at_board));
}

void
rw_mistakes_look_at_chips (RwMistakes *self)
{
  RwProfile *profile = rw_bench_state_get_profile (self->state);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);
      const RwSpotState *board = rw_mistakes_fresh (self, rail->id, RW_PLACE_BOARD, RW_KIND_DC);
      const RwSpotState *chip = rw_mistakes_fresh (self, rail->id, RW_PLACE_CHIP, RW_KIND_DC);

      if (rail->nominal > 0 && board != NULL && chip != NULL && is_same_setup (board, chip)
          && rw_mistakes_is_alive (board))
        look_at_chip (self, board, chip);
    }
}
