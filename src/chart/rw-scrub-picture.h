/* rw-scrub-picture.h: a whole session in small, to move about in: chapters above, the rails below.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Coordinates are pixels from the upper left corner; time runs left to right always, by the seconds of the session, or
 * by play time while the waiting is skipped.
 */
#pragma once

#include <cairo.h>

#include "rw-chapters.h"
#include "rw-idle.h"
#include "rw-theme.h"

G_BEGIN_DECLS

typedef struct _RwScrubPicture RwScrubPicture;

/* Refs @session: all of it is shown, and it must stay as it is. */
RwScrubPicture *rw_scrub_picture_new (RwSession *session);
void            rw_scrub_picture_free (RwScrubPicture *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwScrubPicture, rw_scrub_picture_free)

/* Refs @chapters. (nullable) */
void rw_scrub_picture_set_chapters (RwScrubPicture *self, RwChapters *chapters);

/* The waiting that is skipped; NULL: none is. @idle must outlive the picture. */
void rw_scrub_picture_set_idle (RwScrubPicture *self, const RwIdle *idle);

/* A rail that is not drawn, with chapter titles that name it. (nullable): none */
void rw_scrub_picture_set_hidden (RwScrubPicture *self, const char *rail);

/* What comes after second @t, where @n_events have happened, is covered, chapter titles among it, so that it gives
 * nothing away. INFINITY, G_MAXUINT: nothing is. */
void rw_scrub_picture_set_until (RwScrubPicture *self, double t, guint n_events);

/* @text_scale: a factor on text and everything else. */
void rw_scrub_picture_set_look (RwScrubPicture *self, RwThemeId theme, double text_scale);

/* Pixels that it wants to be high, and that it does with. */
double rw_scrub_picture_get_height (RwScrubPicture *self);
double rw_scrub_picture_get_least_height (RwScrubPicture *self);

/* Draws all but the cursors into [0, width] × [0, height], from a picture that is kept until something changes.
 * @device_scale: device pixels a pixel. */
void rw_scrub_picture_ink (RwScrubPicture *self, cairo_t *cr, double width, double height, double device_scale);

/* Over it, once it was inked: a line at @t; the position has a handle, where the pointer is has none. */
void rw_scrub_picture_ink_cursor (RwScrubPicture *self, cairo_t *cr, double t, gboolean is_position);

/* On the picture last inked; @t and the result clamped to the session. */
double rw_scrub_picture_x_at (RwScrubPicture *self, double t);
double rw_scrub_picture_time_at (RwScrubPicture *self, double x);

G_END_DECLS
