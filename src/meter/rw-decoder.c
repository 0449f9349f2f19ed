/* rw-decoder.c: the formats, and what they have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-decoder.h"

#include <glib/gi18n-lib.h>

#include "rw-decoder-digits-11.h"
#include "rw-decoder-digits-14.h"
#include "rw-decoder-lines.h"
#include "rw-decoder-private.h"
#include "rw-decoder-scpi.h"
#include "rw-decoder-segments-14.h"
#include "rw-decoder-text-14.h"
#include "rw-decoder-text-16.h"

G_DEFINE_QUARK (rw_decoder_error, rw_decoder_error)

/* How much of a bad line is kept. */
static const gsize max_shown = 80;

static const RwDecoderClass *const classes[] = {
  &rw_decoder_lines_class.parent,
  &rw_decoder_scpi_class.parent,
  &rw_decoder_segments_14_class.parent,
  &rw_decoder_digits_14_class.parent,
  &rw_decoder_digits_11a_class.parent,
  &rw_decoder_digits_11b_class.parent,
  &rw_decoder_text_14_class.parent,
  &rw_decoder_text_16_class.parent,
};

static const RwDecoderClass *
find_class (const char *format_id)
{
  for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
    if (g_strcmp0 (classes[i]->id, format_id) == 0)
      return classes[i];
  return NULL;
}

const char *const *
rw_decoder_list_formats (void)
{
  static const char *ids[G_N_ELEMENTS (classes) + 1];
  static gsize ready;

  if (g_once_init_enter (&ready))
    {
      for (guint i = 0; i < G_N_ELEMENTS (classes); i++)
        ids[i] = classes[i]->id;
      g_once_init_leave (&ready, 1);
    }
  return ids;
}

const char *
rw_decoder_get_title (const char *format_id)
{
  const RwDecoderClass *class = find_class (format_id);

  return class != NULL ? _ (class->title) : NULL;
}

const RwSerialSettings *
rw_decoder_get_usual_line (const char *format_id)
{
  const RwDecoderClass *class = find_class (format_id);

  return class != NULL ? &class->usual : NULL;
}

const char *
rw_decoder_get_poll (const char *format_id)
{
  const RwDecoderClass *class = find_class (format_id);

  return class != NULL ? class->poll : NULL;
}

RwDecoder *
rw_decoder_new (const char *format_id)
{
  const RwDecoderClass *class = find_class (format_id);

  if (class == NULL)
    return NULL;

  RwDecoder *self = g_malloc0 (class->size);

  self->class = class;
  self->mark = '.';
  if (class->init != NULL)
    class->init (self);
  return self;
}

RwDecoder *
rw_decoder_new_like (const RwDecoder *self)
{
  RwDecoder *copy = rw_decoder_new (self->class->id);

  copy->mark = self->mark;
  copy->assumed_unit = self->assumed_unit;
  copy->assumed_mode = self->assumed_mode;
  if (self->class->copy_options != NULL)
    self->class->copy_options (copy, self);
  return copy;
}

void
rw_decoder_free (RwDecoder *self)
{
  if (self == NULL)
    return;
  if (self->class->clear != NULL)
    self->class->clear (self);
  g_free (self->last_bad);
  g_free (self);
}

const char *
rw_decoder_get_format (const RwDecoder *self)
{
  return self->class->id;
}

void
rw_decoder_set_decimal_mark (RwDecoder *self,
                             char       mark)
{
  g_return_if_fail (mark == '.' || mark == ',');
  self->mark = mark;
}

void
rw_decoder_assume (RwDecoder  *self,
                   RwMeterUnit unit,
                   RwMeterMode mode)
{
  self->assumed_unit = unit;
  self->assumed_mode = mode;
}

gboolean
rw_decoder_set_pattern (RwDecoder  *self,
                        const char *pattern,
                        GError    **error)
{
  if (self->class->set_pattern != NULL)
    return self->class->set_pattern (self, pattern, error);
  g_set_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_OPTION,
               _ ("The format “%s” takes no pattern. Choose “lines” to describe a line yourself."),
               self->class->id);
  return FALSE;
}

void
rw_decoder_feed (RwDecoder    *self,
                 const guint8 *tainted,
                 gsize         n,
                 RwDecoderFunc callback,
                 gpointer      data)
{
  self->callback = callback;
  self->data = data;
  self->class->feed (self, tainted, n);
}

void
rw_decoder_end (RwDecoder    *self,
                RwDecoderFunc callback,
                gpointer      data)
{
  self->callback = callback;
  self->data = data;
  if (self->class->end != NULL)
    self->class->end (self);
}

void
rw_decoder_restart (RwDecoder *self,
                    gboolean   torn)
{
  self->class->restart (self, torn);
}

void
rw_decoder_get_counts (const RwDecoder *self,
                       RwDecoderCounts *counts)
{
  *counts = self->counts;
}

const char *
rw_decoder_get_last_bad (const RwDecoder *self)
{
  return self->last_bad;
}

void
rw_decoder_emit (RwDecoder          *self,
                 const RwMeterValue *value)
{
  self->counts.values++;
  self->callback (value, self->data);
}

/* As text that can be shown: bytes that are none become U+FFFD or '?'. (transfer full) */
static char *
make_printable (const char *tainted,
                gsize       n)
{
  char *shown = g_utf8_make_valid (tainted, (gssize) MIN (n, max_shown));

  for (char *p = shown; *p != '\0'; p++)
    if (g_ascii_iscntrl (*p))
      *p = '?';
  return shown;
}

void
rw_decoder_refuse (RwDecoder  *self,
                   const char *tainted,
                   gsize       n)
{
  self->counts.not_understood++;
  g_free (self->last_bad);
  self->last_bad = make_printable (tainted, n);
}

void
rw_decoder_refuse_binary (RwDecoder    *self,
                          const guint8 *tainted,
                          gsize         n)
{
  GString *shown = g_string_new (NULL);

  for (gsize i = 0; i < MIN (n, max_shown); i++)
    g_string_append_printf (shown, "%s%02X", i > 0 ? " " : "", tainted[i]);
  self->counts.not_understood++;
  g_free (self->last_bad);
  self->last_bad = g_string_free (shown, FALSE);
}
