/* rw-tone.c: what a job sounds like, as samples.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * With r = distance / half window:
 *
 *   pitch   f = 550 Hz · 2^(1.5 · r / (2 + |r|))     half an octave for the first half window, one and a half at most
 *   pulses  p = 1.5 Hz + 6.5 Hz / (1 + g), g = max (0, |r| − 1)     half sound, half silence; none inside
 *
 * Both are plain to the ear apart from each other: who hears no pitch follows the pulses, and the steady tone is told
 * by its rhythm alone. The tone is a sine with a little of its second and third harmonic, so that small loudspeakers
 * carry the low end; the harsh signals are odd harmonics up to about 1.7 kHz.
 *
 * No clicks: every level moves along a ramp of 5 ms, the pitch glides (20 ms), phases never jump while anything is to
 * be heard. Peak: 0.3 · 1.25 of the tone, a fifth of that under a signal, and 0.55 of the signal: below full scale.
 */
#include "config.h"

#include "rw-tone.h"

#include <math.h>

static const double middle_hertz = 550;
static const double octaves = 1.5;
static const double slow_pulses = 1.5, fast_pulses = 8;
static const double ramp_seconds = 0.005;
static const double glide_seconds = 0.020;
static const double tone_level = 0.30, signal_level = 0.55;
static const double under_signal = 0.2; /* the tone's share while a signal sounds */

/* --- signals -------------------------------------------------------------------------------------- */

#define MAX_NOTES 4

typedef struct
{
  double hertz;
  double seconds;
  double pause; /* after it */
} Note;

typedef struct
{
  Note     notes[MAX_NOTES];
  guint    n_notes;
  gboolean harsh;
} Signal;

static const Signal signals[RW_N_SOUND_EVENTS] = {
  [RW_SOUND_KEPT] = { { { 660, 0.07, 0.02 }, { 990, 0.11, 0.05 } }, 2, FALSE },
  [RW_SOUND_ASKED] = { { { 740, 0.22, 0.16 }, { 740, 0.22, 0.10 } }, 2, FALSE },
  [RW_SOUND_OUTSIDE] = { { { 190, 0.10, 0.06 }, { 190, 0.10, 0.06 }, { 190, 0.10, 0.10 } }, 3, TRUE },
  [RW_SOUND_DANGER] = { { { 120, 0.42, 0.12 }, { 160, 0.42, 0.12 }, { 120, 0.42, 0.12 }, { 160, 0.42, 0.12 } },
                        4, TRUE },
};

/* --- the type ------------------------------------------------------------------------------------- */

enum
{
  NONE = -1
};

struct _RwTone
{
  /* what is wanted */
  gboolean has, inside;
  double   hertz, pulses, volume;

  /* the tone now */
  double phase, now_hertz;   /* turns; hertz */
  double pulse_phase;        /* turns */
  double gate, duck, gain;   /* levels on their way along ramps, 0…1 */

  /* the signal now */
  int    playing, waiting;   /* RwSoundEvent or NONE */
  guint  note;
  gsize  at;                 /* samples into the note */
  double signal_phase;
  double cut;                /* 1; on its way to 0 when cut short */
  gboolean cutting;
};

RwTone *
rw_tone_new (void)
{
  RwTone *self = g_new0 (RwTone, 1);

  self->volume = 1;
  self->gain = 1;
  self->duck = 1;
  self->cut = 1;
  self->playing = self->waiting = NONE;
  return self;
}

void
rw_tone_free (RwTone *self)
{
  g_free (self);
}

double
rw_tone_get_pitch (double halves)
{
  return middle_hertz * exp2 (octaves * halves / (2 + fabs (halves)));
}

double
rw_tone_get_pulses (double halves)
{
  return slow_pulses + (fast_pulses - slow_pulses) / (1 + MAX (0, fabs (halves) - 1));
}

double
rw_tone_get_length (RwSoundEvent event)
{
  double seconds = 0;

  for (guint i = 0; i < signals[event].n_notes; i++)
    seconds += signals[event].notes[i].seconds + signals[event].notes[i].pause;
  return seconds;
}

void
rw_tone_set_target (RwTone  *self,
                    gboolean has,
                    double   distance,
                    double   half_window,
                    gboolean inside)
{
  const double halves = distance / half_window;

  self->has = has && half_window > 0 && isfinite (halves);
  if (!self->has)
    return;
  self->inside = inside;
  self->hertz = rw_tone_get_pitch (halves);
  self->pulses = rw_tone_get_pulses (halves);
}

void
rw_tone_set_volume (RwTone *self,
                    double  volume)
{
  self->volume = isnan (volume) ? 0 : CLAMP (volume, 0, 1);
}

static void
begin (RwTone *self,
       int     event)
{
  self->playing = event;
  self->note = 0;
  self->at = 0;
  self->signal_phase = 0;
  self->cut = 1;
  self->cutting = FALSE;
}

void
rw_tone_play (RwTone      *self,
              RwSoundEvent event)
{
  g_return_if_fail ((guint) event < RW_N_SOUND_EVENTS);
  if (self->playing == NONE)
    {
      begin (self, (int) event);
      return;
    }
  self->waiting = MAX (self->waiting, (int) event);
  if ((int) event > self->playing)
    self->cutting = TRUE;
}

gboolean
rw_tone_is_silent (const RwTone *self)
{
  return !self->has && self->gate <= 0 && self->playing == NONE;
}

/* --- samples -------------------------------------------------------------------------------------- */

static double
step_to (double now,
         double wanted)
{
  const double step = 1 / (ramp_seconds * RW_TONE_RATE);

  return now < wanted ? MIN (now + step, wanted) : MAX (now - step, wanted);
}

static double
turn (double *phase,
      double  hertz)
{
  const double angle = 2 * G_PI * *phase;

  *phase += hertz / RW_TONE_RATE;
  *phase -= floor (*phase);
  return angle;
}

/* Starts where it should be: nothing glides in from the tone before a silence. */
static void
move_pitch (RwTone *self)
{
  if (self->gate <= 0)
    {
      self->now_hertz = self->hertz;
      self->phase = 0;
    }
  else
    self->now_hertz += (self->hertz - self->now_hertz) / (glide_seconds * RW_TONE_RATE);
}

static double
next_tone (RwTone *self)
{
  if (!self->has && self->gate <= 0)
    {
      self->pulse_phase = 0;
      return 0;
    }
  move_pitch (self);

  const gboolean open = self->has && (self->inside || self->pulse_phase < 0.5);
  const double angle = turn (&self->phase, self->now_hertz);

  if (self->inside)
    self->pulse_phase = 0;
  else
    turn (&self->pulse_phase, self->pulses);
  self->gate = step_to (self->gate, open ? 1 : 0);
  self->duck = step_to (self->duck, self->playing != NONE ? under_signal : 1);
  return tone_level * self->gate * self->duck * (0.8 * sin (angle) + 0.15 * sin (2 * angle) + 0.1 * sin (3 * angle));
}

static double
shape (double   angle,
       gboolean harsh)
{
  double sum = 0;

  if (!harsh)
    return 0.8 * sin (angle) + 0.1 * sin (2 * angle);
  for (int k = 1; k <= 9; k += 2)
    sum += sin (k * angle) / sqrt (k);
  return 0.42 * sum;
}

/* Rises and falls at the ends of a note. */
static double
note_level (const Note *note,
            gsize       at)
{
  const double seconds = (double) at / RW_TONE_RATE;
  const double edge = MIN (seconds, note->seconds - seconds);

  return CLAMP (edge / ramp_seconds, 0, 1);
}

static void
end_note (RwTone *self)
{
  self->at = 0;
  self->signal_phase = 0;
  self->note++;
  if (self->note < signals[self->playing].n_notes && self->cut > 0)
    return;

  const int next = self->waiting;

  self->waiting = NONE;
  begin (self, next);
}

static double
next_signal (RwTone *self)
{
  if (self->playing == NONE)
    return 0;

  const Signal *signal = &signals[self->playing];
  const Note *note = &signal->notes[self->note];
  const double level = note_level (note, self->at);
  const double wave = shape (turn (&self->signal_phase, note->hertz), signal->harsh);
  const double value = signal_level * level * self->cut * wave;

  self->at++;
  if (self->cutting)
    self->cut = step_to (self->cut, 0);
  if (self->cut <= 0 || (double) self->at >= (note->seconds + note->pause) * RW_TONE_RATE)
    end_note (self);
  return value;
}

void
rw_tone_render (RwTone *self,
                gint16 *out,
                gsize   n)
{
  for (gsize i = 0; i < n; i++)
    {
      const double sum = next_tone (self) + next_signal (self);

      self->gain = step_to (self->gain, self->volume);
      out[i] = (gint16) lrint (32767 * CLAMP (sum * self->gain * self->gain, -1, 1));
    }
}
