/* rw-stage-words.h: the stages of the bring-up in words: needs, cautions, steps, what is measured and asked.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Read from data/stages/stages.json (schema: data/schemas/stages.schema.json). All texts are translated.
 */
#pragma once

#include <gio/gio.h>

#include "rw-profile.h"

G_BEGIN_DECLS

typedef enum
{
  RW_STAGE_ERROR_READ,   /* the file could not be read */
  RW_STAGE_ERROR_FORMAT, /* not JSON, or a key is missing or wrong; the message names file and key */
} RwStageError;
#define RW_STAGE_ERROR (rw_stage_error_quark ())
GQuark rw_stage_error_quark (void);

/* In the order of the work. */
typedef enum
{
  RW_STAGE_LOOK,        /* "look" */
  RW_STAGE_BARE_SUPPLY, /* "bare-supply" */
  RW_STAGE_FIT_BOARD,   /* "fit-board" */
  RW_STAGE_FIRST_POWER, /* "first-power" */
  RW_STAGE_UNDER_LOAD,  /* "under-load" */
  RW_STAGE_TRIM,        /* "trim" */
  RW_STAGE_RECHECK,     /* "recheck" */
  RW_STAGE_WARM_UP,     /* "warm-up" */
  RW_STAGE_EXERCISE,    /* "exercise": volume, lamps, cold starts */
  RW_STAGE_CLOSE,       /* "close" */
  RW_N_STAGES
} RwStage;

const char *rw_stage_to_id (RwStage stage);                    /* static */
gboolean    rw_stage_from_id (const char *id, RwStage *out);   /* FALSE: not one of ours */

/* The same levels, and in the same order, as for checks: RwHazard and RwWho in the advice. */
typedef enum
{
  RW_STAGE_HAZARD_NONE,
  RW_STAGE_HAZARD_LOW_VOLTAGE,
  RW_STAGE_HAZARD_NEAR_MAINS,
  RW_STAGE_HAZARD_MAINS,
  RW_STAGE_HAZARD_TUBE
} RwStageHazard;

typedef enum
{
  RW_STAGE_ANYONE,
  RW_STAGE_TRAINED,
  RW_STAGE_LICENSED
} RwStageWho;

/* Which rails a stage wants measured. */
typedef enum
{
  RW_STAGE_RAIL_EVERY,
  RW_STAGE_RAIL_REFERENCE,
  RW_STAGE_RAIL_GROUND,
  RW_STAGE_RAIL_GUARDS /* those that something is destroyed without: key "guards" of the profile */
} RwStageRail;

typedef struct
{
  RwStageRail rails;
  RwPlace     place;
  RwKind      kind;
  gboolean    bare;    /* with the board out */
  GArray     *minutes; /* of double: after power came on; empty: once */
} RwStageMeasure;

/* How the ids of all questions begin: a finding of such a check answers a stage, and is none of the knowledge's. */
#define RW_STAGE_QUESTION_PREFIX "stage-"

/* Answered yes or no. */
typedef struct
{
  const char *id;        /* interned; the check of the finding that answers it */
  char       *text;      /* the question */
  char       *no;        /* (nullable) what a "no" means, a sentence; NULL: nothing */
  gboolean    no_stops;  /* a "no" stops, otherwise it warns */
  const char *supply;    /* (nullable) interned: only for this kind of supply */
} RwStageQuestion;

typedef struct
{
  RwStage       stage;
  char         *title;
  char         *purpose;   /* what it is for, one sentence */
  RwStageHazard hazard;
  RwStageWho    who;
  char         *caution;   /* (nullable) the hazard statement, shown and read before any step */
  char        **needs;
  char        **steps;     /* in order */
  GArray       *measure;   /* of RwStageMeasure */
  GArray       *questions; /* of RwStageQuestion */
  char        **ends;      /* what ends it */
  char        **stops;     /* what stops it */
  char         *unproven;  /* what skipping it leaves unproven, one sentence */
} RwStageText;

/* Immutable, reference-counted. */
typedef struct _RwStageWords RwStageWords;

RwStageWords *rw_stage_words_load (const char *path, GError **error);
RwStageWords *rw_stage_words_load_shipped (GError **error);
RwStageWords *rw_stage_words_ref (RwStageWords *self);
void          rw_stage_words_unref (RwStageWords *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwStageWords, rw_stage_words_unref)

const RwStageText *rw_stage_words_get (const RwStageWords *self, RwStage stage);

/* For people: "beside bare mains parts", NULL for none; "for anyone", "for trained people only". (nullable) */
const char *rw_stage_hazard_get_label (RwStageHazard hazard);
const char *rw_stage_who_get_label (RwStageWho who);

G_END_DECLS
