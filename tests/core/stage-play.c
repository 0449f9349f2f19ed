/* stage-play.c: sessions for the tests of stages, written as a line of short commands.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "stage-play.h"

#include <string.h>

#define PROFILE(reference, supply)                                                                          \
  "{\"id\":\"three\",\"title\":\"Three rails\",\"supply\":\"" supply "\",\"reference\":\"" reference "\",\"rails\":[" \
  "{\"id\":\"p5\",\"label\":\"+5 V\",\"nominal\":5.0,\"limits\":[4.9,5.2],\"bare_limits\":[4.75,5.4],"        \
  "\"never_above\":5.5,\"priority\":1,\"follows_trim\":\"yes\",\"ripple_limit\":0.05},"                      \
  "{\"id\":\"p12\",\"label\":\"+12 V\",\"nominal\":12,\"limits\":[10.8,13.2],\"never_above\":15,\"priority\":2}," \
  "{\"id\":\"m5\",\"label\":\"−5 V\",\"nominal\":-5,\"limits\":[-5.5,-4.5],\"bare_limits\":[-6.5,-4.5],"      \
  "\"never_above\":7,\"priority\":3,\"guards\":\"memory\"}]}"
#define HEADER(profile)                                                                  \
  "{\"railwright\":1,\"id\":\"0b7f\",\"started\":\"2026-03-14T09:30:00Z\","              \
  "\"cabinet\":{\"name\":\"Tidepool Racer\",\"tag\":\"B-07\"},\"profile\":" profile     \
  ",\"meters\":[{\"id\":\"m1\",\"name\":\"bench meter\",\"percent\":0.5,\"counts\":2}]}"

static RwEvent
make_setup (double        t,
            char        **words)
{
  RwSetup setup = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  for (guint i = 0; words[i] != NULL; i++)
    if (g_str_equal (words[i], "on") || g_str_equal (words[i], "off"))
      setup.power_on = g_str_equal (words[i], "on") ? RW_SAID_YES : RW_SAID_NO;
    else if (g_str_equal (words[i], "in") || g_str_equal (words[i], "out"))
      setup.board_fitted = g_str_equal (words[i], "in") ? RW_SAID_YES : RW_SAID_NO;
    else
      g_error ("no command: %s", words[i]);
  return rw_event_make_setup (t, setup);
}

static RwEvent
make_reading (double t,
              char **words)
{
  const RwKind kind = g_str_equal (words[0], "ac") ? RW_KIND_RIPPLE : RW_KIND_DC;
  const gboolean over = g_str_equal (words[0], "o");
  RwPlace place;

  g_assert_true (rw_place_from_id (words[2], &place));

  RwReading reading
      = rw_reading_make (words[1], place, kind, over ? 0 : g_ascii_strtod (words[3], NULL), 0.001, "m1");

  reading.over = over;
  return rw_event_make_reading (t, &reading);
}

static RwEvent
make_event (double      t,
            char      **words,
            const char *command)
{
  const char *verb = words[0];

  if (g_str_equal (verb, "r") || g_str_equal (verb, "ac") || g_str_equal (verb, "o"))
    return make_reading (t, words);
  if (g_str_equal (verb, "trim"))
    return rw_event_make_trim (t);
  if (g_str_equal (verb, "fixed") || g_str_equal (verb, "failed"))
    return rw_event_make_repair (t, words[1], g_str_equal (verb, "fixed") ? RW_REPAIR_FIXED : RW_REPAIR_NO_CHANGE);
  if (g_str_equal (verb, "y") || g_str_equal (verb, "absent") || g_str_equal (verb, "gone"))
    return rw_event_make_symptom (t, words[1],
                                  g_str_equal (verb, "y")        ? RW_SYMPTOM_PRESENT
                                  : g_str_equal (verb, "absent") ? RW_SYMPTOM_ABSENT
                                                                 : RW_SYMPTOM_CURED);
  if (g_str_equal (verb, "a"))
    return rw_event_make_finding (t, words[1], words[2]);
  if (g_str_equal (verb, "s"))
    return rw_event_make_stage (t, words[1]);
  if (g_str_equal (verb, "read"))
    return rw_event_make_stage_read (t, words[1]);
  if (g_str_equal (verb, "against"))
    return rw_event_make_stage_against (t, words[1], strstr (command, words[1]) + strlen (words[1]));
  return make_setup (t, words);
}

static RwSession *
play (const char *header_line,
      const char *commands)
{
  g_autoptr (GError) error = NULL;
  RwSessionHeader *header = rw_session_header_from_line (header_line, strlen (header_line), &error);
  g_auto (GStrv) list = g_strsplit (commands, ";", -1);
  double t = 0;

  g_assert_no_error (error);

  RwSession *session = rw_session_new (header);

  for (guint i = 0; list[i] != NULL; i++)
    {
      const char *command = g_strstrip (list[i]);
      g_auto (GStrv) words = g_strsplit (command, " ", -1);

      if (*command == '\0')
        continue;
      if (g_str_equal (words[0], "t"))
        {
          t = g_ascii_strtod (words[1], NULL);
          continue;
        }

      RwEvent event = g_str_equal (words[0], "undo") ? rw_event_make_retract (t, rw_session_get_n_events (session))
                                                     : make_event (t, words, command);

      rw_session_add (session, &event);
      t += 1;
    }
  return session;
}

RwSession *
stage_play_session (const char *commands)
{
  return play (HEADER (PROFILE ("p5", "switcher")), commands);
}

static RwStages *
look (RwSession *session,
      double     now)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (RwStageWords) words = rw_stage_words_load_shipped (&error);

  g_assert_no_error (error);
  return rw_stages_new (session, words, now);
}

RwStages *
stage_play (const char *commands,
            double      now)
{
  g_autoptr (RwSession) session = stage_play_session (commands);

  return look (session, now);
}

RwStages *
stage_play_linear (const char *commands,
                   double      now)
{
  g_autoptr (RwSession) session = play (HEADER (PROFILE ("p5", "linear")), commands);

  return look (session, now);
}

RwProfile *
stage_play_profile (void)
{
  g_autoptr (RwSession) session = stage_play_session ("");

  return rw_profile_ref (rw_session_get_profile (session));
}

RwProfile *
stage_play_profile_12 (void)
{
  g_autoptr (RwSession) session = play (HEADER (PROFILE ("p12", "switcher")), "");

  return rw_profile_ref (rw_session_get_profile (session));
}

const RwGateReason *
stage_play_find (const RwStages *stages,
                 RwStage         stage,
                 const char     *id)
{
  const GArray *reasons = stages->stages[stage].reasons;

  for (guint i = 0; i < reasons->len; i++)
    if (g_str_equal (g_array_index (reasons, RwGateReason, i).id, id))
      return &g_array_index (reasons, RwGateReason, i);
  return NULL;
}
