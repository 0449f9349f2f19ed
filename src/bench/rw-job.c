/* rw-job.c: one job as a window shows it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-job-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

guint rw_job_signals[RW_JOB_N_SIGNALS];

G_DEFINE_FINAL_TYPE (RwJob, rw_job, G_TYPE_OBJECT)

/* How often the clock of a replay and of the practice cabinet moves on, and a live one is looked at. */
static const guint tick_msec = 50;
static const guint ticks_a_beat = 10;

/* A replay that stands still for so long has been moved to where somebody wants it. */
static const guint rest_msec = 150;

/* After a jump the meters show what the last events before it say; more than any meter needs to settle. */
static const guint recalled = 256;

/* --- following the session ------------------------------------------------------------------------ */

static gboolean
tell_changed_cb (gpointer data)
{
  RwJob *self = data;

  self->idle = 0;
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_CHANGED], 0);
  if (self->advice_timer == 0)
    rw_job_refresh_advice (self);
  return G_SOURCE_REMOVE;
}

static gboolean
advise_cb (gpointer data)
{
  RwJob *self = data;

  self->advice_timer = 0;
  rw_job_refresh_advice (self);
  return G_SOURCE_REMOVE;
}

/* While somebody scrubs, the advice of every moment passed is not worth the work: that of where it stops is. */
static void
put_advice_off (RwJob *self)
{
  g_clear_handle_id (&self->advice_timer, g_source_remove);
  self->advice_timer = g_timeout_add (rest_msec, advise_cb, self);
}

/* The state is made when it is asked for, and told once for all events of one turn: a replay that jumps
 * brings thousands at once. */
static void
outdate (RwJob *self)
{
  self->outdated = TRUE;
  if (self->idle == 0)
    self->idle = g_idle_add_full (G_PRIORITY_HIGH_IDLE, tell_changed_cb, self, NULL);
}

/* What the meters show with this event. */
static void
take_live (RwJob         *self,
           const RwEvent *event)
{
  if (event->type == RW_EVENT_SAMPLE)
    {
      RwLive *live = rw_job_take_live (self, event->reading.meter);

      rw_live_push (live, event->t, &event->reading);
      rw_job_watch_trim (self, live);
      self->live_news = TRUE;
    }
  if (event->type == RW_EVENT_SETUP)
    for (guint i = 0; i < self->lives->len; i++)
      rw_trim_notice_reset (&((RwLive *) self->lives->pdata[i])->notice);
  if (event->type == RW_EVENT_GAP)
    rw_job_forget_lives (self, event->gap.meter);
}

static void
added_cb (RwJob *self,
          guint  index)
{
  const RwEvent *event = rw_session_get_event (self->session, index);

  take_live (self, event);
  if (event->type != RW_EVENT_SAMPLE)
    outdate (self);
}

static void
rewound_cb (RwJob *self,
            guint  n_events)
{
  rw_job_forget_lives (self, NULL);
  for (guint i = n_events > recalled ? n_events - recalled : 0; i < n_events; i++)
    take_live (self, rw_session_get_event (self->session, i));
  self->live_news = TRUE;
  put_advice_off (self);
  outdate (self);
}

static void
view_spot_cb (RwJob *self)
{
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_SPOT], 0);
}

/* --- clocks --------------------------------------------------------------------------------------- */

double
rw_job_get_now (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), 0);
  if (self->replay != NULL)
    return rw_replay_get_position (self->replay);
  return (double) (g_get_monotonic_time () - self->clock_zero) / G_USEC_PER_SEC;
}

static gboolean
tick_cb (gpointer data)
{
  RwJob *self = data;
  const gint64 now = g_get_monotonic_time ();
  const double seconds = MIN ((double) (now - self->last_tick) / G_USEC_PER_SEC, 1.0);

  self->last_tick = now;
  self->beat++;
  if (self->replay != NULL)
    rw_replay_advance (self->replay, seconds);
  if (self->cabinet != NULL)
    rw_job_advance_practice (self, seconds);
  rw_job_take_noticed_trim (self);
  if (self->live_news)
    {
      self->live_news = FALSE;
      g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_LIVE], 0);
    }
  if (self->beat % ticks_a_beat == 0)
    {
      if (self->replay == NULL)
        rw_view_set_horizon (self->view, rw_job_get_now (self));
      g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_TICK], 0);
    }
  return G_SOURCE_CONTINUE;
}

/* --- following ------------------------------------------------------------------------------------ */

static void
kept_cb (RwJob *self,
         guint  n)
{
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_KEPT], 0, n);
}

static void
trouble_cb (RwJob      *self,
            const char *message)
{
  g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_TROUBLE], 0, message);
}

void
rw_job_follow (RwJob *self)
{
  g_signal_connect_object (self->session, "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "rewound", G_CALLBACK (rewound_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->view, "notify::rail", G_CALLBACK (view_spot_cb), self, G_CONNECT_SWAPPED);
  g_signal_connect_object (self->view, "notify::place", G_CALLBACK (view_spot_cb), self, G_CONNECT_SWAPPED);
  if (self->journal != NULL)
    {
      g_signal_connect_object (self->journal, "kept", G_CALLBACK (kept_cb), self, G_CONNECT_SWAPPED);
      g_signal_connect_object (self->journal, "trouble", G_CALLBACK (trouble_cb), self, G_CONNECT_SWAPPED);
    }
  self->last_tick = g_get_monotonic_time ();
  self->timer = g_timeout_add (tick_msec, tick_cb, self);
}

/* --- what people do ------------------------------------------------------------------------------- */

gboolean
rw_job_can_write (RwJob *self)
{
  g_return_val_if_fail (RW_IS_JOB (self), FALSE);
  return self->mode != RW_JOB_REPLAY;
}

gboolean
rw_job_add (RwJob   *self,
            RwEvent *event)
{
  g_return_val_if_fail (RW_IS_JOB (self), FALSE);
  if (!rw_job_can_write (self))
    {
      rw_event_clear (event);
      return FALSE;
    }
  event->t = MAX (rw_job_get_now (self), rw_session_get_end (self->session));
  rw_session_add (self->session, event);
  return TRUE;
}

void
rw_job_set_spot (RwJob      *self,
                 const char *rail,
                 RwPlace     place,
                 RwKind      kind)
{
  g_return_if_fail (RW_IS_JOB (self));

  const gboolean kind_only = self->kind != kind && g_strcmp0 (rw_view_get_rail (self->view), rail) == 0
                             && rw_view_get_place (self->view) == place;

  self->kind = kind;
  rw_job_tell_kind (self);
  rw_view_set_rail (self->view, rail);
  rw_view_set_place (self->view, place);
  if (self->cabinet != NULL)
    rw_job_move_practice_leads (self);
  if (kind_only)
    g_signal_emit (self, rw_job_signals[RW_JOB_SIGNAL_SPOT], 0);
}

const char *
rw_job_get_rail (RwJob *self)
{
  const char *rail = rw_view_get_rail (self->view);

  return rail != NULL ? rail : rw_profile_get_reference (rw_job_get_profile (self))->id;
}

RwPlace
rw_job_get_place (RwJob *self)
{
  return rw_view_get_place (self->view);
}

RwKind
rw_job_get_kind (RwJob *self)
{
  return self->kind;
}

void
rw_job_move_rail (RwJob *self,
                  int    by)
{
  RwProfile *profile = rw_job_get_profile (self);
  const int n = (int) rw_profile_get_n_rails (profile);
  const int at = rw_profile_index_of (profile, rw_job_get_rail (self));
  const int next = at < 0 ? 0 : (at + by % n + n) % n;

  rw_job_set_spot (self, rw_profile_get_rail (profile, (guint) next)->id, rw_job_get_place (self), self->kind);
}

void
rw_job_keep (RwJob   *self,
             double   value,
             double   step,
             gboolean over)
{
  const RwReading reading = rw_reading_make (rw_job_get_rail (self), rw_job_get_place (self), self->kind,
                                             over ? (double) NAN : value, step, RW_JOB_METER);
  RwEvent event = rw_event_make_reading (0, &reading);

  rw_job_add (self, &event);
}

gboolean
rw_job_keep_settled (RwJob *self)
{
  RwReading reading;

  if (!rw_live_get_settled (rw_job_get_live (self), &reading))
    return FALSE;
  if (g_str_equal (reading.rail, RW_LIVE_SOMEWHERE))
    {
      reading.rail = g_intern_string (rw_job_get_rail (self));
      reading.place = rw_job_get_place (self);
    }

  RwEvent event = rw_event_make_reading (0, &reading);

  return rw_job_add (self, &event);
}

/* The practice cabinet does what the session says, also when something was taken back. */
static void
apply_setup (RwJob *self)
{
  const RwSetup setup = rw_bench_state_get_setup (rw_job_get_state (self));

  if (self->cabinet == NULL)
    return;
  if (setup.board_fitted != RW_SAID_NOT)
    rw_practice_cabinet_set_board_fitted (self->cabinet, setup.board_fitted == RW_SAID_YES);
  if (setup.power_on != RW_SAID_NOT)
    rw_practice_cabinet_set_power (self->cabinet, setup.power_on == RW_SAID_YES);
}

void
rw_job_set_setup (RwJob  *self,
                  RwSetup setup)
{
  RwEvent event = rw_event_make_setup (0, setup);

  if (setup.power_on == RW_SAID_NOT && setup.board_fitted == RW_SAID_NOT && setup.warm == RW_SAID_NOT)
    return;
  if (rw_job_add (self, &event))
    apply_setup (self);
}

/* Nothing but samples since the last turn: the screw is still on its way to one position. */
static gboolean
is_turning (RwJob *self)
{
  const guint n = rw_session_get_n_landmarks (self->session);

  if (n == 0)
    return FALSE;

  const guint index = rw_session_get_landmark (self->session, n - 1);

  return rw_session_get_event (self->session, index)->type == RW_EVENT_TRIM
         && rw_session_is_live (self->session, index);
}

void
rw_job_turn_trim (RwJob *self,
                  double turn)
{
  RwEvent event = rw_event_make_trim (0);

  if (!rw_job_can_write (self))
    return;
  if (!is_turning (self))
    rw_job_add (self, &event);
  for (guint i = 0; i < self->lives->len; i++)
    rw_live_unsettle (self->lives->pdata[i]);
  if (self->cabinet != NULL)
    rw_practice_cabinet_turn_trim (self->cabinet, turn);
}

void
rw_job_repair (RwJob      *self,
               const char *cause)
{
  g_return_if_fail (RW_IS_JOB (self));
  if (self->cabinet != NULL)
    rw_practice_cabinet_repair (self->cabinet, cause);
}

void
rw_job_retract (RwJob *self,
                guint  n)
{
  RwEvent event = rw_event_make_retract (0, n);

  if (n > 0 && rw_job_add (self, &event))
    apply_setup (self);
}

void
rw_job_undo (RwJob *self)
{
  rw_job_retract (self, rw_session_get_undo (self->session));
}

void
rw_job_redo (RwJob *self)
{
  rw_job_retract (self, rw_session_get_redo (self->session));
}

gboolean
rw_job_move_file (RwJob      *self,
                  const char *path,
                  GError    **error)
{
  g_return_val_if_fail (self->journal != NULL, FALSE);
  return rw_journal_move (self->journal, path, error);
}

gboolean
rw_job_flush (RwJob   *self,
              GError **error)
{
  return self->journal == NULL || rw_journal_flush (self->journal, error);
}

/* --- getters -------------------------------------------------------------------------------------- */

RwJobMode
rw_job_get_mode (RwJob *self)
{
  return self->mode;
}

RwSession *
rw_job_get_session (RwJob *self)
{
  return self->session;
}

RwProfile *
rw_job_get_profile (RwJob *self)
{
  return rw_session_get_profile (self->session);
}

RwBenchState *
rw_job_get_state (RwJob *self)
{
  if (self->outdated)
    {
      g_clear_pointer (&self->state, rw_bench_state_unref);
      self->state = rw_bench_state_new (self->session);
      self->outdated = FALSE;
    }
  return self->state;
}

RwView *
rw_job_get_view (RwJob *self)
{
  return self->view;
}

RwReplay *
rw_job_get_replay (RwJob *self)
{
  return self->replay;
}

RwPracticeCabinet *
rw_job_get_cabinet (RwJob *self)
{
  return self->cabinet;
}

const char *
rw_job_get_path (RwJob *self)
{
  return self->journal != NULL ? rw_journal_get_path (self->journal) : self->path;
}

const char *
rw_job_get_trouble (RwJob *self)
{
  return self->journal != NULL ? rw_journal_get_trouble (self->journal) : NULL;
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_job_dispose (GObject *object)
{
  RwJob *self = RW_JOB (object);

  g_clear_handle_id (&self->timer, g_source_remove);
  g_clear_handle_id (&self->idle, g_source_remove);
  g_clear_handle_id (&self->advice_timer, g_source_remove);
  if (self->meters != NULL)
    g_ptr_array_set_size (self->meters, 0);
  g_clear_object (&self->journal);
  g_clear_object (&self->meter);
  g_clear_object (&self->cabinet);
  g_clear_object (&self->replay);
  G_OBJECT_CLASS (rw_job_parent_class)->dispose (object);
}

static void
rw_job_finalize (GObject *object)
{
  RwJob *self = RW_JOB (object);

  rw_job_clear_hands (self);
  g_clear_pointer (&self->meters, g_ptr_array_unref);
  g_clear_pointer (&self->lives, g_ptr_array_unref);
  g_clear_object (&self->view);
  g_clear_object (&self->session);
  g_clear_pointer (&self->state, rw_bench_state_unref);
  g_clear_pointer (&self->advice, rw_advice_unref);
  g_clear_pointer (&self->knowledge, rw_knowledge_unref);
  g_clear_pointer (&self->counted, rw_knowledge_unref);
  g_clear_pointer (&self->record, rw_record_free);
  g_free (self->record_problem);
  g_clear_pointer (&self->stage_words, rw_stage_words_unref);
  g_free (self->advice_problem);
  g_free (self->path);
  G_OBJECT_CLASS (rw_job_parent_class)->finalize (object);
}

/* So that a setting can be bound to it. */
enum
{
  PROP_USES_RECORD = 1,
};

static void
rw_job_get_property (GObject    *object,
                     guint       id,
                     GValue     *value,
                     GParamSpec *pspec)
{
  if (id == PROP_USES_RECORD)
    g_value_set_boolean (value, RW_JOB (object)->uses_record);
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static void
rw_job_set_property (GObject      *object,
                     guint         id,
                     const GValue *value,
                     GParamSpec   *pspec)
{
  if (id == PROP_USES_RECORD)
    rw_job_set_uses_record (RW_JOB (object), g_value_get_boolean (value));
  else
    G_OBJECT_WARN_INVALID_PROPERTY_ID (object, id, pspec);
}

static guint
add_signal (const char *name,
            GType       argument)
{
  return g_signal_new (name, RW_TYPE_JOB, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE,
                       argument != G_TYPE_NONE ? 1 : 0, argument);
}

static void
rw_job_class_init (RwJobClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_job_dispose;
  G_OBJECT_CLASS (klass)->finalize = rw_job_finalize;
  G_OBJECT_CLASS (klass)->get_property = rw_job_get_property;
  G_OBJECT_CLASS (klass)->set_property = rw_job_set_property;
  g_object_class_install_property (G_OBJECT_CLASS (klass), PROP_USES_RECORD,
                                   g_param_spec_boolean ("uses-record", NULL, NULL, TRUE,
                                                         G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY
                                                             | G_PARAM_STATIC_STRINGS));
  rw_job_signals[RW_JOB_SIGNAL_CHANGED] = add_signal ("changed", G_TYPE_NONE);
  rw_job_signals[RW_JOB_SIGNAL_ADVICE] = add_signal ("advice", G_TYPE_NONE);
  rw_job_signals[RW_JOB_SIGNAL_LIVE] = add_signal ("live", G_TYPE_NONE);
  rw_job_signals[RW_JOB_SIGNAL_SPOT] = add_signal ("spot", G_TYPE_NONE);
  rw_job_signals[RW_JOB_SIGNAL_KEPT] = add_signal ("kept", G_TYPE_UINT);
  rw_job_signals[RW_JOB_SIGNAL_TROUBLE] = add_signal ("trouble", G_TYPE_STRING);
  rw_job_signals[RW_JOB_SIGNAL_LINK] = add_signal ("link", G_TYPE_STRING);
  rw_job_signals[RW_JOB_SIGNAL_TICK] = add_signal ("tick", G_TYPE_NONE);
  rw_job_signals[RW_JOB_SIGNAL_NOTICED] = add_signal ("noticed", G_TYPE_STRING);
  rw_job_signals[RW_JOB_SIGNAL_HANDS] = add_signal ("hands", G_TYPE_NONE);
}

static void
rw_job_init (RwJob *self)
{
  rw_job_init_meters (self);
  self->lives = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_live_free);
  self->turned_t = -INFINITY;
  self->uses_record = TRUE;
}
