/* rw-link-bytes.h: a link whose bytes the owner pushes, such as those of the practice meter.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-link.h"

G_BEGIN_DECLS

#define RW_TYPE_LINK_BYTES (rw_link_bytes_get_type ())
G_DECLARE_FINAL_TYPE (RwLinkBytes, rw_link_bytes, RW, LINK_BYTES, RwLink)

/* @decoder (transfer full): the format and its options, not fed yet. (transfer full) */
RwLink *rw_link_bytes_new (RwDecoder *decoder);

/* Decodes the bytes at once and emits "value" for each value they complete, stamped @when_us
 * (monotonic, µs). Ignored while the link is closed. Only from the thread that opened the
 * link. */
void rw_link_bytes_push (RwLinkBytes *self, const guint8 *bytes, gsize n, gint64 when_us);

G_END_DECLS
