/* link-probe.h: for tests: watches a link and runs the main loop until something has happened.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-link.h"

/* Everything the link said, in order. */
typedef struct
{
  RwLink  *link;     /* owned */
  GString *story;    /* "opening listening reading 5 6 over lost …": states, values by %g */
  GArray  *values;   /* of double */
  GArray  *when;     /* of gint64, one a value */
  GArray  *kinds;    /* of int, one a value: an RwKind, −1 when it measures nothing of a rail */
  gint64   state_us; /* when the newest state came */
} LinkProbe;

/* Takes the link. */
LinkProbe *link_probe_new (RwLink *link);
void       link_probe_free (LinkProbe *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (LinkProbe, link_probe_free)

/* Runs the main loop until it holds, at most that long; whether it did. */
gboolean link_probe_wait_state (LinkProbe *self, RwLinkState state, double seconds);
gboolean link_probe_wait_values (LinkProbe *self, guint n, double seconds);
gboolean link_probe_wait_story (LinkProbe *self, const char *part, double seconds);
void     link_probe_run (double seconds);
