/* rw-practice-look-private.h: the table of looking checks, kept by area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-look.h"

G_BEGIN_DECLS

/* The cabinet, opened up. Borrowed pointers. */
typedef struct
{
  RwPracticeCabinet      *cabinet;
  const RwPracticeModel  *model;
  const RwPracticeParams *params;
  const RwPracticeState  *state;
  const RwPracticeRail   *reference;
  const RwPracticeFlow   *flow; /* of the reference */
} RwPracticeLook;

typedef struct
{
  const char *check;   /* a check id of data/knowledge */
  gboolean    running; /* needs power and board */
  const char *(*outcome) (const RwPracticeLook *look); /* NULL: this cabinet cannot answer */
} RwPracticeLookKind;

/* TRUE when the cabinet has the fault; one of a NULL-terminated list. */
gboolean rw_practice_look_has (const RwPracticeLook *look, const char *fault);
gboolean rw_practice_look_has_any (const RwPracticeLook *look, const char *const *faults);

/* Each ends with a NULL check. */
extern const RwPracticeLookKind rw_practice_looks_supply[];
extern const RwPracticeLookKind rw_practice_looks_wiring[];
extern const RwPracticeLookKind rw_practice_looks_board[];

G_END_DECLS
