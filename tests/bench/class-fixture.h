/* class-fixture.h: a job with a projection, filled for the tests of what a class sees.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-projection.h"

G_BEGIN_DECLS

typedef struct
{
  char         *path;
  RwJob        *job;
  RwProjection *projection;
} Class;

void class_init (Class *self);
void class_clear (Class *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Class, class_clear)

/* What the job tells in idle time is told. */
void class_settle (void);
void class_wait_for_advice (Class *self);

/* Takes the event's text; numbers and times as given. */
void class_add (Class *self, guint n, double t, RwEvent event);
void class_add_value (Class *self, guint n, double t, const char *rail, double value, gboolean sample);

/* Two positions of the trim, with a stream on each rail. @minus: −5 V is read as well. Numbers and times are the same
 * either way. */
void class_fill (Class *self, gboolean minus);

char *class_dup_text (Class *self);
void  class_assert_says (Class *self, const char *words, gboolean says);

/* Without text: room for it is the same on every machine. Checksum of the pixels, and the summary. */
char *class_draw_chart (Class *self, char **summary);
char *class_draw_map (Class *self, char **summary);

G_END_DECLS
