/* rw-meter-books.h: the one meter book of the process, and what the bench needs of it besides.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-meter-book.h"

G_BEGIN_DECLS

/* The book in the user's data folder, read at the first call. Borrowed; lives as long as the program. */
RwMeterBook *rw_meter_books_get_default (void);

/* What was wrong with its file when it was read or last written: a sentence. (nullable) borrowed */
const char *rw_meter_books_get_problem (void);

/* As the calls of the book, on the default one; what goes wrong is remembered as its problem. */
void rw_meter_books_put (const RwKnownMeter *meter);
void rw_meter_books_remove (const char *id);

/* The meter of the book that is reached there and speaks so: one cable may serve several meters. @identity: what it
 * says it is; NULL: it does not say. (nullable) borrowed until the book changes */
const RwKnownMeter *rw_meter_books_find_same (const RwMeterAddress *address, const char *format, const char *identity);

/* Where a meter stays, as the book keeps it: a rail's id, for the board; "id@place" for another place.
 * (transfer full) (nullable): NULL when @rail is, it moves about. */
char *rw_meter_stay_to_text (const char *rail, RwPlace place);

/* The id of the rail, and *place; NULL, *place the board, for NULL or what is not understood. (transfer full) */
char *rw_meter_stay_from_text (const char *text, RwPlace *place);

G_END_DECLS
