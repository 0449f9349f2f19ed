/* rw-practice-meter-dial.c: how a practice meter is set, and what a colleague would say about it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-practice-meter-private.h"
#include "rw-practice-nodes.h"

static const double beep_ohms = 30;

/* Another function begins from nothing. */
static void
start_over (RwPracticeMeter *self)
{
  self->front = 0;
  for (guint i = 0; i < RW_PRACTICE_MOST_INTERVAL; i++)
    self->ring[i] = 0;
  self->due = self->interval;
  if (self->fixed_range == RW_PRACTICE_RANGE_AUTO)
    self->range = rw_practice_meter_lowest_range (self->cabinet->place, rw_practice_cabinet_get_dialled (self->cabinet));
}

void
rw_practice_meter_set_mode (RwPracticeMeter *self,
                            RwPracticeMode   mode,
                            RwPracticeJack   jack)
{
  g_return_if_fail (mode <= RW_PRACTICE_MODE_AMPS && jack <= RW_PRACTICE_JACK_AMPS);

  const gboolean turned = mode != self->mode;

  self->mode = mode;
  self->jack = jack;
  rw_practice_meter_tell_dial (self);
  if (turned)
    {
      self->fixed_range = RW_PRACTICE_RANGE_AUTO;
      start_over (self);
    }
}

RwPracticeMode
rw_practice_meter_get_mode (RwPracticeMeter *self)
{
  return self->mode;
}

RwPracticeJack
rw_practice_meter_get_jack (RwPracticeMeter *self)
{
  return self->jack;
}

void
rw_practice_meter_set_range (RwPracticeMeter *self,
                             int              range)
{
  const RwKind kind = rw_practice_cabinet_get_dialled (self->cabinet);
  const int least = kind == RW_KIND_OHMS || kind == RW_KIND_AMPS ? 0 : -1;

  self->fixed_range = range <= RW_PRACTICE_RANGE_AUTO ? RW_PRACTICE_RANGE_AUTO
                                                      : CLAMP (range, least, rw_practice_meter_highest_range (self, kind));
  if (self->fixed_range != RW_PRACTICE_RANGE_AUTO)
    self->range = self->fixed_range;
}

int
rw_practice_meter_get_range (RwPracticeMeter *self)
{
  return self->range;
}

void
rw_practice_meter_set_zeroed (RwPracticeMeter *self,
                              gboolean         zeroed)
{
  self->zeroed = zeroed;
}

void
rw_practice_meter_set_half_wave (RwPracticeMeter *self,
                                 gboolean         half_wave)
{
  self->half_wave = half_wave;
}

gboolean
rw_practice_meter_get_fuse_blown (RwPracticeMeter *self)
{
  return self->fuse_blown;
}

void
rw_practice_meter_replace_fuse (RwPracticeMeter *self)
{
  self->fuse_blown = FALSE;
  self->fuse_heat = 0;
  rw_practice_meter_tell_dial (self);
}

gboolean
rw_practice_meter_get_beeps (RwPracticeMeter *self)
{
  return rw_practice_cabinet_get_dialled (self->cabinet) == RW_KIND_OHMS && self->jack == RW_PRACTICE_JACK_VOLTS
         && fabs (self->front) < beep_ohms;
}

static const char *
caution_of_ohms (RwPracticeMeter *self)
{
  RwPracticePair pair;

  rw_practice_cabinet_measure (self->cabinet, self->cabinet->lead[RW_PRACTICE_RED],
                               self->cabinet->lead[RW_PRACTICE_BLACK], &pair);
  if (pair.live)
    return _ ("Ohms on a circuit with power on mean nothing and can blow the meter. Power off, plug out, wait, and prove "
              "with DC volts that nothing is left.");
  if (pair.charged)
    return _ ("A capacitor still holds volts: ohms creep or come out below nothing. Wait until DC volts say less than a "
              "hundredth of a volt, then read again.");
  return NULL;
}

const char *
rw_practice_meter_get_caution (RwPracticeMeter *self)
{
  const RwKind kind = rw_practice_cabinet_get_dialled (self->cabinet);

  if (self->jack == RW_PRACTICE_JACK_AMPS && self->fuse_blown)
    return _ ("The fuse in the amperes jack has blown: it shows nothing whatever flows. Ask first why it blew, then put in "
              "one of the same kind.");
  if (self->jack == RW_PRACTICE_JACK_AMPS && kind != RW_KIND_AMPS)
    return _ ("The red lead is in the amperes jack: across a rail the meter is a short circuit, whatever the dial says. "
              "Plug it into the volts jack before touching anything.");
  if (self->jack == RW_PRACTICE_JACK_AMPS)
    return _ ("Amperes are measured in series, never across a rail, and even then the meter costs the board some tenths of "
              "a volt. The drop along a wire tells the current without that.");
  if (kind == RW_KIND_AMPS)
    return _ ("The dial says amperes, but the red lead is in the volts jack: it shows nothing.");
  return kind == RW_KIND_OHMS ? caution_of_ohms (self) : NULL;
}
