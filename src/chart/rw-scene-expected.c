/* rw-scene-expected.c: what the rails were expected to show while nobody measured them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Time falls into stretches: the positions of a trim set, and the gaps between them, where the trim
 * was turned and nothing has been read since. A rail counts as measured from its first reading or
 * sample in a stretch on. Then, at any moment of it:
 *
 *   the reference is known, the rail not measured yet   flat: what the lines say at that reference,
 *                                                       from the start of the stretch on
 *   a stream of another rail tells another reference    moving: what the lines say beside the stream,
 *                                                       whether the rail was measured or not
 *   neither                                             nothing
 *
 * "Another" is one further off than MOVED standard uncertainties, or any while none is known. With
 * the power off, or with the board in where the set has it out (or the other way round), there is
 * nothing.
 *
 * The lines are those of the readings up to then (rw-foresight.h). Streams are looked at in columns
 * a few pixels wide (rw-scene-watched.h).
 */
#include "config.h"

#include "rw-scene-expected.h"

#include <math.h>

#include "rw-scene-watched.h"
#include "rw-trim-book.h"

static const double column_pixels = 2;
static const double moved = 4;

typedef struct
{
  RwScene         *scene;
  guint            set_index;
  const RwTrimSet *set;
  double           now;   /* seconds; no later than the picture's right edge */
  double           until; /* seconds; when the set no longer held, or now */
  double           width; /* seconds a column */
  guint            n_columns;
  const RwWatched *watched; /* a column */
} Walk;

/* A stretch of time under one set, cut to where its setup holds and the picture reaches. */
typedef struct
{
  double from, to;
  int    position; /* index in the set; −1: a gap */
  guint  n_until;  /* points by its end */
} Piece;

/* What readings told by some moment. */
typedef struct
{
  const RwTrimFit *fit;    /* (nullable) */
  double           x, u_x; /* the reference in the stretch; NaN: not known */
} Known;

/* One rail during a piece. */
typedef struct
{
  guint          trace, rail;
  double         measured_at;   /* seconds; INFINITY: not in this stretch */
  Known          before, after; /* while it was not measured, and then */
  RwTrimExpected flat;          /* value NaN: the reference is not known */
  GArray        *knots;
  double         flat_end; /* NaN: the pen is not on a flat part */
} Pen;

static const RwTrimPoint *
point_at (const RwTrimSet *set,
          guint            i)
{
  return &g_array_index (set->points, RwTrimPoint, i);
}

static void
clear_stretch (gpointer data)
{
  g_array_unref (((RwExpectedStretch *) data)->knots);
}

/* --- the pen -------------------------------------------------------------------------- */

static RwExpectedKnot
make_knot (const RwTrimSet      *set,
           double                t,
           const RwTrimExpected *expected)
{
  const double u_common = set->percent / 100 * fabs (expected->value) / sqrt (3);

  return (RwExpectedKnot){
    .t = t,
    .value = expected->value,
    .u = hypot (expected->u, u_common),
    .lo = expected->value - hypot (expected->value - expected->lo, RW_SCENE_COVER * u_common),
    .hi = expected->value + hypot (expected->hi - expected->value, RW_SCENE_COVER * u_common),
  };
}

static void
draw_to (Walk                 *walk,
         Pen                  *pen,
         double                t,
         const RwTrimExpected *expected)
{
  const RwExpectedKnot knot = make_knot (walk->set, t, expected);

  g_array_append_val (pen->knots, knot);
}

static void
end_flat (Walk *walk,
          Pen  *pen)
{
  if (!isnan (pen->flat_end))
    draw_to (walk, pen, pen->flat_end, &pen->flat);
  pen->flat_end = NAN;
}

static void
lift (Walk    *walk,
      Pen     *pen,
      gboolean lasts)
{
  const RwExpectedStretch stretch = { pen->trace, lasts, pen->knots };

  end_flat (walk, pen);
  if (pen->knots->len >= 2)
    {
      g_array_append_val (walk->scene->expected, stretch);
      pen->knots = g_array_new (FALSE, FALSE, sizeof (RwExpectedKnot));
    }
  g_array_set_size (pen->knots, 0);
}

/* --- what is expected in a column ------------------------------------------------------ */

/* The rail's own stream runs there: it is measured. */
static gboolean
streams_itself (const Walk *walk,
                const Pen  *pen,
                double      t)
{
  const RwScene *scene = walk->scene;
  const RwTrace *trace = rw_scene_trace (scene, pen->trace);
  const double share = (t - scene->time.lo) / (scene->time.hi - scene->time.lo);
  const guint column = (guint) CLAMP (share * scene->n_columns, 0, scene->n_columns - 1);

  return trace->columns != NULL && !isnan (trace->columns[column].lo);
}

/* What the stream says of the rail; FALSE when it says nothing beyond what is known. */
static gboolean
follow_stream (const Walk      *walk,
               const Pen       *pen,
               const Known     *known,
               const RwWatched *watched,
               double           t,
               RwTrimExpected  *out)
{
  RwTrimExpected x;

  if (!watched->is_there || watched->rail == pen->rail || known->fit == NULL
      || !rw_trim_fit_expect_from (known->fit, walk->set->reference, watched->rail, watched->value,
                                   watched->u, &x))
    return FALSE;
  if (!isnan (known->x) && fabs (x.value - known->x) <= moved * hypot (x.u, known->u_x))
    return FALSE;
  return !streams_itself (walk, pen, t)
         && rw_trim_fit_expect_from (known->fit, pen->rail, watched->rail, watched->value,
                                     watched->u, out)
         && isfinite (out->value + out->lo + out->hi);
}

/* One column of a piece, [from, to]. @watched: (nullable): nobody. TRUE when something is expected at
 * its end. */
static gboolean
draw_column (Walk            *walk,
             Pen             *pen,
             const RwWatched *watched,
             double           from,
             double           to)
{
  const gboolean measured = from >= pen->measured_at;
  const double t = (from + to) / 2;
  RwTrimExpected expected;

  if (watched != NULL
      && follow_stream (walk, pen, measured ? &pen->after : &pen->before, watched, t, &expected))
    {
      end_flat (walk, pen);
      draw_to (walk, pen, t, &expected);
      return TRUE;
    }
  if (measured || isnan (pen->flat.value))
    {
      lift (walk, pen, FALSE);
      return FALSE;
    }
  if (isnan (pen->flat_end))
    draw_to (walk, pen, from, &pen->flat);
  pen->flat_end = MIN (to, pen->measured_at);
  return to < pen->measured_at;
}

/* A column that a turn cuts in two shows the stream of both sides at once. */
static const RwWatched *
watched_in (const Walk  *walk,
            const Piece *piece,
            guint        column)
{
  const double left = walk->scene->time.lo + column * walk->width, right = left + walk->width;

  return piece->from <= left && (piece->to >= right || piece->to >= walk->now)
             ? &walk->watched[column]
             : NULL;
}

static void
draw_piece (Walk        *walk,
            Pen         *pen,
            const Piece *piece)
{
  const double start = walk->scene->time.lo;
  const guint last = walk->n_columns - 1;
  const guint first = MIN ((guint) ((piece->from - start) / walk->width), last);
  gboolean there = FALSE;

  for (guint i = first; i <= last && start + i * walk->width < piece->to; i++)
    {
      const double from = i == first ? piece->from : start + i * walk->width;
      const double to = i == last ? piece->to : MIN (piece->to, start + (i + 1) * walk->width);

      if (from < to)
        there = draw_column (walk, pen, watched_in (walk, piece, i), from, to);
    }
  lift (walk, pen, there && piece->to >= walk->now && walk->until >= walk->now);
}

/* --- what the lines tell of a rail during a piece -------------------------------------- */

/* First sample of the rail at or after @t. */
static double
first_sample (const RwTrace *trace,
              double         t)
{
  const RwPyramid *samples = trace->channel->samples;
  const guint n = rw_pyramid_get_n (samples);

  for (guint i = rw_pyramid_find_time (samples, t); i < n; i++)
    if (!isnan (rw_pyramid_get_value (samples, i)))
      return rw_pyramid_get_time (samples, i);
  return INFINITY;
}

/* Index of the rail's first point at @position; the number of points when it has none. */
static guint
first_point (const RwTrimSet *set,
             guint            rail,
             int              position)
{
  guint i = 0;

  while (i < set->points->len
         && (point_at (set, i)->rail != rail || (int) point_at (set, i)->position != position))
    i++;
  return i;
}

/* The points whose lines go with a rail that is not measured yet: of now in the last position, else
 * those by which the reference was known. What the rail's own reading told is not foretold. */
static guint
count_before (const Walk  *walk,
              const Piece *piece,
              guint        own)
{
  const GArray *points = walk->set->points;
  const gboolean is_last = piece->n_until == points->len;

  if (piece->position < 0 || (is_last && own == points->len))
    return piece->n_until;
  return MIN (own, rw_foresight_count_known (walk->scene->in.foresight, walk->set_index,
                                             (guint) piece->position));
}

static Known
known_from (const Walk *walk,
            guint       n_points,
            int         position)
{
  Known known = { NULL, NAN, NAN };

  if (n_points == 0)
    return known;
  known.fit = rw_foresight_get_fit (walk->scene->in.foresight, walk->set_index, n_points);
  if ((int) point_at (walk->set, n_points - 1)->position != position
      || !rw_trim_fit_get_x (known.fit, (guint) position, &known.x, &known.u_x))
    known.x = known.u_x = NAN;
  return known;
}

static RwTrimExpected
flat_from (const Known *known,
           guint        rail)
{
  RwTrimExpected flat;

  if (isnan (known->x) || !rw_trim_fit_expect (known->fit, rail, known->x, known->u_x, &flat)
      || !isfinite (flat.value + flat.lo + flat.hi))
    flat.value = NAN;
  return flat;
}

/* @since: when the stretch began, which may be before the piece does. */
static void
cover_piece (Walk        *walk,
             guint        trace,
             guint        rail,
             double       since,
             const Piece *piece)
{
  const double sampled_at = first_sample (rw_scene_trace (walk->scene, trace), since);
  const guint own = first_point (walk->set, rail, piece->position);
  Pen pen = { .trace = trace, .rail = rail, .measured_at = sampled_at, .flat_end = NAN };

  if (own < walk->set->points->len)
    pen.measured_at = MIN (point_at (walk->set, own)->t, sampled_at);
  pen.before = known_from (walk, count_before (walk, piece, own), piece->position);
  pen.after = known_from (walk, piece->n_until, piece->position);
  pen.flat = flat_from (&pen.before, rail);
  pen.knots = g_array_new (FALSE, FALSE, sizeof (RwExpectedKnot));
  draw_piece (walk, &pen, piece);
  g_array_unref (pen.knots);
}

/* --- cutting time into pieces ----------------------------------------------------------- */

static void
cover_traces (Walk        *walk,
              double       since,
              const Piece *piece)
{
  const RwScene *scene = walk->scene;

  for (guint i = 0; piece->from < piece->to && i < scene->traces->len; i++)
    {
      const RwChartChannel *channel = rw_scene_trace (scene, i)->channel;
      const int rail = rw_profile_index_of (walk->set->profile, channel->rail);

      if (rail >= 0 && channel->kind == RW_KIND_DC && channel->place == walk->set->place)
        cover_piece (walk, i, (guint) rail, since, piece);
    }
}

static gboolean
setup_holds (const RwTrimSet *set,
             const RwSetup   *setup)
{
  return setup->power_on != RW_SAID_NO
         && rw_trim_book_board_at (set->place, setup->board_fitted) == set->board;
}

/* Covers what of [@from, @to) is in sight and has the setup of the set. */
static void
cover_stretch (Walk  *walk,
               double from,
               double to,
               int    position,
               guint  n_until)
{
  RwChartData *data = walk->scene->in.data;
  const double left = MAX (from, walk->scene->time.lo), right = MIN (to, walk->until);
  gboolean holds = setup_holds (walk->set, &(RwSetup){ RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT });
  double since = -INFINITY;

  if (!(left < right))
    return;
  for (guint i = 0; i < rw_chart_data_get_n_verticals (data); i++)
    {
      const RwChartVertical *vertical = rw_chart_data_get_vertical (data, i);

      if (vertical->type != RW_EVENT_SETUP)
        continue;
      if (holds)
        cover_traces (walk, from,
                      &(Piece){ MAX (left, since), MIN (right, vertical->t), position, n_until });
      holds = setup_holds (walk->set, &vertical->after);
      since = vertical->t;
    }
  if (holds)
    cover_traces (walk, from, &(Piece){ MAX (left, since), right, position, n_until });
}

static void
cover_set (Walk *walk)
{
  const GArray *positions = walk->set->positions;
  const RwForesight *foresight = walk->scene->in.foresight;

  for (guint i = 0; i < positions->len; i++)
    {
      const RwTrimPosition *position = &g_array_index (positions, RwTrimPosition, i);
      const guint n_until = rw_foresight_count_until (foresight, walk->set_index, i);
      const double next = i + 1 < positions->len
                                       ? g_array_index (positions, RwTrimPosition, i + 1).from
                                       : (double) INFINITY;

      cover_stretch (walk, position->from, position->to, (int) i, n_until);
      cover_stretch (walk, position->to, next, -1, n_until);
    }
}

void
rw_scene_set_expected (RwScene *self)
{
  const guint n_columns = (guint) MAX (ceil (self->plot.width / column_pixels), 1);
  const guint n_sets = self->in.foresight != NULL ? rw_foresight_get_n_sets (self->in.foresight) : 0;
  const double now = MIN (rw_view_get_extent (self->in.view), self->time.hi);

  self->expected = g_array_new (FALSE, FALSE, sizeof (RwExpectedStretch));
  g_array_set_clear_func (self->expected, clear_stretch);
  for (guint i = 0; i < n_sets; i++)
    {
      const RwTrimSet *set = rw_foresight_get_set (self->in.foresight, i);
      g_autofree RwWatched *watched = rw_scene_watch (self, set, n_columns);
      Walk walk = {
                         .scene = self,
                         .set_index = i,
                         .set = set,
                         .now = now,
                         .until = MIN (now, rw_foresight_get_until (self->in.foresight, i)),
                         .width = (self->time.hi - self->time.lo) / n_columns,
                         .n_columns = n_columns,
                         .watched = watched,
      };

      cover_set (&walk);
    }
}
