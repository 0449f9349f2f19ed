/* rw-event.h: one thing that happened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Everything that happens is an event; all else is computed from the ordered list of them.
 * Invariants:
 *  1. exactly one payload, named by type;
 *  2. ids are interned, free text is owned;
 *  3. `line` is set when the event came from a file and holds a key that we do not know, or text that is not
 *     fit to be shown as it stands (rw-plain-text.h), and then is the whole line as it was read, so that copying
 *     a file on loses nothing.
 */
#pragma once

#include "rw-event-call.h"
#include "rw-meter-facts.h"
#include "rw-profile.h"
#include "rw-reading.h"

G_BEGIN_DECLS

typedef enum
{
  RW_EVENT_UNKNOWN, /* kept, shown as "not understood" */
  RW_EVENT_SETUP,
  RW_EVENT_READING,
  RW_EVENT_SAMPLE,
  RW_EVENT_TRIM,
  RW_EVENT_SYMPTOM,
  RW_EVENT_FINDING,
  RW_EVENT_REPAIR,
  RW_EVENT_MARK,
  RW_EVENT_STAGE,
  RW_EVENT_NOTE,
  RW_EVENT_RETRACT,
  RW_EVENT_GAP,
  RW_EVENT_METER, /* a meter joined the job; its facts hold for all its readings */
  RW_EVENT_CALL,  /* a class calls a reading first */
  RW_N_EVENT_TYPES
} RwEventType;

/* No job lasts longer (thirty years): a larger t in a file is damage. */
#define RW_EVENT_MAX_SECONDS 1e9

/* A yes/no that may not have been said. */
typedef enum
{
  RW_SAID_NOT = -1,
  RW_SAID_NO = 0,
  RW_SAID_YES = 1
} RwSaid;

typedef struct
{
  RwSaid power_on;
  RwSaid board_fitted;
  RwSaid warm;
} RwSetup;

typedef enum
{
  RW_SYMPTOM_PRESENT,
  RW_SYMPTOM_ABSENT,
  RW_SYMPTOM_CURED
} RwSymptomState;

typedef enum
{
  RW_REPAIR_FIXED,
  RW_REPAIR_NO_CHANGE
} RwRepairResult;

typedef struct
{
  guint       n;    /* counts from 1; 0 until the session has numbered it */
  RwEventType type;
  double      t;    /* seconds since the session started */
  char       *line; /* (nullable) see invariant 3; owned */
  union
  {
    RwReading reading; /* READING and SAMPLE */
    RwSetup   setup;
    struct
    {
      gboolean moved;
    } trim;
    struct
    {
      const char    *id;
      RwSymptomState state;
    } symptom;
    struct
    {
      const char *check;
      const char *outcome;
    } finding;
    struct
    {
      const char    *cause;
      RwRepairResult result;
    } repair;
    struct
    {
      const char *id;
      gboolean    read;    /* the stage's hazard statement was read */
      char       *against; /* (nullable) owned: gone on against advice, and why */
    } stage;
    struct
    {
      char *text; /* owned: the note, the mark's "what" */
    } words;      /* NOTE, MARK */
    struct
    {
      guint n;
    } retract;
    struct
    {
      const char *meter; /* interned */
      char       *why;   /* owned */
    } gap;
    RwMeterFacts *meter; /* owned */
    RwCallSaid    call;
  };
} RwEvent;

/* Makers; n is 0, t as given in seconds. The caller owns the result's text (rw_event_clear). */
RwEvent rw_event_make_setup (double t, RwSetup setup);
RwEvent rw_event_make_reading (double t, const RwReading *reading);
RwEvent rw_event_make_sample (double t, const RwReading *sample);
RwEvent rw_event_make_trim (double t);
RwEvent rw_event_make_symptom (double t, const char *id, RwSymptomState state);
RwEvent rw_event_make_finding (double t, const char *check, const char *outcome);
RwEvent rw_event_make_repair (double t, const char *cause, RwRepairResult result);
RwEvent rw_event_make_mark (double t, const char *what);
RwEvent rw_event_make_note (double t, const char *text);
RwEvent rw_event_make_stage (double t, const char *id);
RwEvent rw_event_make_stage_read (double t, const char *id);
RwEvent rw_event_make_stage_against (double t, const char *id, const char *why);
RwEvent rw_event_make_retract (double t, guint n);
RwEvent rw_event_make_gap (double t, const char *meter, const char *why);
RwEvent rw_event_make_meter (double t, const RwMeterFacts *facts);
RwEvent rw_event_make_call (double t, const RwCallSaid *said); /* copies */

RwEvent rw_event_copy (const RwEvent *event); /* deep */
void    rw_event_clear (RwEvent *event);

/* Payload key of a type ("reading"); NULL for UNKNOWN. */
const char *rw_event_type_to_key (RwEventType type);

/* One translated line for people, without time: "+5 V, board: 5.02 V". @profile gives rails their labels;
 * it may be NULL. (transfer full) */
char *rw_event_describe (const RwEvent *event, const RwProfile *profile);

G_END_DECLS
