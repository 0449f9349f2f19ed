/* rw-chapters.h: a session in chapters, by its marks, stages and turns of the trim, and the moments worth going to.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A pure function of a session. Immutable once made, reference-counted. What was retracted by the end of the session
 * heads no chapter and is no moment.
 *
 * A place in a session is told by how many of its events have happened there (n_events), since several may share one
 * second; t is the clock's second that belongs to it.
 */
#pragma once

#include "rw-session.h"
#include "rw-verdict.h"

G_BEGIN_DECLS

typedef enum
{
  RW_CHAPTER_START, /* what comes before the first heading */
  RW_CHAPTER_MARK,  /* marks of one text that follow each other head one chapter */
  RW_CHAPTER_STAGE, /* of the bring-up */
  RW_CHAPTER_TRIM,  /* turns of the trim, with what was read between them: one run, one chapter */
  RW_N_CHAPTER_KINDS
} RwChapterKind;

/* How a rail stood when a chapter began and when it ended: the verdict on its last DC reading. */
typedef struct
{
  const char *rail; /* id, interned */
  RwVerdict   before;
  RwVerdict   after;
} RwChapterVerdict;

typedef struct
{
  RwChapterKind kind;
  double        t;        /* seconds: begins; the first at 0 */
  double        end;      /* seconds: where the next one begins, or the session ends */
  guint         index;    /* of the event that heads it; the first chapter begins at event 0 */
  guint         until;    /* index of the event that heads the next one, or the number of events */
  guint         n_events; /* events that have happened where it begins: index + 1; 0 for a START */
  char         *title;    /* translated */

  /* What happened in it; all live events. */
  guint   n_readings; /* kept */
  guint   n_trims;
  guint   n_findings;
  guint   n_repairs;
  guint   n_marks;    /* of its own text; 0 unless it is a MARK */
  guint   n_warnings; /* that came up in it */
  GArray *verdicts;   /* of RwChapterVerdict: rails whose verdict changed */
} RwChapter;

typedef enum
{
  RW_MOMENT_WARNING,  /* just after the event that brought a warning of the bench state up */
  RW_MOMENT_TRIM,     /* just after a turn */
  RW_MOMENT_KEEP,     /* just after a reading was kept */
  RW_MOMENT_DECISION, /* where it was decided to do what @index then says: just after the last landmark before that
                       * finding or reading of another spot, when none of its samples had come in yet */
  RW_N_MOMENT_KINDS
} RwMomentKind;

typedef struct
{
  double      t;        /* seconds, for the clock */
  guint       n_events; /* events that have happened there */
  guint       index;    /* WARNING: the landmark that brought it; TRIM, KEEP: the event; DECISION: what was done then */
  const char *warning;  /* WARNING: its id, interned; else NULL */
} RwMoment;

/* Words for an event: a mark's title, "Under load" for a stage, … (transfer full) */
typedef char *(*RwChapterDescribe) (const RwEvent *event, gpointer data);

typedef struct _RwChapters RwChapters;

/* Of all events of @session. @describe: (nullable) names stages (RW_EVENT_STAGE) and whatever else heads a chapter; called
 * before this returns. Looks at the bench state after every landmark. (transfer full) */
RwChapters *rw_chapters_new (RwSession *session, RwChapterDescribe describe, gpointer data);

/* The same in two goes, since a long session has many states: at once, without warnings and verdicts; then @quick with
 * them. The second may run in a thread of its own, with a part of the session that nobody else has. (transfer full) */
RwChapters *rw_chapters_new_quick (RwSession *session, RwChapterDescribe describe, gpointer data);
RwChapters *rw_chapters_new_looked (const RwChapters *quick, RwSession *session);

RwChapters *rw_chapters_ref (RwChapters *self);
void        rw_chapters_unref (RwChapters *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwChapters, rw_chapters_unref)

/* At least one; they cover the session from 0 to its end in order, none overlaps another. */
guint            rw_chapters_get_n (const RwChapters *self);
const RwChapter *rw_chapters_get (const RwChapters *self, guint i);

/* The chapter that a place with @n_events happened lies in. */
guint rw_chapters_find (const RwChapters *self, guint n_events);

/* What changed in a chapter, in one line: "5 readings, 2 turns, +5 V: outside → inside"; "" when nothing did.
 * @profile: for the rails' labels. (transfer full) */
char *rw_chapter_describe_change (const RwChapter *chapter, RwProfile *profile);

/* The same for people from whom @hidden is kept, the id of a rail: nothing that names it. The title is "…" when it
 * holds that rail's label. @hidden: (nullable). (transfer full) */
char *rw_chapter_describe_change_without (const RwChapter *chapter, RwProfile *profile, const char *hidden);
char *rw_chapter_dup_title_without (const RwChapter *chapter, RwProfile *profile, const char *hidden);

guint           rw_chapters_get_n_moments (const RwChapters *self, RwMomentKind kind);
const RwMoment *rw_chapters_get_moment (const RwChapters *self, RwMomentKind kind, guint i);

/* The first moment with more than @n_events happened, or the last one with fewer. (nullable) */
const RwMoment *rw_chapters_next_moment (const RwChapters *self, RwMomentKind kind, guint n_events);
const RwMoment *rw_chapters_previous_moment (const RwChapters *self, RwMomentKind kind, guint n_events);

G_END_DECLS
