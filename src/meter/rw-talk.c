/* rw-talk.c: what the kinds of talk have in common.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-talk.h"

void
rw_talk_free (RwTalk *self)
{
  if (self == NULL)
    return;
  g_free (self->name);
  g_free (self->trouble);
  self->class->free (self);
}

void
rw_talk_restart (RwTalk *self,
                 gint64  now_us)
{
  self->class->restart (self, now_us);
}

const char *
rw_talk_next (RwTalk *self,
              gint64  now_us,
              gint64 *due_us)
{
  return self->class->next (self, now_us, due_us);
}

void
rw_talk_hear (RwTalk       *self,
              const guint8 *tainted,
              gsize         n,
              gint64        now_us,
              RwTalkFunc    values,
              gpointer      data)
{
  self->class->hear (self, tainted, n, now_us, values, data);
}

void
rw_talk_answered (RwTalk *self,
                  gint64  now_us)
{
  self->class->answered (self, now_us);
}

void
rw_talk_set_kind (RwTalk *self,
                  RwKind  kind,
                  gint64  now_us)
{
  if (self->class->set_kind != NULL)
    self->class->set_kind (self, kind, now_us);
}

gboolean
rw_talk_get_kind (const RwTalk *self,
                  RwKind       *kind)
{
  if (self->class->set_kind == NULL)
    return FALSE;
  *kind = self->kind;
  return TRUE;
}

const char *
rw_talk_get_name (const RwTalk *self)
{
  return self->name;
}

const char *
rw_talk_get_trouble (const RwTalk *self)
{
  return self->trouble;
}

RwTalkNews
rw_talk_take_news (RwTalk *self)
{
  const RwTalkNews news = self->news;

  self->news = 0;
  return news;
}

void
rw_talk_take_name (RwTalk *self,
                   char   *name)
{
  g_free (self->name);
  self->name = name;
  self->news |= RW_TALK_NEWS_NAME;
}

void
rw_talk_take_trouble (RwTalk *self,
                      char   *trouble)
{
  if (g_strcmp0 (self->trouble, trouble) != 0)
    self->news |= RW_TALK_NEWS_TROUBLE;
  g_free (self->trouble);
  self->trouble = trouble;
}
