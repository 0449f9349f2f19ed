/* rw-banner.h: a quiet bar with one sentence and at most two buttons; never a box in the way.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Signals: "response" (gboolean first): a button was pressed.
 */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

typedef enum
{
  RW_BANNER_QUIET,
  RW_BANNER_WARNING,
  RW_BANNER_DANGER
} RwBannerStyle;

#define RW_TYPE_BANNER (rw_banner_get_type ())
G_DECLARE_FINAL_TYPE (RwBanner, rw_banner, RW, BANNER, GtkWidget)

/* @text NULL hides it. @first and @second: button labels, (nullable). */
void rw_banner_show (RwBanner *self, RwBannerStyle style, const char *text, const char *first, const char *second);

G_END_DECLS
