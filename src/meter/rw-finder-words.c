/* rw-finder-words.c: the finder's outcome as sentences for people.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-finder-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static const double sure_enough = 0.95;

struct _RwFinderWords
{
  guint      ports;
  GPtrArray *troubles; /* of char * */
  char      *stranger;
};

RwFinderWords *
rw_finder_words_new (void)
{
  RwFinderWords *self = g_new0 (RwFinderWords, 1);

  self->troubles = g_ptr_array_new_with_free_func (g_free);
  return self;
}

void
rw_finder_words_free (RwFinderWords *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->troubles);
  g_free (self->stranger);
  g_free (self);
}

void
rw_finder_words_add (RwFinderWords *self,
                     const char    *trouble,
                     const char    *stranger)
{
  self->ports++;
  if (trouble != NULL)
    g_ptr_array_add (self->troubles, g_strdup (trouble));
  if (self->stranger == NULL)
    self->stranger = g_strdup (stranger);
}

/* Never 100: nothing is. */
static guint
get_percent (double share)
{
  return (guint) CLAMP (floor (100 * share), 0, 99);
}

static char *
describe_best (const RwMeterFound *best)
{
  g_autofree char *place = rw_meter_address_to_words (best->address);
  const char *title = rw_decoder_get_title (best->format);

  if (best->identity != NULL)
    /* Translators: the name an instrument gives itself, and where it is. */
    return g_strdup_printf (_ ("Found: %s on “%s”."), best->identity, place);
  if (best->sign_unsure)
    return g_strdup_printf (/* Translators: a place, and a whole number of per cent. */
                            _ ("Found on “%s”: four digits and flags, 11 bytes (%u %% sure). Two kinds of "
                               "these meters mark the minus differently: measure something negative "
                               "once, such as a battery with the leads swapped, so that the sign is "
                               "right."),
                            place, get_percent (best->sure));
  if (best->sure < sure_enough)
    return g_strdup_printf (/* Translators: a place, a format, and a whole number of per cent. */
                            _ ("Perhaps on “%s”: %s (%u %% sure). Compare the value with the meter's "
                               "display before you rely on it."),
                            place, title, get_percent (best->sure));
  return g_strdup_printf (/* Translators: a place, a format, and a whole number of per cent. */
                          _ ("Found on “%s”: %s (%u %% sure)."), place, title,
                          get_percent (best->sure));
}

static char *
describe_nothing (const RwFinderWords *self)
{
  if (self->ports == 0)
    return g_strdup (_ ("There is no port to search. Plug the meter's cable in, then search again."));
  if (self->stranger != NULL)
    return g_strdup_printf (/* Translators: a line of text that came from a port. */
                            _ ("No meter was found, but text came that is no reading: “%s”. If that is "
                               "the meter, choose “Lines of text” and describe its lines."),
                            self->stranger);
  if (self->troubles->len == self->ports)
    return g_strdup (_ ("No port could be searched."));
  return g_strdup (_ ("No meter was found. Is it on, set to send, and is its cable seated? Then search "
                      "again."));
}

char *
rw_finder_words_describe (const RwFinderWords *self,
                          const GPtrArray     *found)
{
  g_autofree char *first = found->len > 0 ? describe_best (found->pdata[0]) : describe_nothing (self);
  g_autoptr (GString) text = g_string_new (first);

  for (guint i = 0; i < self->troubles->len; i++)
    g_string_append_printf (text, " %s", (const char *) self->troubles->pdata[i]);
  return g_strdup (text->str);
}

char *
rw_finder_words_describe_lesson (RwSignLesson lesson,
                                 const char  *trouble)
{
  if (trouble != NULL)
    return g_strdup (trouble);
  switch (lesson)
    {
    case RW_SIGN_LESSON_A:
    case RW_SIGN_LESSON_B:
      return g_strdup (_ ("The meter's minus is known now."));
    case RW_SIGN_LESSON_NEITHER:
      return g_strdup (_ ("The meter sends no minus: the value was not negative. Swap the leads on a "
                          "battery, look for the minus on the display, and try again."));
    case RW_SIGN_LESSON_BOTH:
      return g_strdup (_ ("The meter sends the minus together with another mark, perhaps a low battery, "
                          "so the minus cannot be told. Put a fresh battery in and try again."));
    case RW_SIGN_LESSON_MIXED:
      return g_strdup (_ ("The meter's marks changed while it was listened to. Keep the probes still on "
                          "something negative and try again."));
    case RW_SIGN_LESSON_FEW:
    default:
      return g_strdup (_ ("Too little came from the meter to tell. Is it still on and sending? Then try "
                          "again."));
    }
}
