/* rw-scpi-talk.h: what to say to a SCPI instrument, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * States, with what is sent on the way:
 *
 *   CLEAR ──*CLS──► ASK NAME ──*IDN?──► AWAIT NAME ──answer, or two tries in vain──► CHANGE
 *   CHANGE ──*CLS──► CONFIGURE
 *   CONFIGURE ──CONF:…──► ASK ERROR ──SYST:ERR?──► AWAIT ERROR ──0, or 16 of them──► ASK
 *   ASK ──READ?──► AWAIT ──value──► ASK ──READ?──► AWAIT …
 *   AWAIT ──no value in time──► ASK ERROR … ──► ASK; after three tries in vain ──► CLEAR
 *   CONFIGURE was answered by an error ──► REFUSED ──5 s, or another kind──► CHANGE
 *   another kind wanted, between two questions ──► CHANGE
 *
 * One question is under way at a time. The wait doubles with each try in vain. A value that
 * comes after its question was repeated may be followed by the repetition's: the talk then
 * pauses as long as that answer took, and waits at least twice as long from then on, so that
 * a slow meter is not flooded with questions. An instrument that sends values but twice no
 * answer to SYST:ERR? is not asked for its errors any more.
 *
 * The queue is cleared before CONF, so that what it holds after is CONF's.
 * Nothing is read after a CONF that the instrument answered with a command or execution error
 * (−100 … −299): it would still measure what it measured before. When the answer to the first
 * SYST:ERR? after it does not come, all is configured once more. After a change of kind,
 * answers to questions from before it are thrown away. An instrument answers in order, so the
 * answer to SYST:ERR? or *IDN? marks the end of all older ones; without such a mark as many
 * values are thrown away as questions were open.
 *
 * IEEE Std 488.2-1992, 10.3 *CLS, 10.14 *IDN?; SCPI-1999 vol. 2, 3.4 CONFigure, 3.5 READ?,
 * 21.8 SYSTem:ERRor. An entry of the queue is <NR1>,"<description>[;<details>]".
 */
#pragma once

#include "rw-talk.h"

G_BEGIN_DECLS

/* @patience_us: how long the first wait for a value is. Measures DC at first; can be set to
 * DC, RIPPLE and OHMS: for currents and temperatures the leads must be moved first.
 * (transfer full) */
RwTalk *rw_scpi_talk_new (gint64 patience_us);

G_END_DECLS
