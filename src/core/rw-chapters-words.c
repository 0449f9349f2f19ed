/* rw-chapters-words.c: what changed in a chapter, in one line.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chapters.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* @text: taken. */
static void
add (GString *line,
     char    *text)
{
  if (line->len > 0)
    g_string_append (line, ", ");
  g_string_append (line, text);
  g_free (text);
}

static void
add_counts (GString         *line,
            const RwChapter *chapter)
{
  if (chapter->n_readings > 0)
    add (line, g_strdup_printf (ngettext ("%u reading", "%u readings", chapter->n_readings), chapter->n_readings));
  if (chapter->n_trims > 0 && chapter->kind != RW_CHAPTER_TRIM) /* else its title says so */
    add (line, g_strdup_printf (ngettext ("%u turn of the trim", "%u turns of the trim", chapter->n_trims),
                                chapter->n_trims));
  if (chapter->n_findings > 0)
    add (line, g_strdup_printf (ngettext ("%u finding", "%u findings", chapter->n_findings), chapter->n_findings));
  if (chapter->n_repairs > 0)
    add (line, g_strdup_printf (ngettext ("%u repair", "%u repairs", chapter->n_repairs), chapter->n_repairs));
  if (chapter->n_warnings > 0)
    add (line, g_strdup_printf (ngettext ("%u warning", "%u warnings", chapter->n_warnings), chapter->n_warnings));
}

char *
rw_chapter_describe_change_without (const RwChapter *chapter,
                                    RwProfile       *profile,
                                    const char      *hidden)
{
  GString *line = g_string_new (NULL);

  add_counts (line, chapter);
  for (guint i = 0; i < chapter->verdicts->len; i++)
    {
      const RwChapterVerdict *change = &g_array_index (chapter->verdicts, RwChapterVerdict, i);
      const RwRail *rail = rw_profile_find_rail (profile, change->rail);
      const char *label = rail != NULL ? rail->label : change->rail;
      const char *after = rw_verdict_get_label (change->after);

      if (g_strcmp0 (change->rail, hidden) == 0)
        continue;
      if (change->before == RW_VERDICT_NONE)
        /* Translators: a rail, and the verdict on its first reading. */
        add (line, g_strdup_printf (_ ("%s: %s"), label, after));
      else
        /* Translators: a rail, the verdict before and after. */
        add (line, g_strdup_printf (_ ("%s: %s → %s"), label, rw_verdict_get_label (change->before), after));
    }
  return g_string_free (line, FALSE);
}

char *
rw_chapter_describe_change (const RwChapter *chapter,
                            RwProfile       *profile)
{
  return rw_chapter_describe_change_without (chapter, profile, NULL);
}

char *
rw_chapter_dup_title_without (const RwChapter *chapter,
                              RwProfile       *profile,
                              const char      *hidden)
{
  const RwRail *rail = hidden != NULL ? rw_profile_find_rail (profile, hidden) : NULL;

  if (rail == NULL)
    return g_strdup (chapter->title);

  /* "+5 V", and "+5" alone as people write it in a mark. */
  const char *space = strchr (rail->label, ' ');
  g_autofree char *figure = g_strndup (rail->label, space != NULL ? (gsize) (space - rail->label) : strlen (rail->label));

  return strstr (chapter->title, figure) != NULL ? g_strdup ("…") : g_strdup (chapter->title);
}
