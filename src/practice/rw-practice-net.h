/* rw-practice-net.h: a network of resistors: is there a way, and how many ohms.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define RW_PRACTICE_NET_MOST 64

typedef struct
{
  guint  n;
  double siemens[RW_PRACTICE_NET_MOST][RW_PRACTICE_NET_MOST]; /* between two points; symmetric */
} RwPracticeNet;

/* @n ≤ RW_PRACTICE_NET_MOST points with nothing between them. */
void rw_practice_net_start (RwPracticeNet *self, guint n);

/* A resistor between two points, beside those that are there already; INFINITY: none. Below 1 µΩ it is 1 µΩ. */
void rw_practice_net_join (RwPracticeNet *self, guint a, guint b, double ohms);

/* Ohms between two points: 0 of a point with itself, INFINITY without a way. O(n³). */
double rw_practice_net_ohms (const RwPracticeNet *self, guint a, guint b);

gboolean rw_practice_net_has_way (const RwPracticeNet *self, guint a, guint b); /* O(n²) */

G_END_DECLS
