/* rw-lesson-pager.c: the bar that pages through a lesson.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-lesson-pager.h"

#include <glib/gi18n-lib.h>

#include "rw-call-words.h"
#include "rw-lesson-begin.h"
#include "rw-low-bin.h"

struct _RwLessonPager
{
  GtkWidget     parent_instance;
  RwCallDesk   *desk;
  RwProjection *projection;
  RwLesson     *lesson; /* NULL: none runs */
  RwJob        *job;
  guint         page;   /* of the steps; their number: the score */
  GHashTable   *called; /* set of pages whose round was opened */
  gboolean      done;   /* what the step waits for has happened */
  gboolean      warned; /* that going on gives the open round up */

  GtkWidget *box;
  GtkLabel  *where;
  GtkLabel  *title;
  RwLowBin  *scroller; /* of caution and words */
  GtkLabel  *caution;
  GtkLabel  *words;
  GtkLabel  *ask;
  GtkLabel  *status;
  GtkWidget *previous;
  GtkWidget *next;
};

G_DEFINE_FINAL_TYPE (RwLessonPager, rw_lesson_pager, GTK_TYPE_WIDGET)

enum
{
  SIGNAL_CALLED,
  SIGNAL_ENDED,
  N_SIGNALS
};
static guint signals[N_SIGNALS];

/* NULL: it is the score. */
static const RwLessonStep *
step_of (RwLessonPager *self)
{
  return self->page < self->lesson->steps->len ? self->lesson->steps->pdata[self->page] : NULL;
}

/* --- what the class sees -------------------------------------------------------------------------- */

static void
project_text (RwLessonPager      *self,
              const RwLessonStep *step)
{
  const char *lines[] = { step->words, NULL };

  if (step->words == NULL && step->show != RW_LESSON_SHOW_TEXT)
    rw_projection_clear_text (self->projection);
  else
    rw_projection_show_text (self->projection, step->ask != NULL ? step->ask : step->title, lines, NULL, 0,
                             step->show == RW_LESSON_SHOW_TEXT);
}

static void
project_part (RwLessonPager *self,
              RwLessonShow   show)
{
  static const RwProjectionPart parts[] = { RW_PROJECTION_VALUES, RW_PROJECTION_TRIM, RW_PROJECTION_CHART,
                                            RW_PROJECTION_CHECK };

  rw_projection_set_blank (self->projection, show == RW_LESSON_SHOW_BLANK);
  if (show < G_N_ELEMENTS (parts))
    rw_projection_set_part (self->projection, parts[show]);
}

static void
project (RwLessonPager      *self,
         const RwLessonStep *step)
{
  rw_projection_show_all_rails (self->projection);
  for (guint i = 0; i < step->hide->len; i++)
    rw_projection_hide_rail (self->projection, step->hide->pdata[i], TRUE);
  rw_projection_set_spotlight (self->projection, step->spotlight);
  project_part (self, step->show);
  project_text (self, step);
}

static void
project_score (RwLessonPager *self)
{
  g_autoptr (GPtrArray) standings = rw_call_desk_list_standings (self->desk);
  g_auto (RwCallWords) words = { 0 };

  rw_call_words_standings (&words, standings);
  rw_projection_show_all_rails (self->projection);
  rw_projection_set_spotlight (self->projection, NULL);
  rw_projection_set_blank (self->projection, FALSE);
  rw_projection_show_text (self->projection, words.title, (const char *const *) words.lines,
                           (const char *const *) words.cells, words.n_columns, TRUE);
}

/* --- what the teacher sees ------------------------------------------------------------------------ */

static void
say (GtkLabel   *label,
     const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static char *
describe_score (RwLessonPager *self)
{
  g_autoptr (GPtrArray) standings = rw_call_desk_list_standings (self->desk);
  g_auto (RwCallWords) words = { 0 };
  GString *text = g_string_new (NULL);

  rw_call_words_standings (&words, standings);
  g_string_append (text, words.lines[0]);
  for (guint i = words.n_columns; words.cells != NULL && words.cells[i] != NULL; i += words.n_columns)
    {
      g_string_append_c (text, '\n');
      /* Translators: who, number of rounds, points. */
      g_string_append_printf (text, _ ("%s: rounds %s, points %s"), words.cells[i], words.cells[i + 1],
                              words.cells[i + 2]);
    }
  return g_string_free (text, FALSE);
}

static void
show_status (RwLessonPager      *self,
             const RwLessonStep *step,
             gboolean            found)
{
  if (!found)
    say (self->status, _ ("The session has no such chapter: go there by hand."));
  else if (step->until == RW_LESSON_UNTIL_NOTHING)
    say (self->status, NULL);
  else
    say (self->status, self->done ? _ ("Done: on with Page Down.") : rw_lesson_until_get_label (step->until));
  if (self->done)
    gtk_widget_add_css_class (self->next, "suggested-action");
  else
    gtk_widget_remove_css_class (self->next, "suggested-action");
}

static void
show_where (RwLessonPager *self)
{
  /* Translators: title of a lesson, number of its step, how many steps it has. */
  g_autofree char *where = g_strdup_printf (_ ("%s · %u of %u"), self->lesson->title, self->page + 1,
                                            self->lesson->steps->len + 1);

  say (self->where, where);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "pager.previous", self->page > 0);
  gtk_widget_action_set_enabled (GTK_WIDGET (self), "pager.next", self->page < self->lesson->steps->len);
}

static void
show_step (RwLessonPager      *self,
           const RwLessonStep *step,
           gboolean            found)
{
  g_autofree char *asked = NULL;

  if (step->ask != NULL)
    /* Translators: a question that the teacher asks. */
    asked = g_strdup_printf (_ ("Ask: %s"), step->ask);
  say (self->title, step->title);
  say (self->caution, step->caution != NULL ? step->caution : self->page == 0 ? self->lesson->caution : NULL);
  say (self->words, step->say);
  say (self->ask, asked);
  show_status (self, step, found);
}

static void
show_score (RwLessonPager *self)
{
  g_autofree char *score = describe_score (self);

  say (self->title, _ ("The score"));
  say (self->caution, NULL);
  say (self->words, score);
  say (self->ask, NULL);
  say (self->status, NULL);
  gtk_widget_remove_css_class (self->next, "suggested-action");
}

/* --- paging --------------------------------------------------------------------------------------- */

/* Once a lesson and step; going back to it asks nobody again. */
static void
call (RwLessonPager      *self,
      const RwLessonStep *step)
{
  if (step->call_rail == NULL || !g_hash_table_add (self->called, GUINT_TO_POINTER (self->page)))
    return;
  rw_call_desk_ask (self->desk, step->call_rail, step->call_place);
  g_signal_emit (self, signals[SIGNAL_CALLED], 0);
}

static void
take_page (RwLessonPager *self)
{
  const RwLessonStep *step = step_of (self);

  self->done = FALSE;
  self->warned = FALSE;
  rw_call_desk_clear (self->desk);
  rw_low_bin_scroll_to_top (self->scroller);
  show_where (self);
  if (step == NULL)
    {
      project_score (self);
      show_score (self);
      return;
    }

  const gboolean found = rw_lesson_go (self->job, step);

  project (self, step);
  rw_call_desk_tell (self->desk);
  show_step (self, step, found);
  call (self, step);
}

/* Calls of this step that a slip of the thumb on the clicker would lose are asked about first. FALSE: stay. */
static gboolean
leave_round (RwLessonPager *self)
{
  const RwCallRound *open = rw_call_desk_get_open (self->desk);

  if (open == NULL || open->rail != step_of (self)->call_rail)
    return TRUE;
  if (self->warned)
    {
      rw_call_desk_drop (self->desk);
      return TRUE;
    }
  self->warned = TRUE;
  say (self->status, _ ("A round of calls is open: reveal it (Ctrl+Shift+K), or Page Down once more gives it up."));
  return FALSE;
}

gboolean
rw_lesson_pager_page (RwLessonPager *self,
                      gboolean       forward)
{
  g_return_val_if_fail (RW_IS_LESSON_PAGER (self), FALSE);
  if (self->lesson == NULL || (forward ? self->page >= self->lesson->steps->len : self->page == 0))
    return FALSE;
  if (forward && !leave_round (self))
    return FALSE;
  self->page += forward ? 1 : -1;
  take_page (self);
  return TRUE;
}

static void
note_done (RwLessonPager *self,
           RwLessonUntil  what)
{
  const RwLessonStep *step = self->lesson != NULL ? step_of (self) : NULL;

  if (step == NULL || step->until != what || self->done)
    return;
  self->done = TRUE;
  show_status (self, step, TRUE);
}

static void
added_cb (RwLessonPager *self,
          guint          index)
{
  switch (rw_session_get_event (rw_job_get_session (self->job), index)->type)
    {
    case RW_EVENT_READING:
      note_done (self, RW_LESSON_UNTIL_READING);
      break;
    case RW_EVENT_TRIM:
      note_done (self, RW_LESSON_UNTIL_TRIM);
      break;
    case RW_EVENT_MARK:
      note_done (self, RW_LESSON_UNTIL_MARK);
      break;
    case RW_EVENT_FINDING:
      note_done (self, RW_LESSON_UNTIL_FINDING);
      break;
    case RW_EVENT_REPAIR:
      note_done (self, RW_LESSON_UNTIL_REPAIR);
      break;
    case RW_EVENT_UNKNOWN:
    case RW_EVENT_SETUP:
    case RW_EVENT_SAMPLE:
    case RW_EVENT_SYMPTOM:
    case RW_EVENT_STAGE:
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

static void
calls_cb (RwLessonPager *self)
{
  if (rw_call_desk_get_shown (self->desk) != NULL)
    note_done (self, RW_LESSON_UNTIL_REVEAL);
}

void
rw_lesson_pager_begin (RwLessonPager *self,
                       RwLesson      *lesson,
                       RwJob         *job)
{
  g_return_if_fail (RW_IS_LESSON_PAGER (self) && lesson != NULL && job != NULL);
  rw_lesson_pager_end (self);
  self->lesson = rw_lesson_ref (lesson);
  self->job = g_object_ref (job);
  self->page = 0;
  g_hash_table_remove_all (self->called);
  g_signal_connect_object (rw_job_get_session (job), "added", G_CALLBACK (added_cb), self, G_CONNECT_SWAPPED);
  gtk_widget_set_visible (GTK_WIDGET (self), TRUE);
  take_page (self);
}

void
rw_lesson_pager_end (RwLessonPager *self)
{
  g_return_if_fail (RW_IS_LESSON_PAGER (self));
  if (self->lesson == NULL)
    return;
  g_signal_handlers_disconnect_by_data (rw_job_get_session (self->job), self);
  g_clear_pointer (&self->lesson, rw_lesson_unref);
  g_clear_object (&self->job);
  rw_projection_show_all_rails (self->projection);
  rw_projection_set_spotlight (self->projection, NULL);
  rw_projection_set_blank (self->projection, FALSE);
  rw_projection_clear_text (self->projection);
  rw_call_desk_tell (self->desk);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
  g_signal_emit (self, signals[SIGNAL_ENDED], 0);
}

RwJob *
rw_lesson_pager_get_job (RwLessonPager *self)
{
  return self->job;
}

static void
page_action (GtkWidget  *widget,
             const char *name,
             GVariant   *parameter)
{
  rw_lesson_pager_page (RW_LESSON_PAGER (widget), g_str_equal (name, "pager.next"));
}

static void
end_action (GtkWidget  *widget,
            const char *name,
            GVariant   *parameter)
{
  rw_lesson_pager_end (RW_LESSON_PAGER (widget));
}

/* --- the type ------------------------------------------------------------------------------------- */

static void
rw_lesson_pager_dispose (GObject *object)
{
  RwLessonPager *self = RW_LESSON_PAGER (object);

  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (rw_job_get_session (self->job), self);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_LESSON_PAGER);
  g_clear_object (&self->job);
  g_clear_object (&self->desk);
  g_clear_object (&self->projection);
  g_clear_pointer (&self->lesson, rw_lesson_unref);
  g_clear_pointer (&self->called, g_hash_table_unref);
  G_OBJECT_CLASS (rw_lesson_pager_parent_class)->dispose (object);
}

static void
rw_lesson_pager_class_init (RwLessonPagerClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_lesson_pager_dispose;
  signals[SIGNAL_CALLED] = g_signal_new ("called", RW_TYPE_LESSON_PAGER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                         G_TYPE_NONE, 0);
  signals[SIGNAL_ENDED] = g_signal_new ("ended", RW_TYPE_LESSON_PAGER, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                        G_TYPE_NONE, 0);
  gtk_widget_class_install_action (widget_class, "pager.next", NULL, page_action);
  gtk_widget_class_install_action (widget_class, "pager.previous", NULL, page_action);
  gtk_widget_class_install_action (widget_class, "pager.end", NULL, end_action);
  gtk_widget_class_set_layout_manager_type (widget_class, GTK_TYPE_BIN_LAYOUT);
  gtk_widget_class_set_css_name (widget_class, "lessonpager");
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_GROUP);
  g_type_ensure (RW_TYPE_LOW_BIN);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-lesson-pager.ui");
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, box);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, where);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, title);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, scroller);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, caution);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, words);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, ask);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, status);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, previous);
  gtk_widget_class_bind_template_child (widget_class, RwLessonPager, next);
}

static void
rw_lesson_pager_init (RwLessonPager *self)
{
  self->called = g_hash_table_new (NULL, NULL);
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Lesson"), -1);
  gtk_widget_set_visible (GTK_WIDGET (self), FALSE);
}

GtkWidget *
rw_lesson_pager_new (RwCallDesk   *desk,
                     RwProjection *projection)
{
  RwLessonPager *self = g_object_new (RW_TYPE_LESSON_PAGER, NULL);

  self->desk = g_object_ref (desk);
  self->projection = g_object_ref (projection);
  g_signal_connect_object (desk, "changed", G_CALLBACK (calls_cb), self, G_CONNECT_SWAPPED);
  return GTK_WIDGET (self);
}
