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
extern const RwPracticeFaultKind rw_practice_faults_linear[];
extern const RwPracticeFaultKind rw_practice_faults_wiring[];
extern const RwPracticeFaultKind rw_practice_faults_board[];
extern const RwPracticeFaultKind rw_practice_faults_rest[];

static inline RwPracticeRail *
rw_practice_faults_reference (RwPracticeParams *params)
{
  return &params->rail[params->reference];
}

/* The knowledge speaks of rails by id; a fault is planted in the rail of that id. */
static inline gboolean
rw_practice_faults_has_rail (const RwPracticeParams *params,
                             const char             *rail)
{
  const int i = rw_practice_params_index_of (params, rail);

  return i >= 0 && (guint)i != params->reference;
}

static inline RwPracticeRail *
rw_practice_faults_rail (RwPracticeParams *params,
                         const char       *rail)
{
  return &params->rail[rw_practice_params_index_of (params, rail)];
}

static inline gboolean
rw_practice_faults_fit_any (const RwPracticeParams *params)
{
  return TRUE;
}

static inline gboolean
rw_practice_faults_fit_m5 (const RwPracticeParams *params)
{
  return rw_practice_faults_has_rail (params, "m5");
}

static inline gboolean
rw_practice_faults_fit_linear (const RwPracticeParams *params)
{
  return params->supply == RW_PRACTICE_LINEAR;
}

/* The fuse ahead of the reference rail opens: of a linear supply that winding, of a switcher all. */
static inline void
rw_practice_faults_blow_fuse (RwPracticeParams *params)
{
  params->fuse_ohms = G_MAXDOUBLE;
  if (params->supply == RW_PRACTICE_LINEAR)
    rw_practice_faults_reference (params)->raw.winding_volts = 0;
  else
    for (guint i = 0; i < params->n_rails; i++)
      params->rail[i].alive = 0;
}

G_END_DECLS
