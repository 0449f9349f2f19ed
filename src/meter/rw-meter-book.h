/* rw-meter-book.h: the meters of this bench, remembered: facts, where each is reached, how it speaks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * One JSON file in the user's data folder, written as a whole and atomically. A damaged file is set aside
 * under another name, never overwritten, and the error says so.
 */
#pragma once

#include "rw-meter-address.h"
#include "rw-meter-facts.h"

G_BEGIN_DECLS

typedef enum
{
  RW_METER_BOOK_ERROR_DAMAGED, /* the file is no meter book; the message says why and where it went */
  RW_METER_BOOK_ERROR_READ,    /* there, but it could not be read, or not set aside: it is never overwritten */
  RW_METER_BOOK_ERROR_WRITE
} RwMeterBookError;
#define RW_METER_BOOK_ERROR (rw_meter_book_error_quark ())
GQuark rw_meter_book_error_quark (void);

typedef struct
{
  RwMeterFacts   *facts;    /* id ("m1" is the bench meter that is read by eye), name, percent, counts, ac */
  RwMeterAddress *address;  /* NULL: read by eye */
  char           *format;   /* id of its format; NULL without address */
  char           *pattern;  /* of "lines"; NULL: free text */
  char            mark;     /* decimal mark in its text, '.' or ',' */
  char           *identity; /* what it says it is; NULL */
  char           *rail;     /* the rail it stays on; NULL: it moves about */
} RwKnownMeter;

RwKnownMeter *rw_known_meter_new (const RwMeterFacts *facts);
RwKnownMeter *rw_known_meter_copy (const RwKnownMeter *self);
void          rw_known_meter_free (RwKnownMeter *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwKnownMeter, rw_known_meter_free)

/* A decoder with its format, pattern and mark, not fed yet; NULL without address, or with an error when its
 * format or pattern is not understood. (transfer full) */
RwDecoder *rw_known_meter_make_decoder (const RwKnownMeter *self, GError **error);

typedef struct _RwMeterBook RwMeterBook;

/* The book at @path (NULL: "meters.json" in the user's data folder). No file: an empty book. On a damaged
 * file *error is set and the book is empty, never NULL. (transfer full) */
RwMeterBook *rw_meter_book_new (const char *path, GError **error);
RwMeterBook *rw_meter_book_ref (RwMeterBook *self);
void         rw_meter_book_unref (RwMeterBook *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwMeterBook, rw_meter_book_unref)

/* What these give is valid until the book changes. */
guint               rw_meter_book_get_n (const RwMeterBook *self);
const RwKnownMeter *rw_meter_book_get (const RwMeterBook *self, guint i);
const RwKnownMeter *rw_meter_book_find (const RwMeterBook *self, const char *id); /* (nullable) */
const RwKnownMeter *rw_meter_book_find_address (const RwMeterBook *self, const RwMeterAddress *address); /* (nullable) */

/* An id that no meter of the book has: "m2", "m3", … (transfer full) */
char *rw_meter_book_make_id (const RwMeterBook *self);

/* Adds or replaces by id, and writes the file. What another book has written to the same file meanwhile is
 * taken in first. FALSE: the book holds it, the file could not be written. */
gboolean rw_meter_book_put (RwMeterBook *self, const RwKnownMeter *meter, GError **error);
gboolean rw_meter_book_remove (RwMeterBook *self, const char *id, GError **error);

/* Sensible facts by class of meter, such as "4000 counts, 0.5 % + 2". Static. */
typedef struct
{
  const char *id;    /* "counts-4000" */
  const char *title; /* N_(): translate before showing */
  double      percent, counts;
  RwMeterAc   ac;
} RwMeterPreset;

const RwMeterPreset *rw_meter_preset_list (guint *n);

G_END_DECLS
