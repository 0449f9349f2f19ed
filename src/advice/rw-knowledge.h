/* rw-knowledge.h: what is known of symptoms, causes and checks.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Read from the JSON files of data/knowledge, then from the user's own folder, whose entries
 * replace shipped ones of the same id. Texts are translated as they are read. Everything
 * here is read-only.
 */
#pragma once

#include "rw-event.h"
#include "rw-profile.h"

G_BEGIN_DECLS

typedef enum
{
  RW_KNOWLEDGE_ERROR_READ,   /* a file could not be read */
  RW_KNOWLEDGE_ERROR_FORMAT, /* not JSON, or a key is wrong; the message names file and key */
} RwKnowledgeError;
#define RW_KNOWLEDGE_ERROR (rw_knowledge_error_quark ())
GQuark rw_knowledge_error_quark (void);

/* Rising order. */
typedef enum
{
  RW_HAZARD_NONE,        /* unplugged */
  RW_HAZARD_LOW_VOLTAGE, /* live, low voltage */
  RW_HAZARD_NEAR_MAINS,  /* a low-voltage point beside bare mains parts */
  RW_HAZARD_MAINS,
  RW_HAZARD_TUBE,        /* beside the picture tube's high voltage */
  RW_N_HAZARDS
} RwHazard;

typedef enum
{
  RW_WHO_ANYONE,
  RW_WHO_TRAINED,
  RW_WHO_LICENSED,
  RW_N_WHOS
} RwWho;

const char *rw_hazard_to_id (RwHazard hazard);     /* "near-mains" */
const char *rw_hazard_get_label (RwHazard hazard); /* translated words */
const char *rw_who_to_id (RwWho who);
const char *rw_who_get_label (RwWho who); /* translated words */

/* Chances of each outcome given a cause: a default row and rows of causes that differ. */
typedef struct
{
  guint       n_outcomes;
  double     *row_default; /* [n_outcomes] */
  GHashTable *rows;        /* interned cause id → double[n_outcomes] */
} RwChanceTable;

/* The row of a cause, its own or the default; borrowed. */
const double *rw_chance_table_get (const RwChanceTable *self, const char *cause);

/* Two causes together, from the rows of each (both of @self): each deviation from the default counts,
 *   P (o | a, b) ∝ P (o | a) P (o | b) / P (o | default),
 * scaled to sum 1; where the default is 0 the mean of both stands for it. A cause with the default row changes
 * nothing. With one "outcome" its opposite is the second. @row: [n_outcomes] receives it. */
void rw_chance_table_fill_pair (const RwChanceTable *self, const double *a, const double *b, double *row);

typedef struct
{
  const char   *id; /* interned, as all ids here */
  char         *title;
  char         *detail;    /* "" when nothing is said */
  const char   *group;     /* "game", "power", "picture", "sound", "heat", "controls" */
  RwChanceTable chance;    /* one "outcome": seen */
  gboolean      published; /* figures from print, not an estimate */
  char         *where;     /* file and place in it, for messages */
} RwSymptom;

typedef struct
{
  const char  *id;
  char        *title;
  char        *detail;
  const char  *area;  /* "supply", "wiring", "board", "sound", "monitor", "mains", "meter" or
                         "none" */
  double       prior; /* relative weight, > 0 */
  gboolean     broad; /* stands for every cause that is not listed; its rows of chances are not looked at */
  const char  *part;  /* (nullable) interned: causes of one part are never there together */
  GHashTable  *often_with; /* interned cause id → double *: how many times more often than by chance the two
                              come together */
  const char **needs_rails;  /* (nullable) interned, NULL-terminated */
  const char  *needs_supply; /* (nullable) */
  struct
  {
    char        *title;
    double       minutes;
    int          cost; /* 0 nothing … 4 dear */
    RwHazard     hazard;
    RwWho        who;
    char       **steps;   /* NULL-terminated, may be empty */
    const char **recheck; /* check ids, NULL-terminated, may be empty */
  } repair;
  gboolean published;
  char    *where;
} RwCause;

typedef struct
{
  const char *id;
  char       *title;
  char       *meaning; /* "" when nothing is said */
  double      from;    /* inclusive, −INFINITY when open; measuring checks only */
  double      to;      /* exclusive, INFINITY when open */
} RwOutcome;

typedef struct
{
  const char   *id;
  char         *title;
  char         *why;
  char        **how; /* NULL-terminated, may be empty */
  double        minutes;
  RwHazard      hazard;
  RwWho         who;
  char         *safety;   /* "" when the hazard needs none */
  RwSaid        power;    /* wanted: RW_SAID_NOT = any */
  RwSaid        board;
  RwSaid        warm;
  int           returns;  /* the outcome that readings show by themselves when a dead supply is alive after a rest
                           * without power; −1: none */
  gboolean      contact;  /* what it shows hangs on how the connector sits: plugging it anew outdates it */
  gboolean      measures; /* the three below hold */
  const char   *rail;
  RwPlace       place;
  RwKind        kind;
  const char  **needs_rails;  /* (nullable) */
  const char   *needs_supply; /* (nullable) */
  guint         n_outcomes;
  RwOutcome    *outcomes;
  RwChanceTable chance;
  gboolean      published;
  char         *where;
} RwCheck;

/* What the program finds out by itself from the readings. Never offered as a check. */
typedef struct
{
  const char   *id;
  char         *title;
  const char   *of;    /* what is computed: "trim-window", "trim-line", "drop", "fall", "tracking" */
  RwPlace       place; /* from the readings taken here; see rw-computed-read.c for differences */
  const char   *rail;  /* interned; NULL for what is about all rails: "trim-window" */
  guint         n_outcomes;
  RwOutcome    *outcomes; /* "trim-window", "trim-line": in the order of their own enumeration; else with limits */
  RwChanceTable chance;
  gboolean      published;
  char         *where;
} RwComputed;

/* Index of an outcome, or −1. */
int rw_check_find_outcome (const RwCheck *self, const char *outcome);

/* More than anybody may do: above near-mains, or for trained or licensed people only. */
gboolean rw_check_is_reserved (const RwCheck *self);

typedef struct _RwKnowledge RwKnowledge;

/* Reads these files; a later file replaces entries of an earlier one by id. (transfer full)
 * @paths: (element-type filename) */
RwKnowledge *rw_knowledge_load_files (GPtrArray *paths, GError **error);

/* The shipped files, then the user's. A file of the user's that is wrong is left out and
 * told to @problems (element-type utf8) (nullable); a wrong shipped file is an error.
 * (transfer full) */
RwKnowledge *rw_knowledge_load (GPtrArray *problems, GError **error);

RwKnowledge *rw_knowledge_ref (RwKnowledge *self);
void         rw_knowledge_unref (RwKnowledge *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwKnowledge, rw_knowledge_unref)

/* Only what applies to a cabinet: causes and checks whose needs it meets, checks whose rail it has.
 * Shares the entries. (transfer full) */
RwKnowledge *rw_knowledge_for_profile (RwKnowledge *self, const RwProfile *profile);

guint            rw_knowledge_get_n_symptoms (const RwKnowledge *self);
const RwSymptom *rw_knowledge_get_symptom (const RwKnowledge *self, guint i);
/* (nullable) */
const RwSymptom *rw_knowledge_find_symptom (const RwKnowledge *self, const char *id);
guint            rw_knowledge_get_n_causes (const RwKnowledge *self);
const RwCause   *rw_knowledge_get_cause (const RwKnowledge *self, guint i);
const RwCause   *rw_knowledge_find_cause (const RwKnowledge *self, const char *id); /* (nullable) */
int              rw_knowledge_index_of_cause (const RwKnowledge *self, const char *id); /* or −1 */
guint            rw_knowledge_get_n_checks (const RwKnowledge *self);
const RwCheck   *rw_knowledge_get_check (const RwKnowledge *self, guint i);
const RwCheck   *rw_knowledge_find_check (const RwKnowledge *self, const char *id); /* (nullable) */
int              rw_knowledge_index_of_check (const RwKnowledge *self, const char *id); /* or −1 */

/* The last entry for what is computed there, so that the user's own comes first. @rail: (nullable) for what is
 * about all rails. (nullable) */
const RwComputed *rw_knowledge_find_computed (const RwKnowledge *self, const char *of, RwPlace place,
                                              const char *rail);

G_END_DECLS
