/* rw-problem.h: a bare problem: causes, checks, and what a change of setup costs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Exactly one cause is present. A repair fixes only its own cause and verifies itself. A
 * check is persistent: the same check gives the same outcome again. Minutes until fixed are
 * what is counted.
 */
#pragma once

#include <json-glib/json-glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_PROBLEM_ERROR_READ,   /* the file could not be read */
  RW_PROBLEM_ERROR_FORMAT, /* not JSON, or a key is wrong; the message names file and key */
} RwProblemError;
#define RW_PROBLEM_ERROR (rw_problem_error_quark ())
GQuark rw_problem_error_quark (void);

#define RW_PROBLEM_MAX_CAUSES 400
#define RW_PROBLEM_MAX_CHECKS 400
#define RW_PROBLEM_MAX_OUTCOMES 16
#define RW_PROBLEM_MAX_SETUPS 8

typedef struct
{
  char   *id;             /* owned */
  double  weight;         /* prior, ≥ 0, any scale; 0: does not apply */
  double  repair_minutes; /* ≥ 0 */
} RwProblemCause;

typedef struct
{
  char    *id;         /* owned */
  double   minutes;    /* ≥ 0, without changing the setup */
  guint    n_outcomes; /* 1 … RW_PROBLEM_MAX_OUTCOMES */
  double  *chance;     /* [outcome · n_causes + cause], owned; each cause's column sums to 1 */
  guint    setups;     /* bit s set: can be done in setup s; 0: in any */
  gboolean reserved;   /* hazardous, or not for everybody: taken only where no other check pays */
  guint    risk;       /* of checks as good as each other, the one with the least is taken */
} RwProblemCheck;

/* Plain arrays, filled by the maker and then left alone. Setups are numbers 0 … n_setups − 1. */
typedef struct
{
  guint           n_causes;
  RwProblemCause *causes;
  guint           n_checks;
  RwProblemCheck *checks;
  guint           n_setups; /* 1 when setups do not matter */
  guint           setup;    /* the present one */
  double          as_good;  /* relative difference in expected minutes that counts for nothing */
  double          change[RW_PROBLEM_MAX_SETUPS][RW_PROBLEM_MAX_SETUPS]; /* minutes [from][to] */
} RwProblem;

/* Arrays are zeroed and n_outcomes is yet 0; one setup. (transfer full) */
RwProblem *rw_problem_new (guint n_causes, guint n_checks);
void       rw_problem_free (RwProblem *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwProblem, rw_problem_free)

/* Gives a check its outcomes; its chances are zeroed. */
void rw_problem_set_outcomes (RwProblem *self, guint check, guint n_outcomes);

static inline double
rw_problem_chance (const RwProblem *self, guint check, guint outcome, guint cause)
{
  return self->checks[check].chance[outcome * self->n_causes + cause];
}

/* Minutes of a check taken from @setup, the change of setup included. *after (nullable)
 * receives the setup it leaves behind: the wanted one that is cheapest to reach. */
double rw_problem_minutes (const RwProblem *self, guint check, guint setup, guint *after);

/* Reads {"causes":[{"id","prior","repair_minutes"}],
 *        "checks":[{"id","minutes","chance":[outcome][cause]}]}.
 * @where names the file in messages. Chances of a cause must sum to 1 within 0.001 and are
 * then scaled to do so. (transfer full) Errors: RW_PROBLEM_ERROR. */
RwProblem *rw_problem_new_from_node (JsonNode *node, const char *where, GError **error);

/* The same from a file: one problem, or a collection {"problems":[…]} of which @index is
 * taken (a file that is one problem has index 0 only). (transfer full) */
RwProblem *rw_problem_load (const char *path, guint index, GError **error);

G_END_DECLS
