/* rw-gauge.h: the small bar on a rail card: limits as ticks, the value as a diamond, its 95 % as a line,
 * the set point as a notch.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-theme.h"

G_BEGIN_DECLS

#define RW_TYPE_GAUGE (rw_gauge_get_type ())
G_DECLARE_FINAL_TYPE (RwGauge, rw_gauge, RW, GAUGE, GtkWidget)

/* What is shown. Positions as in rw_position (): −1 weak limit, +1 strong limit. */
typedef struct
{
  gboolean  shown;
  double    position;
  double    half;    /* 95 % half-width, in positions */
  RwVerdict verdict;
  gboolean  stale;   /* dimmed, hollow */
  gboolean  expected; /* nobody measured it: hollow, its uncertainty dashed */
  double    notch;   /* where the rail would stand at the trim's set point; NaN: not known */
  RwThemeId theme;
} RwGaugeValue;

void rw_gauge_set_value (RwGauge *self, const RwGaugeValue *value);

G_END_DECLS
