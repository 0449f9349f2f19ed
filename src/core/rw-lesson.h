/* rw-lesson.h: a lesson: steps over a saved session or a practice cabinet, with what to say, hide and ask.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Read from JSON (schema: data/schemas/lesson.schema.json). All texts are translated where a translation is known.
 * A lesson may come from anybody: its size, the number of its steps and the length of its texts are limited, texts are
 * made plain (rw-plain-text.h), ids hold nothing but letters, digits and hyphens, and it names no path.
 *
 * A step says everything that is seen while it lasts, so that going back restores it: what it does not name is not
 * hidden, not lit, and has no text. Only "show" goes on as the step before had it when a step leaves it out.
 */
#pragma once

#include <gio/gio.h>

#include "rw-kinds.h"
#include "rw-profile.h"

G_BEGIN_DECLS

typedef enum
{
  RW_LESSON_ERROR_READ,   /* the file could not be read */
  RW_LESSON_ERROR_FORMAT, /* too large, not JSON, or a key is missing or wrong; the message names file, step and key */
} RwLessonError;
#define RW_LESSON_ERROR (rw_lesson_error_quark ())
GQuark rw_lesson_error_quark (void);

#define RW_LESSON_MAX_BYTES (256 * 1024)
#define RW_LESSON_MAX_STEPS 100
#define RW_LESSON_MAX_TEXT 1500 /* characters of a text */

/* What the class sees. */
typedef enum
{
  RW_LESSON_SHOW_VALUES,
  RW_LESSON_SHOW_MAP,   /* of the trim */
  RW_LESSON_SHOW_CHART, /* over time */
  RW_LESSON_SHOW_CHECK, /* the next one */
  RW_LESSON_SHOW_TEXT,  /* the step's words alone */
  RW_LESSON_SHOW_BLANK
} RwLessonShow;

/* What has to be done before the next step makes sense. */
typedef enum
{
  RW_LESSON_UNTIL_NOTHING,
  RW_LESSON_UNTIL_READING,
  RW_LESSON_UNTIL_TRIM,
  RW_LESSON_UNTIL_MARK,
  RW_LESSON_UNTIL_FINDING,
  RW_LESSON_UNTIL_REPAIR,
  RW_LESSON_UNTIL_REVEAL /* of a round of calls */
} RwLessonUntil;

/* Texts owned, ids interned. */
typedef struct
{
  char         *title;
  char         *say;       /* (nullable) for the teacher alone */
  char         *words;     /* (nullable) "class": for the projector */
  char         *ask;       /* (nullable) a question to the class */
  char         *caution;   /* (nullable) a hazard of this step, said before it is done */
  GPtrArray    *hide;      /* (element-type utf8) rail ids, interned */
  RwLessonShow  show;
  const char   *spotlight; /* (nullable) rail id */
  const char   *call_rail; /* (nullable) a round of calls is asked with this step */
  RwPlace       call_place;
  char         *chapter;   /* (nullable) title of the chapter that a replay goes to, as the file writes it */
  double        t;         /* seconds that a replay goes to; NaN: not said */
  RwLessonUntil until;
} RwLessonStep;

typedef struct
{
  const char *id;       /* interned; of a cause */
  double      strength; /* 0 … 1 */
} RwLessonFault;

/* Immutable, reference-counted, all fields read-only. */
typedef struct
{
  const char *id; /* interned */
  char       *title;
  char       *about;
  char       *caution; /* (nullable) read before the first step */
  double      minutes; /* about how long it takes */
  char       *path;    /* of its file */

  const char *session; /* (nullable) interned: name of a demo session, without its ending */
  const char *profile; /* (nullable) interned: of a practice cabinet */
  char       *cabinet; /* its name */
  guint64     seed;
  GArray     *faults;  /* of RwLessonFault */
  guint       drill;   /* level of a drill instead of a profile and faults; 0: none */

  GPtrArray  *steps;   /* of RwLessonStep, at least one */
} RwLesson;

/* (transfer full) */
RwLesson *rw_lesson_load (const char *path, GError **error);
RwLesson *rw_lesson_ref (RwLesson *self);
void      rw_lesson_unref (RwLesson *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwLesson, rw_lesson_unref)

/* Every lesson of the user's folder and the shipped one, the user's first, an id only once, by title within each.
 * Files that cannot be read are told to @problems (nullable) (element-type utf8) and left out. (transfer full)
 * (element-type RwLesson) */
GPtrArray *rw_lesson_list (GPtrArray *problems);

/* The file of its session: beside the lesson's own file, in the user's folder of demo sessions, or among the shipped
 * ones. NULL: nowhere. (transfer full) */
char *rw_lesson_find_session (const RwLesson *self);

/* A rail that a step names and the cabinet does not have; NULL when all are there. */
const char *rw_lesson_find_stranger (const RwLesson *self, const RwProfile *profile);

/* What a step waits for, in words: "Go on when a reading was kept." NULL: nothing. Static. */
const char *rw_lesson_until_get_label (RwLessonUntil until);

G_END_DECLS
