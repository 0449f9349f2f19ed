/* rw-main-window-private.h: what the parts of the main window share. For rw-main-window*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-banner.h"
#include "rw-big-view.h"
#include "rw-call-desk.h"
#include "rw-call-panel.h"
#include "rw-chart-view.h"
#include "rw-decide-panel.h"
#include "rw-entry-row.h"
#include "rw-lesson-pager.h"
#include "rw-main-window.h"
#include "rw-plan-view.h"
#include "rw-practice-bar.h"
#include "rw-projection.h"
#include "rw-rail-strip.h"
#include "rw-replay-bar.h"
#include "rw-sound-follow.h"
#include "rw-stage-side.h"
#include "rw-symptom-side.h"
#include "rw-trim-map-view.h"
#include "rw-watch-model.h"
#include "rw-watch-wiggle.h"

G_BEGIN_DECLS

struct _RwMainWindow
{
  GtkApplicationWindow parent_instance;
  GSettings           *settings; /* (nullable) */
  RwJob               *job;      /* (nullable) */

  GtkWidget      *title;
  GtkWidget      *subtitle;
  GtkMenuButton  *setup_button;
  GtkButton      *side_button;
  GtkButton      *meter_button;
  RwBanner       *banner;
  RwBanner       *danger;
  RwBanner       *trouble;
  RwBanner       *live_warning;
  RwBanner       *asking;  /* hands-free */
  RwBanner       *warning; /* of a mistake */
  RwBanner       *due;     /* readings of a warm-up */
  RwBanner       *offer;   /* notes to be taken in */
  GtkToggleButton *hands_button;
  RwBigView      *big;
  GtkStack       *stack;
  RwSymptomSide  *side;
  GtkWidget      *side_bin; /* the page that it is on */
  GtkWidget      *side_revealer;
  GtkStack       *sides; /* "diagnosis" and "stages" */
  RwStageSide    *stages;
  RwRailStrip    *strip;
  RwChartView    *chart;
  GtkDropDown    *chart_mode;
  GtkStack       *charts;     /* "time" and "trim" */
  GtkWidget      *time_tools; /* what only the chart over time has */
  RwTrimMapView  *trim_map;
  GtkLabel       *sentence;
  RwEntryRow     *entry;
  RwPracticeBar  *practice;
  RwReplayBar    *replay_bar;
  GtkWidget      *replay_box;
  GtkWidget      *plan_column;
  RwPlanView     *plan;
  RwDecidePanel  *decide_panel;
  RwDecide       *decide;       /* (nullable) of a replay, once it was asked for */
  GtkWidget      *note_popover;
  GtkEntry       *note_entry;
  char           *notes_offered; /* (nullable) a file of notes that may be taken in */
  GCancellable   *looking;       /* (nullable) for the session of a file of notes */

  RwProjection    *projection;  /* what a class sees */
  GtkWidget       *projector;   /* weak: its window, NULL while it is closed */
  GtkToggleButton *project_button;
  GtkLabel        *class_words;
  GMenu           *screen_menu;
  GtkWidget       *send_popover; /* NULL until it is asked for */

  RwCallDesk    *call_desk;
  RwCallPanel   *call_panel;
  char          *side_before;  /* (nullable) the page of the side that the panel took the place of */
  GtkFrame      *charts_frame; /* while a curtain hangs in place of the charts; else NULL */
  RwLessonPager *pager;

  RwSound       *sound;
  RwSoundFollow *sound_follow;
  GHashTable    *put_away;      /* set of warnings, by name */
  char          *warning_shown; /* (nullable) */

  RwWatchWiggle  *wiggle;       /* NULL without a job */
  GtkWidget      *watch;        /* weak: its window, NULL while it is closed */
  RwWatchReminder reminder;
  double          due_looked;   /* seconds of the job */
  gboolean        due_shown;
  gboolean        due_notified; /* the desktop was told */

  gboolean side_wanted; /* the drawer, when the window is narrow */
  int      last_width;
  guint64  enabled; /* bit i: action i of the table can be used; valid once enabled_known */
  gboolean enabled_known;
};

/* rw-main-window-actions.c */
void rw_main_window_install_actions (GtkWidgetClass *widget_class);
void rw_main_window_update_actions (RwMainWindow *self);

/* rw-main-window-keys.c: keys without a modifier, while no text field has the focus. */
void rw_main_window_add_keys (RwMainWindow *self);

/* rw-main-window-chart.c: the two charts: which is seen, and what it shows. */
void rw_main_window_add_charts (RwMainWindow *self);  /* once */
void rw_main_window_show_charts (RwMainWindow *self); /* of a new job */
void rw_main_window_switch_chart (RwMainWindow *self);

/* rw-main-window-hands.c: hands-free, warnings, sound, big view. */
void rw_main_window_add_hands (RwMainWindow *self);  /* once */
void rw_main_window_show_hands (RwMainWindow *self); /* of a new job, or none */
void rw_main_window_drop_hands (RwMainWindow *self);
void rw_main_window_toggle_hands (RwMainWindow *self);
void rw_main_window_toggle_big (RwMainWindow *self);
void rw_main_window_toggle_sound (RwMainWindow *self);
void rw_main_window_answer (RwMainWindow *self, guint i);

/* rw-main-window-watch.c: the watch window, and the reminder of a warm-up. */
void rw_main_window_add_watch (RwMainWindow *self);    /* once */
void rw_main_window_follow_watch (RwMainWindow *self); /* of a new job, or none */
void rw_main_window_drop_watch (RwMainWindow *self);
void rw_main_window_show_watch (GtkWidget *widget, const char *name, GVariant *parameter);

void rw_main_window_show_side (RwMainWindow *self, gboolean show);

/* rw-main-window-stages.c: the side of the bring-up. */
void     rw_main_window_install_stage_actions (GtkWidgetClass *widget_class);
void     rw_main_window_add_stages (RwMainWindow *self);      /* once */
void     rw_main_window_show_stages (RwMainWindow *self);     /* of a new job, or none */
void     rw_main_window_show_diagnosis (RwMainWindow *self);  /* instead of it */
gboolean rw_main_window_take_stage_spot (RwMainWindow *self); /* FALSE: that side is not seen */
void     rw_main_window_answer_stage (RwMainWindow *self, gboolean yes);

/* rw-main-window-class.c: the projector, and what a class sees on it. */
void rw_main_window_install_class_actions (GtkWidgetClass *widget_class);
void rw_main_window_add_class (RwMainWindow *self);           /* once */
void rw_main_window_recall_class (RwMainWindow *self);        /* once there are settings */
void rw_main_window_show_class (RwMainWindow *self);          /* of a new job, or none */
void rw_main_window_drop_class (RwMainWindow *self);

/* rw-main-window-lesson.c: "call it first", and lessons. After the class. */
void rw_main_window_install_lesson_actions (GtkWidgetClass *widget_class);
void rw_main_window_add_lesson (RwMainWindow *self);  /* once */
void rw_main_window_show_lesson (RwMainWindow *self); /* of a new job, or none */
void rw_main_window_drop_lesson (RwMainWindow *self);

/* rw-main-window-compare.c: "Compare with…". */
void rw_main_window_compare (GtkWidget *widget, const char *name, GVariant *parameter);

/* rw-main-window-note.c: a note on the job. */
void rw_main_window_note (GtkWidget *widget, const char *name, GVariant *parameter);

/* rw-main-window-replay.c: chapters, jumps, skipping. */
void rw_main_window_install_replay_actions (GtkWidgetClass *widget_class);
void rw_main_window_show_replay (RwMainWindow *self); /* of a new job, or none */

/* rw-main-window-notes.c: deciding first, notes on a replay, going on from it. */
void rw_main_window_install_notes_actions (GtkWidgetClass *widget_class);
void rw_main_window_show_notes (RwMainWindow *self); /* of a new job, or none */
void rw_main_window_drop_notes (RwMainWindow *self);

/* rw-main-window-open-notes.c: a file of notes is opened. */
void rw_main_window_open_notes (RwMainWindow *self, const char *path);
void rw_main_window_add_open_notes (RwMainWindow *self);  /* once */
void rw_main_window_show_open_notes (RwMainWindow *self); /* of a new job, or none */
void rw_main_window_drop_open_notes (RwMainWindow *self);

/* rw-main-window-drill.c: actions of the practice cabinet: a new one, its own window, and drills. */
void rw_main_window_begin_practice (GtkWidget *widget, const char *name, GVariant *parameter);
void rw_main_window_open_bench (GtkWidget *widget, const char *name, GVariant *parameter);
void rw_main_window_new_drill (GtkWidget *widget, const char *name, GVariant *parameter);
void rw_main_window_end_drill (GtkWidget *widget, const char *name, GVariant *parameter);
void rw_main_window_open_repairs (GtkWidget *widget, const char *name, GVariant *parameter);

/* rw-main-window-files.c */
char *rw_main_window_new_path (const char *folder, const char *cabinet); /* (transfer full) */
gboolean rw_main_window_open_session (RwMainWindow *self, const char *path); /* FALSE: what is wrong was said */
void rw_main_window_ask_open (RwMainWindow *self);
void rw_main_window_ask_copy (RwMainWindow *self);
void rw_main_window_ask_picture (RwMainWindow *self);
void rw_main_window_ask_plan (RwMainWindow *self);
void rw_main_window_ask_move (RwMainWindow *self);
void rw_main_window_continue (RwMainWindow *self, const char *path);
void rw_main_window_start_job (RwMainWindow *self, RwSessionHeader *header);

G_END_DECLS
