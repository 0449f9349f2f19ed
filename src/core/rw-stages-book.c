/* rw-stages-book.c: the events of a session as far as stages need them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-stages-private.h"

#include <math.h>

#include "rw-json.h"

static void
clear_against (gpointer data)
{
  RwAgainst *against = data;

  g_clear_pointer (&against->why, g_free);
  g_clear_pointer (&against->advice, g_free);
}

void
rw_stages_book_init (RwStagesBook *self,
                     RwProfile    *profile,
                     RwStageWords *words)
{
  JsonNode *node = rw_profile_get_node (profile);

  *self = (RwStagesBook){ .profile = profile, .words = words, .power_on = NAN, .current = -1, .furthest = -1 };
  self->supply = rw_json_get_string (json_node_get_object (node), "supply", NULL);
  self->setup = (RwSetup){ RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };
  self->reads = g_array_new (FALSE, FALSE, sizeof (RwStageRead));
  self->warm = g_array_new (FALSE, FALSE, sizeof (RwStageRead));
  self->answers = g_array_new (FALSE, FALSE, sizeof (RwStageAnswer));
  self->symptoms = g_array_new (FALSE, FALSE, sizeof (RwStageSymptom));
  self->against = g_array_new (FALSE, FALSE, sizeof (RwAgainst));
  g_array_set_clear_func (self->against, clear_against);
  self->covered = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
}

void
rw_stages_book_clear (RwStagesBook *self)
{
  g_clear_pointer (&self->reads, g_array_unref);
  g_clear_pointer (&self->warm, g_array_unref);
  g_clear_pointer (&self->answers, g_array_unref);
  g_clear_pointer (&self->symptoms, g_array_unref);
  g_clear_pointer (&self->against, g_array_unref);
  g_clear_pointer (&self->covered, g_hash_table_unref);
}

gboolean
rw_stages_is_guard (const RwProfile *profile,
                    guint            rail)
{
  JsonArray *rails = rw_json_get_array (json_node_get_object (rw_profile_get_node (profile)), "rails");
  JsonNode *node = rails != NULL && rail < json_array_get_length (rails) ? json_array_get_element (rails, rail) : NULL;

  return node != NULL && JSON_NODE_HOLDS_OBJECT (node)
         && g_strcmp0 (rw_json_get_string (json_node_get_object (node), "guards", NULL), "memory") == 0;
}

/* --- readings ----------------------------------------------------------------------------------- */

const RwStageRead *
rw_stages_book_find (const RwStagesBook *self,
                     const char         *rail,
                     RwPlace             place,
                     RwKind              kind,
                     gboolean            bare)
{
  for (guint i = 0; i < self->reads->len; i++)
    {
      const RwStageRead *read = &g_array_index (self->reads, RwStageRead, i);

      if (g_str_equal (read->reading.rail, rail) && read->reading.place == place && read->reading.kind == kind
          && read->bare == bare)
        return read;
    }
  return NULL;
}

const RwStageRead *
rw_stages_book_fresh (const RwStagesBook *self,
                      const char         *rail,
                      RwPlace             place,
                      RwKind              kind,
                      gboolean            bare)
{
  const RwStageRead *read = rw_stages_book_find (self, rail, place, kind, bare);

  return read != NULL && !read->stale && !read->reading.over ? read : NULL;
}

/* What was read at the board, or along a wire to it, was read with it fitted unless it was said to be out. */
static void
take_reading (RwStagesBook  *self,
              RwSession     *session,
              const RwEvent *event)
{
  const RwMeterFacts *meter = rw_session_find_meter (session, event->reading.meter);
  const RwStageRead read = {
    .reading = event->reading,
    .rail = rw_profile_find_rail (self->profile, event->reading.rail),
    .bare = self->setup.board_fitted == RW_SAID_NO,
    .n = event->n,
    .t = event->t,
    .u = rw_meter_facts_u_total (meter, &event->reading),
    .u_own = rw_meter_facts_u_own (meter, &event->reading),
  };
  const RwStageRead *old
      = rw_stages_book_find (self, read.reading.rail, read.reading.place, read.reading.kind, read.bare);

  if (old != NULL)
    g_array_index (self->reads, RwStageRead, (guint) (old - (const RwStageRead *) (gpointer) self->reads->data)) = read;
  else
    g_array_append_val (self->reads, read);
  if (!read.bare && read.rail == rw_profile_get_reference (self->profile) && read.reading.kind == RW_KIND_DC
      && read.reading.place == RW_PLACE_BOARD)
    g_array_append_val (self->warm, read);
}

/* @bare: those with the board out as well. @changed: not by a turn of the trim alone. */
static void
make_stale (RwStagesBook *self,
            gboolean      bare,
            gboolean      changed)
{
  for (guint i = 0; i < self->reads->len; i++)
    {
      RwStageRead *read = &g_array_index (self->reads, RwStageRead, i);

      if (read->bare && !bare)
        continue;
      read->stale = TRUE;
      read->changed = read->changed || changed;
    }
  if (!self->left_done[RW_STAGE_WARM_UP])
    g_array_set_size (self->warm, 0);
}

/* --- the rest ----------------------------------------------------------------------------------- */

static void
take_setup (RwStagesBook  *self,
            const RwEvent *event)
{
  const RwSetup *said = &event->setup;
  const RwSetup before = self->setup;

  self->setup_n = event->n;
  if (said->power_on != RW_SAID_NOT)
    self->setup.power_on = said->power_on;
  if (said->board_fitted != RW_SAID_NOT)
    self->setup.board_fitted = said->board_fitted;
  if (said->warm != RW_SAID_NOT)
    self->setup.warm = said->warm;
  if (self->setup.power_on == RW_SAID_YES && before.power_on != RW_SAID_YES)
    self->power_on = event->t;
  if (before.board_fitted == RW_SAID_NOT || before.board_fitted == self->setup.board_fitted)
    return;
  self->plugged_live = before.power_on == RW_SAID_YES && self->setup.power_on == RW_SAID_YES ? event->n : 0;
  if (self->setup.board_fitted == RW_SAID_YES)
    make_stale (self, FALSE, TRUE);
}

const RwStageAnswer *
rw_stages_book_find_answer (const RwStagesBook *self,
                            const char         *id)
{
  for (guint i = 0; i < self->answers->len; i++)
    if (g_str_equal (g_array_index (self->answers, RwStageAnswer, i).id, id))
      return &g_array_index (self->answers, RwStageAnswer, i);
  return NULL;
}

static void
forget_answer (RwStagesBook *self,
               const char   *id)
{
  for (guint i = self->answers->len; i-- > 0;)
    if (g_str_equal (g_array_index (self->answers, RwStageAnswer, i).id, id))
      g_array_remove_index (self->answers, i);
}

void
rw_stages_book_forget (RwStagesBook *self,
                       RwStage       stage)
{
  const GArray *questions = rw_stage_words_get (self->words, stage)->questions;

  for (guint i = 0; i < questions->len; i++)
    forget_answer (self, g_array_index (questions, RwStageQuestion, i).id);
}

/* A finding of a check is none of ours, and does no harm here. */
static void
take_finding (RwStagesBook  *self,
              const RwEvent *event)
{
  const gboolean yes = g_str_equal (event->finding.outcome, "yes");
  const RwStageAnswer answer = { event->finding.check, yes, event->n };

  if (!yes && !g_str_equal (event->finding.outcome, "no"))
    return;
  forget_answer (self, answer.id);
  g_array_append_val (self->answers, answer);
}

static void
take_trim (RwStagesBook  *self,
           const RwEvent *event)
{
  if (!event->trim.moved)
    return;
  self->turned = event->n;
  self->turned_bare = self->setup.board_fitted == RW_SAID_NO;
  make_stale (self, TRUE, FALSE);
}

static void
take_symptom (RwStagesBook  *self,
              const RwEvent *event)
{
  const RwStageSymptom symptom = { event->symptom.id, event->n };

  for (guint i = self->symptoms->len; i-- > 0;)
    if (g_array_index (self->symptoms, RwStageSymptom, i).id == symptom.id)
      g_array_remove_index (self->symptoms, i);
  if (event->symptom.state == RW_SYMPTOM_PRESENT)
    g_array_append_val (self->symptoms, symptom);
}

/* "Fixed" says that every complaint is gone; where one stays, the repair is "no change" and what is gone is cured. */
static void
take_repair (RwStagesBook  *self,
             const RwEvent *event)
{
  if (event->repair.result != RW_REPAIR_FIXED)
    return;
  make_stale (self, TRUE, TRUE);
  g_array_set_size (self->symptoms, 0);
}

void
rw_stages_book_take (RwStagesBook  *self,
                     RwSession     *session,
                     const RwEvent *event)
{
  switch (event->type)
    {
    case RW_EVENT_SETUP:
      take_setup (self, event);
      break;
    case RW_EVENT_READING:
      take_reading (self, session, event);
      break;
    case RW_EVENT_TRIM:
      take_trim (self, event);
      break;
    case RW_EVENT_REPAIR:
      take_repair (self, event);
      break;
    case RW_EVENT_SYMPTOM:
      take_symptom (self, event);
      break;
    case RW_EVENT_FINDING:
      take_finding (self, event);
      break;
    case RW_EVENT_STAGE:
    case RW_EVENT_UNKNOWN:
    case RW_EVENT_SAMPLE:
    case RW_EVENT_MARK:
    case RW_EVENT_NOTE:
    case RW_EVENT_RETRACT:
    case RW_EVENT_GAP:
    case RW_EVENT_METER:
    case RW_EVENT_CALL:
    case RW_N_EVENT_TYPES:
    default:
      break;
    }
}
