/* rw-practice-cabinet-private.h: what a practice cabinet is made of.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet.h"

G_BEGIN_DECLS

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
  const char        *rail; /* interned; NULL: leads off */
  RwPlace            place;
  RwKind             kind;
  guint              leads_serial;
  RwPracticeStepFunc step_func;
  gpointer           step_data;
};

G_END_DECLS
