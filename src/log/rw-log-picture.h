/* rw-log-picture.h: the picture that a command is to write: its options, and the writing.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-chart-export.h"

G_BEGIN_DECLS

/* Filled in by the options --as, --chart and -o. */
typedef struct
{
  char         *as;     /* (nullable) */
  char         *chart;  /* (nullable) "time" or "trim" */
  char         *out;    /* (nullable) */
  RwChartFormat format; /* of as, when that names one */
} RwLogPicture;

void rw_log_picture_clear (RwLogPicture *self);

/* Is there a place to write to, is it none of the files read, and is the chart one that there is? @files: NULL-terminated.
 * RW_LOG_DONE, or RW_LOG_USAGE when it has been said what is wrong. */
int rw_log_picture_check (const RwLogPicture *self, const char *command, char **files);

gboolean rw_log_picture_is_trim (const RwLogPicture *self);

/* @bytes: the picture, or NULL: @error is said. Returns as rw_log_write (). */
int rw_log_picture_write (const RwLogPicture *self, GBytes *bytes, const GError *error);

G_END_DECLS
