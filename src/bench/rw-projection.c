/* rw-projection.c: what a class sees of a job on the projector.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two halves:
 *
 *     what the teacher asks for ─┐
 *                                ├─► refresh () ─► content, session, view, state ─► "changed"
 *     signals of the job ────────┘      │
 *                                       └ not while frozen, nor while nobody looks
 *
 * Invariants:
 *  1. content, view, state and the session of class_session change in refresh () alone, so freezing is not calling it;
 *  2. nothing of a hidden rail and nothing private is read in refresh () but what was sent.
 */
#include "config.h"

#include "rw-projection-private.h"

#include <glib/gi18n-lib.h>

#include "rw-projection-words.h"

enum
{
  SIGNAL_CHANGED,
  SIGNAL_ASKED,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwProjection, rw_projection, G_TYPE_OBJECT)

/* --- what is shown -------------------------------------------------------------------------------- */

/* In the spotlight, and to be seen at all. (nullable) */
static const char *
find_lit (RwProjection *self)
{
  return self->spotlight != NULL && !g_hash_table_contains (self->hidden, self->spotlight) ? self->spotlight : NULL;
}

/* The class starts out with the stretch of time that the teacher looks at when the chart is put up. */
static void
take_span (RwProjection *self)
{
  RwView *main_view = rw_job_get_view (self->job);

  if (rw_view_get_fit (main_view))
    {
      rw_view_fit (self->view);
      return;
    }
  rw_view_set_span (self->view, rw_view_get_start (main_view), rw_view_get_end (main_view));
  rw_view_set_follow (self->view, rw_view_get_follow (main_view));
}

static void
take_view (RwProjection *self)
{
  RwView *main_view = rw_job_get_view (self->job);

  rw_view_set_horizon (self->view, rw_view_get_horizon (main_view));
  rw_view_set_rail (self->view, find_lit (self));
  rw_view_set_place (self->view, rw_view_get_place (main_view));
  if (self->part == RW_PROJECTION_CHART && self->part_shown != RW_PROJECTION_CHART)
    take_span (self);
  self->part_shown = self->part;
}

static void
add_rails (RwProjection        *self,
           RwProjectionContent *content)
{
  RwProfile *profile = rw_job_get_profile (self->job);
  const char *lit = find_lit (self);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);

      if (g_hash_table_contains (self->hidden, rail->id))
        continue;

      RwProjectionRail *shown = rw_projection_words_rail (self->job, self->state, rail,
                                                          rw_view_get_place (self->view));

      shown->lit = rail->id == lit;
      shown->dim = lit != NULL && !shown->lit;
      g_ptr_array_add (content->rails, shown);
    }
}

/* The one rail that stands for all: in the spotlight, else the chosen one, else the first. (nullable) */
static RwProjectionRail *
find_single (RwProjection        *self,
             RwProjectionContent *content)
{
  const char *lit = find_lit (self);
  const char *wanted = g_intern_string (lit != NULL ? lit : rw_job_get_rail (self->job));

  for (guint i = 0; i < content->rails->len; i++)
    {
      RwProjectionRail *rail = content->rails->pdata[i];

      if (rail->rail == wanted)
        return rail;
    }
  return content->rails->len > 0 ? content->rails->pdata[0] : NULL;
}

/* Enlarged values are those of one rail, and above a picture there is room for one; what else is enlarged is alone. */
static void
choose_shown (RwProjection        *self,
              RwProjectionContent *content)
{
  const gboolean words = rw_projection_content_is_words (content);
  const gboolean values = content->part == RW_PROJECTION_VALUES && !words;
  RwProjectionRail *single = words || (values && !content->enlarged) ? NULL : find_single (self, content);

  if (content->alone || (content->enlarged && !values))
    return;
  if (single != NULL)
    g_ptr_array_add (content->shown, single);
  else
    for (guint i = 0; i < content->rails->len; i++)
      g_ptr_array_add (content->shown, content->rails->pdata[i]);
}

static gboolean
is_reference_hidden (RwProjection *self)
{
  return g_hash_table_contains (self->hidden, rw_profile_get_reference (rw_job_get_profile (self->job))->id);
}

/* What stands in place of the part. */
static void
add_words (RwProjection        *self,
           RwProjectionContent *content)
{
  if (rw_projection_can_send (self, self->sent)
      && rw_projection_words_sent (self->job, self->hidden, self->sent, content))
    content->has_text = TRUE;
  else if (self->said != NULL)
    {
      content->has_text = TRUE;
      content->alone = self->said->alone;
      content->title = g_strdup (self->said->title);
      content->lines = g_strdupv (self->said->lines);
      content->cells = g_strdupv (self->said->cells);
      content->n_columns = self->said->n_columns;
    }
  else if (self->part == RW_PROJECTION_CHECK && self->deciding)
    content->title = g_strdup (_ ("What would you do now?"));
  else if (self->part == RW_PROJECTION_CHECK)
    rw_projection_words_check (self->job, self->hidden, content);
  else if (self->part == RW_PROJECTION_TRIM && is_reference_hidden (self))
    content->title = g_strdup (_ ("The trim map is drawn against a hidden rail"));
}

static RwProjectionContent *
make_content (RwProjection *self)
{
  RwProjectionContent *content = rw_projection_content_new ();

  content->part = self->part;
  content->enlarged = self->enlarged;
  add_words (self, content);
  add_rails (self, content);
  choose_shown (self, content);
  return content;
}

static void
catch_up (RwProjection *self,
          gboolean     *news)
{
  rw_class_session_set_hidden (self->class_session, self->hidden);
  if (!rw_class_session_catch_up (self->class_session) && self->state != NULL)
    return;
  g_clear_pointer (&self->state, rw_bench_state_unref);
  self->state = rw_bench_state_new (rw_class_session_get_session (self->class_session));
  *news = TRUE;
}

void
rw_projection_touch (RwProjection *self)
{
  g_signal_emit (self, signals[SIGNAL_CHANGED], 0);
}

static void
refresh (RwProjection *self)
{
  gboolean news = FALSE;

  if (!self->open || self->frozen || self->job == NULL)
    return;
  catch_up (self, &news);
  take_view (self);
  if (rw_class_trim_take (&self->trim, self->job, self->state, self->hidden))
    news = news || self->part == RW_PROJECTION_TRIM;

  g_autoptr (RwProjectionContent) content = make_content (self);

  if (!news && rw_projection_content_equal (content, self->content))
    return;

  RwProjectionContent *old = self->content;

  self->content = g_steal_pointer (&content);
  rw_projection_content_free (old);
  rw_projection_touch (self);
}

void
rw_projection_ask (RwProjection *self)
{
  refresh (self);
  g_signal_emit (self, signals[SIGNAL_ASKED], 0);
}

/* --- the job -------------------------------------------------------------------------------------- */

static void
begin (RwProjection *self)
{
  RwSession *session;

  if (self->job == NULL || self->class_session != NULL)
    return;
  self->class_session = rw_class_session_new (rw_job_get_session (self->job));
  session = rw_class_session_get_session (self->class_session);
  rw_class_session_set_hidden (self->class_session, self->hidden);
  rw_class_session_catch_up (self->class_session);
  self->view = rw_view_dup (rw_job_get_view (self->job));
  rw_view_set_session (self->view, session);
  rw_view_set_mode (self->view, RW_VIEW_POSITION);
  rw_view_set_theme (self->view, self->dark ? RW_THEME_DARK : RW_THEME_LIGHT);
  self->part_shown = RW_N_PROJECTION_PARTS;
  take_span (self);
}

void
rw_projection_end (RwProjection *self)
{
  g_clear_object (&self->view);
  g_clear_pointer (&self->state, rw_bench_state_unref);
  g_clear_pointer (&self->class_session, rw_class_session_free);
  rw_class_trim_clear (&self->trim);
  g_clear_pointer (&self->content, rw_projection_content_free);
  self->content = rw_projection_content_new ();
}

static void
forget_asked (RwProjection *self)
{
  self->blank = self->frozen = self->enlarged = self->deciding = FALSE;
  self->part = RW_PROJECTION_VALUES;
  g_hash_table_remove_all (self->hidden);
  self->spotlight = NULL;
  self->sent = RW_SENT_NOTHING;
  g_clear_pointer (&self->said, rw_projection_content_free);
}

void
rw_projection_set_job (RwProjection *self,
                       RwJob        *job)
{
  static const char *const names[] = { "changed", "advice", "live", "spot", "tick", "link" };

  g_return_if_fail (RW_IS_PROJECTION (self));
  g_return_if_fail (job == NULL || RW_IS_JOB (job));
  if (self->job == job)
    return;
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  rw_projection_end (self);
  forget_asked (self);
  g_set_object (&self->job, job);
  for (guint i = 0; job != NULL && i < G_N_ELEMENTS (names); i++)
    g_signal_connect_object (job, names[i], G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  if (self->open)
    begin (self);
  rw_projection_ask (self);
  rw_projection_touch (self);
}

RwJob *
rw_projection_get_job (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->job;
}

void
rw_projection_set_open (RwProjection *self,
                        gboolean      open)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->open == open)
    return;
  self->open = open;
  if (open)
    begin (self);
  else if (!self->frozen)
    rw_projection_end (self);
  rw_projection_ask (self);
}

gboolean
rw_projection_get_open (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->open;
}

/* --- what is shown, to others --------------------------------------------------------------------- */

const RwProjectionContent *
rw_projection_get_content (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->blank ? self->nothing : self->content;
}

RwSession *
rw_projection_get_session (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->class_session != NULL ? rw_class_session_get_session (self->class_session) : NULL;
}

RwView *
rw_projection_get_view (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->view;
}

RwBenchState *
rw_projection_get_state (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->state;
}

const RwClassTrim *
rw_projection_get_trim (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return &self->trim;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_projection_dispose (GObject *object)
{
  RwProjection *self = RW_PROJECTION (object);

  rw_projection_end (self);
  g_clear_object (&self->job);
  G_OBJECT_CLASS (rw_projection_parent_class)->dispose (object);
}

static void
rw_projection_finalize (GObject *object)
{
  RwProjection *self = RW_PROJECTION (object);

  g_clear_pointer (&self->content, rw_projection_content_free);
  g_clear_pointer (&self->nothing, rw_projection_content_free);
  g_clear_pointer (&self->said, rw_projection_content_free);
  g_clear_pointer (&self->hidden, g_hash_table_unref);
  G_OBJECT_CLASS (rw_projection_parent_class)->finalize (object);
}

static void
rw_projection_class_init (RwProjectionClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_projection_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_projection_finalize;
  signals[SIGNAL_CHANGED] = g_signal_new ("changed", RW_TYPE_PROJECTION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                          G_TYPE_NONE, 0);
  signals[SIGNAL_ASKED] = g_signal_new ("asked", RW_TYPE_PROJECTION, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 0);
}

static void
rw_projection_init (RwProjection *self)
{
  self->dark = TRUE;
  self->hidden = g_hash_table_new (NULL, NULL);
  self->content = rw_projection_content_new ();
  self->nothing = rw_projection_content_new ();
  self->nothing->blank = TRUE;
}

RwProjection *
rw_projection_new (void)
{
  return g_object_new (RW_TYPE_PROJECTION, NULL);
}
