/* rw-known-meter.c: one remembered meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-meter-book.h"

RwKnownMeter *
rw_known_meter_new (const RwMeterFacts *facts)
{
  RwKnownMeter *self = g_new0 (RwKnownMeter, 1);

  self->facts = rw_meter_facts_copy (facts);
  self->mark = '.';
  return self;
}

RwKnownMeter *
rw_known_meter_copy (const RwKnownMeter *self)
{
  RwKnownMeter *copy = rw_known_meter_new (self->facts);

  copy->address = self->address != NULL ? rw_meter_address_copy (self->address) : NULL;
  copy->format = g_strdup (self->format);
  copy->pattern = g_strdup (self->pattern);
  copy->mark = self->mark;
  copy->identity = g_strdup (self->identity);
  copy->rail = g_strdup (self->rail);
  return copy;
}

void
rw_known_meter_free (RwKnownMeter *self)
{
  if (self == NULL)
    return;
  rw_meter_facts_free (self->facts);
  g_clear_pointer (&self->address, rw_meter_address_free);
  g_free (self->format);
  g_free (self->pattern);
  g_free (self->identity);
  g_free (self->rail);
  g_free (self);
}

RwDecoder *
rw_known_meter_make_decoder (const RwKnownMeter *self,
                             GError            **error)
{
  if (self->address == NULL)
    return NULL;

  g_autoptr (RwDecoder) decoder = self->format != NULL ? rw_decoder_new (self->format) : NULL;

  if (decoder == NULL)
    {
      g_set_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION,
                   /* Translators: the name of a meter, and the id of a format. */
                   _ ("The meter “%s” is remembered with a format “%s” that this version does not "
                      "know. Find the meter again."),
                   self->facts->name, self->format != NULL ? self->format : "");
      return NULL;
    }
  rw_decoder_set_decimal_mark (decoder, self->mark);
  if (self->pattern != NULL && !rw_decoder_set_pattern (decoder, self->pattern, error))
    return NULL;
  return g_steal_pointer (&decoder);
}
