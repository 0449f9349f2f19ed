/* rw-sound.c: the tone and the signals of a job on the machine's sound device.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The thread's life, all of it in play ():
 *
 *   looking ──a device opens and is closed again──► asleep ──something is to be heard──► playing
 *      └──none──► asleep, unavailable                 ▲  └──it cannot be opened: unavailable, asleep for a while
 *                                                     └──a second of silence, or switched off──┘
 *
 * Asleep it waits on a condition and costs nothing. What main loop and thread share (struct Player) is guarded by a
 * lock that the thread never holds while it waits on the device. The thread is not waited for at the
 * end: a sound server that hangs must not hang the window; it holds a reference of its own and goes when it can.
 *
 * A device paces the thread by blocking. One that never blocks (a file) is paced by the clock.
 */
#include "config.h"

#include "rw-sound.h"

#include <glib/gi18n-lib.h>

#include "rw-sound-device.h"

static const double most_silence = 1.0;                  /* seconds before the device is closed */
static const gint64 look_again = 5 * G_USEC_PER_SEC;     /* after it could not be opened */
static const gint64 block_us = (gint64) RW_SOUND_BLOCK * G_USEC_PER_SEC / RW_TONE_RATE;
static const gint64 ahead_us = 50 * 1000;                /* on a device that never blocks */
static const gint64 blocked_us = 1000;                   /* a write that took this long waited */

typedef struct
{
  gatomicrefcount refs;
  GMutex   lock;
  GCond    cond;

  /* under the lock */
  RwTone  *tone;
  gboolean enabled, quit;
  gboolean look;        /* for a device, if only to know */
  gboolean available;
  char    *problem;     /* NULL when available */
  gboolean told;        /* the main loop is on its way to see available */

  /* the thread's own */
  RwSoundDevice *device;
  gint64         failed;  /* monotonic µs; 0: not */
  gint64         due;     /* monotonic µs: when the next block is to be heard */
  double         silence; /* seconds */

  GWeakRef owner;
} Player;

struct _RwSound
{
  GObject  parent_instance;
  Player  *player;
  gboolean enabled;
  double   volume;
  gboolean available; /* as last told */
  char    *problem;
};

G_DEFINE_FINAL_TYPE (RwSound, rw_sound, G_TYPE_OBJECT)

enum
{
  AVAILABLE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

static void
unref_player (Player *player)
{
  if (!g_atomic_ref_count_dec (&player->refs))
    return;
  g_weak_ref_clear (&player->owner);
  g_mutex_clear (&player->lock);
  g_cond_clear (&player->cond);
  rw_tone_free (player->tone);
  g_free (player->problem);
  g_free (player);
}

static Player *
ref_player (Player *player)
{
  g_atomic_ref_count_inc (&player->refs);
  return player;
}

/* --- telling the main loop ------------------------------------------------------------------------ */

static gboolean
tell_cb (gpointer data)
{
  Player *player = data;
  g_autoptr (RwSound) owner = g_weak_ref_get (&player->owner);

  g_mutex_lock (&player->lock);
  player->told = FALSE;

  const gboolean available = player->available;
  g_autofree char *problem = g_strdup (player->problem);

  g_mutex_unlock (&player->lock);
  if (owner == NULL || (owner->available == available && g_strcmp0 (owner->problem, problem) == 0))
    return G_SOURCE_REMOVE;
  owner->available = available;
  g_free (owner->problem);
  owner->problem = g_steal_pointer (&problem);
  g_signal_emit (owner, signals[AVAILABLE], 0);
  return G_SOURCE_REMOVE;
}

/* With the lock held. @problem: (transfer full); NULL: there is a device. */
static void
set_available (Player *player,
               char   *problem)
{
  g_free (player->problem);
  player->problem = problem;
  player->available = problem == NULL;
  if (player->told)
    return;
  player->told = TRUE;
  g_idle_add_full (G_PRIORITY_DEFAULT, tell_cb, ref_player (player), (GDestroyNotify) unref_player);
}

/* --- the thread ----------------------------------------------------------------------------------- */

/* With the lock held, which is let go meanwhile. */
static void
open_device (Player *player)
{
  g_autofree char *why = NULL;

  g_mutex_unlock (&player->lock);
  player->device = rw_sound_device_open (&why);
  player->silence = 0;
  player->due = g_get_monotonic_time ();
  g_mutex_lock (&player->lock);
  player->look = FALSE;
  player->failed = player->device == NULL ? g_get_monotonic_time () : 0;
  set_available (player, g_steal_pointer (&why));
}

static void
close_device (Player *player)
{
  g_mutex_unlock (&player->lock);
  rw_sound_device_close (player->device);
  player->device = NULL;
  g_mutex_lock (&player->lock);
}

static gboolean
is_heard (Player *player)
{
  return player->enabled && !rw_tone_is_silent (player->tone);
}

/* Kept open only to be played on. */
static void
look_for_device (Player *player)
{
  open_device (player);
  if (player->device != NULL && !is_heard (player))
    close_device (player);
}

/* Nothing to do, or nothing that can be done yet. */
static void
sleep_a_while (Player *player)
{
  if (is_heard (player) && player->failed != 0)
    {
      g_cond_wait_until (&player->cond, &player->lock, player->failed + look_again);
      player->look = g_get_monotonic_time () >= player->failed + look_again;
    }
  else
    g_cond_wait (&player->cond, &player->lock);
}

/* How long until a device that never blocks wants more; 0 for one that does. */
static gint64
time_to_spare (Player *player,
               gint64  before)
{
  const gint64 now = g_get_monotonic_time ();

  if (now - before > blocked_us)
    player->due = now;
  player->due += block_us;
  return MAX (0, player->due - now - ahead_us);
}

static void
play_block (Player *player)
{
  gint16 block[RW_SOUND_BLOCK];
  gboolean written;
  gint64 before, spare;

  player->silence = is_heard (player) ? 0 : player->silence + (double) RW_SOUND_BLOCK / RW_TONE_RATE;
  rw_tone_render (player->tone, block, RW_SOUND_BLOCK);
  g_mutex_unlock (&player->lock);
  before = g_get_monotonic_time ();
  written = rw_sound_device_write (player->device, block, RW_SOUND_BLOCK);
  spare = time_to_spare (player, before);
  if (spare > 0)
    g_usleep ((gulong) spare);
  g_mutex_lock (&player->lock);
  if (!written)
    {
      close_device (player);
      player->failed = g_get_monotonic_time ();
      set_available (player, g_strdup (_ ("The sound device is gone.")));
    }
}

static gpointer
play (gpointer data)
{
  Player *player = data;

  g_mutex_lock (&player->lock);
  while (!player->quit)
    {
      if (player->device == NULL && player->look)
        look_for_device (player);
      else if (player->device == NULL && is_heard (player) && player->failed == 0)
        open_device (player);
      else if (player->device == NULL)
        sleep_a_while (player);
      else if (!is_heard (player) && player->silence >= most_silence)
        close_device (player);
      else
        play_block (player);
    }
  if (player->device != NULL)
    close_device (player);
  g_mutex_unlock (&player->lock);
  unref_player (player);
  return NULL;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_sound_finalize (GObject *object)
{
  RwSound *self = RW_SOUND (object);

  g_mutex_lock (&self->player->lock);
  self->player->quit = TRUE;
  g_cond_signal (&self->player->cond);
  g_mutex_unlock (&self->player->lock);
  unref_player (self->player);
  g_free (self->problem);
  G_OBJECT_CLASS (rw_sound_parent_class)->finalize (object);
}

static void
rw_sound_class_init (RwSoundClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = rw_sound_finalize;
  signals[AVAILABLE] = g_signal_new ("available", RW_TYPE_SOUND, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                                     0);
}

static Player *
new_player (RwSound *self)
{
  Player *player = g_new0 (Player, 1);

  g_atomic_ref_count_init (&player->refs);
  g_mutex_init (&player->lock);
  g_cond_init (&player->cond);
  g_weak_ref_init (&player->owner, self);
  player->tone = rw_tone_new ();
  player->enabled = TRUE;
  player->look = TRUE;
  player->problem = g_strdup (self->problem);
  return player;
}

static void
rw_sound_init (RwSound *self)
{
  self->enabled = TRUE;
  self->volume = 0.5;
  self->problem = g_strdup (_ ("Looking for a sound device…"));
  self->player = new_player (self);
  rw_tone_set_volume (self->player->tone, self->volume);
  g_thread_unref (g_thread_new ("rw-sound", play, ref_player (self->player)));
}

RwSound *
rw_sound_new (void)
{
  return g_object_new (RW_TYPE_SOUND, NULL);
}

gboolean
rw_sound_is_available (RwSound *self)
{
  g_return_val_if_fail (RW_IS_SOUND (self), FALSE);
  return self->available;
}

const char *
rw_sound_get_problem (RwSound *self)
{
  g_return_val_if_fail (RW_IS_SOUND (self), NULL);
  return self->problem;
}

/* --- what is to be heard -------------------------------------------------------------------------- */

/* Switched on, it starts with a fresh tone: what was cut off is not finished. */
void
rw_sound_set_enabled (RwSound *self,
                      gboolean enabled)
{
  Player *player;

  g_return_if_fail (RW_IS_SOUND (self));
  if (self->enabled == enabled)
    return;
  player = self->player;
  self->enabled = enabled;
  g_mutex_lock (&player->lock);
  player->enabled = enabled;
  player->look = player->look || (enabled && !player->available);
  if (enabled)
    {
      rw_tone_free (player->tone);
      player->tone = rw_tone_new ();
    }
  rw_tone_set_volume (player->tone, enabled ? self->volume : 0);
  g_cond_signal (&player->cond);
  g_mutex_unlock (&player->lock);
}

gboolean
rw_sound_get_enabled (RwSound *self)
{
  g_return_val_if_fail (RW_IS_SOUND (self), FALSE);
  return self->enabled;
}

void
rw_sound_set_volume (RwSound *self,
                     double   volume)
{
  g_return_if_fail (RW_IS_SOUND (self));
  self->volume = CLAMP (volume, 0, 1);
  if (!self->enabled)
    return;
  g_mutex_lock (&self->player->lock);
  rw_tone_set_volume (self->player->tone, self->volume);
  g_mutex_unlock (&self->player->lock);
}

double
rw_sound_get_volume (RwSound *self)
{
  g_return_val_if_fail (RW_IS_SOUND (self), 0);
  return self->volume;
}

void
rw_sound_set_target (RwSound *self,
                     gboolean has,
                     double   distance,
                     double   half_window,
                     gboolean inside)
{
  g_return_if_fail (RW_IS_SOUND (self));
  if (!self->enabled)
    return;
  g_mutex_lock (&self->player->lock);
  rw_tone_set_target (self->player->tone, has, distance, half_window, inside);
  g_cond_signal (&self->player->cond);
  g_mutex_unlock (&self->player->lock);
}

void
rw_sound_play (RwSound     *self,
               RwSoundEvent event)
{
  g_return_if_fail (RW_IS_SOUND (self));
  if (!self->enabled)
    return;
  g_mutex_lock (&self->player->lock);
  rw_tone_play (self->player->tone, event);
  g_cond_signal (&self->player->cond);
  g_mutex_unlock (&self->player->lock);
}
