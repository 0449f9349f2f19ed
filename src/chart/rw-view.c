/* rw-view.c: what is looked at.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Every setter works out the new stand, stores it, notifies what differs and emits "changed"
 * once. How the span moves is in rw-time-span.c.
 */
#include "config.h"

#include "rw-view.h"

#include <math.h>

struct _RwView
{
  GObject     parent_instance;
  RwSession  *session;
  double      horizon;
  RwTimeSpan  span;
  const char *rail;
  RwPlace     place;
  guint       hovered;
  RwThemeId   theme;
  RwViewMode  mode;
  RwViewChart chart;
  double      text_scale;
};

enum
{
  PROP_0,
  PROP_SESSION,
  PROP_HORIZON,
  PROP_START,
  PROP_END,
  PROP_FOLLOW,
  PROP_FIT,
  PROP_RAIL,
  PROP_PLACE,
  PROP_HOVERED,
  PROP_THEME,
  PROP_MODE,
  PROP_CHART,
  PROP_TEXT_SCALE,
  N_PROPS
};

static GParamSpec *properties[N_PROPS];
static guint changed_signal;

G_DEFINE_FINAL_TYPE (RwView, rw_view, G_TYPE_OBJECT)

static void
notify_one (RwView *self,
            guint   property)
{
  g_object_notify_by_pspec (G_OBJECT (self), properties[property]);
}

static void
emit_changed (RwView *self)
{
  g_signal_emit (self, changed_signal, 0);
}

/* Stores the span and notifies what differs. TRUE when anything does. */
static gboolean
take_span (RwView    *self,
           RwTimeSpan next)
{
  const RwTimeSpan before = self->span;

  self->span = next;
  g_object_freeze_notify (G_OBJECT (self));
  if (next.start != before.start)
    notify_one (self, PROP_START);
  if (next.end != before.end)
    notify_one (self, PROP_END);
  if (next.follow != before.follow)
    notify_one (self, PROP_FOLLOW);
  if (next.fit != before.fit)
    notify_one (self, PROP_FIT);
  g_object_thaw_notify (G_OBJECT (self));
  return next.start != before.start || next.end != before.end || next.follow != before.follow
         || next.fit != before.fit;
}

static void
move (RwView    *self,
      RwTimeSpan next)
{
  if (take_span (self, next))
    emit_changed (self);
}

static double
work_out_extent (RwView *self)
{
  const double end = self->session != NULL ? rw_session_get_end (self->session) : 0;

  return MAX (MAX (isfinite (end) ? end : 0, self->horizon), 0);
}

static void
session_moved_cb (RwView *self)
{
  move (self, rw_time_span_with_extent (self->span, work_out_extent (self)));
}

static void
rw_view_get_property (GObject    *object,
                      guint       prop_id,
                      GValue     *value,
                      GParamSpec *pspec)
{
  RwView *self = RW_VIEW (object);

  switch (prop_id)
    {
    case PROP_SESSION:
      g_value_set_object (value, self->session);
      break;
    case PROP_HORIZON:
      g_value_set_double (value, self->horizon);
      break;
    case PROP_START:
      g_value_set_double (value, self->span.start);
      break;
    case PROP_END:
      g_value_set_double (value, self->span.end);
      break;
    case PROP_FOLLOW:
      g_value_set_boolean (value, self->span.follow);
      break;
    case PROP_FIT:
      g_value_set_boolean (value, self->span.fit);
      break;
    case PROP_RAIL:
      g_value_set_string (value, self->rail);
      break;
    case PROP_PLACE:
      g_value_set_int (value, (int) self->place);
      break;
    case PROP_HOVERED:
      g_value_set_uint (value, self->hovered);
      break;
    case PROP_THEME:
      g_value_set_int (value, (int) self->theme);
      break;
    case PROP_MODE:
      g_value_set_int (value, (int) self->mode);
      break;
    case PROP_CHART:
      g_value_set_int (value, (int) self->chart);
      break;
    case PROP_TEXT_SCALE:
      g_value_set_double (value, self->text_scale);
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
rw_view_set_property (GObject      *object,
                      guint         prop_id,
                      const GValue *value,
                      GParamSpec   *pspec)
{
  RwView *self = RW_VIEW (object);

  switch (prop_id)
    {
    case PROP_SESSION:
      rw_view_set_session (self, g_value_get_object (value));
      break;
    case PROP_HORIZON:
      rw_view_set_horizon (self, g_value_get_double (value));
      break;
    case PROP_FOLLOW:
      rw_view_set_follow (self, g_value_get_boolean (value));
      break;
    case PROP_RAIL:
      rw_view_set_rail (self, g_value_get_string (value));
      break;
    case PROP_PLACE:
      rw_view_set_place (self, (RwPlace) g_value_get_int (value));
      break;
    case PROP_HOVERED:
      rw_view_set_hovered (self, g_value_get_uint (value));
      break;
    case PROP_THEME:
      rw_view_set_theme (self, (RwThemeId) g_value_get_int (value));
      break;
    case PROP_MODE:
      rw_view_set_mode (self, (RwViewMode) g_value_get_int (value));
      break;
    case PROP_CHART:
      rw_view_set_chart (self, (RwViewChart) g_value_get_int (value));
      break;
    case PROP_TEXT_SCALE:
      rw_view_set_text_scale (self, g_value_get_double (value));
      break;
    default:
      G_OBJECT_WARN_INVALID_PROPERTY_ID (object, prop_id, pspec);
    }
}

static void
rw_view_dispose (GObject *object)
{
  RwView *self = RW_VIEW (object);

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_clear_object (&self->session);
  G_OBJECT_CLASS (rw_view_parent_class)->dispose (object);
}

static void
install_properties (GObjectClass *klass)
{
  const GParamFlags look = G_PARAM_READABLE | G_PARAM_STATIC_STRINGS | G_PARAM_EXPLICIT_NOTIFY;
  const GParamFlags touch = look | G_PARAM_WRITABLE;

  properties[PROP_SESSION] = g_param_spec_object ("session", NULL, NULL, RW_TYPE_SESSION, touch);
  properties[PROP_HORIZON] = g_param_spec_double ("horizon", NULL, NULL, 0, G_MAXDOUBLE, 0, touch);
  properties[PROP_START] = g_param_spec_double ("start", NULL, NULL, 0, G_MAXDOUBLE, 0, look);
  properties[PROP_END] = g_param_spec_double ("end", NULL, NULL, 0, G_MAXDOUBLE,
                                              RW_TIME_SPAN_EMPTY, look);
  properties[PROP_FOLLOW] = g_param_spec_boolean ("follow", NULL, NULL, TRUE, touch);
  properties[PROP_FIT] = g_param_spec_boolean ("fit", NULL, NULL, TRUE, look);
  properties[PROP_RAIL] = g_param_spec_string ("rail", NULL, NULL, NULL, touch);
  properties[PROP_PLACE] = g_param_spec_int ("place", NULL, NULL, 0, RW_N_PLACES - 1,
                                             RW_PLACE_BOARD, touch);
  properties[PROP_HOVERED] = g_param_spec_uint ("hovered", NULL, NULL, 0, G_MAXUINT, 0, touch);
  properties[PROP_THEME] = g_param_spec_int ("theme", NULL, NULL, 0, RW_N_THEMES - 1,
                                             RW_THEME_LIGHT, touch);
  properties[PROP_MODE] = g_param_spec_int ("mode", NULL, NULL, 0, RW_N_VIEW_MODES - 1,
                                            RW_VIEW_POSITION, touch);
  properties[PROP_CHART] = g_param_spec_int ("chart", NULL, NULL, 0, RW_N_VIEW_CHARTS - 1,
                                             RW_VIEW_TIME, touch);
  properties[PROP_TEXT_SCALE] = g_param_spec_double (
      "text-scale", NULL, NULL, RW_VIEW_MIN_TEXT_SCALE, RW_VIEW_MAX_TEXT_SCALE, 1, touch);
  g_object_class_install_properties (klass, N_PROPS, properties);
}

static void
rw_view_class_init (RwViewClass *klass)
{
  GObjectClass *object_class = G_OBJECT_CLASS (klass);

  object_class->get_property = rw_view_get_property;
  object_class->set_property = rw_view_set_property;
  object_class->dispose = rw_view_dispose;
  install_properties (object_class);
  changed_signal = g_signal_new ("changed", RW_TYPE_VIEW, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                                 G_TYPE_NONE, 0);
}

static void
rw_view_init (RwView *self)
{
  self->span = rw_time_span_make ();
  self->place = RW_PLACE_BOARD;
  self->text_scale = 1;
}

RwView *
rw_view_new (RwSession *session)
{
  g_return_val_if_fail (session == NULL || RW_IS_SESSION (session), NULL);

  RwView *self = g_object_new (RW_TYPE_VIEW, NULL);

  rw_view_set_session (self, session);
  return self;
}

RwView *
rw_view_dup (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), NULL);

  RwView *copy = rw_view_new (self->session);

  copy->horizon = self->horizon;
  copy->span = self->span;
  copy->rail = self->rail;
  copy->place = self->place;
  copy->hovered = self->hovered;
  copy->theme = self->theme;
  copy->mode = self->mode;
  copy->chart = self->chart;
  copy->text_scale = self->text_scale;
  return copy;
}

RwSession *
rw_view_get_session (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), NULL);
  return self->session;
}

static void
connect_session (RwView *self)
{
  g_signal_connect_object (self->session, "added", G_CALLBACK (session_moved_cb), self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (self->session, "rewound", G_CALLBACK (session_moved_cb), self,
                           G_CONNECT_SWAPPED);
}

void
rw_view_set_session (RwView    *self,
                     RwSession *session)
{
  g_return_if_fail (RW_IS_VIEW (self));
  g_return_if_fail (session == NULL || RW_IS_SESSION (session));
  if (self->session == session)
    return;

  if (self->session != NULL)
    g_signal_handlers_disconnect_by_data (self->session, self);
  g_set_object (&self->session, session);
  if (session != NULL)
    connect_session (self);

  g_object_freeze_notify (G_OBJECT (self));
  if (self->hovered != 0)
    notify_one (self, PROP_HOVERED);
  self->hovered = 0;
  take_span (self,
             rw_time_span_fitted (rw_time_span_with_extent (self->span, work_out_extent (self))));
  notify_one (self, PROP_SESSION);
  g_object_thaw_notify (G_OBJECT (self));
  emit_changed (self);
}

double
rw_view_get_extent (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), 0);
  return self->span.extent;
}

double
rw_view_get_horizon (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), 0);
  return self->horizon;
}

void
rw_view_set_horizon (RwView *self,
                     double  seconds)
{
  g_return_if_fail (RW_IS_VIEW (self));

  const double horizon = isfinite (seconds) ? MAX (seconds, 0) : 0;

  if (horizon == self->horizon)
    return;
  self->horizon = horizon;
  notify_one (self, PROP_HORIZON);
  take_span (self, rw_time_span_with_extent (self->span, work_out_extent (self)));
  emit_changed (self);
}

double
rw_view_get_start (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), 0);
  return self->span.start;
}

double
rw_view_get_end (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), RW_TIME_SPAN_EMPTY);
  return self->span.end;
}

gboolean
rw_view_get_follow (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), FALSE);
  return self->span.follow;
}

gboolean
rw_view_get_fit (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), FALSE);
  return self->span.fit;
}

void
rw_view_set_span (RwView *self,
                  double  start,
                  double  end)
{
  g_return_if_fail (RW_IS_VIEW (self));
  move (self, rw_time_span_moved (self->span, start, end));
}

void
rw_view_set_follow (RwView  *self,
                    gboolean follow)
{
  g_return_if_fail (RW_IS_VIEW (self));
  move (self, rw_time_span_following (self->span, follow));
}

void
rw_view_fit (RwView *self)
{
  g_return_if_fail (RW_IS_VIEW (self));
  move (self, rw_time_span_fitted (self->span));
}

void
rw_view_zoom (RwView *self,
              double  factor,
              double  about)
{
  g_return_if_fail (RW_IS_VIEW (self));
  move (self, rw_time_span_zoomed (self->span, factor, about));
}

void
rw_view_pan (RwView *self,
             double  share)
{
  g_return_if_fail (RW_IS_VIEW (self));
  move (self, rw_time_span_panned (self->span, share));
}

const char *
rw_view_get_rail (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), NULL);
  return self->rail;
}

void
rw_view_set_rail (RwView     *self,
                  const char *rail)
{
  g_return_if_fail (RW_IS_VIEW (self));

  const char *interned = rail != NULL ? g_intern_string (rail) : NULL;

  if (interned == self->rail)
    return;
  self->rail = interned;
  notify_one (self, PROP_RAIL);
  emit_changed (self);
}

RwPlace
rw_view_get_place (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), RW_PLACE_BOARD);
  return self->place;
}

void
rw_view_set_place (RwView *self,
                   RwPlace place)
{
  g_return_if_fail (RW_IS_VIEW (self) && place < RW_N_PLACES);
  if (place == self->place)
    return;
  self->place = place;
  notify_one (self, PROP_PLACE);
  emit_changed (self);
}

guint
rw_view_get_hovered (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), 0);
  return self->hovered;
}

void
rw_view_set_hovered (RwView *self,
                     guint   n)
{
  g_return_if_fail (RW_IS_VIEW (self));
  if (n == self->hovered)
    return;
  self->hovered = n;
  notify_one (self, PROP_HOVERED);
  emit_changed (self);
}

RwThemeId
rw_view_get_theme (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), RW_THEME_LIGHT);
  return self->theme;
}

void
rw_view_set_theme (RwView   *self,
                   RwThemeId theme)
{
  g_return_if_fail (RW_IS_VIEW (self) && theme < RW_N_THEMES);
  if (theme == self->theme)
    return;
  self->theme = theme;
  notify_one (self, PROP_THEME);
  emit_changed (self);
}

RwViewMode
rw_view_get_mode (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), RW_VIEW_POSITION);
  return self->mode;
}

void
rw_view_set_mode (RwView    *self,
                  RwViewMode mode)
{
  g_return_if_fail (RW_IS_VIEW (self) && mode < RW_N_VIEW_MODES);
  if (mode == self->mode)
    return;
  self->mode = mode;
  notify_one (self, PROP_MODE);
  emit_changed (self);
}

RwViewChart
rw_view_get_chart (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), RW_VIEW_TIME);
  return self->chart;
}

void
rw_view_set_chart (RwView     *self,
                   RwViewChart chart)
{
  g_return_if_fail (RW_IS_VIEW (self) && chart < RW_N_VIEW_CHARTS);
  if (chart == self->chart)
    return;
  self->chart = chart;
  notify_one (self, PROP_CHART);
  emit_changed (self);
}

double
rw_view_get_text_scale (RwView *self)
{
  g_return_val_if_fail (RW_IS_VIEW (self), 1);
  return self->text_scale;
}

void
rw_view_set_text_scale (RwView *self,
                        double  scale)
{
  g_return_if_fail (RW_IS_VIEW (self));
  if (isnan (scale))
    return;

  const double clamped = CLAMP (scale, RW_VIEW_MIN_TEXT_SCALE, RW_VIEW_MAX_TEXT_SCALE);

  if (clamped == self->text_scale)
    return;
  self->text_scale = clamped;
  notify_one (self, PROP_TEXT_SCALE);
  emit_changed (self);
}
