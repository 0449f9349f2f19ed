/* rw-meter-finder.h: finds the meter: which port, line settings and format explain what comes.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Tries every port that it is given with the line settings and formats there are, listening and, where a
 * format needs it, asking. It ends after RW_METER_FINDER_SECONDS at the latest, sooner when one answer
 * explains everything. The work is done in a thread; all signals come in the owner's context:
 *
 *   "progress" (double share, const char *words)  0 … 1, and a translated sentence on what is tried now
 *   "done" ()                                     get_found () holds what was found, the likeliest first
 *
 * "digits-11a" and "digits-11b" put the minus in different bits of one byte. The finder never chooses
 * between them: the answer then has sign_unsure set until learn_negative () was told of a reading that
 * the user knows to be negative.
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-meter-address.h"

G_BEGIN_DECLS

#define RW_METER_FINDER_SECONDS 20

typedef struct
{
  RwMeterAddress *address;     /* owned */
  const char     *format;      /* id; with sign_unsure "digits-11a", which stands for both */
  double          sure;        /* 0 … 1: the chance that this is the format, among all that were tried */
  double          explained;   /* 0 … 1: share of the bytes that the format explains */
  guint           values;      /* read while listening */
  RwMeterValue    newest;      /* valid when values > 0; with sign_unsure without its sign */
  gboolean        sign_unsure;
  char           *identity;    /* owned; what an instrument says it is; NULL */
} RwMeterFound;

#define RW_TYPE_METER_FINDER (rw_meter_finder_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterFinder, rw_meter_finder, RW, METER_FINDER, GObject)

/* (transfer full) */
RwMeterFinder *rw_meter_finder_new (void);

/* Serial ports by name (of char *), TCP addresses (of RwMeterAddress); both nullable. Copied. No effect
 * while it runs. */
void rw_meter_finder_start (RwMeterFinder *self, GPtrArray *ports, GPtrArray *hosts);

/* Stops; no signal after that. Ports are closed when this returns or soon after. */
void rw_meter_finder_stop (RwMeterFinder *self);

gboolean rw_meter_finder_is_running (RwMeterFinder *self);

/* The likeliest first; valid until the next start. Nothing found: 0. */
guint               rw_meter_finder_get_n_found (RwMeterFinder *self);
const RwMeterFound *rw_meter_finder_get_found (RwMeterFinder *self, guint i);

/* One sentence on the outcome: what was found and how sure that is, or why nothing was, and what to do.
 * (transfer full) */
char *rw_meter_finder_describe (RwMeterFinder *self);

/* The user has the meter on something that must read negative (leads swapped on any battery). Listens again
 * to found number @i for some seconds, and ends with "done": its format is then settled and sign_unsure
 * FALSE, or the sentence says why not. */
void rw_meter_finder_learn_negative (RwMeterFinder *self, guint i);

/* Makes the port for an address; its line is what is tried just now. Called in threads. (transfer full) */
typedef RwBytePort *(*RwPortMaker) (const RwMeterAddress *address, gpointer data);

/* Other ports than those of this computer, for tests. @data must outlive the finder's threads. */
void rw_meter_finder_set_maker (RwMeterFinder *self, RwPortMaker maker, gpointer data);

G_END_DECLS
