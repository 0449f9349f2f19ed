/* rw-chapters.c: a session in chapters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One walk over the live landmarks. What begins a chapter:
 *   mark    unless the present chapter is of the same words: "reset seen" five times over is one chapter
 *   stage   unless the present chapter is of the same stage
 *   trim    unless a run of turns goes on: the present chapter has turns, and nothing was found, mended, switched or
 *           plugged since; or its heading has just announced them: nothing was measured since
 * Whatever comes before the first of these is a chapter too. Everything else belongs to the chapter that it falls in.
 */
#include "config.h"

#include "rw-chapters-private.h"

#include <glib/gi18n-lib.h>

/* The chapter being written, and what is told of it nowhere else. */
typedef struct
{
  RwChapters    *chapters;
  RwChapter     *now;     /* the last of them; moves when one is added */
  const RwEvent *heading; /* NULL for the start */
  gboolean       is_over; /* its run of turns */
  RwChapterDescribe describe;
  gpointer          data;
} Writer;

static void
clear_chapter (gpointer data)
{
  RwChapter *chapter = data;

  g_free (chapter->title);
  g_clear_pointer (&chapter->verdicts, g_array_unref);
}

/* --- titles --------------------------------------------------------------------------------------- */

static char *
name_mark (const RwChapter *chapter,
           const RwEvent   *heading)
{
  if (chapter->n_marks < 2)
    return g_strdup (heading->words.text);
  /* Translators: the words of a mark, how often it was set. */
  return g_strdup_printf (ngettext ("%s (%u time)", "%s (%u times)", chapter->n_marks), heading->words.text,
                          chapter->n_marks);
}

static char *
make_title (const Writer *writer)
{
  const RwChapter *chapter = writer->now;

  switch (chapter->kind)
    {
    case RW_CHAPTER_MARK:
      return name_mark (chapter, writer->heading);
    case RW_CHAPTER_STAGE:
      return writer->describe != NULL ? writer->describe (writer->heading, writer->data)
                                      : rw_event_describe (writer->heading, NULL);
    case RW_CHAPTER_TRIM:
      return g_strdup_printf (ngettext ("%u turn of the trim", "%u turns of the trim", chapter->n_trims),
                              chapter->n_trims);
    case RW_CHAPTER_START:
    case RW_N_CHAPTER_KINDS:
    default:
      return g_strdup (_ ("The beginning"));
    }
}

/* --- bounds --------------------------------------------------------------------------------------- */

static void
begin (Writer        *writer,
       RwChapterKind  kind,
       double         t,
       guint          index,
       const RwEvent *heading)
{
  GArray *chapters = writer->chapters->chapters;
  const RwChapter chapter = {
    .kind = kind,
    .t = t,
    .index = index,
    .n_events = heading != NULL ? index + 1 : 0,
    .verdicts = g_array_new (FALSE, FALSE, sizeof (RwChapterVerdict)),
  };

  g_array_append_val (chapters, chapter);
  writer->now = &g_array_index (chapters, RwChapter, chapters->len - 1);
  writer->heading = heading;
  writer->is_over = FALSE;
}

static void
end (Writer *writer,
     double  t,
     guint   index)
{
  writer->now->end = MAX (t, writer->now->t);
  writer->now->until = index;
  writer->now->title = make_title (writer);
}

static void
drop_start (Writer *writer)
{
  clear_chapter (writer->now);
  g_array_set_size (writer->chapters->chapters, 0);
}

static gboolean
has_measured (const RwChapter *chapter)
{
  return chapter->n_readings + chapter->n_findings + chapter->n_repairs > 0;
}

/* Whether this event heads a chapter, and of what kind. */
static gboolean
is_heading (const Writer  *writer,
            const RwEvent *event,
            RwChapterKind *kind)
{
  const RwChapter *now = writer->now;

  if (event->type == RW_EVENT_MARK)
    {
      *kind = RW_CHAPTER_MARK;
      return now->kind != RW_CHAPTER_MARK || g_strcmp0 (writer->heading->words.text, event->words.text) != 0;
    }
  if (event->type == RW_EVENT_STAGE)
    {
      *kind = RW_CHAPTER_STAGE;
      return now->kind != RW_CHAPTER_STAGE || writer->heading->stage.id != event->stage.id;
    }
  *kind = RW_CHAPTER_TRIM;
  if (event->type != RW_EVENT_TRIM || !event->trim.moved)
    return FALSE;
  if (now->n_trims > 0)
    return writer->is_over;
  return now->kind == RW_CHAPTER_START || has_measured (now);
}

static void
count (Writer        *writer,
       const RwEvent *event)
{
  RwChapter *now = writer->now;

  now->n_readings += event->type == RW_EVENT_READING;
  now->n_trims += event->type == RW_EVENT_TRIM && event->trim.moved;
  now->n_findings += event->type == RW_EVENT_FINDING;
  now->n_repairs += event->type == RW_EVENT_REPAIR;
  now->n_marks += event->type == RW_EVENT_MARK;
  writer->is_over = writer->is_over || event->type == RW_EVENT_FINDING || event->type == RW_EVENT_REPAIR
                    || event->type == RW_EVENT_SETUP;
}

static void
take_event (Writer        *writer,
            const RwEvent *event,
            guint          index)
{
  const double t = MAX (event->t, writer->now->t);
  RwChapterKind kind;

  if (is_heading (writer, event, &kind))
    {
      if (index > 0)
        end (writer, t, index);
      else
        drop_start (writer); /* nothing comes before it */
      begin (writer, kind, index > 0 ? t : 0, index, event);
    }
  count (writer, event);
}

static void
write_chapters (Writer    *writer,
                RwSession *session)
{
  begin (writer, RW_CHAPTER_START, 0, 0, NULL);
  for (guint i = 0; i < rw_session_get_n_landmarks (session); i++)
    {
      const guint index = rw_session_get_landmark (session, i);

      if (rw_session_is_live (session, index))
        take_event (writer, rw_session_get_event (session, index), index);
    }
  end (writer, rw_session_get_end (session), rw_session_get_n_events (session));
}

/* --- the whole ------------------------------------------------------------------------------------ */

static RwChapters *
make_empty (void)
{
  RwChapters *self = g_atomic_rc_box_new0 (RwChapters);

  self->chapters = g_array_new (FALSE, FALSE, sizeof (RwChapter));
  for (guint i = 0; i < RW_N_MOMENT_KINDS; i++)
    self->moments[i] = g_array_new (FALSE, FALSE, sizeof (RwMoment));
  return self;
}

RwChapters *
rw_chapters_new_quick (RwSession        *session,
                       RwChapterDescribe describe,
                       gpointer          data)
{
  g_return_val_if_fail (RW_IS_SESSION (session), NULL);

  RwChapters *self = make_empty ();
  Writer writer = { .chapters = self, .describe = describe, .data = data };

  write_chapters (&writer, session);
  g_array_set_clear_func (self->chapters, clear_chapter);
  rw_chapters_look_at_deeds (self, session);
  return self;
}

RwChapters *
rw_chapters_new_looked (const RwChapters *quick,
                        RwSession        *session)
{
  RwChapters *self = make_empty ();

  for (guint i = 0; i < quick->chapters->len; i++)
    {
      RwChapter chapter = g_array_index (quick->chapters, RwChapter, i);

      chapter.title = g_strdup (chapter.title);
      chapter.verdicts = g_array_new (FALSE, FALSE, sizeof (RwChapterVerdict));
      g_array_append_val (self->chapters, chapter);
    }
  g_array_set_clear_func (self->chapters, clear_chapter);
  for (guint i = 0; i < RW_N_MOMENT_KINDS; i++)
    if (quick->moments[i]->len > 0)
      g_array_append_vals (self->moments[i], quick->moments[i]->data, quick->moments[i]->len);
  rw_chapters_look_at_states (self, session);
  return self;
}

RwChapters *
rw_chapters_new (RwSession        *session,
                 RwChapterDescribe describe,
                 gpointer          data)
{
  g_autoptr (RwChapters) quick = rw_chapters_new_quick (session, describe, data);

  return rw_chapters_new_looked (quick, session);
}

static void
clear_chapters (gpointer data)
{
  RwChapters *self = data;

  g_array_unref (self->chapters);
  for (guint i = 0; i < RW_N_MOMENT_KINDS; i++)
    g_array_unref (self->moments[i]);
}

RwChapters *
rw_chapters_ref (RwChapters *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_chapters_unref (RwChapters *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_chapters);
}

guint
rw_chapters_get_n (const RwChapters *self)
{
  return self->chapters->len;
}

const RwChapter *
rw_chapters_get (const RwChapters *self,
                 guint             i)
{
  return i < self->chapters->len ? &g_array_index (self->chapters, RwChapter, i) : NULL;
}

guint
rw_chapters_find (const RwChapters *self,
                  guint             n_events)
{
  guint low = 1, high = self->chapters->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;

      if (rw_chapters_get (self, middle)->n_events <= n_events)
        low = middle + 1;
      else
        high = middle;
    }
  return low - 1;
}

guint
rw_chapters_get_n_moments (const RwChapters *self,
                           RwMomentKind      kind)
{
  return self->moments[kind]->len;
}

const RwMoment *
rw_chapters_get_moment (const RwChapters *self,
                        RwMomentKind      kind,
                        guint             i)
{
  return i < self->moments[kind]->len ? &g_array_index (self->moments[kind], RwMoment, i) : NULL;
}

/* The first moment where more than @n_events have happened, or as many. */
static guint
find_moment (const RwChapters *self,
             RwMomentKind      kind,
             guint             n_events,
             gboolean          or_as_many)
{
  guint low = 0, high = self->moments[kind]->len;

  while (low < high)
    {
      const guint middle = low + (high - low) / 2;
      const guint there = rw_chapters_get_moment (self, kind, middle)->n_events;

      if (or_as_many ? there < n_events : there <= n_events)
        low = middle + 1;
      else
        high = middle;
    }
  return low;
}

const RwMoment *
rw_chapters_next_moment (const RwChapters *self,
                         RwMomentKind      kind,
                         guint             n_events)
{
  return rw_chapters_get_moment (self, kind, find_moment (self, kind, n_events, FALSE));
}

const RwMoment *
rw_chapters_previous_moment (const RwChapters *self,
                             RwMomentKind      kind,
                             guint             n_events)
{
  const guint i = find_moment (self, kind, n_events, TRUE);

  return i > 0 ? rw_chapters_get_moment (self, kind, i - 1) : NULL;
}
