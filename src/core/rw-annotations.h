/* rw-annotations.h: what people wrote on a replayed session, kept beside its file and never in it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two kinds: notes, and calls that a class made over the replay (rw-call.h).
 *
 * Signal "changed": an annotation was written, taken back, or came in from another file.
 */
#pragma once

#include <glib-object.h>

#include "rw-event-call.h"
#include "rw-limits.h"

G_BEGIN_DECLS

typedef enum
{
  RW_ANNOTATIONS_ERROR_READ,    /* a file cannot be read */
  RW_ANNOTATIONS_ERROR_HEADER,  /* its first line is no header of annotations */
  RW_ANNOTATIONS_ERROR_SESSION, /* they belong to another session */
  RW_ANNOTATIONS_ERROR_WRITE,   /* the disk refused */
  RW_ANNOTATIONS_ERROR_FULL,    /* too many, or a text too long */
} RwAnnotationsError;
#define RW_ANNOTATIONS_ERROR (rw_annotations_error_quark ())
GQuark rw_annotations_error_quark (void);

typedef struct
{
  guint  n;       /* counts from 1 */
  double t;       /* seconds since the session started */
  guint  at;      /* number of the event that it is about; 0: of the moment alone */
  char  *by;      /* "" when nobody is named */
  char  *text;
  char  *written; /* ISO 8601, UTC */
} RwAnnotation;

/* What the first line of a file of annotations says. */
typedef struct
{
  char      *session; /* the id of the session that they belong to */
  char      *cabinet; /* (nullable) its cabinet, for who has the notes alone; older files do not say */
  GDateTime *started; /* (nullable) UTC; as well */
} RwAnnotationsHead;

void rw_annotations_head_clear (RwAnnotationsHead *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (RwAnnotationsHead, rw_annotations_head_clear)

/* Reads the first line of a file, and no more of it. The error names the file; *out is empty then. */
gboolean rw_annotations_read_head (const char *path, RwAnnotationsHead *out, GError **error);

#define RW_TYPE_ANNOTATIONS (rw_annotations_get_type ())
G_DECLARE_FINAL_TYPE (RwAnnotations, rw_annotations, RW, ANNOTATIONS, GObject)

/* Those of the session of @id whose file is @session_path: NAME.rwnotes beside NAME.rwlog, or the one in the user's
 * data folder that is named by the session, or both when both are there. Nothing is written before the first
 * rw_annotations_add (). A file that is damaged or belongs to another session is told by
 * rw_annotations_get_report (). @session_path (nullable): only those of the data folder. */
RwAnnotations *rw_annotations_new (const char *session_id, const char *session_path);

/* The same from bytes, with no file: for tests, and to look into a file that came in. @session_id (nullable): any. */
RwAnnotations *rw_annotations_new_from_bytes (const char *tainted, gsize length, const char *name,
                                              const char *session_id, const RwLimits *limits, GError **error);

/* NAME.rwlog for NAME.rwnotes: the session that a file of notes lies beside, whether it is there or not. NULL: @path is
 * no name of such a file. (transfer full) */
char *rw_annotations_dup_session_path (const char *path);

/* What a file that is made from now on says of the session beside its id; @cabinet and @started as in its header. */
void rw_annotations_set_about (RwAnnotations *self, const char *cabinet, GDateTime *started);

/* Is @path one of the files that these were read from? */
gboolean rw_annotations_has_file (RwAnnotations *self, const char *path);

/* What was damaged or left out. (nullable) borrowed */
const char *rw_annotations_get_report (RwAnnotations *self);
const char *rw_annotations_get_session (RwAnnotations *self); /* its id; borrowed */

/* Where the next one will be written; NULL without a file. borrowed */
const char *rw_annotations_get_path (RwAnnotations *self);

/* The notes that were not taken back, by time, then as they were written. Borrowed until "changed". */
guint               rw_annotations_get_n (RwAnnotations *self);
const RwAnnotation *rw_annotations_get (RwAnnotations *self, guint i);

/* Writes one, and returns once it is on disk. @at: number of an event, or 0. @written: now. The text is kept as it
 * is. Where the session's own folder cannot be written to, the data folder is taken. Returns its number, 0 with an
 * error. */
guint rw_annotations_add (RwAnnotations *self, double t, guint at, const char *by, const char *text,
                          GDateTime *written, GError **error);

/* Writes a call made at @t, when event @at had happened last (0: none had). As rw_annotations_add (). */
guint rw_annotations_add_call (RwAnnotations *self, double t, guint at, const RwCallSaid *said, GDateTime *written,
                               GError **error);

/* The calls that were not taken back, in the order of their writing, as events whose n is the number of the last event
 * that had happened. (transfer full) (element-type RwEvent), each cleared with the array. */
GArray *rw_annotations_dup_calls (RwAnnotations *self);

/* Takes number @n back; it stays in the file. */
gboolean rw_annotations_retract (RwAnnotations *self, guint n, GError **error);

/* Writes what is not taken back to a file that travels; it is replaced as a whole or not at all. */
gboolean rw_annotations_export (RwAnnotations *self, const char *path, GError **error);

/* How many rw_annotations_import () would take in from @path. The same errors. */
gboolean rw_annotations_count_new (RwAnnotations *self, const char *path, guint *n, GError **error);

/* Takes in what another file says on the same session; what is here already (same moment, name, text and time of
 * writing) is not taken twice. *added: how many were new. Refused when it belongs to another session. *report
 * (nullable) receives what was damaged, or NULL. (transfer full) */
gboolean rw_annotations_import (RwAnnotations *self, const char *path, guint *added, char **report, GError **error);

/* All lines, header first, as a file holds them: with what was taken back. (transfer full) */
GString *rw_annotations_to_lines (RwAnnotations *self);

G_END_DECLS
