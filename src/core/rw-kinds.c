/* rw-kinds.c: the fixed words of a reading.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-kinds.h"

#include <glib/gi18n-lib.h>

static const char *const place_ids[RW_N_PLACES] = { "terminals", "board", "chip", "wire" };
static const char *const kind_ids[RW_N_KINDS] = { "dc", "ripple", "ohms", "amps", "celsius" };
static const char *const kind_units[RW_N_KINDS] = { "V", "V", "Ω", "A", "°C" };

/* Index of id in a table of n words, or −1. */
static int
find_word (const char *const *words,
           int                n,
           const char        *id)
{
  for (int i = 0; i < n; i++)
    if (g_strcmp0 (words[i], id) == 0)
      return i;
  return -1;
}

const char *
rw_place_to_id (RwPlace place)
{
  g_return_val_if_fail (place < RW_N_PLACES, NULL);
  return place_ids[place];
}

const char *
rw_kind_to_id (RwKind kind)
{
  g_return_val_if_fail (kind < RW_N_KINDS, NULL);
  return kind_ids[kind];
}

gboolean
rw_place_from_id (const char *id,
                  RwPlace    *out)
{
  const int found = find_word (place_ids, RW_N_PLACES, id);

  if (found < 0)
    return FALSE;
  *out = (RwPlace) found;
  return TRUE;
}

gboolean
rw_kind_from_id (const char *id,
                 RwKind     *out)
{
  const int found = find_word (kind_ids, RW_N_KINDS, id);

  if (found < 0)
    return FALSE;
  *out = (RwKind) found;
  return TRUE;
}

const char *
rw_place_get_label (RwPlace place)
{
  switch (place)
    {
    case RW_PLACE_TERMINALS:
      return _ ("terminals");
    case RW_PLACE_BOARD:
      return _ ("board");
    case RW_PLACE_CHIP:
      return _ ("far chip");
    case RW_PLACE_WIRE:
      return _ ("along the wire");
    case RW_N_PLACES:
    default:
      g_return_val_if_reached ("");
    }
}

const char *
rw_kind_get_unit (RwKind kind)
{
  g_return_val_if_fail (kind < RW_N_KINDS, "");
  return kind_units[kind];
}
