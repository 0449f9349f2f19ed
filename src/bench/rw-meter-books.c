/* rw-meter-books.c: the one meter book of the process.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-books.h"

#include <string.h>

static RwMeterBook *book;
static char *problem;

static void
remember_problem (const GError *error)
{
  g_free (problem);
  problem = error != NULL ? g_strdup (error->message) : NULL;
}

RwMeterBook *
rw_meter_books_get_default (void)
{
  if (book == NULL)
    {
      g_autoptr (GError) error = NULL;

      book = rw_meter_book_new (NULL, &error);
      remember_problem (error);
    }
  return book;
}

const char *
rw_meter_books_get_problem (void)
{
  rw_meter_books_get_default ();
  return problem;
}

void
rw_meter_books_put (const RwKnownMeter *meter)
{
  g_autoptr (GError) error = NULL;

  rw_meter_book_put (rw_meter_books_get_default (), meter, &error);
  remember_problem (error);
}

void
rw_meter_books_remove (const char *id)
{
  g_autoptr (GError) error = NULL;

  rw_meter_book_remove (rw_meter_books_get_default (), id, &error);
  remember_problem (error);
}

const RwKnownMeter *
rw_meter_books_find_same (const RwMeterAddress *address,
                          const char           *format,
                          const char           *identity)
{
  RwMeterBook *all = rw_meter_books_get_default ();

  for (guint i = 0; i < rw_meter_book_get_n (all); i++)
    {
      const RwKnownMeter *meter = rw_meter_book_get (all, i);

      if (meter->address != NULL && rw_meter_address_equal (meter->address, address)
          && g_strcmp0 (meter->format, format) == 0
          && (identity == NULL || meter->identity == NULL || g_str_equal (meter->identity, identity)))
        return meter;
    }
  return NULL;
}

char *
rw_meter_stay_to_text (const char *rail,
                       RwPlace     place)
{
  if (rail == NULL || place == RW_PLACE_BOARD)
    return g_strdup (rail);
  return g_strconcat (rail, "@", rw_place_to_id (place), NULL);
}

char *
rw_meter_stay_from_text (const char *text,
                         RwPlace    *place)
{
  const char *at = text != NULL ? strrchr (text, '@') : NULL;

  *place = RW_PLACE_BOARD;
  if (at == NULL)
    return g_strdup (text);
  return rw_place_from_id (at + 1, place) ? g_strndup (text, (gsize) (at - text)) : NULL;
}
