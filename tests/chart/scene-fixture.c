/* scene-fixture.c: a scene without fonts, for the tests of the layers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "scene-fixture.h"

void
scene_fixture_open (SceneFixture *self,
                    RwSession    *session)
{
  *self = (SceneFixture){ 0 };
  self->view = rw_view_new (session);
  self->data = rw_chart_data_new (session);
}

const RwScene *
scene_fixture_build (SceneFixture *self,
                     double        width,
                     double        height)
{
  rw_scene_clear (&self->scene);
  g_clear_pointer (&self->text, rw_chart_text_free);
  self->text = rw_chart_text_new (NULL, rw_view_get_text_scale (self->view), FALSE);
  rw_scene_init (&self->scene, &(RwSceneInput){ self->data, self->view, self->text, width, height,
                                                1, NULL, NULL, self->foresight });
  return &self->scene;
}

void
scene_fixture_close (SceneFixture *self)
{
  rw_scene_clear (&self->scene);
  g_clear_pointer (&self->text, rw_chart_text_free);
  g_clear_pointer (&self->foresight, rw_foresight_free);
  g_clear_object (&self->view);
  g_clear_object (&self->data);
}

guint
scene_fixture_trace (const SceneFixture *self,
                     const char         *rail,
                     RwPlace             place,
                     RwKind              kind)
{
  for (guint i = 0; i < self->scene.traces->len; i++)
    {
      const RwChartChannel *channel = rw_scene_trace (&self->scene, i)->channel;

      if (g_str_equal (channel->rail, rail) && channel->place == place && channel->kind == kind)
        return i;
    }
  g_error ("no trace of %s", rail);
}
