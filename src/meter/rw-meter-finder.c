/* rw-meter-finder.c: finds the meter: which port, line settings and format explain what comes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Each port is searched in a thread of its own (rw-port-search.h). The finder looks at the searches ten
 * times a second, from a timer in the owner's context:
 *
 *   IDLE ──start──► SEARCHING ──one is sure, or the time is up──► ENDING
 *   SEARCHING, ENDING ──all have ended, their ports closed──► IDLE, "done"
 *   IDLE ──learn_negative──► the same, with one port and its own line
 *
 * ENDING lets the ports be closed before "done", since the next thing to happen is that one is opened.
 */
#include "config.h"

#include "rw-meter-finder.h"

#include <glib/gi18n-lib.h>

#include "rw-finder-words.h"
#include "rw-meter-found.h"
#include "rw-port-search.h"
#include "rw-sign-lesson.h"

static const guint tick_ms = 100;
static const gint64 end_us = G_USEC_PER_SEC / 2; /* kept back for closing the ports */
static const gint64 stop_wait_us = 300 * 1000;
static const gint64 lesson_us = 8 * G_USEC_PER_SEC;
static const gsize lesson_frames = 6;
static const gsize lesson_frame_bytes = 11;

struct _RwMeterFinder
{
  GObject     parent_instance;
  RwPortMaker maker;
  gpointer    maker_data;
  GSource    *timer;    /* NULL: idle */
  GPtrArray  *searches; /* of RwPortSearch */
  GPtrArray  *found;    /* of RwMeterFound */
  gboolean    learning;
  guint       lesson_of; /* index into found */
  gboolean    ending;
  gint64      started_us;
  gint64      until_us;
  char       *outcome;  /* translated */
};

G_DEFINE_FINAL_TYPE (RwMeterFinder, rw_meter_finder, G_TYPE_OBJECT)

enum
{
  SIGNAL_PROGRESS,
  SIGNAL_DONE,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* --- ending -------------------------------------------------------------------------- */

static void
stop_searches (RwMeterFinder *self)
{
  for (guint i = 0; i < self->searches->len; i++)
    rw_port_search_stop (self->searches->pdata[i]);
}

static int
compare_found (gconstpointer a,
               gconstpointer b)
{
  const double first = (*(const RwMeterFound *const *) a)->sure;
  const double second = (*(const RwMeterFound *const *) b)->sure;

  return first > second ? -1 : first < second;
}

static void
collect (RwMeterFinder *self)
{
  g_autoptr (RwFinderWords) words = rw_finder_words_new ();

  for (guint i = 0; i < self->searches->len; i++)
    {
      g_auto (RwPortReport) report = { 0 };

      rw_port_search_look (self->searches->pdata[i], &report);
      for (guint k = 0; k < report.found->len; k++)
        g_ptr_array_add (self->found, rw_meter_found_copy (report.found->pdata[k]));
      rw_finder_words_add (words, report.trouble, report.stranger);
    }
  g_ptr_array_sort (self->found, compare_found);
  g_free (self->outcome);
  self->outcome = rw_finder_words_describe (words, self->found);
}

static void
value_cb (const RwMeterValue *value,
          gpointer            data)
{
  *(RwMeterValue *) data = *value;
}

static void
settle_sign (RwMeterFound *found,
             const char   *format,
             GBytes       *bytes)
{
  g_autoptr (RwDecoder) decoder = rw_decoder_new (format);
  gsize n;
  const guint8 *tainted = g_bytes_get_data (bytes, &n);

  found->format = format;
  found->sign_unsure = FALSE;
  rw_decoder_restart (decoder, TRUE);
  rw_decoder_feed (decoder, tainted, n, value_cb, &found->newest);
}

static void
judge_lesson (RwMeterFinder *self)
{
  g_auto (RwPortReport) report = { 0 };
  RwMeterFound *found = self->found->pdata[self->lesson_of];
  RwSignCounts counts = { 0 };

  rw_port_search_look (self->searches->pdata[0], &report);
  if (report.bytes != NULL)
    counts = rw_sign_lesson_count (g_bytes_get_data (report.bytes, NULL),
                                   g_bytes_get_size (report.bytes));

  const RwSignLesson lesson = rw_sign_lesson_judge (&counts);

  if (lesson == RW_SIGN_LESSON_A)
    settle_sign (found, "digits-11a", report.bytes);
  else if (lesson == RW_SIGN_LESSON_B)
    settle_sign (found, "digits-11b", report.bytes);
  g_free (self->outcome);
  self->outcome = rw_finder_words_describe_lesson (lesson, report.trouble);
}

static void
drop_timer (RwMeterFinder *self)
{
  if (self->timer == NULL)
    return;
  g_source_destroy (self->timer);
  g_clear_pointer (&self->timer, g_source_unref);
}

static void
finish (RwMeterFinder *self)
{
  if (self->learning)
    judge_lesson (self);
  else
    collect (self);
  g_ptr_array_set_size (self->searches, 0);
  drop_timer (self);
  g_signal_emit (self, signals[SIGNAL_DONE], 0);
}

/* --- looking ------------------------------------------------------------------------- */

/* TRUE when all have ended; *sure when one has something sure; *words (transfer full) says what one of the
 * others, a different one each time, is at. */
static gboolean
look_at_searches (RwMeterFinder *self,
                  gint64         now_us,
                  gboolean      *sure,
                  char         **words)
{
  const guint turn = (guint) ((now_us - self->started_us) / G_USEC_PER_SEC);
  gboolean all = TRUE;

  *sure = FALSE;
  *words = NULL;
  for (guint i = 0; i < self->searches->len; i++)
    {
      const guint which = (i + turn) % self->searches->len;
      g_auto (RwPortReport) report = { 0 };

      rw_port_search_look (self->searches->pdata[which], &report);
      all = all && report.ended;
      if (report.found->len > 0)
        *sure = *sure || rw_meter_found_is_sure (report.found->pdata[0]);
      if (*words == NULL && !report.ended)
        *words = g_steal_pointer (&report.words);
    }
  return all;
}

static gboolean
tick_cb (gpointer data)
{
  g_autoptr (RwMeterFinder) self = g_object_ref (data);
  const gint64 now_us = g_get_monotonic_time ();
  const double share = (double) (now_us - self->started_us) / (double) (self->until_us - self->started_us);
  g_autofree char *words = NULL;
  gboolean sure;
  const gboolean all = look_at_searches (self, now_us, &sure, &words);

  if (!self->ending && (sure || now_us >= self->until_us - end_us))
    {
      self->ending = TRUE;
      stop_searches (self);
    }
  if (all || now_us >= self->until_us)
    {
      finish (self);
      return G_SOURCE_REMOVE;
    }
  if (words != NULL)
    g_signal_emit (self, signals[SIGNAL_PROGRESS], 0, CLAMP (share, 0, 1), words);
  return G_SOURCE_CONTINUE;
}

static void
start_timer (RwMeterFinder *self)
{
  self->ending = FALSE;
  self->timer = g_timeout_source_new (tick_ms);
  g_source_set_callback (self->timer, tick_cb, self, NULL);
  g_source_attach (self->timer, g_main_context_get_thread_default ());
}

/* --- public -------------------------------------------------------------------------- */

static RwBytePort *
make_port (const RwMeterAddress *address,
           gpointer              data)
{
  return rw_meter_address_make_port (address);
}

static void
add_search (RwMeterFinder        *self,
            const RwMeterAddress *address)
{
  g_ptr_array_add (self->searches, rw_port_search_start (address, self->until_us - end_us, self->maker,
                                                         self->maker_data));
}

void
rw_meter_finder_start (RwMeterFinder *self,
                       GPtrArray     *ports,
                       GPtrArray     *hosts)
{
  g_return_if_fail (RW_IS_METER_FINDER (self));
  if (self->timer != NULL)
    return;
  g_ptr_array_set_size (self->found, 0);
  g_clear_pointer (&self->outcome, g_free);
  self->learning = FALSE;
  self->started_us = g_get_monotonic_time ();
  self->until_us = self->started_us + RW_METER_FINDER_SECONDS * G_USEC_PER_SEC;
  for (guint i = 0; ports != NULL && i < ports->len; i++)
    {
      g_autoptr (RwMeterAddress) address = rw_meter_address_new_serial (ports->pdata[i], NULL);

      add_search (self, address);
    }
  for (guint i = 0; hosts != NULL && i < hosts->len; i++)
    add_search (self, hosts->pdata[i]);
  start_timer (self);
}

void
rw_meter_finder_learn_negative (RwMeterFinder *self,
                                guint          i)
{
  g_return_if_fail (RW_IS_METER_FINDER (self));
  g_return_if_fail (i < self->found->len);
  if (self->timer != NULL)
    return;
  self->learning = TRUE;
  self->lesson_of = i;
  self->started_us = g_get_monotonic_time ();
  self->until_us = self->started_us + lesson_us + end_us;
  g_ptr_array_add (self->searches,
                   rw_port_search_start_lesson (((RwMeterFound *) self->found->pdata[i])->address,
                                                (lesson_frames + 1) * lesson_frame_bytes,
                                                self->until_us - end_us, self->maker, self->maker_data));
  start_timer (self);
}

void
rw_meter_finder_stop (RwMeterFinder *self)
{
  const gint64 until_us = g_get_monotonic_time () + stop_wait_us;

  g_return_if_fail (RW_IS_METER_FINDER (self));
  drop_timer (self);
  stop_searches (self);
  for (guint i = 0; i < self->searches->len; i++)
    rw_port_search_wait (self->searches->pdata[i], until_us);
  g_ptr_array_set_size (self->searches, 0);
}

gboolean
rw_meter_finder_is_running (RwMeterFinder *self)
{
  g_return_val_if_fail (RW_IS_METER_FINDER (self), FALSE);
  return self->timer != NULL;
}

guint
rw_meter_finder_get_n_found (RwMeterFinder *self)
{
  g_return_val_if_fail (RW_IS_METER_FINDER (self), 0);
  return self->found->len;
}

const RwMeterFound *
rw_meter_finder_get_found (RwMeterFinder *self,
                           guint          i)
{
  g_return_val_if_fail (RW_IS_METER_FINDER (self), NULL);
  g_return_val_if_fail (i < self->found->len, NULL);
  return self->found->pdata[i];
}

char *
rw_meter_finder_describe (RwMeterFinder *self)
{
  g_return_val_if_fail (RW_IS_METER_FINDER (self), NULL);
  if (self->outcome != NULL)
    return g_strdup (self->outcome);
  return g_strdup (self->timer != NULL ? _ ("The search is under way.")
                                       : _ ("No meter was looked for yet."));
}

void
rw_meter_finder_set_maker (RwMeterFinder *self,
                           RwPortMaker    maker,
                           gpointer       data)
{
  g_return_if_fail (RW_IS_METER_FINDER (self));
  self->maker = maker;
  self->maker_data = data;
}

RwMeterFinder *
rw_meter_finder_new (void)
{
  return g_object_new (RW_TYPE_METER_FINDER, NULL);
}

/* --- object -------------------------------------------------------------------------- */

static void
rw_meter_finder_dispose (GObject *object)
{
  rw_meter_finder_stop (RW_METER_FINDER (object));
  G_OBJECT_CLASS (rw_meter_finder_parent_class)->dispose (object);
}

static void
rw_meter_finder_finalize (GObject *object)
{
  RwMeterFinder *self = RW_METER_FINDER (object);

  g_ptr_array_unref (self->searches);
  g_ptr_array_unref (self->found);
  g_free (self->outcome);
  G_OBJECT_CLASS (rw_meter_finder_parent_class)->finalize (object);
}

static void
rw_meter_finder_class_init (RwMeterFinderClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->dispose = rw_meter_finder_dispose;
  object_class->finalize = rw_meter_finder_finalize;
  signals[SIGNAL_PROGRESS]
      = g_signal_new ("progress", RW_TYPE_METER_FINDER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                      G_TYPE_NONE, 2, G_TYPE_DOUBLE, G_TYPE_STRING);
  signals[SIGNAL_DONE] = g_signal_new ("done", RW_TYPE_METER_FINDER, G_SIGNAL_RUN_LAST, 0, NULL, NULL,
                                       NULL, G_TYPE_NONE, 0);
}

static void
rw_meter_finder_init (RwMeterFinder *self)
{
  self->maker = make_port;
  self->searches = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_port_search_unref);
  self->found = g_ptr_array_new_with_free_func ((GDestroyNotify) rw_meter_found_free);
}
