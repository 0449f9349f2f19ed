/* rw-replay-chapters.c: the list of chapters.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The rows are made when it opens: what changed in a chapter is known only after a while. Those of a veiled list are
 * made again when the present chapter becomes another one meanwhile.
 */
#include "config.h"

#include "rw-replay-chapters.h"

#include <glib/gi18n-lib.h>

#include "rw-chapter-veil.h"
#include "rw-quantity.h"
#include "rw-tab-out.h"

struct _RwReplayChapters
{
  GtkPopover parent_instance;
  RwJob     *job;
  RwReplay  *replay; /* the job's; borrowed */
  const char *hidden; /* (nullable) interned id of a rail */
  gboolean    veiled;
  guint       now;    /* the chapter that was the present one when the rows were made */
  GtkListBox *list;
};

G_DEFINE_FINAL_TYPE (RwReplayChapters, rw_replay_chapters, GTK_TYPE_POPOVER)

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 48);
  gtk_widget_add_css_class (label, css_class);
  return label;
}

static GtkWidget *
make_words (const char *title,
            const char *change,
            gboolean    ahead)
{
  GtkWidget *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_hexpand (words, TRUE);
  gtk_box_append (GTK_BOX (words), make_label (title, ahead ? "quiet" : "chapter-title"));
  if (*change != '\0')
    gtk_box_append (GTK_BOX (words), make_label (change, "caption"));
  return words;
}

static RwChapterVeil
veil_of (RwReplayChapters *self)
{
  const guint now = rw_session_get_n_events (rw_replay_get_target (self->replay));

  return (RwChapterVeil) { rw_replay_get_source (self->replay), self->hidden, self->veiled ? now : G_MAXUINT };
}

static GtkWidget *
make_row (RwReplayChapters *self,
          const RwChapter  *chapter)
{
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 12);
  const RwChapterVeil veil = veil_of (self);
  g_autofree char *clock = rw_quantity_format_clock (chapter->t);
  g_autofree char *change = rw_chapter_veil_dup_change (&veil, chapter);
  g_autofree char *title = rw_chapter_veil_dup_title (&veil, chapter);
  g_autofree char *name = g_strdup_printf ("%s: %s. %s", clock, title, change);
  GtkWidget *at = gtk_label_new (clock);

  gtk_widget_add_css_class (at, "numeric");
  gtk_label_set_xalign (GTK_LABEL (at), 1);
  gtk_label_set_width_chars (GTK_LABEL (at), 6);
  gtk_widget_set_valign (at, GTK_ALIGN_START);
  gtk_box_append (GTK_BOX (box), at);
  gtk_box_append (GTK_BOX (box), make_words (title, change, rw_chapter_veil_is_ahead (&veil, chapter)));
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  gtk_accessible_update_property (GTK_ACCESSIBLE (row), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  return row;
}

static void
empty (RwReplayChapters *self)
{
  GtkWidget *row;

  while ((row = gtk_widget_get_first_child (GTK_WIDGET (self->list))) != NULL)
    gtk_list_box_remove (self->list, row);
}

static void
fill (RwReplayChapters *self)
{
  RwChapters *chapters = self->replay != NULL ? rw_replay_get_chapters (self->replay) : NULL;

  empty (self);
  for (guint i = 0; chapters != NULL && i < rw_chapters_get_n (chapters); i++)
    gtk_list_box_append (self->list, make_row (self, rw_chapters_get (chapters, i)));
  if (chapters == NULL)
    return;
  rw_replay_get_chapter (self->replay, &self->now);

  GtkListBoxRow *row = gtk_list_box_get_row_at_index (self->list, (int) self->now);

  gtk_list_box_select_row (self->list, row);
  gtk_widget_grab_focus (GTK_WIDGET (row));
}

static void
moved_cb (RwReplayChapters *self)
{
  guint now = 0;

  if (self->veiled && gtk_widget_get_mapped (GTK_WIDGET (self)) && rw_replay_get_chapter (self->replay, &now) != NULL
      && now != self->now)
    fill (self);
}

static void
activated_cb (RwReplayChapters *self,
              GtkListBoxRow    *row)
{
  gtk_popover_popdown (GTK_POPOVER (self));
  rw_replay_go_to_chapter (self->replay, (guint) gtk_list_box_row_get_index (row));
}

void
rw_replay_chapters_hide_rail (RwReplayChapters *self,
                              const char       *rail)
{
  g_return_if_fail (RW_IS_REPLAY_CHAPTERS (self));
  self->hidden = g_intern_string (rail); /* the rows are made when it opens */
}

void
rw_replay_chapters_set_veiled (RwReplayChapters *self,
                               gboolean          veiled)
{
  g_return_if_fail (RW_IS_REPLAY_CHAPTERS (self));
  if (self->veiled == veiled)
    return;
  self->veiled = veiled;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    fill (self);
}

void
rw_replay_chapters_set_job (RwReplayChapters *self,
                            RwJob            *job)
{
  g_return_if_fail (RW_IS_REPLAY_CHAPTERS (self));
  empty (self);
  if (self->replay != NULL)
    g_signal_handlers_disconnect_by_data (self->replay, self);
  self->hidden = NULL;
  self->veiled = FALSE;
  g_set_object (&self->job, job);
  self->replay = job != NULL ? rw_job_get_replay (job) : NULL;
  if (self->replay != NULL)
    g_signal_connect_object (self->replay, "moved", G_CALLBACK (moved_cb), self, G_CONNECT_SWAPPED);
}

static void
rw_replay_chapters_dispose (GObject *object)
{
  RwReplayChapters *self = RW_REPLAY_CHAPTERS (object);

  self->replay = NULL;
  g_clear_object (&self->job);
  G_OBJECT_CLASS (rw_replay_chapters_parent_class)->dispose (object);
}

static void
rw_replay_chapters_class_init (RwReplayChaptersClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_replay_chapters_dispose;
}

static void
rw_replay_chapters_init (RwReplayChapters *self)
{
  GtkWidget *scroller = gtk_scrolled_window_new ();

  self->list = GTK_LIST_BOX (gtk_list_box_new ());
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->list), GTK_ACCESSIBLE_PROPERTY_LABEL, _ ("Chapters"), -1);
  gtk_widget_add_css_class (GTK_WIDGET (self->list), "chapter-list");
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller), GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_propagate_natural_width (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 420);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), GTK_WIDGET (self->list));
  gtk_popover_set_child (GTK_POPOVER (self), scroller);
  gtk_popover_set_position (GTK_POPOVER (self), GTK_POS_TOP);
  rw_tab_out_install (GTK_WIDGET (self->list));
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  g_signal_connect (self, "map", G_CALLBACK (fill), NULL);
}

GtkWidget *
rw_replay_chapters_new (void)
{
  return g_object_new (RW_TYPE_REPLAY_CHAPTERS, NULL);
}
