/* rw-practice-script.c: a job at a practice cabinet, written down as text and done by rote.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One line a thing; empty lines and lines that begin with # mean nothing. Numbers in C notation.
 * First the head; of each kind the last line counts, `fault` may come more than once:
 *
 *     cabinet NAME                     needed
 *     tag TEXT
 *     profile ID                       needed
 *     seed N                           1
 *     started 2026-03-14T09:30:00Z     that very moment
 *     fault CAUSE STRENGTH             strength 0 … 1
 *     meter PERCENT COUNTS FULL NAME   0.5 2 6000 bench meter
 *     probes hand|clips                hand
 *     on-reset TEXT                    such a mark when the board resets during a stream, at most
 *                                      every 10 s
 *
 * Then the steps, in the order in which they happen; they take the time that stands behind them:
 *
 *     power on|off                           2 s
 *     board fit|pull                         20 s; only with power off
 *     trim +0.02 | trim -50mV                share of its travel, or millivolts of the reference
 *                                            rail; 3 s
 *     wait SECONDS
 *     await reset SECONDS                    until the board resets; an error when it does not
 *     read RAIL PLACE [dc|ripple]            leads there, wait until it settles (at most 15 s),
 *                                            keep the reading
 *     stream RAIL PLACE SECONDS [dc|ripple]  leads there, samples
 *     wiggle SPOT RAIL PLACE SECONDS         the same, while edge, harness, screws, board or supply is
 *                                            shaken every 2 s
 *     keep                                   the settled value of the last stream
 *     symptom ID [present|absent|cured]      without a word: as the cabinet is now (cured when it
 *                                            was there before); 1 s
 *     finding CHECK [OUTCOME]                without an outcome: what looking shows; 1 s
 *     repair CAUSE fixed|no-change           fixed mends the cabinet; 1 s
 *     mark TEXT
 *     note TEXT                              1 s
 *     stage ID [read | against TEXT]         enters a stage; its hazards were read; on against advice
 *     call ask RAIL PLACE                    a class says what that will read, which is hidden
 *     call value VALUE GIVE|- NAME           somebody's call, 90 % sure of ± GIVE
 *     call hands LOWER SAME HIGHER           a show of hands
 *     call reveal                            by the last reading of it, which must have come since
 *     call drop                              the round is given up
 *     undo                                   retracts the last thing a person did; 1 s
 *
 * Moving the leads takes 1 s.
 *
 * A script cannot tell tales: with power on, a symptom that the cabinet does not show, an outcome
 * that looking contradicts and a repair that mends nothing are errors. With power off a symptom is
 * hearsay and taken as told.
 */
#include "config.h"

#include "rw-practice-script.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-practice-script-private.h"

static const char *const default_start = "2026-03-14T09:30:00Z";

gboolean
rw_practice_run_fail (RwPracticeRun  *run,
                      GError        **error,
                      RwPracticeError code,
                      const char     *format,
                      ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *what = g_strdup_vprintf (format, args);
  va_end (args);

  /* Translators: file name, line number, what is wrong */
  g_set_error (error, RW_PRACTICE_ERROR, (int)code, _ ("%s, line %u: %s"), run->where,
               run->line, what);
  return FALSE;
}

gboolean
rw_practice_run_number (RwPracticeRun *run,
                        const char    *word,
                        double         lo,
                        double         hi,
                        double        *out,
                        GError       **error)
{
  char *end = NULL;
  const double value = g_ascii_strtod (word, &end);

  if (end == word || *end != '\0' || !isfinite (value) || strpbrk (word, "xXnN") != NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is not a number."), word);
  if (value < lo || value > hi)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("%s does not lie between %g and %g."), word, lo, hi);
  *out = value;
  return TRUE;
}

static void
set_text (char      **place,
          const char *text)
{
  g_free (*place);
  *place = g_strdup (text);
}

static gboolean
head_cabinet (RwPracticeRun *run,
              char         **words,
              const char    *rest,
              GError       **error)
{
  set_text (&run->name, rest);
  return TRUE;
}

static gboolean
head_tag (RwPracticeRun *run,
          char         **words,
          const char    *rest,
          GError       **error)
{
  set_text (&run->tag, rest);
  return TRUE;
}

static RwProfile *
find_profile (const char *id)
{
  g_autoptr (GPtrArray) all = rw_profile_list (NULL);

  for (guint i = 0; i < all->len; i++)
    if (g_str_equal (rw_profile_get_id (all->pdata[i]), id))
      return rw_profile_ref (all->pdata[i]);
  return NULL;
}

static gboolean
head_profile (RwPracticeRun *run,
              char         **words,
              const char    *rest,
              GError       **error)
{
  g_autofree char *file = g_strconcat (words[1], ".json", NULL);
  g_autofree char *path = run->profiles != NULL ? g_build_filename (run->profiles, file, NULL)
                                                : NULL;

  g_clear_pointer (&run->profile, rw_profile_unref);
  if (path != NULL && strchr (words[1], G_DIR_SEPARATOR) == NULL
      && g_file_test (path, G_FILE_TEST_EXISTS))
    {
      run->profile = rw_profile_load (path, error);
      if (run->profile == NULL)
        g_prefix_error (error, _ ("%s, line %u: "), run->where, run->line);
      return run->profile != NULL;
    }
  run->profile = find_profile (words[1]);
  if (run->profile == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("There is no profile “%s”."), words[1]);
  return TRUE;
}

static gboolean
head_seed (RwPracticeRun *run,
           char         **words,
           const char    *rest,
           GError       **error)
{
  if (!g_ascii_string_to_unsigned (words[1], 10, 0, G_MAXUINT64, &run->seed, NULL))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is not a whole number."), words[1]);
  return TRUE;
}

static gboolean
head_started (RwPracticeRun *run,
              char         **words,
              const char    *rest,
              GError       **error)
{
  g_clear_pointer (&run->started, g_date_time_unref);
  run->started = g_date_time_new_from_iso8601 (words[1], NULL);
  if (run->started == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is not a time. Write it like %s."), words[1],
                                 default_start);
  return TRUE;
}

static gboolean
head_fault (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  RwPracticeFault fault = { g_intern_string (words[1]), 0 };

  if (!rw_practice_faults_has (words[1]))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("A practice cabinet cannot have “%s”."), words[1]);
  if (!rw_practice_run_number (run, words[2], 0, 1, &fault.strength, error))
    return FALSE;
  g_array_append_val (run->faults, fault);
  return TRUE;
}

/* What follows the first @n words. */
static const char *
after_words (const char *rest,
             guint       n)
{
  while (n-- > 0)
    {
      rest += strcspn (rest, " \t");
      rest += strspn (rest, " \t");
    }
  return rest;
}

static gboolean
head_meter (RwPracticeRun *run,
            char         **words,
            const char    *rest,
            GError       **error)
{
  double full = 0;

  if (g_strv_length (words) < 5)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("A meter needs per cent, counts, full counts and a name."));
  if (!rw_practice_run_number (run, words[1], 0, 10, &run->percent, error)
      || !rw_practice_run_number (run, words[2], 0.5, 100, &run->counts, error)
      || !rw_practice_run_number (run, words[3], 200, 1e6, &full, error))
    return FALSE;
  run->full_counts = (guint)full;
  set_text (&run->meter_name, after_words (rest, 3));
  return TRUE;
}

static gboolean
head_probes (RwPracticeRun *run,
             char         **words,
             const char    *rest,
             GError       **error)
{
  const gboolean clips = g_str_equal (words[1], "clips");

  if (!clips && !g_str_equal (words[1], "hand"))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” is neither hand nor clips."), words[1]);
  run->contact_volts = clips ? 0 : -1;
  return TRUE;
}

static gboolean
head_on_reset (RwPracticeRun *run,
               char         **words,
               const char    *rest,
               GError       **error)
{
  set_text (&run->on_reset, rest);
  return TRUE;
}

static const RwPracticeLine head_lines[] = {
  { "cabinet", 1, 0, TRUE, head_cabinet },   { "tag", 1, 0, TRUE, head_tag },
  { "profile", 1, 1, TRUE, head_profile },   { "seed", 1, 1, TRUE, head_seed },
  { "started", 1, 1, TRUE, head_started },   { "fault", 2, 2, TRUE, head_fault },
  { "meter", 4, 0, TRUE, head_meter },       { "probes", 1, 1, TRUE, head_probes },
  { "on-reset", 1, 0, TRUE, head_on_reset }, { NULL },
};

/* The same text, the same session: the id is made from it (a name-based UUID, RFC 4122, 4.3).
 */
static char *
id_from_text (const char *text)
{
  g_autoptr (GChecksum) sum = g_checksum_new (G_CHECKSUM_SHA1);
  guint8 b[20];
  gsize length = sizeof b;

  g_checksum_update (sum, (const guchar *)text, -1);
  g_checksum_get_digest (sum, b, &length);
  b[6] = (guint8)((b[6] & 0x0f) | 0x50);
  b[8] = (guint8)((b[8] & 0x3f) | 0x80);
  return g_strdup_printf (
      "%02x%02x%02x%02x-%02x%02x-%02x%02x-%02x%02x-%02x%02x%02x%02x%02x%02x", b[0], b[1], b[2],
      b[3], b[4], b[5], b[6], b[7], b[8], b[9], b[10], b[11], b[12], b[13], b[14], b[15]);
}

/* From the head to a cabinet, a meter and an empty session. */
static gboolean
begin (RwPracticeRun *run,
       GError       **error)
{
  if (run->name == NULL || run->profile == NULL)
    return rw_practice_run_fail (
        run, error, RW_PRACTICE_ERROR_SCRIPT,
        _ ("The lines “cabinet” and “profile” must come before the first step."));
  run->cabinet = rw_practice_cabinet_new (run->profile, run->seed,
                                          (const RwPracticeFault *)(gpointer)run->faults->data,
                                          run->faults->len, run->name, error);
  if (run->cabinet == NULL)
    {
      g_prefix_error (error, _ ("%s, line %u: "), run->where, run->line);
      return FALSE;
    }
  run->meter = rw_practice_meter_new (run->cabinet, "m1", run->meter_name, run->percent,
                                      run->counts, run->full_counts, ~run->seed);
  if (run->contact_volts >= 0)
    rw_practice_meter_set_contact_volts (run->meter, run->contact_volts);

  g_autoptr (GPtrArray)
      meters = g_ptr_array_new_with_free_func ((GDestroyNotify)rw_meter_facts_free);

  g_ptr_array_add (meters, rw_meter_facts_copy (rw_practice_meter_get_facts (run->meter)));

  RwSessionHeader *header = rw_session_header_new (run->profile, run->name, run->tag, meters,
                                                   run->started);

  set_text (&header->id, run->session_id);
  run->session = rw_session_new (header);
  rw_practice_run_begin (run);
  return TRUE;
}

static const RwPracticeLine *
find_line (const char *name)
{
  for (const RwPracticeLine *kind = head_lines; kind->name != NULL; kind++)
    if (g_str_equal (kind->name, name))
      return kind;
  for (const RwPracticeLine *kind = rw_practice_steps; kind->name != NULL; kind++)
    if (g_str_equal (kind->name, name))
      return kind;
  return NULL;
}

static char **
split_words (const char *text)
{
  g_auto (GStrv) parts = g_strsplit_set (text, " \t", -1);
  GPtrArray *words = g_ptr_array_new ();

  for (char **part = parts; *part != NULL; part++)
    if (**part != '\0')
      g_ptr_array_add (words, g_strdup (*part));
  g_ptr_array_add (words, NULL);
  return (char **)g_ptr_array_free (words, FALSE);
}

static gboolean
run_line (RwPracticeRun *run,
          const char    *text,
          GError       **error)
{
  g_auto (GStrv) words = split_words (text);
  const RwPracticeLine *kind = find_line (words[0]);
  const guint n = g_strv_length (words) - 1;

  if (kind == NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT, _ ("“%s” is no step."),
                                 words[0]);
  if (n < kind->least || (kind->most > 0 && n > kind->most)
      || (kind->least == 0 && kind->most == 0 && n > 0))
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” has too few or too many words."), words[0]);
  if (kind->head && run->cabinet != NULL)
    return rw_practice_run_fail (run, error, RW_PRACTICE_ERROR_SCRIPT,
                                 _ ("“%s” belongs before the first step."), words[0]);
  if (!kind->head && run->cabinet == NULL && !begin (run, error))
    return FALSE;
  return kind->run (run, words, after_words (text, 1), error);
}

static void
clear_run (RwPracticeRun *run)
{
  g_clear_object (&run->meter);
  g_clear_object (&run->cabinet);
  g_clear_object (&run->session);
  g_clear_pointer (&run->name, g_free);
  g_clear_pointer (&run->tag, g_free);
  g_clear_pointer (&run->meter_name, g_free);
  g_clear_pointer (&run->on_reset, g_free);
  g_clear_pointer (&run->session_id, g_free);
  g_clear_pointer (&run->profile, rw_profile_unref);
  g_clear_pointer (&run->started, g_date_time_unref);
  g_clear_pointer (&run->faults, g_array_unref);
}

static gboolean
run_lines (RwPracticeRun *run,
           const char    *text,
           GError       **error)
{
  g_auto (GStrv) lines = g_strsplit (text, "\n", -1);

  for (guint i = 0; lines[i] != NULL; i++)
    {
      char *line = g_strstrip (lines[i]);

      run->line = i + 1;
      if (line[0] == '\0' || line[0] == '#')
        continue;
      if (!run_line (run, line, error))
        return FALSE;
    }
  return run->cabinet != NULL || begin (run, error);
}

RwSession *
rw_practice_script_run (const char *text,
                        const char *where,
                        const char *profiles,
                        GError    **error)
{
  RwPracticeRun run = { .where = where,
                        .profiles = profiles,
                        .seed = 1,
                        .percent = 0.5,
                        .counts = 2,
                        .full_counts = 6000,
                        .contact_volts = -1,
                        .last_mark = -INFINITY };
  RwSession *session = NULL;

  if (!g_utf8_validate (text, -1, NULL))
    {
      g_set_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_SCRIPT,
                   _ ("%s is not text in UTF-8."), where);
      return NULL;
    }
  run.tag = g_strdup ("");
  run.meter_name = g_strdup ("bench meter");
  run.started = g_date_time_new_from_iso8601 (default_start, NULL);
  run.faults = g_array_new (FALSE, TRUE, sizeof (RwPracticeFault));
  run.session_id = id_from_text (text);
  if (run_lines (&run, text, error))
    session = g_steal_pointer (&run.session);
  clear_run (&run);
  return session;
}

RwSession *
rw_practice_script_run_file (const char *path,
                             const char *profiles,
                             GError    **error)
{
  g_autofree char *text = NULL;
  g_autofree char *where = g_path_get_basename (path);
  gsize length = 0;

  if (!g_file_get_contents (path, &text, &length, error))
    return NULL;
  if (strlen (text) != length)
    {
      g_set_error (error, RW_PRACTICE_ERROR, RW_PRACTICE_ERROR_SCRIPT, _ ("%s is not text."),
                   where);
      return NULL;
    }
  return rw_practice_script_run (text, where, profiles, error);
}
