/* rw-projection-words.c: the words of the projector.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A class reads few words from far away: verdicts are one or two words here.
 */
#include "config.h"

#include "rw-projection-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-card-words.h"
#include "rw-live-target.h"
#include "rw-quantity.h"

static const guint most_causes = 4;
static const double least_chance = 0.01;

/* --- of what nothing is said ---------------------------------------------------------------------- */

/* Without spaces of any kind, minus signs all alike, lower case. (transfer full) */
static char *
plain (const char *text)
{
  GString *out = g_string_new (NULL);

  for (const char *c = text; *c != '\0'; c = g_utf8_next_char (c))
    {
      const gunichar u = g_utf8_get_char (c);

      if (g_unichar_isspace (u) || u == 0x2009 || u == 0x202f || u == 0xa0)
        continue;
      if (u == 0x2212 || u == 0x2010 || u == 0x2011 || u == 0x2013 || u == 0x2014)
        g_string_append_c (out, '-');
      else
        g_string_append_unichar (out, g_unichar_tolower (u));
    }
  return g_string_free (out, FALSE);
}

/* @name stands in @text and is not the beginning of a longer number or word. */
static gboolean
names (const char *text,
       const char *name)
{
  const gsize length = strlen (name);

  for (const char *at = strstr (text, name); at != NULL && length > 0; at = strstr (at + 1, name))
    {
      const char next = at[length];
      const gboolean number = g_ascii_isdigit (name[length - 1]);

      if (number && (g_ascii_isdigit (next) || ((next == '.' || next == ',') && g_ascii_isdigit (at[length + 1]))))
        continue;
      return TRUE;
    }
  return FALSE;
}

static gboolean
tells_of (const RwRail *rail,
          const char   *text)
{
  g_autofree char *label = plain (rail->label);
  char volts[G_ASCII_DTOSTR_BUF_SIZE];

  return names (text, label) || names (text, g_ascii_formatd (volts, sizeof volts, "%+g", rail->nominal));
}

gboolean
rw_projection_words_tell (const RwProfile *profile,
                          GHashTable      *hidden,
                          const char      *text)
{
  if (text == NULL || g_hash_table_size (hidden) == 0)
    return FALSE;

  g_autofree char *all = plain (text);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);

      if (g_hash_table_contains (hidden, rail->id) && tells_of (rail, all))
        return TRUE;
    }
  return FALSE;
}

/* --- rails ---------------------------------------------------------------------------------------- */

static const char *
short_verdict (RwVerdict verdict)
{
  switch (verdict)
    {
    case RW_VERDICT_INSIDE:
      return _ ("● inside");
    case RW_VERDICT_CLOSE:
      return _ ("◐ too close");
    case RW_VERDICT_OUTSIDE:
      return _ ("▲ outside");
    case RW_VERDICT_BLIND:
      return _ ("⊘ can’t tell");
    case RW_VERDICT_NONE:
    case RW_N_VERDICTS:
    default:
      return NULL;
    }
}

static void
say_reading (RwProjectionRail *out,
             const RwReading  *reading,
             RwVerdict         verdict)
{
  out->value = reading->over ? g_strdup (_ ("OL")) : rw_quantity_format (reading->value, reading->step, reading->kind);
  out->look = reading->over ? RW_VERDICT_OUTSIDE : verdict;
  out->verdict = g_strdup (reading->over ? _ ("▲ overload") : short_verdict (verdict));
}

/* The meter is on it now and touches something. */
static gboolean
say_live (RwProjectionRail *out,
          RwJob            *job,
          RwBenchState     *state,
          const RwRail     *rail)
{
  const RwLive *live = rw_job_find_live (job, rail->id);
  RwTarget target;

  if (live == NULL || live->sample.kind != RW_KIND_DC || live->sample.place == RW_PLACE_WIRE
      || rw_job_get_now (job) - live->t > RW_LIVE_TARGET_OLD)
    return FALSE;
  rw_target_init (&target, state, &live->sample,
                  rw_session_find_meter (rw_job_get_session (job), live->sample.meter), NULL, NULL);
  if (!target.touched)
    return FALSE;
  say_reading (out, &live->sample, target.verdict);
  /* Translators: place; the value is that of this moment. */
  out->place = g_strdup_printf (_ ("%s · live"), rw_place_get_label (live->sample.place));
  return TRUE;
}

RwProjectionRail *
rw_projection_words_rail (RwJob        *job,
                          RwBenchState *state,
                          const RwRail *rail,
                          RwPlace       place)
{
  RwProjectionRail *out = rw_projection_rail_new (rail->id);
  const RwSpotState *spot = place != RW_PLACE_WIRE ? rw_bench_state_find_spot (state, rail->id, place, RW_KIND_DC) : NULL;

  out->label = g_strdup (rail->label);
  if (say_live (out, job, state, rail))
    return out;
  if (spot == NULL)
    spot = rw_bench_state_find_rail (state, rail->id);
  if (spot == NULL)
    {
      out->value = g_strdup ("–");
      out->place = g_strdup (_ ("not measured"));
      return out;
    }
  say_reading (out, &spot->reading, spot->stale ? RW_VERDICT_NONE : spot->verdict);
  out->place = g_strdup (rw_place_get_label (spot->reading.place));
  out->stale = spot->stale;
  if (spot->stale)
    {
      g_free (out->verdict);
      out->verdict = g_strdup (_ ("◌ stale"));
      out->look = RW_VERDICT_NONE;
    }
  return out;
}

/* --- the next check ------------------------------------------------------------------------------- */

static void
set_words (RwProjectionContent *out,
           const char          *title,
           GStrv                lines) /* taken */
{
  g_free (out->title);
  g_strfreev (out->lines);
  out->title = g_strdup (title);
  out->lines = lines;
}

static gboolean
is_hidden_check (RwJob         *job,
                 GHashTable    *hidden,
                 const RwCheck *check)
{
  return (check->measures && check->rail != NULL && g_hash_table_contains (hidden, check->rail))
         || rw_projection_words_tell (rw_job_get_profile (job), hidden, check->title);
}

/* What it meets and who may do it, before what is to be seen. */
static GStrv
list_outcomes (RwJob         *job,
               GHashTable    *hidden,
               const RwCheck *check)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();
  g_autofree char *hazard = rw_card_words_hazard (check->hazard, check->who);

  g_strv_builder_add (lines, hazard);
  for (guint i = 0; i < check->n_outcomes; i++)
    {
      g_autofree char *line = g_strdup_printf ("• %s", check->outcomes[i].title);

      if (!rw_projection_words_tell (rw_job_get_profile (job), hidden, check->outcomes[i].title))
        g_strv_builder_add (lines, line);
    }
  return g_strv_builder_end (lines);
}

/* The class is told as well: nothing is suggested past a danger. */
static void
set_danger (RwJob               *job,
            GHashTable          *hidden,
            const RwWarning     *danger,
            RwProjectionContent *out)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();

  if (!rw_projection_words_tell (rw_job_get_profile (job), hidden, danger->text))
    g_strv_builder_add (lines, danger->text);
  set_words (out, _ ("Stop first"), g_strv_builder_end (lines));
}

void
rw_projection_words_check (RwJob               *job,
                           GHashTable          *hidden,
                           RwProjectionContent *out)
{
  RwAdvice *advice = rw_job_get_advice (job);
  const RwAdviceCheck *next = advice != NULL ? rw_advice_get_check (advice) : NULL;
  const RwWarning *danger = rw_bench_state_find_danger (rw_job_get_state (job));

  if (danger != NULL)
    set_danger (job, hidden, danger, out);
  else if (advice == NULL)
    set_words (out, rw_job_get_advice_problem (job) != NULL ? _ ("No check is suggested") : _ ("Thinking…"), NULL);
  else if (next != NULL && is_hidden_check (job, hidden, next->check))
    set_words (out, _ ("The next check is on a hidden rail"), NULL);
  else if (next != NULL)
    {
      /* Translators: a check. */
      g_autofree char *title = g_strdup_printf (_ ("Next check: %s"), next->check->title);

      set_words (out, title, list_outcomes (job, hidden, next->check));
    }
  else if (rw_advice_get_kind (advice) == RW_ADVICE_DONE)
    set_words (out, _ ("It is fixed"), NULL);
  else
    set_words (out, _ ("Enough was measured: what is it?"), NULL);
}

/* --- sent over ------------------------------------------------------------------------------------ */

/* The last note that was not taken back. (nullable) */
static const char *
find_note (RwJob *job)
{
  RwSession *session = rw_job_get_session (job);

  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->type == RW_EVENT_NOTE && rw_session_is_live (session, index))
        return event->words.text;
    }
  return NULL;
}

/* The cause whose repair helped, and was not taken back. (nullable) */
static const char *
find_cure (RwSession *session)
{
  for (guint i = rw_session_get_n_landmarks (session); i-- > 0;)
    {
      const guint index = rw_session_get_landmark (session, i);
      const RwEvent *event = rw_session_get_event (session, index);

      if (event->type == RW_EVENT_REPAIR && event->repair.result == RW_REPAIR_FIXED
          && rw_session_is_live (session, index))
        return event->repair.cause;
    }
  return NULL;
}

static GStrv
list_planted (RwJob             *job,
              RwPracticeCabinet *cabinet)
{
  g_autoptr (GStrvBuilder) lines = g_strv_builder_new ();
  const guint n = rw_practice_cabinet_get_true_n_faults (cabinet);

  for (guint i = 0; i < n; i++)
    g_strv_builder_add (lines, rw_job_cause_title (job, rw_practice_cabinet_get_true_fault (cabinet, i)->id));
  if (n == 0)
    g_strv_builder_add (lines, _ ("Nothing is wrong with it"));
  return g_strv_builder_end (lines);
}

/* What it was. A replay knows the end of its file. (transfer full) (nullable) */
static GStrv
list_answer (RwJob *job)
{
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (job);
  RwReplay *replay = rw_job_get_replay (job);

  if (cabinet != NULL)
    return list_planted (job, cabinet);

  const char *cure = find_cure (replay != NULL ? rw_replay_get_source (replay) : rw_job_get_session (job));
  const char *const lines[] = { cure != NULL ? rw_job_cause_title (job, cure) : NULL, NULL };

  return cure != NULL ? g_strdupv ((GStrv) lines) : NULL;
}

/* Rows of cause and chance, head first. (transfer full) */
static GStrv
list_causes (RwJob *job)
{
  RwBelief *belief = rw_advice_get_belief (rw_job_get_advice (job));
  g_autoptr (GStrvBuilder) cells = g_strv_builder_new ();

  g_strv_builder_add_many (cells, _ ("Cause"), _ ("How likely"), NULL);
  for (guint i = 0; i < MIN (rw_belief_get_n_causes (belief), most_causes); i++)
    {
      const RwCauseBelief *cause = rw_belief_get_cause (belief, i);
      g_autofree char *chance = rw_quantity_format_chance (cause->p);

      if (cause->p >= least_chance)
        g_strv_builder_add_many (cells, cause->cause->title, chance, NULL);
    }
  return g_strv_builder_end (cells);
}

/* What speaks of a hidden rail is not shown, though the rest is. */
static void
cover (RwJob      *job,
       GHashTable *hidden,
       GStrv       texts)
{
  for (guint i = 0; texts != NULL && texts[i] != NULL; i++)
    if (rw_projection_words_tell (rw_job_get_profile (job), hidden, texts[i]))
      {
        g_free (texts[i]);
        texts[i] = g_strdup (_ ("(about a hidden rail)"));
      }
}

static gboolean
send_lines (RwJob               *job,
            GHashTable          *hidden,
            const char          *title,
            GStrv                lines, /* taken; (nullable) */
            RwProjectionContent *out)
{
  if (lines == NULL)
    return FALSE;
  if (out == NULL)
    {
      g_strfreev (lines);
      return TRUE;
    }
  cover (job, hidden, lines);
  set_words (out, title, lines);
  return TRUE;
}

static gboolean
send_beliefs (RwJob               *job,
              GHashTable          *hidden,
              RwProjectionContent *out)
{
  if (rw_job_get_advice (job) == NULL)
    return FALSE;
  if (out == NULL)
    return TRUE;
  set_words (out, _ ("Likely causes"), NULL);
  g_strfreev (out->cells);
  out->cells = list_causes (job);
  out->n_columns = 2;
  cover (job, hidden, out->cells);
  return TRUE;
}

gboolean
rw_projection_words_sent (RwJob               *job,
                          GHashTable          *hidden,
                          RwProjectionSent     what,
                          RwProjectionContent *out)
{
  const char *note = what == RW_SENT_NOTE ? find_note (job) : NULL;

  switch (what)
    {
    case RW_SENT_NOTE:
      return send_lines (job, hidden, NULL, note != NULL ? g_strsplit (note, "\n", -1) : NULL, out);
    case RW_SENT_BELIEFS:
      return send_beliefs (job, hidden, out);
    case RW_SENT_ANSWER:
      return send_lines (job, hidden, _ ("What it was"), list_answer (job), out);
    case RW_SENT_NOTHING:
    case RW_N_PROJECTION_SENT:
    default:
      return FALSE;
    }
}

/* --- for the teacher ------------------------------------------------------------------------------ */

const char *
rw_projection_words_part (RwProjectionPart part)
{
  static const char *const names[RW_N_PROJECTION_PARTS] = {
    [RW_PROJECTION_VALUES] = N_ ("values"),
    [RW_PROJECTION_TRIM] = N_ ("trim map"),
    [RW_PROJECTION_CHART] = N_ ("chart over time"),
    [RW_PROJECTION_CHECK] = N_ ("next check"),
  };

  return _ (names[(guint) part < RW_N_PROJECTION_PARTS ? part : RW_PROJECTION_VALUES]);
}

const char *
rw_projection_words_sent_name (RwProjectionSent what)
{
  static const char *const words[RW_N_PROJECTION_SENT] = {
    [RW_SENT_NOTE] = N_ ("the last note"),
    [RW_SENT_BELIEFS] = N_ ("the likely causes"),
    [RW_SENT_ANSWER] = N_ ("the answer"),
  };

  return (guint) what < RW_N_PROJECTION_SENT && words[what] != NULL ? _ (words[what]) : NULL;
}
