/* study-alike.c: causes that a technician cannot tell apart by anything that can be done at a cabinet.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Kept short on purpose: alike are only causes whose difference is not in what the cabinet does, reads or
 * looks like. Where one mends the other as well (a new connector has clean fingers), that is no reason.
 */
#include "config.h"

#include "study-figures.h"

static const struct
{
  const char *a, *b;
  const char *why;
} alike[] = {
  { "supply-fine", "reset-part-bad",
    "with good rails and no dip, which part of the board resets it is for logic tools to say" },
};

gboolean
study_alike (const char *a,
             const char *b)
{
  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    if ((g_strcmp0 (alike[i].a, a) == 0 && g_strcmp0 (alike[i].b, b) == 0)
        || (g_strcmp0 (alike[i].a, b) == 0 && g_strcmp0 (alike[i].b, a) == 0))
      return TRUE;
  return FALSE;
}

void
study_append_alike (GString *out)
{
  for (guint i = 0; i < G_N_ELEMENTS (alike); i++)
    g_string_append_printf (out, "- %s and %s: %s\n", alike[i].a, alike[i].b, alike[i].why);
}
