/* rw-practice-cabinet-private.h: what a practice cabinet is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

/* How the meter on the leads is set. */
typedef struct
{
  gboolean by_hand;  /* `kind` is on the dial; else it follows the short way of placing leads */
  RwKind   kind;
  gboolean amps_jack;
  double   shunt_ohms; /* between the leads; INFINITY: a voltmeter, or a blown fuse */
} RwPracticeDial;

struct _RwPracticeCabinet
{
  GObject            parent_instance;
  RwProfile         *profile;
  char              *name;
  guint64            seed;
  GArray            *faults; /* of RwPracticeFault, those that are left */
  RwPracticeModel    model;
  double             owed; /* seconds, below a step */
  gboolean           trim_turned;
  GArray            *nodes; /* of RwPracticeTouch */
  const char        *lead[RW_PRACTICE_N_LEADS]; /* interned node ids; NULL: in the air */
  const char        *rail; /* the reading that the leads make, interned; NULL: none */
  RwPlace            place;
  gboolean           reversed; /* the other way round than that reading */
  RwKind             kind; /* what the short way of placing leads was last asked for */
  RwPracticeDial     dial; /* of the meter */
  guint              leads_serial;
  guint              n_lethal;
  RwPracticeStepFunc step_func;
  gpointer           step_data;
};

/* What a reading of these leads would be of. */
RwKind rw_practice_cabinet_get_dialled (const RwPracticeCabinet *self);

void rw_practice_cabinet_set_dial (RwPracticeCabinet *self, const RwPracticeDial *dial);

/* One step of the model, with the meter's shunt between the leads when it has one. TRUE: the board reset. */
gboolean rw_practice_cabinet_step_shunted (RwPracticeCabinet *self);

/* Amperes through the shunt now, from red to black; 0 without one. */
double rw_practice_cabinet_get_shunt_amps (const RwPracticeCabinet *self);

G_END_DECLS
