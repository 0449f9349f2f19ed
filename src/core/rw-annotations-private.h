/* rw-annotations-private.h: what the parts of annotations share. For rw-annotation*.c alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <json-glib/json-glib.h>

#include "rw-annotations.h"

G_BEGIN_DECLS

/* --- one line (rw-annotation.c) --- */

typedef enum
{
  RW_ANNOTATION_NOTE,
  RW_ANNOTATION_CALL,  /* a class called a reading first */
  RW_ANNOTATION_OTHER, /* of a form that is not known here: kept, and not looked at */
} RwAnnotationKind;

typedef struct
{
  RwAnnotationKind kind;
  RwAnnotation shown;   /* fit to be shown; n as its file has it; but for a note its text is "" */
  RwCallSaid   call;    /* of a CALL */
  JsonNode    *node;    /* (nullable) as read, when it holds more than that, or words that are shown otherwise */
  guint        retract; /* not 0: it is no annotation, but takes number @retract back */
} RwAnnotationLine;

gboolean rw_annotation_line_read (RwAnnotationLine *out, const char *tainted, gsize length, GError **error);
void     rw_annotation_line_clear (RwAnnotationLine *self);

/* Appends it under number @n, newline and all. */
void rw_annotation_line_append (const RwAnnotationLine *self, guint n, GString *out);

/* One that was written just now. (transfer full) */
char *rw_annotation_line_make (double t, guint at, const char *by, const char *text, GDateTime *written);

/* A call that was made just now. (transfer full) */
char *rw_annotation_line_make_call (double t, guint at, const RwCallSaid *said, GDateTime *written);

/* What makes two of them the same, whatever their numbers. (transfer full) */
char *rw_annotation_line_dup_key (const RwAnnotationLine *self);

void rw_annotations_head_set (RwAnnotationsHead *self, const RwAnnotationsHead *other); /* copies; not from itself */

/* The first line of a file, with its newline. */
void rw_annotation_header_append (const RwAnnotationsHead *head, GString *out);

/* *out is empty with an error. */
gboolean rw_annotation_header_read (RwAnnotationsHead *out, const char *tainted, gsize length, GError **error);

/* --- one file (rw-annotations-file.c) --- */

typedef struct
{
  char     *path;    /* NULL: bytes alone */
  GArray   *lines;   /* of RwAnnotationLine */
  RwAnnotationsHead head; /* as its first line says; empty: there is no file yet, or not one to be written to */
  char     *report;  /* (nullable) what was damaged or left out */
  gboolean  exists;
  gboolean  usable;  /* it may be written to */
  guint     last_n;
  gsize     good_end;
  gboolean  needs_newline;
  goffset   size;    /* bytes when it was read; −1: there was none */
} RwAnnotationsFile;

RwAnnotationsFile *rw_annotations_file_new (void);
void               rw_annotations_file_free (RwAnnotationsFile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwAnnotationsFile, rw_annotations_file_free)

/* @session (nullable): another one's are refused. */
gboolean rw_annotations_file_parse (RwAnnotationsFile *self, const char *tainted, gsize length, gboolean whole,
                                    const char *name, const char *session, const RwLimits *limits, GError **error);

/* What stands at @path; none there is no error. What is wrong is told in report. (transfer full) */
RwAnnotationsFile *rw_annotations_file_load (const char *path, const char *session);

/* The numbers that it takes back. (transfer full) */
GHashTable *rw_annotations_file_list_retracted (const RwAnnotationsFile *self);

/* Appends whole lines behind what is there, the header first in a new file; returns once they are on disk. A file
 * that grew meanwhile is read again first. @make is called once the next number is known. */
typedef void (*RwAnnotationsMake) (guint next_n, GString *out, gpointer data);
gboolean rw_annotations_file_append (RwAnnotationsFile *self, const RwAnnotationsHead *head, RwAnnotationsMake make,
                                     gpointer data, GError **error);

/* --- all of them (rw-annotations.c, rw-annotations-kept.c) --- */

/* Where a number stands. */
typedef struct
{
  guint file;
  guint n; /* in that file */
} RwAnnotationPlace;

#define RW_ANNOTATIONS_FILES 2

struct _RwAnnotations
{
  GObject            parent_instance;
  RwAnnotationsHead  head;
  RwAnnotationsFile *files[RW_ANNOTATIONS_FILES]; /* beside, of the user; NULL: there is no such place */
  GArray            *live;           /* of RwAnnotation; borrows its words from the files' lines */
  GArray            *places;         /* of RwAnnotationPlace, by number − 1 */
  char              *report;
};

G_END_DECLS
