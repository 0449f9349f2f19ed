/* rw-meter-lines-box.h: how a meter's lines of text are read, tried on text that it sent.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gtk/gtk.h>

#include "rw-meter-address.h"

G_BEGIN_DECLS

#define RW_TYPE_METER_LINES_BOX (rw_meter_lines_box_get_type ())
G_DECLARE_FINAL_TYPE (RwMeterLinesBox, rw_meter_lines_box, RW, METER_LINES_BOX, GtkWidget)

/* @pattern: (nullable) free text. @mark: '.' or ','. Forgets the text that was tried. */
void rw_meter_lines_box_set (RwMeterLinesBox *self, const char *pattern, char mark);

/* Where the meter is, for capturing; copied. NULL: nowhere yet. */
void rw_meter_lines_box_set_address (RwMeterLinesBox *self, const RwMeterAddress *address);

/* Ends a capture that runs. */
void rw_meter_lines_box_stop (RwMeterLinesBox *self);

char    *rw_meter_lines_box_dup_pattern (RwMeterLinesBox *self); /* (nullable) (transfer full): free text */
char     rw_meter_lines_box_get_mark (RwMeterLinesBox *self);
gboolean rw_meter_lines_box_is_right (RwMeterLinesBox *self);    /* FALSE: the pattern makes no sense, and it says why */

G_END_DECLS
