/* rw-event-call.h: what a call event says: a class says what a hidden rail will read before it is read.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 *   {"call":{"ask":"p12","place":"board","kind":"dc","was":11.62}}   a round is open: that rail is hidden from the class
 *   {"call":{"by":"team 1","value":11.9,"give":0.1}}                 somebody's call
 *   {"call":{"lower":3,"same":5,"higher":12}}                        a show of hands, counted
 *   {"call":{"reveal":41}}                                           the reading of event 41 answered it
 *   {"call":{"drop":true}}                                           the round is given up
 *
 * The form is told by the first of ask, by, reveal, drop that is there; else it is a show of hands. What the program
 * itself would have called is not written down: it follows from the events (rw-call-predict.h).
 */
#pragma once

#include <json-glib/json-glib.h>

#include "rw-kinds.h"
#include "rw-profile.h"

G_BEGIN_DECLS

typedef enum
{
  RW_CALL_ASK,
  RW_CALL_VALUE,
  RW_CALL_HANDS,
  RW_CALL_REVEAL,
  RW_CALL_DROP
} RwCallForm;

/* Below, at and above the value last shown. */
typedef enum
{
  RW_CALL_LOWER,
  RW_CALL_SAME,
  RW_CALL_HIGHER,
  RW_N_CALL_SIDES
} RwCallSide;

/* More hands, or a longer name, than any class has. */
#define RW_CALL_MAX_HANDS 100000
#define RW_CALL_MAX_NAME 200

typedef struct
{
  RwCallForm form;
  union
  {
    struct
    {
      const char *rail; /* interned */
      RwPlace     place;
      RwKind      kind;
      double      was;  /* what lower, same and higher refer to; NaN when not given */
    } ask;
    struct
    {
      char  *by;    /* owned */
      double value; /* in the unit of the round's kind */
      double give;  /* > 0: the caller is 90 % sure of value ± give; NaN when not given */
    } value;
    guint hands[RW_N_CALL_SIDES];
    guint reveal; /* number of the answering event */
  };
} RwCallSaid;

RwCallSaid rw_call_said_ask (const char *rail, RwPlace place, RwKind kind, double was);
RwCallSaid rw_call_said_value (const char *by, double value, double give); /* copies @by */
RwCallSaid rw_call_said_hands (guint lower, guint same, guint higher);
RwCallSaid rw_call_said_reveal (guint n);
RwCallSaid rw_call_said_drop (void);
RwCallSaid rw_call_said_copy (const RwCallSaid *self); /* deep */
void       rw_call_said_clear (RwCallSaid *self);

/* The payload object. Unknown keys are not looked at. FALSE: *out untouched, the message names the key (domain
 * RW_EVENT_ERROR). */
gboolean rw_call_said_from_object (JsonObject *object, RwCallSaid *out, GError **error);

/* Its members without the braces, keys in the order above. */
void rw_call_said_append_members (const RwCallSaid *self, GString *out);

/* One translated line. @profile gives rails their labels; it may be NULL. (transfer full) */
char *rw_call_said_describe (const RwCallSaid *self, const RwProfile *profile);

G_END_DECLS
