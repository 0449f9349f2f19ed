/* rw-link.c: what all links have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-link.h"

#include <glib/gi18n-lib.h>

typedef struct
{
  gboolean        opened; /* by the owner, whatever the port does */
  RwLinkState     state;
  char           *message;
  char           *identity;
  char           *trouble;
  RwDecoderCounts counts;
} RwLinkPrivate;

enum
{
  SIGNAL_VALUE,
  SIGNAL_STATE,
  N_SIGNALS
};

static guint signals[N_SIGNALS];

G_DEFINE_ABSTRACT_TYPE_WITH_PRIVATE (RwLink, rw_link, G_TYPE_OBJECT)

static RwLinkPrivate *
get_private (RwLink *self)
{
  return rw_link_get_instance_private (self);
}

static void
rw_link_finalize (GObject *object)
{
  RwLinkPrivate *priv = get_private (RW_LINK (object));

  g_free (priv->message);
  g_free (priv->identity);
  g_free (priv->trouble);
  G_OBJECT_CLASS (rw_link_parent_class)->finalize (object);
}

static void
rw_link_class_init (RwLinkClass *class)
{
  GObjectClass *object_class = G_OBJECT_CLASS (class);

  object_class->finalize = rw_link_finalize;

  signals[SIGNAL_VALUE]
      = g_signal_new ("value", RW_TYPE_LINK, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                      G_TYPE_NONE, 2, G_TYPE_POINTER, G_TYPE_INT64);
  signals[SIGNAL_STATE] = g_signal_new ("state", RW_TYPE_LINK, G_SIGNAL_RUN_LAST, 0, NULL,
                                        NULL, NULL, G_TYPE_NONE, 2, G_TYPE_INT, G_TYPE_STRING);
}

static void
rw_link_init (RwLink *self)
{
  get_private (self)->message = g_strdup ("");
}

void
rw_link_open (RwLink *self)
{
  RwLinkPrivate *priv = get_private (self);

  g_return_if_fail (RW_IS_LINK (self));
  if (priv->opened)
    return;
  priv->opened = TRUE;
  priv->counts = (RwDecoderCounts){ 0 };
  g_clear_pointer (&priv->identity, g_free);
  g_clear_pointer (&priv->trouble, g_free);
  RW_LINK_GET_CLASS (self)->open (self);
}

void
rw_link_close (RwLink *self)
{
  g_return_if_fail (RW_IS_LINK (self));
  if (!get_private (self)->opened)
    return;

  /* A handler of what close () still delivers may drop the last reference. */
  g_autoptr (RwLink) kept = g_object_ref (self);

  get_private (self)->opened = FALSE;
  RW_LINK_GET_CLASS (self)->close (self);
  rw_link_set_trouble (self, NULL);
  rw_link_tell_state (self, RW_LINK_CLOSED, _ ("The meter is not connected."));
}

RwLinkState
rw_link_get_state (RwLink *self)
{
  return get_private (self)->state;
}

const char *
rw_link_get_message (RwLink *self)
{
  return get_private (self)->message;
}

const char *
rw_link_get_identity (RwLink *self)
{
  return get_private (self)->identity;
}

const char *
rw_link_get_trouble (RwLink *self)
{
  return get_private (self)->trouble;
}

void
rw_link_set_kind (RwLink *self,
                  RwKind  kind)
{
  g_return_if_fail (RW_IS_LINK (self));
  if (RW_LINK_GET_CLASS (self)->set_kind != NULL)
    RW_LINK_GET_CLASS (self)->set_kind (self, kind);
}

void
rw_link_get_counts (RwLink          *self,
                    RwDecoderCounts *counts)
{
  *counts = get_private (self)->counts;
}

void
rw_link_tell_value (RwLink             *self,
                    const RwMeterValue *value,
                    gint64              when_us)
{
  g_signal_emit (self, signals[SIGNAL_VALUE], 0, value, when_us);
}

void
rw_link_tell_state (RwLink     *self,
                    RwLinkState state,
                    const char *message)
{
  RwLinkPrivate *priv = get_private (self);

  if (priv->state == state && g_strcmp0 (priv->message, message) == 0)
    return;
  priv->state = state;
  g_free (priv->message);
  priv->message = g_strdup (message);

  /* A handler may change the state again: it must not pull the text from under the other
   * handlers. */
  g_autofree char *told = g_strdup (message);

  g_signal_emit (self, signals[SIGNAL_STATE], 0, (int) state, told);
}

void
rw_link_set_identity (RwLink     *self,
                      const char *identity)
{
  RwLinkPrivate *priv = get_private (self);

  g_free (priv->identity);
  priv->identity = g_strdup (identity);
}

void
rw_link_set_trouble (RwLink     *self,
                     const char *trouble)
{
  RwLinkPrivate *priv = get_private (self);

  g_free (priv->trouble);
  priv->trouble = g_strdup (trouble);
}

void
rw_link_set_counts (RwLink                *self,
                    const RwDecoderCounts *counts)
{
  get_private (self)->counts = *counts;
}
