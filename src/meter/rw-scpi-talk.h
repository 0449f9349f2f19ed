/* rw-scpi-talk.h: what to say to a SCPI instrument, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: the time comes in as an argument, the text to send comes out. States, with what is
 * sent on the way:
 *
 *   CLEAR ──*CLS──► ASK NAME ──*IDN?──► AWAIT NAME ──answer, or two tries in vain──► CONFIGURE
 *   CONFIGURE ──CONF:VOLT:DC──► ASK ──READ?──► AWAIT ──value──► ASK ──READ?──► AWAIT …
 *   AWAIT ──no value in time──► ASK; after three tries in vain ──► CLEAR (was it off?)
 *
 * One question is under way at a time. The wait doubles with each try in vain. A value that
 * comes after its question was repeated may be followed by the repetition's: the talk then
 * pauses as long as that answer took, and waits at least twice as long from then on, so that
 * a slow meter is not flooded with questions. (IEEE Std 488.2-1992, 10.3 *CLS, 10.14 *IDN?;
 * SCPI-1999 vol. 2, 3.4 CONFigure, 3.5 READ?)
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef struct _RwScpiTalk RwScpiTalk;

/* @patience_us: how long the first wait for a value is. (transfer full) */
RwScpiTalk *rw_scpi_talk_new (gint64 patience_us);
void        rw_scpi_talk_free (RwScpiTalk *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwScpiTalk, rw_scpi_talk_free)

/* Begins anew with CLEAR: the port was just opened. The name is kept. */
void rw_scpi_talk_restart (RwScpiTalk *self, gint64 now_us);

/* The text to send now, with its newline, or NULL. Call it until it gives NULL, and again
 * after each hear (), answered () and not later than *due_us. */
const char *rw_scpi_talk_next (RwScpiTalk *self, gint64 now_us, gint64 *due_us);

typedef enum
{
  RW_SCPI_HEARD_OTHERS, /* not for the talk: decode them as values */
  RW_SCPI_HEARD_OWN,    /* for the talk, which is waiting for the name */
  RW_SCPI_HEARD_NAME    /* the name was among them */
} RwScpiHeard;

/* Bytes came: for whom? */
RwScpiHeard rw_scpi_talk_hear (RwScpiTalk *self, const guint8 *tainted, gsize n);

/* A value came. */
void rw_scpi_talk_answered (RwScpiTalk *self, gint64 now_us);

/* "Quayside M3": the first two fields of the answer to *IDN?; NULL when it gave none. */
const char *rw_scpi_talk_get_name (const RwScpiTalk *self);

G_END_DECLS
