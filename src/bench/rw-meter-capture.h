/* rw-meter-capture.h: some seconds of what a port sends, for a person to look at.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>

#include "rw-meter-address.h"

G_BEGIN_DECLS

/* Opens what is at @address (copied), listens in a thread, closes it again, then calls back in this context. Ends
 * early when 4 KiB came or the port went away. */
void rw_meter_capture_async (const RwMeterAddress *address, guint seconds, GCancellable *cancellable,
                             GAsyncReadyCallback callback, gpointer data);

/* What came, as text: valid UTF-8, one "\n" after each line, other control characters left out; "" when nothing
 * came. NULL with an error of the port, or G_IO_ERROR_CANCELLED. (transfer full) */
char *rw_meter_capture_finish (GAsyncResult *result, GError **error);

/* Bytes as such text. (transfer full) */
char *rw_meter_capture_to_text (const guint8 *bytes, gsize n);

G_END_DECLS
