/* trim-supply.c: simulated supplies with one screw, and a meter on them, for tests of the trim.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Windings share volts a turn: V_k = (N_k/N_1)(V_1 + VF_1) − VF_k − I_k r_k. An output with a
 * regulator of its own hardly moves. What the profile says of following is drawn apart from the
 * size of the slope, so priors and truth have nothing to do with each other beyond "follows" or
 * "does not".
 *
 * The meter shows truth × scale, scale drawn once within ±percent, plus its own error: of the
 * digits within ±counts of the value any one, each as likely. As values fall anywhere between two
 * digits, that error is uniform over ±counts with the rounding inside it, as a specification that
 * names no rounding apart means it.
 */
#include "config.h"

#include "trim-supply.h"

#include <math.h>

#include "fixtures.h"

/* Where the screw stands: as far as it may be turned with the board in. */
static const double least_x = 4.75, largest_x = 5.4;
static const double least_turn = 0.05; /* volts between two positions */

static double
between (GRand *random,
         double lo,
         double hi)
{
  return lo + (hi - lo) * g_rand_double (random);
}

static void
init_meter (SupplyMeter *self,
            GRand       *random)
{
  static const struct
  {
    double range, full;
  } kinds[] = { { 4, 4000 }, { 6, 6000 }, { 2, 20000 } };
  const guint kind = (guint) g_rand_int_range (random, 0, G_N_ELEMENTS (kinds));

  self->range = kinds[kind].range;
  self->full = kinds[kind].full;
  self->percent = between (random, 0.3, 0.8);
  self->counts = g_rand_int_range (random, 1, 4);
  self->scale = 1 + self->percent / 100 * between (random, -1, 1);
}

static void
init_reference (SupplyRail *self,
                GRand      *random)
{
  const gboolean at_board = g_rand_boolean (random);

  *self = (SupplyRail){ "p5", 5, RW_FOLLOWS_YES, 0, 1, 4.75, 5.4 };
  if (at_board)
    {
      self->lo = 4.9;
      self->hi = 5.2;
    }
}

/* A winding of its own: at a reference of about 5 V near its nominal volts, weaker when tired or
 * loaded. */
static void
init_winding (SupplyRail *self,
              GRand      *random)
{
  const double size = fabs (self->nominal), sign = self->nominal > 0 ? 1 : -1;
  const double drop_1 = between (random, 0.35, 0.6), drop = between (random, 0.4, 1.0);
  const double load = between (random, 0, 0.04) * size;
  const double at_5 = size * between (random, 0.88, 1.1);
  const double ratio = (at_5 + drop + load) / (between (random, 4.9, 5.2) + drop_1);

  self->slope = sign * ratio;
  self->offset = sign * (ratio * drop_1 - drop - load);
}

/* A regulator of its own. */
static void
init_regulated (SupplyRail *self,
                GRand      *random)
{
  self->slope = between (random, -0.002, 0.01) * self->nominal / 5;
  self->offset = self->nominal * between (random, 0.95, 1.05) - 5 * self->slope;
}

static void
init_follower (SupplyRail *self,
               GRand      *random)
{
  const double kind = g_rand_double (random);
  const double weak = self->nominal * (1 - between (random, 0.05, 0.1));
  const double strong = self->nominal * (1 + between (random, 0.05, 0.125));

  self->follows = kind < 0.6 ? RW_FOLLOWS_YES : kind < 0.8 ? RW_FOLLOWS_UNKNOWN : RW_FOLLOWS_NO;
  if (self->follows == RW_FOLLOWS_YES || (self->follows == RW_FOLLOWS_UNKNOWN &&
                                          g_rand_boolean (random)))
    init_winding (self, random);
  else
    init_regulated (self, random);
  self->lo = MIN (weak, strong);
  self->hi = MAX (weak, strong);
}

static void
append_number (GString    *text,
               const char *before,
               double      value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text, "%s%s", before, g_ascii_dtostr (digits, sizeof digits, value));
}

static RwProfile *
make_profile (const Supply *self)
{
  static const char *const follows[] = { "no", "yes", "unknown" };
  g_autoptr (GString) text = g_string_new (
    "{\"id\":\"made\",\"title\":\"Made\",\"reference\":\"p5\",\"rails\":[");
  g_autoptr (GError) error = NULL;

  for (guint i = 0; i < self->n_rails; i++)
    {
      const SupplyRail *rail = &self->rails[i];

      g_string_append_printf (text, "%s{\"id\":\"%s\",\"label\":\"%s\",\"follows_trim\":\"%s\"",
                              i > 0 ? "," : "",
                              rail->id, rail->id, follows[rail->follows]);
      append_number (text, ",\"nominal\":", rail->nominal);
      append_number (text, ",\"limits\":[", rail->lo);
      append_number (text, ",", rail->hi);
      append_number (text, "],\"never_above\":", 1.3 * fabs (rail->nominal));
      g_string_append_printf (text, ",\"priority\":%u}", i + 1);
    }
  g_string_append (text, "]}");

  g_autoptr (JsonNode) node = json_from_string (text->str, &error);

  g_assert_no_error (error);

  RwProfile *profile = rw_profile_new_from_node (node, "made", &error);

  g_assert_no_error (error);
  return profile;
}

static gboolean
is_free (const Supply *self,
         guint         k)
{
  for (guint i = 0; i < k; i++)
    if (fabs (self->x[i] - self->x[k]) < least_turn)
      return FALSE;
  return TRUE;
}

void
supply_init (Supply *self,
             guint   n_positions,
             GRand  *random)
{
  static const struct
  {
    const char *id;
    double      nominal;
  } followers[] = { { "p12", 12 }, { "m5", -5 }, { "m12", -12 }, { "p24", 24 } };

  self->n_rails = (guint) g_rand_int_range (random, 3, SUPPLY_MAX_RAILS + 1);
  self->n_positions = n_positions;
  init_meter (&self->meter, random);
  init_reference (&self->rails[0], random);
  for (guint i = 1; i < self->n_rails; i++)
    {
      self->rails[i].id = followers[i - 1].id;
      self->rails[i].nominal = followers[i - 1].nominal;
      init_follower (&self->rails[i], random);
    }
  for (guint k = 0; k < n_positions; k++)
    do
      self->x[k] = between (random, least_x, largest_x);
    while (!is_free (self, k));
  self->profile = make_profile (self);
}

void
supply_clear (Supply *self)
{
  g_clear_pointer (&self->profile, rw_profile_unref);
}

double
supply_shown (const Supply *self,
              guint         rail,
              double        x)
{
  return self->rails[rail].offset * self->meter.scale + self->rails[rail].slope * x;
}

double
supply_read (const Supply *self,
             double        shown,
             double       *u,
             GRand        *random)
{
  double range = self->meter.range;

  while (range < fabs (shown))
    range *= 10;

  const double step = range / self->meter.full;
  const gint32 digit = g_rand_int_range (random, 0, (gint32) (2 * self->meter.counts));

  *u = self->meter.counts * step / sqrt (3);
  return step * (ceil (shown / step - self->meter.counts) + digit);
}

RwTrimSet *
supply_measure (const Supply *self,
                double        share,
                GRand        *random)
{
  RwTrimPoint points[SUPPLY_MAX_POSITIONS * SUPPLY_MAX_RAILS];
  double starts[SUPPLY_MAX_POSITIONS], ends[SUPPLY_MAX_POSITIONS];
  guint n = 0;

  for (guint k = 0; k < self->n_positions; k++)
    {
      const double x = self->x[k] * self->meter.scale;

      starts[k] = 60.0 * k;
      ends[k] = k + 1 < self->n_positions ? 60.0 * (k + 1) : (double) INFINITY;
      for (guint rail = 0; rail < self->n_rails; rail++)
        if (n == 0 || g_rand_double (random) < share)
          {
            RwTrimPoint *point = &points[n++];

            *point = (RwTrimPoint){ .n = n, .t = starts[k] + rail, .rail = rail, .position = k };
            point->value = supply_read (self, supply_shown (self, rail, x), &point->u, random);
          }
    }

  const RwTrimSetInput input = { .profile = self->profile,
                                 .place = RW_PLACE_BOARD,
                                 .board = RW_SAID_YES,
                                 .points = points,
                                 .n_points = n,
                                 .starts = starts,
                                 .ends = ends,
                                 .n_positions = self->n_positions,
                                 .is_current = TRUE,
                                 .percent = self->meter.percent };

  return rw_trim_set_new (&input);
}
