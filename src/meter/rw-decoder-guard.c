/* rw-decoder-guard.c: believes a change only when frames agree on it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder-guard.h"

#include <string.h>

static const guint32 near_counts = 3;
static const guint32 near_share = 1000; /* of the reading */

/* Frames after which what was believed is not recent any more. The last one always is. */
static const guint64 max_age = 16;

/* Frames of other places after which a silent one is forgotten. */
static const guint64 max_silence = 8;

typedef struct
{
  RwDecoderGuard      *guard;
  RwDecoderGuardPlace *place;
  RwDecoderGuardFunc   callback;
  gpointer             data;
} Taking;

/* --- who vouches for a held frame ---------------------------------------------------- */

static gboolean
is_near (const RwDecoderDisplay *a,
         const RwDecoderDisplay *b)
{
  const guint32 larger = MAX (a->counts, b->counts);
  const guint32 smaller = MIN (a->counts, b->counts);

  return rw_decoder_display_is_alike (a, b)
         && larger - smaller <= MAX (near_counts, smaller / near_share);
}

/* Three frames in a row close to each other. */
static gboolean
waver (const RwDecoderDisplay *const *row,
       guint                          n)
{
  return n >= 3 && is_near (row[0], row[1]) && is_near (row[1], row[2])
         && is_near (row[0], row[2]);
}

/* Four frames in a row going one way. */
static gboolean
move (const RwDecoderDisplay *const *row,
      guint                          n)
{
  guint rises = 0;
  guint falls = 0;

  if (n < 4)
    return FALSE;
  for (guint i = 0; i < 3; i++)
    {
      if (!rw_decoder_display_is_alike (row[i], row[i + 1]))
        return FALSE;
      rises += row[i]->counts < row[i + 1]->counts;
      falls += row[i]->counts > row[i + 1]->counts;
    }
  return rises == 3 || falls == 3;
}

static gboolean
is_vouched_for (const RwDecoderGuardPlace *place,
                guint                      i)
{
  const RwDecoderDisplay *row[RW_DECODER_GUARD_HELD + 1];
  guint n = 0;

  row[n++] = &place->recent[0];
  while (i < place->n_held)
    row[n++] = &place->held[i++];
  return waver (row + 1, n - 1) || move (row + 1, n - 1)
         || (place->n_recent > 0 && move (row, n));
}

/* --- handing out and dropping -------------------------------------------------------- */

static void
forget_held (RwDecoderGuardPlace *place,
             guint                n)
{
  memmove (place->held, place->held + n, (place->n_held - n) * sizeof *place->held);
  place->n_held -= n;
}

static void
drop (RwDecoderGuard      *self,
      RwDecoderGuardPlace *place,
      guint                n)
{
  forget_held (place, n);
  *(self->ever ? &self->doubted : &self->waiting) += n;
}

/* What was remembered will not come out any more. */
static void
forget_early (RwDecoderGuard *self)
{
  self->doubted += self->waiting;
  self->waiting = 0;
  self->n_early = 0;
}

static gboolean
is_main_one (const Taking *taking)
{
  for (const RwDecoderGuardPlace *p = taking->guard->places; p < taking->place; p++)
    if (p->n_recent > 0)
      return FALSE;
  return TRUE;
}

/* Where it is among those believed, or n_recent. */
static guint
find_recent (const RwDecoderGuardPlace *place,
             const RwDecoderDisplay    *display)
{
  guint i = 0;

  while (i < place->n_recent && !rw_decoder_display_equal (&place->recent[i], display))
    i++;
  return i;
}

static void
forget_old (RwDecoderGuardPlace *place,
            guint64              frame)
{
  while (place->n_recent > 1 && frame - place->recent_at[place->n_recent - 1] > max_age)
    place->n_recent--;
}

/* Puts it first. */
static void
remember (RwDecoderGuardPlace    *place,
          const RwDecoderDisplay *display,
          guint64                 frame)
{
  const guint found = find_recent (place, display);
  const guint moved = MIN (found, RW_DECODER_GUARD_RECENT - 1);

  memmove (place->recent + 1, place->recent, moved * sizeof *place->recent);
  memmove (place->recent_at + 1, place->recent_at, moved * sizeof *place->recent_at);
  place->recent[0] = *display;
  place->recent_at[0] = frame;
  place->n_recent = MAX (place->n_recent, moved + 1);
}

static void
believe (Taking                 *taking,
         const RwDecoderDisplay *display)
{
  taking->guard->ever = TRUE;
  forget_early (taking->guard);
  remember (taking->place, display, taking->guard->frames);
  if (is_main_one (taking))
    taking->callback (display, taking->data);
}

/* The held frame that says the same, or n_held. */
static guint
find_equal (const RwDecoderGuardPlace *place,
            const RwDecoderDisplay    *display)
{
  guint i = 0;

  while (i < place->n_held && !rw_decoder_display_equal (&place->held[i], display))
    i++;
  return i;
}

static void
hand_out_vouched (Taking *taking)
{
  RwDecoderGuardPlace *place = taking->place;

  for (guint i = 0; i < place->n_held;)
    {
      if (!is_vouched_for (place, i))
        {
          i++;
          continue;
        }

      const RwDecoderDisplay display = place->held[i];

      drop (taking->guard, place, i);
      forget_held (place, 1);
      believe (taking, &display);
      i = 0;
    }
}

static void
forget_place (RwDecoderGuard      *self,
              RwDecoderGuardPlace *place)
{
  drop (self, place, place->n_held);
  place->n_recent = 0;
}

static void
forget_silent (RwDecoderGuard *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->places); i++)
    if (self->frames - self->places[i].last > max_silence)
      forget_place (self, &self->places[i]);
}

/* --- public -------------------------------------------------------------------------- */

void
rw_decoder_guard_take (RwDecoderGuard         *self,
                       const RwDecoderDisplay *display,
                       RwDecoderGuardFunc      callback,
                       gpointer                data)
{
  RwDecoderGuardPlace *place = &self->places[display->place];
  Taking taking = { self, place, callback, data };
  const guint same = find_equal (place, display);

  place->last = ++self->frames;
  forget_silent (self);
  forget_old (place, self->frames);
  if (!self->ever && self->n_early < G_N_ELEMENTS (self->early))
    self->early[self->n_early++] = *display;

  if (find_recent (place, display) < place->n_recent)
    {
      drop (self, place, place->n_held);
      believe (&taking, display);
      return;
    }
  if (same < place->n_held)
    {
      drop (self, place, place->n_held - 1);
      place->n_held = 0;
      believe (&taking, display);
      believe (&taking, display);
      return;
    }
  place->held[place->n_held++] = *display;
  hand_out_vouched (&taking);
  if (place->n_held == RW_DECODER_GUARD_HELD)
    drop (self, place, 1);
}

void
rw_decoder_guard_restart (RwDecoderGuard *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->places); i++)
    forget_place (self, &self->places[i]);
  forget_early (self);
}

void
rw_decoder_guard_end (RwDecoderGuard    *self,
                      RwDecoderGuardFunc callback,
                      gpointer           data)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->places); i++)
    forget_place (self, &self->places[i]);
  for (guint i = 0; i < self->n_early; i++) /* none when anything was believed */
    callback (&self->early[i], data);
  self->waiting -= self->n_early;
  forget_early (self);
}
