/* rw-idle.c: where a session waits.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Something happens when a landmark comes, when a sample comes from a spot that the samples were not on, and when a
 * sample leaves the band about the first one of its stretch: 8 of its last digits, or 0.4 % of it. Between two such
 * moments nothing happens. Where that lasts more than 5 s, the 1.5 s after the first and the 1.5 s before the second
 * pass as they are, and all that lies between passes in 1 s:
 *
 *     session   ├─1.5─┤·······························├─1.5─┤
 *     play      ├─1.5─┤·1·├─1.5─┤
 *
 * The map is kept as its corners, in both times, and is straight between them.
 */
#include "config.h"

#include "rw-idle.h"

#include <math.h>

/* Seconds. */
static const double longest = 5, beside = 1.5, instead = 1;

/* A sample that stays within these stays put. */
static const double still_steps = 8, still_share = 0.004;

typedef struct
{
  double session;
  double play;
} Corner;

struct _RwIdle
{
  GArray *stretches; /* of RwIdleStretch */
  GArray *corners;   /* of Corner, both times rise; the first is (0, 0) */
};

/* --- when something happens ----------------------------------------------------------------------- */

static gboolean
stays_put (const RwReading *first,
           const RwReading *sample)
{
  if (first->over || sample->over)
    return first->over == sample->over;

  const double band = MAX (still_steps * MAX (first->step, 0), still_share * fabs (first->value));

  return fabs (sample->value - first->value) <= band;
}

/* TRUE when this sample is news. @firsts: of RwReading, one a meter: the first of its present still stretch. */
static gboolean
is_news (GArray          *firsts,
         const RwReading *sample)
{
  for (guint i = 0; i < firsts->len; i++)
    {
      RwReading *first = &g_array_index (firsts, RwReading, i);

      if (first->meter != sample->meter)
        continue;
      if (rw_reading_same_spot (first, sample) && stays_put (first, sample))
        return FALSE;
      *first = *sample;
      return TRUE;
    }
  g_array_append_vals (firsts, sample, 1);
  return TRUE;
}

/* --- the map -------------------------------------------------------------------------------------- */

static void
add_corner (RwIdle *self,
            double  session,
            double  play)
{
  const Corner corner = { session, play };

  g_array_append_val (self->corners, corner);
}

/* Nothing happens between the two. */
static void
add_pause (RwIdle *self,
           double  before,
           double  after)
{
  const RwIdleStretch stretch = { before + beside, after - beside };

  if (!(after - before > longest))
    return;

  const Corner last = g_array_index (self->corners, Corner, self->corners->len - 1);
  const double play = last.play + (stretch.from - last.session);

  g_array_append_val (self->stretches, stretch);
  add_corner (self, stretch.from, play);
  add_corner (self, stretch.to, play + instead);
}

RwIdle *
rw_idle_new (RwSession *session)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  RwIdle *self = g_new0 (RwIdle, 1);
  g_autoptr (GArray) firsts = g_array_new (FALSE, FALSE, sizeof (RwReading));
  const guint n = rw_session_get_n_events (session);
  double news = 0;

  self->stretches = g_array_new (FALSE, FALSE, sizeof (RwIdleStretch));
  self->corners = g_array_new (FALSE, FALSE, sizeof (Corner));
  add_corner (self, 0, 0);
  for (guint i = 0; i < n; i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (!(event->t >= news) || (event->type == RW_EVENT_SAMPLE && !is_news (firsts, &event->reading)))
        continue;
      add_pause (self, news, event->t);
      news = event->t;
    }
  add_pause (self, news, rw_session_get_end (session));
  return self;
}

void
rw_idle_free (RwIdle *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->stretches);
  g_array_unref (self->corners);
  g_free (self);
}

guint
rw_idle_get_n (const RwIdle *self)
{
  return self->stretches->len;
}

const RwIdleStretch *
rw_idle_get (const RwIdle *self,
             guint         i)
{
  g_return_val_if_fail (i < self->stretches->len, NULL);
  return &g_array_index (self->stretches, RwIdleStretch, i);
}

static inline const Corner *
corner_at (const RwIdle *self,
           guint         i)
{
  return &g_array_index (self->corners, Corner, i);
}

/* The last corner at or before a time; the first when there is none. */
static guint
find_corner (const RwIdle *self,
             double        at,
             gboolean      in_play)
{
  guint low = 1, high = self->corners->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;
      const Corner *corner = corner_at (self, middle);

      if ((in_play ? corner->play : corner->session) <= at)
        low = middle + 1;
      else
        high = middle;
    }
  return low - 1;
}

double
rw_idle_to_play (const RwIdle *self,
                 double        t)
{
  const guint i = find_corner (self, t, FALSE);
  const Corner *a = corner_at (self, i);

  if (i + 1 == self->corners->len || t < a->session)
    return a->play + (t - a->session);

  const Corner *b = corner_at (self, i + 1);

  return a->play + (t - a->session) * ((b->play - a->play) / (b->session - a->session));
}

double
rw_idle_to_session (const RwIdle *self,
                    double        play)
{
  const guint i = find_corner (self, play, TRUE);
  const Corner *a = corner_at (self, i);

  if (i + 1 == self->corners->len || play < a->play)
    return a->session + (play - a->play);

  const Corner *b = corner_at (self, i + 1);

  return a->session + (play - a->play) * ((b->session - a->session) / (b->play - a->play));
}

double
rw_idle_get_saved (const RwIdle *self)
{
  const Corner *last = corner_at (self, self->corners->len - 1);

  return last->session - last->play;
}
