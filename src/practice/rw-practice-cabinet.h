/* rw-practice-cabinet.h: a simulated cabinet that one can switch, plug, trim and probe.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * It knows no clock: time advances only by rw_practice_cabinet_advance (), in whole steps of
 * RW_PRACTICE_STEP, so that the same calls give the same readings however long they took. It
 * writes no events: the owner turns what it does into events.
 *
 * Properties (read, notify): "power", "board-fitted", "warm", "tripped" (boolean), "trim" (double
 * 0 … 1), "board-state" (int, RwPracticeBoard).
 * Signal "reset" (guint resets so far): the board reset, during an advance.
 * Signal "lethal" (const char *node, const char *text): somebody was about to touch mains; it was stopped, and the
 * translated text explains. "leads-moved": any lead is somewhere else, or off.
 */
#pragma once

#include <gio/gio.h>

#include "rw-practice-faults.h"
#include "rw-profile.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PRACTICE_ERROR_FAULT,   /* no such fault, or this supply cannot have it */
  RW_PRACTICE_ERROR_PROFILE, /* the profile cannot be built */
  RW_PRACTICE_ERROR_SCRIPT,  /* a script's line is wrong; the message names file and line */
  RW_PRACTICE_ERROR_STATE    /* a script's step did not come about */
} RwPracticeError;
#define RW_PRACTICE_ERROR (rw_practice_error_quark ())
GQuark rw_practice_error_quark (void);

#define RW_TYPE_PRACTICE_CABINET (rw_practice_cabinet_get_type ())
G_DECLARE_FINAL_TYPE (RwPracticeCabinet, rw_practice_cabinet, RW, PRACTICE_CABINET, GObject)

/* @faults: (array length=n_faults) (nullable). Power off, board fitted. (transfer full)
 * Errors: RW_PRACTICE_ERROR_FAULT, _PROFILE. */
RwPracticeCabinet *rw_practice_cabinet_new (RwProfile             *profile,
                                            guint64                seed,
                                            const RwPracticeFault *faults,
                                            guint                  n_faults,
                                            const char            *name,
                                            GError               **error);

/* Moves time on. Parts of a step wait for the next call. Negative or NaN: nothing happens. */
void   rw_practice_cabinet_advance (RwPracticeCabinet *self, double seconds);
double rw_practice_cabinet_get_seconds (RwPracticeCabinet *self); /* in whole steps */

/* What hands do. */
void     rw_practice_cabinet_set_power (RwPracticeCabinet *self, gboolean on);
void     rw_practice_cabinet_set_board_fitted (RwPracticeCabinet *self, gboolean fitted);
/* The trim, by a share of its travel or by volts of the reference rail; it stops at its ends. */
void     rw_practice_cabinet_turn_trim (RwPracticeCabinet *self, double delta);
void     rw_practice_cabinet_turn_trim_volts (RwPracticeCabinet *self, double volts);
/* @rail NULL: leads off. FALSE when there is no such spot; the leads stay where they were. */
gboolean rw_practice_cabinet_set_leads (RwPracticeCabinet *self, const char *rail, RwPlace place,
                                        RwKind kind);
/* One lead on a point of rw-practice-nodes.h, NULL: in the air. FALSE, and it stays where it was, when there is no
 * such point, or when it is a mains point: then "lethal" is emitted. What is measured is the meter's own business. */
typedef enum
{
  RW_PRACTICE_RED,
  RW_PRACTICE_BLACK,
  RW_PRACTICE_N_LEADS
} RwPracticeLead;
gboolean    rw_practice_cabinet_put_lead (RwPracticeCabinet *self, RwPracticeLead lead,
                                          const char *node);
const char *rw_practice_cabinet_get_lead (RwPracticeCabinet *self,
                                          RwPracticeLead     lead); /* (nullable) node id */
guint       rw_practice_cabinet_get_n_lethal (RwPracticeCabinet *self); /* times it was stopped */
/* Mends a cause. TRUE when the cabinet had it. A mended trim fault turns the trim back only when
 * nobody has turned it since. */
gboolean rw_practice_cabinet_repair (RwPracticeCabinet *self, const char *cause);

/* What eyes and ears can tell. */
RwProfile      *rw_practice_cabinet_get_profile (RwPracticeCabinet *self); /* borrowed */
const char     *rw_practice_cabinet_get_name (RwPracticeCabinet *self);
guint64         rw_practice_cabinet_get_seed (RwPracticeCabinet *self);
gboolean        rw_practice_cabinet_get_power (RwPracticeCabinet *self);
gboolean        rw_practice_cabinet_get_board_fitted (RwPracticeCabinet *self);
/* Past one warm-up time constant, some ten minutes. */
gboolean        rw_practice_cabinet_get_warm (RwPracticeCabinet *self);
double          rw_practice_cabinet_get_on_minutes (RwPracticeCabinet *self); /* since power on */
double          rw_practice_cabinet_get_trim (RwPracticeCabinet *self);      /* 0 … 1 */
/* By somebody's hand, since the start. */
gboolean        rw_practice_cabinet_get_trim_turned (RwPracticeCabinet *self);
RwPracticeBoard rw_practice_cabinet_get_board_state (RwPracticeCabinet *self);
guint           rw_practice_cabinet_get_resets (RwPracticeCabinet *self);    /* since the start */
gboolean        rw_practice_cabinet_get_ticking (RwPracticeCabinet *self);   /* it can be heard */
/* The over-voltage latch holds the supply off. */
gboolean        rw_practice_cabinet_get_tripped (RwPracticeCabinet *self);
/* The reading that the leads make; (nullable) rail id, NULL: none, or leads off; *place and *kind may be NULL */
const char     *rw_practice_cabinet_get_leads (RwPracticeCabinet *self, RwPlace *place,
                                               RwKind *kind);

/* TRUE when the symptom can be seen or heard now. Known: rw_practice_cabinet_knows_symptom (). */
gboolean rw_practice_cabinet_has_symptom (RwPracticeCabinet *self, const char *symptom);
gboolean rw_practice_cabinet_knows_symptom (const char *symptom);

/* For tests and for the end of a drill only. */
double                 rw_practice_cabinet_get_true_volts (RwPracticeCabinet *self,
                                                           const char *rail, RwPlace place,
                                                           RwKind kind);
guint                  rw_practice_cabinet_get_true_n_faults (RwPracticeCabinet *self);
const RwPracticeFault *rw_practice_cabinet_get_true_fault (RwPracticeCabinet *self, guint index);
const RwPracticeModel *rw_practice_cabinet_get_true_model (RwPracticeCabinet *self);

/* Called after every step while the cabinet lives; one at a time, NULL takes it away. For the
 * meter. */
typedef void (*RwPracticeStepFunc) (RwPracticeCabinet *self, gpointer data);
void rw_practice_cabinet_set_step_func (RwPracticeCabinet *self, RwPracticeStepFunc func,
                                        gpointer data);
/* Counts up whenever the leads are moved. */
guint rw_practice_cabinet_get_leads_serial (RwPracticeCabinet *self);

G_END_DECLS
