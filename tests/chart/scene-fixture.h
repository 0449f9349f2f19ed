/* scene-fixture.h: a scene without fonts, for the tests of the layers.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "chart-fixture.h"
#include "rw-scene.h"

typedef struct
{
  RwView      *view;
  RwChartData *data;
  RwChartText *text;
  RwForesight *foresight; /* (nullable) owned; the test may put one here before it builds */
  RwScene      scene;
} SceneFixture;

/* A view of all of @session; @session is not kept. */
void scene_fixture_open (SceneFixture *self, RwSession *session);

/* Makes the scene of the view as it is now, again if need be. */
const RwScene *scene_fixture_build (SceneFixture *self, double width, double height);
void           scene_fixture_close (SceneFixture *self);

/* Place of @rail's trace in the scene; fails the test when it is not there. */
guint scene_fixture_trace (const SceneFixture *self, const char *rail, RwPlace place, RwKind kind);
