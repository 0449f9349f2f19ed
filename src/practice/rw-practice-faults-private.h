/* rw-practice-faults-private.h: the table of faults, kept by area.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-faults.h"

G_BEGIN_DECLS

typedef struct
{
  const char *id; /* a cause id of data/knowledge */
  gboolean (*fits) (const RwPracticeParams *params); /* can such a cabinet have it? */
  void (*apply) (RwPracticeParams *params, double strength); /* strength 0 … 1 */
} RwPracticeFaultKind;

/* Each ends with a NULL id. */
extern const RwPracticeFaultKind rw_practice_faults_supply[];
extern const RwPracticeFaultKind rw_practice_faults_wiring[];
extern const RwPracticeFaultKind rw_practice_faults_board[];

G_END_DECLS
