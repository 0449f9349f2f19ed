/* rw-stage-record.h: the record of a bring-up for people: passed, skipped, gone on against advice, unproven.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The same lines for the screen, the text report and the printed page.
 */
#pragma once

#include "rw-stages.h"

G_BEGIN_DECLS

/* How a stage stands: a word and a shape, no two alike. Static; the word is translated. */
const char *rw_stage_status_get_label (RwStageStatus status);
const char *rw_stage_status_get_glyph (RwStageStatus status);

typedef enum
{
  RW_RECORD_HEADING,  /* above what follows; none is empty */
  RW_RECORD_STAGE,    /* a title; how it stands is in status */
  RW_RECORD_ANSWER,   /* a question with its answer */
  RW_RECORD_STOP,     /* what stops the present stage */
  RW_RECORD_AGAINST,  /* gone on against advice: where, when and why */
  RW_RECORD_ADVICE,   /* what had been advised there */
  RW_RECORD_UNPROVEN, /* what nobody proved */
} RwRecordKind;

typedef struct
{
  RwRecordKind  kind;
  RwStageStatus status; /* of a STAGE */
  char         *text;   /* translated; owned */
} RwRecordLine;

/* Every stage up to the furthest one entered, what stops now, what was gone past, what is unproven, the answers. Empty when
 * no stage was entered. (transfer full) (element-type RwRecordLine) */
GArray *rw_stage_record_list (const RwStages *stages);

G_END_DECLS
