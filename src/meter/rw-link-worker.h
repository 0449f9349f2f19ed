/* rw-link-worker.h: the thread that reads a byte port, decodes, and brings it back when it is lost.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-byte-port.h"
#include "rw-mailbox.h"
#include "rw-talk.h"

G_BEGIN_DECLS

typedef struct _RwLinkWorker RwLinkWorker;

/* Starts the thread. @port, @decoder and @talk (nullable: only listen) are taken over,
 * @mailbox gets a reference. @patience_ms: how long without a value until the state is
 * SILENT. (transfer full) */
RwLinkWorker *rw_link_worker_start (RwBytePort *port,
                                    RwDecoder  *decoder,
                                    RwTalk     *talk,
                                    guint       patience_ms,
                                    RwMailbox  *mailbox);

/* What is to be measured: for the talk. No effect without one. */
void rw_link_worker_set_kind (RwLinkWorker *self, RwKind kind);

/* Ends the thread and posts what it still held. Waits 0.25 s at most: a port whose driver
 * hangs is left to the thread, which then cleans up by itself. (transfer full) */
void rw_link_worker_stop (RwLinkWorker *self);

G_END_DECLS
