/* rw-summary.c: what a session shows, gathered once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-summary.h"

#include "rw-skipped.h"

static void
count_events (RwSummary *self)
{
  self->n_events = rw_session_get_n_events (self->session);
  for (guint i = 0; i < self->n_events; i++)
    {
      const RwEvent *event = rw_session_get_event (self->session, i);

      self->n_readings += event->type == RW_EVENT_READING;
      self->n_samples += event->type == RW_EVENT_SAMPLE;
      self->n_unknown += event->type == RW_EVENT_UNKNOWN;
      self->n_retracted += !rw_session_is_live (self->session, i);
    }
}

RwSummary *
rw_summary_new (RwSession   *session,
                RwKnowledge *knowledge)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  RwSummary *self = g_new0 (RwSummary, 1);

  self->session = g_object_ref (session);
  self->state = rw_bench_state_new (session);

  g_autoptr (GHashTable) skipped = rw_skipped_gather (self->state);

  self->advice = knowledge != NULL ? rw_advice_new (knowledge, self->state, skipped) : NULL;
  self->seconds = rw_session_get_end (session);
  self->skipped_lines = g_array_new (FALSE, FALSE, sizeof (guint));
  count_events (self);
  return self;
}

RwSummary *
rw_summary_new_from_read (const RwJournalRead *read,
                          RwKnowledge         *knowledge)
{
  g_return_val_if_fail (read != NULL, NULL);

  RwSummary *self = rw_summary_new (read->session, knowledge);

  for (guint i = 0; i < read->damaged->len; i++)
    g_array_append_val (self->skipped_lines, g_array_index (read->damaged, RwDamage, i).line);
  self->torn_tail = read->torn_tail;
  return self;
}

void
rw_summary_free (RwSummary *self)
{
  if (self == NULL)
    return;
  g_clear_object (&self->session);
  g_clear_pointer (&self->state, rw_bench_state_unref);
  g_clear_pointer (&self->advice, rw_advice_unref);
  g_clear_pointer (&self->skipped_lines, g_array_unref);
  g_free (self);
}

GPtrArray *
rw_summary_list_next (const RwSummary *self)
{
  GPtrArray *next = g_ptr_array_new ();
  const RwAdviceCheck *suggested = self->advice != NULL ? rw_advice_get_check (self->advice)
                                                        : NULL;

  if (suggested == NULL)
    return next;
  g_ptr_array_add (next, (gpointer) suggested);
  for (guint i = 0; i < rw_advice_get_n_checks (self->advice); i++)
    {
      const RwAdviceCheck *other = rw_advice_get_ranked (self->advice, i);

      if (other->check != suggested->check && other->saves > 0
          && !rw_check_is_reserved (other->check))
        g_ptr_array_add (next, (gpointer) other);
    }
  return next;
}

GPtrArray *
rw_summary_list_rails (const RwSummary *self)
{
  GPtrArray *rails = g_ptr_array_new ();

  for (guint i = 0; i < rw_bench_state_get_n_spots (self->state); i++)
    {
      const RwSpotState *spot = rw_bench_state_get_spot (self->state, i);

      if (spot->reading.kind == RW_KIND_DC)
        g_ptr_array_add (rails, (gpointer) spot);
    }
  return rails;
}
