/* rw-port-search.c: looks for a meter on one port, in a thread of its own.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The plan (rw-search-plan.h) says what to try; a step opens the port anew with its line settings, and is
 * left as soon as it has nothing more to tell (rw-port-ear.h) or something is sure: then the search ends.
 *
 * Everything is the thread's own, but for `stop` and `pipe`, and what stands below `lock`.
 */
#include "config.h"

#include "rw-port-search.h"

#include <errno.h>
#include <fcntl.h>
#include <glib-unix.h>
#include <glib/gi18n-lib.h>
#include <poll.h>
#include <string.h>
#include <unistd.h>

#include "rw-meter-found.h"
#include "rw-meter-guess.h"
#include "rw-port-ear.h"

static const gint64 weigh_us = 50 * 1000;
static const gint64 ask_step_us = 30 * 1000;
static const gint64 reopen_us = 250 * 1000;
static const guint max_failures = 3; /* openings in a row */

struct _RwPortSearch
{
  RwMeterAddress *address;
  RwPortMaker     maker;
  gpointer        data;
  gint64          until_us;
  gsize           lesson_bytes; /* 0: a search */
  RwMeterFinds   *finds;
  gboolean        sure;
  guint           failures;

  int pipe[2]; /* a byte wakes the thread */
  int stop;    /* atomic */

  GMutex       lock;
  GCond        end;
  RwPortReport report;
  RwBytePort  *port; /* while it lives, to cancel it */
};

/* --- reports ------------------------------------------------------------------------- */

void
rw_port_report_clear (RwPortReport *self)
{
  g_clear_pointer (&self->words, g_free);
  g_clear_pointer (&self->found, g_ptr_array_unref);
  g_clear_pointer (&self->trouble, g_free);
  g_clear_pointer (&self->stranger, g_free);
  g_clear_pointer (&self->bytes, g_bytes_unref);
}

void
rw_port_search_look (RwPortSearch *self,
                     RwPortReport *report)
{
  g_mutex_lock (&self->lock);
  *report = (RwPortReport){ .ended = self->report.ended,
                            .words = g_strdup (self->report.words),
                            .trouble = g_strdup (self->report.trouble),
                            .stranger = g_strdup (self->report.stranger) };
  report->found = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_found_free);
  for (guint i = 0; i < self->report.found->len; i++)
    g_ptr_array_add (report->found, rw_meter_found_copy (self->report.found->pdata[i]));
  if (self->report.bytes != NULL)
    report->bytes = g_bytes_ref (self->report.bytes);
  g_mutex_unlock (&self->lock);
}

/* Takes @text. */
static void
report_text (RwPortSearch *self,
             char        **which,
             char         *text)
{
  g_mutex_lock (&self->lock);
  g_free (*which);
  *which = text;
  g_mutex_unlock (&self->lock);
}

static void
report_found (RwPortSearch *self)
{
  GPtrArray *found = rw_meter_finds_list (self->finds);

  self->sure = found->len > 0 && rw_meter_found_is_sure (found->pdata[0]);
  g_mutex_lock (&self->lock);
  g_ptr_array_unref (self->report.found);
  self->report.found = found;
  g_mutex_unlock (&self->lock);
}

static void
report_step (RwPortSearch       *self,
             const RwBytePort   *port,
             const RwSearchStep *step)
{
  const gboolean serial = self->address->kind == RW_METER_ADDRESS_SERIAL;
  char *words;

  if (step->kind == RW_SEARCH_LISTEN)
    /* Translators: a port, and a speed. */
    words = serial ? g_strdup_printf (_ ("Listening on “%s” at %u baud."), port->name, step->line.baud)
                   : g_strdup_printf (_ ("Listening to “%s”."), port->name);
  else
    words = serial ? g_strdup_printf (_ ("Asking on “%s” at %u baud."), port->name, step->line.baud)
                   : g_strdup_printf (_ ("Asking “%s”."), port->name);
  report_text (self, &self->report.words, words);
}

/* --- waiting ------------------------------------------------------------------------- */

static gboolean
is_over (RwPortSearch *self)
{
  return g_atomic_int_get (&self->stop) != 0 || self->sure
         || g_get_monotonic_time () >= self->until_us;
}

/* Waits for bytes (unless fd is −1), for @due_us, or to be stopped; TRUE when there is something to read. */
static gboolean
wait_until (RwPortSearch *self,
            int           fd,
            gint64        due_us)
{
  struct pollfd fds[2]
      = { { .fd = self->pipe[0], .events = POLLIN }, { .fd = fd, .events = POLLIN } };
  const gint64 left_us = MAX (MIN (due_us, self->until_us) - g_get_monotonic_time (), 0);
  const int n = poll (fds, 2, (int) ((left_us + 999) / 1000));

  return n > 0 && fds[1].revents != 0;
}

/* --- opening ------------------------------------------------------------------------- */

static void
set_port (RwPortSearch *self,
          RwBytePort   *port)
{
  g_mutex_lock (&self->lock);
  self->port = port;
  g_mutex_unlock (&self->lock);
}

static void
close_ear (RwPortSearch *self,
           RwPortEar    *ear,
           gboolean      opened)
{
  set_port (self, NULL);
  if (opened)
    ear->port->class->close (ear->port);
  ear->port->class->free (ear->port);
  rw_port_ear_clear (ear);
}

/* A port that is not there or not for us will not be so in a second either; one that does not take a
 * speed may take the next. */
static void
note_failure (RwPortSearch *self,
              const GError *error)
{
  const gboolean final = g_error_matches (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE)
                         || g_error_matches (error, RW_PORT_ERROR, RW_PORT_ERROR_REFUSED);

  report_text (self, &self->report.trouble, g_strdup (error->message));
  self->failures += final ? max_failures : 1;
  if (self->failures < max_failures)
    wait_until (self, -1, g_get_monotonic_time () + reopen_us);
}

static gboolean
open_ear (RwPortSearch       *self,
          const RwSearchStep *step,
          RwPortEar          *ear)
{
  g_autoptr (RwMeterAddress) address = rw_meter_address_copy (self->address);
  g_autoptr (GError) error = NULL;

  address->line = step->line;
  rw_port_ear_init (ear, step, self->maker (address, self->data));
  report_step (self, ear->port, step);
  set_port (self, ear->port);
  if (!ear->port->class->open (ear->port, &error))
    {
      note_failure (self, error);
      close_ear (self, ear, FALSE);
      return FALSE;
    }
  self->failures = 0;
  report_text (self, &self->report.trouble, NULL);
  /* What the driver holds came at another speed. A network has none, and its greeting counts. */
  if (address->kind == RW_METER_ADDRESS_SERIAL)
    ear->port->class->drop_input (ear->port);
  ear->opened_us = g_get_monotonic_time ();
  return TRUE;
}

/* --- one step ------------------------------------------------------------------------ */

static void
weigh (RwPortSearch *self,
       RwPortEar    *ear)
{
  if (ear->bytes->len == ear->weighed)
    return;
  ear->weighed = ear->bytes->len;
  ear->weighed_us = g_get_monotonic_time ();
  if (ear->step.kind == RW_SEARCH_ASK_NAME)
    {
      g_autofree char *name = rw_port_ear_read_name (ear);

      if (name != NULL)
        rw_meter_finds_take_name (self->finds, &ear->step, name);
    }
  else
    {
      g_autoptr (GArray) ranking
          = rw_meter_guess_rank (ear->bytes->data, ear->bytes->len, rw_port_ear_is_torn (ear));

      ear->stay = rw_meter_finds_take_ranking (self->finds, &ear->step, ranking);
    }
  report_found (self);
}

static void
listen (RwPortSearch *self,
        RwPortEar    *ear,
        gboolean      talks)
{
  const int fd = ear->port->class->get_fd (ear->port);

  while (!is_over (self) && !ear->lost)
    {
      const gint64 now_us = g_get_monotonic_time ();

      if (now_us - ear->weighed_us >= weigh_us)
        weigh (self, ear);
      if (self->sure || rw_port_ear_is_done (ear, now_us, talks))
        return;
      if (wait_until (self, fd, now_us + weigh_us))
        rw_port_ear_hear (ear);
    }
}

static void
ask (RwPortSearch *self,
     RwPortEar    *ear)
{
  const int fd = ear->port->class->get_fd (ear->port);
  const char *question = ear->step.question;

  while (!is_over (self) && !ear->lost)
    {
      const gint64 now_us = g_get_monotonic_time ();

      weigh (self, ear);
      if (self->sure)
        return;
      switch (rw_port_ear_judge_answer (ear, now_us))
        {
        case RW_PORT_EAR_ASK:
          if (!ear->port->class->write (ear->port, question, strlen (question)))
            return;
          break;
        case RW_PORT_EAR_LEAVE:
          return;
        case RW_PORT_EAR_WAIT:
        default:
          break;
        }
      if (wait_until (self, fd, now_us + ask_step_us))
        rw_port_ear_hear (ear);
    }
}

static void
run_step (RwPortSearch *self,
          RwSearchPlan *plan)
{
  const RwSearchStep step = rw_search_plan_next (plan);
  RwPortEar ear;
  char *stranger;

  if (!open_ear (self, &step, &ear))
    {
      rw_search_plan_heard (plan, &step, NULL, 0, 0);
      return;
    }
  if (step.kind == RW_SEARCH_LISTEN)
    listen (self, &ear, plan->talks);
  else
    ask (self, &ear);
  weigh (self, &ear);
  stranger = rw_port_ear_dup_stranger (&ear);
  if (stranger != NULL)
    report_text (self, &self->report.stranger, stranger);
  rw_search_plan_heard (plan, &step, ear.bytes->data, rw_port_ear_is_talked_to (&ear) ? ear.bytes->len : 0,
                        ear.stretches);
  if (ear.lost)
    {
      self->failures++;
      report_text (self, &self->report.trouble,
                   g_strdup_printf (_ ("“%s” went away while it was listened to. Plug the cable in "
                                       "again."),
                                    ear.port->name));
    }
  close_ear (self, &ear, TRUE);
  if (ear.lost)
    wait_until (self, -1, g_get_monotonic_time () + reopen_us);
}

/* --- the thread ---------------------------------------------------------------------- */

static void
run_search (RwPortSearch *self)
{
  RwSearchPlan plan;

  rw_search_plan_init (&plan, self->address->kind == RW_METER_ADDRESS_SERIAL);
  while (!is_over (self) && self->failures < max_failures)
    run_step (self, &plan);
}

static void
run_lesson (RwPortSearch *self)
{
  const RwSearchStep step = { .kind = RW_SEARCH_LISTEN, .line = self->address->line };
  RwPortEar ear;

  if (!open_ear (self, &step, &ear))
    return;

  const int fd = ear.port->class->get_fd (ear.port);

  while (!is_over (self) && !ear.lost && ear.bytes->len < self->lesson_bytes)
    if (wait_until (self, fd, self->until_us))
      rw_port_ear_hear (&ear);
  g_mutex_lock (&self->lock);
  self->report.bytes = g_bytes_new (ear.bytes->data, ear.bytes->len);
  g_mutex_unlock (&self->lock);
  close_ear (self, &ear, TRUE);
}

static void
free_search (gpointer data)
{
  RwPortSearch *self = data;

  rw_port_report_clear (&self->report);
  rw_meter_finds_free (self->finds);
  rw_meter_address_free (self->address);
  close (self->pipe[0]);
  close (self->pipe[1]);
  g_mutex_clear (&self->lock);
  g_cond_clear (&self->end);
}

static gpointer
run (gpointer data)
{
  RwPortSearch *self = data;

  if (self->lesson_bytes > 0)
    run_lesson (self);
  else
    run_search (self);
  g_mutex_lock (&self->lock);
  self->report.ended = TRUE;
  g_cond_signal (&self->end);
  g_mutex_unlock (&self->lock);
  rw_port_search_unref (self);
  return NULL;
}

/* --- from the owner ------------------------------------------------------------------ */

RwPortSearch *
rw_port_search_start_lesson (const RwMeterAddress *address,
                             gsize                 enough_bytes,
                             gint64                until_us,
                             RwPortMaker           maker,
                             gpointer              data)
{
  RwPortSearch *self = g_atomic_rc_box_new0 (RwPortSearch);
  g_autoptr (GError) error = NULL;

  self->address = rw_meter_address_copy (address);
  self->maker = maker;
  self->data = data;
  self->until_us = until_us;
  self->lesson_bytes = enough_bytes;
  self->finds = rw_meter_finds_new (address);
  self->report.found = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_found_free);
  g_mutex_init (&self->lock);
  g_cond_init (&self->end);
  /* Fails only when the process has no descriptors left: nothing would work then. */
  if (!g_unix_open_pipe (self->pipe, FD_CLOEXEC, &error))
    g_error ("%s", error->message);
  g_thread_unref (g_thread_new ("meter search", run, g_atomic_rc_box_acquire (self)));
  return self;
}

RwPortSearch *
rw_port_search_start (const RwMeterAddress *address,
                      gint64                until_us,
                      RwPortMaker           maker,
                      gpointer              data)
{
  return rw_port_search_start_lesson (address, 0, until_us, maker, data);
}

void
rw_port_search_unref (RwPortSearch *self)
{
  g_atomic_rc_box_release_full (self, free_search);
}

void
rw_port_search_stop (RwPortSearch *self)
{
  g_atomic_int_set (&self->stop, 1);
  while (write (self->pipe[1], "", 1) < 0 && errno == EINTR)
    ;
  g_mutex_lock (&self->lock);
  if (self->port != NULL && self->port->class->cancel != NULL)
    self->port->class->cancel (self->port);
  g_mutex_unlock (&self->lock);
}

gboolean
rw_port_search_wait (RwPortSearch *self,
                     gint64        until_us)
{
  gboolean ended;

  g_mutex_lock (&self->lock);
  while (!self->report.ended && g_cond_wait_until (&self->end, &self->lock, until_us))
    ;
  ended = self->report.ended;
  g_mutex_unlock (&self->lock);
  return ended;
}
