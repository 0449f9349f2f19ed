/* rw-practice-script-private.h: a script while it runs.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-meter.h"
#include "rw-practice-script.h"

G_BEGIN_DECLS

typedef struct
{
  /* Where we are. */
  const char *where;
  guint       line;
  const char *profiles; /* (nullable) folder */

  /* The head of the script. */
  char      *name, *tag, *meter_name;
  RwProfile *profile;
  guint64    seed;
  GDateTime *started;
  GArray    *faults; /* of RwPracticeFault */
  double     percent, counts, contact_volts;
  guint      full_counts;
  char      *on_reset; /* (nullable) mark to set when the board resets during a stream */
  char      *session_id;

  /* The job, once the first step has come. */
  RwPracticeCabinet *cabinet;
  RwPracticeMeter   *meter;
  RwSession         *session;
  gboolean           warm;      /* as the last setup event said */
  gboolean           streaming;
  double             last_mark; /* seconds of the last automatic one */
  RwReading          live;      /* last stream's settled value */
  gboolean           has_live;
} RwPracticeRun;

/* One kind of line: @words[0] is its own name; NULL-terminated. @rest: what follows that name,
 * stripped. */
typedef struct
{
  const char *name;
  guint       least, most; /* words after the name; most 0: any text */
  gboolean    head;        /* belongs before the first step */
  gboolean (*run) (RwPracticeRun *run, char **words, const char *rest, GError **error);
} RwPracticeLine;

/* Ends with a NULL name. */
extern const RwPracticeLine rw_practice_steps[];

/* Sets an error that names file and line. Always FALSE. @code: of RW_PRACTICE_ERROR. */
gboolean rw_practice_run_fail (RwPracticeRun *run, GError **error, RwPracticeError code,
                               const char *format, ...) G_GNUC_PRINTF (4, 5);

/* A number in C notation, the whole word; bounds included. */
gboolean rw_practice_run_number (RwPracticeRun *run, const char *word, double lo, double hi,
                                 double *out, GError **error);

/* The step “call”, in a file of its own. */
gboolean rw_practice_step_call (RwPracticeRun *run, char **words, const char *rest, GError **error);

/* The first setup event, when the job begins. */
void rw_practice_run_begin (RwPracticeRun *run);

G_END_DECLS
