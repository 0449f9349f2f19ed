/* rw-chart-title.c: the line above every picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-chart-title.h"

void
rw_chart_title_ink (const RwScene *scene,
                    cairo_t       *cr)
{
  const double edge = 12 * scene->unit;
  const double right = scene->in.width - edge;
  double room = right - edge;

  if (scene->in.aside != NULL)
    {
      rw_chart_text_ink (scene->in.text, cr, RW_TEXT_BODY, scene->in.aside, right, scene->title_y,
                         1, scene->theme->quiet);
      room -= rw_chart_text_width (scene->in.text, RW_TEXT_BODY, scene->in.aside) + edge;
    }
  if (scene->in.title == NULL)
    return;

  g_autofree char *title = rw_chart_text_fit (scene->in.text, RW_TEXT_TITLE, scene->in.title, room);

  if (title != NULL)
    rw_chart_text_ink (scene->in.text, cr, RW_TEXT_TITLE, title, edge, scene->title_y, 0,
                       scene->theme->ink);
}
