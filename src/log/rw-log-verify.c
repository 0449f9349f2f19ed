/* rw-log-verify.c: railwright-log verify FILE.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * What was found goes to standard output, whole; on damage one closing line on standard error
 * names the lines. A file whose header is lost is gone through all the same.
 *
 * Three things are noticed that harm no reader but that a writer would not have done: event
 * numbers that do not rise, numbers that are missing, and time that runs back. They leave the
 * exit status alone.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "rw-log-file.h"
#include "rw-log-io.h"
#include "rw-log-options.h"

/* How often each oddity occurs, and the event where it does so first. */
typedef struct
{
  guint n_not_rising, first_not_rising;
  guint n_missing, first_missing;
  guint n_back, first_back;
} Oddities;

static Oddities
look_for_oddities (RwSession *session)
{
  Oddities odd = { 0 };
  guint last_n = 0;
  double last_t = 0;

  for (guint i = 0; i < rw_session_get_n_events (session); i++)
    {
      const RwEvent *event = rw_session_get_event (session, i);

      if (event->n <= last_n && odd.n_not_rising++ == 0)
        odd.first_not_rising = event->n;
      if (event->n > last_n + 1)
        {
          odd.first_missing = odd.n_missing == 0 ? last_n + 1 : odd.first_missing;
          odd.n_missing += event->n - last_n - 1;
        }
      if (event->t < last_t && odd.n_back++ == 0)
        odd.first_back = event->n;
      last_n = MAX (last_n, event->n);
      last_t = MAX (last_t, event->t);
    }
  return odd;
}

/* Takes @text. */
static void
take_line (GString *out,
           char    *text)
{
  g_string_append (out, text);
  g_string_append_c (out, '\n');
  g_free (text);
}

static void
append_oddities (RwSession *session,
                 GString   *out)
{
  const Oddities odd = look_for_oddities (session);

  if (odd.n_missing > 0)
    /* Translators: how many, the first event number. */
    take_line (out,
               g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                             "noticed: %u event number is missing: %u",
                                             "noticed: %u event numbers are missing, the first: %u",
                                             odd.n_missing),
                                odd.n_missing, odd.first_missing));
  if (odd.n_not_rising > 0)
    take_line (out,
               g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                             "noticed: %u event number does not rise: %u",
                                             "noticed: %u event numbers do not rise, the first: %u",
                                             odd.n_not_rising),
                                odd.n_not_rising, odd.first_not_rising));
  if (odd.n_back > 0)
    take_line (out,
               g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                             "noticed: time runs back at %u event: %u",
                                             "noticed: time runs back at %u events, the first: %u",
                                             odd.n_back),
                                odd.n_back, odd.first_back));
}

static void
append_header (const RwLogFile *file,
               GString         *out)
{
  const RwSessionHeader *header = rw_session_get_header (file->read->session);
  g_autofree char *started = g_date_time_format (header->started, "%Y-%m-%d %H:%M");

  if (file->header != NULL)
    {
      /* Translators: what is wrong with the header of a session file. */
      take_line (out, g_strdup_printf (_ ("damaged: header: %s"), file->header));
      return;
    }
  take_line (out, g_strdup_printf (
                      /* Translators: file; cabinet; id of its profile; date and time. */
                      _ ("%s: header good: cabinet “%s”, profile %s, started %s UTC"), file->name,
                      header->cabinet_name, rw_profile_get_id (header->profile), started));
}

static void
append_events (const RwLogFile *file,
               GString         *out)
{
  const guint n = rw_session_get_n_events (file->read->session);
  const guint unknown = file->read->n_unknown;

  take_line (out, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u event read",
                                                "%u events read", n),
                                   n));
  if (unknown > 0)
    take_line (out,
               g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                             "%u event is not understood (kept, no damage)",
                                             "%u events are not understood (kept, no damage)",
                                             unknown),
                                unknown));
}

static void
append_damage (const RwLogFile *file,
               GString         *out)
{
  const GArray *damaged = file->read->damaged;

  for (guint i = 0; i < damaged->len; i++)
    {
      g_autofree char *line = rw_log_file_describe (file, &g_array_index (damaged, RwDamage, i));

      /* Translators: which line, what is wrong with it. */
      take_line (out, g_strdup_printf (_ ("damaged: %s"), line));
    }
  if (file->read->torn_tail)
    {
      g_autofree char *line = rw_log_file_describe_torn (file);

      take_line (out, g_strdup_printf (_ ("damaged: %s"), line));
    }
  if (!rw_log_file_is_damaged (file))
    take_line (out, g_strdup (_ ("nothing is damaged")));
}

static void
complain (const RwLogFile *file)
{
  const GArray *damaged = file->read->damaged;
  g_autoptr (GString) lines = g_string_new (NULL);

  if (file->header != NULL)
    g_string_append (lines, _ ("1 (header)"));
  for (guint i = 0; i < damaged->len; i++)
    g_string_append_printf (lines, "%s%u", lines->len > 0 ? ", " : "",
                            g_array_index (damaged, RwDamage, i).line);
  if (file->read->torn_tail)
    {
      g_string_append (lines, lines->len > 0 ? ", " : "");
      /* Translators: number of the last line, of which a part is missing. */
      g_string_append_printf (lines, _ ("%u (torn)"), file->torn_line);
    }
  /* Translators: file; numbers of lines. */
  rw_log_complain (_ ("%s: damaged lines: %s"), file->name, lines->str);
}

int
rw_log_verify (int    argc,
               char **argv)
{
  g_auto (GStrv) words = NULL;
  const GOptionEntry entries[] = {
    { G_OPTION_REMAINING, 0, 0, G_OPTION_ARG_FILENAME_ARRAY, &words, NULL, NULL },
    G_OPTION_ENTRY_NULL
  };

  if (!rw_log_options_parse ("verify", N_ ("FILE"),
                             _ ("Reads a whole session file and says what is damaged. The file is "
                                "not touched."),
                             entries, &argc, &argv))
    return RW_LOG_USAGE;

  const char *path = rw_log_options_one_file ("verify", words);

  if (path == NULL)
    return RW_LOG_USAGE;

  g_autoptr (RwLogFile) file = rw_log_file_load_headless (path);

  if (file == NULL)
    return RW_LOG_DAMAGED;

  g_autoptr (GString) out = g_string_new (NULL);

  append_header (file, out);
  append_events (file, out);
  append_damage (file, out);
  append_oddities (file->read->session, out);

  const int status = rw_log_print (out->str, (gssize) out->len);

  if (!rw_log_file_is_damaged (file))
    return status;
  complain (file);
  return RW_LOG_DAMAGED;
}
