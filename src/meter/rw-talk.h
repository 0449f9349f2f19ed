/* rw-talk.h: what to say to a meter that has to be asked, and when.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Pure: the time comes in as an argument, the text to send comes out. A kind of talk is one
 * RwTalkClass; its own struct begins with an RwTalk.
 */
#pragma once

#include "rw-meter-value.h"

G_BEGIN_DECLS

typedef struct _RwTalk RwTalk;

/* Bytes that are not for the talk: decode them as values. */
typedef void (*RwTalkFunc) (const guint8 *tainted, gsize n, gpointer data);

typedef enum
{
  RW_TALK_NEWS_NAME = 1 << 0,   /* it said its name, maybe the same as before */
  RW_TALK_NEWS_TROUBLE = 1 << 1 /* get_trouble () changed */
} RwTalkNews;

typedef struct
{
  void (*restart) (RwTalk *self, gint64 now_us);
  const char *(*next) (RwTalk *self, gint64 now_us, gint64 *due_us);
  void (*hear) (RwTalk       *self,
                const guint8 *tainted,
                gsize         n,
                gint64        now_us,
                RwTalkFunc    values,
                gpointer      data);
  void (*answered) (RwTalk *self, gint64 now_us);
  void (*set_kind) (RwTalk *self, RwKind kind, gint64 now_us); /* nullable: cannot */
  void (*free) (RwTalk *self);                                 /* all but name and trouble */
} RwTalkClass;

struct _RwTalk
{
  const RwTalkClass *class;
  char              *name;    /* owned, nullable */
  char              *trouble; /* owned, nullable */
  RwTalkNews         news;
  RwKind             kind;    /* of the values that are handed on now, when it can set the kind */
};

void rw_talk_free (RwTalk *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwTalk, rw_talk_free)

/* Begins anew: the port was just opened. The name is kept. */
void rw_talk_restart (RwTalk *self, gint64 now_us);

/* The text to send now, or NULL. Call it until it gives NULL, and again after each hear ()
 * and set_kind (), and not later than *due_us. The text is valid until the next call. */
const char *rw_talk_next (RwTalk *self, gint64 now_us, gint64 *due_us);

/* Bytes came. @values gets those that may hold values, during the call; what they measure is
 * get_kind () at that moment. */
void rw_talk_hear (RwTalk       *self,
                   const guint8 *tainted,
                   gsize         n,
                   gint64        now_us,
                   RwTalkFunc    values,
                   gpointer      data);

/* A value came: called while @values runs. */
void rw_talk_answered (RwTalk *self, gint64 now_us);

/* What is to be measured. No effect for a talk or a kind that cannot be set from here. */
void rw_talk_set_kind (RwTalk *self, RwKind kind, gint64 now_us);

/* What the values that are handed on now measure; FALSE when the talk does not set it. */
gboolean rw_talk_get_kind (const RwTalk *self, RwKind *kind);

/* "Quayside M3"; NULL when it did not say. Borrowed. */
const char *rw_talk_get_name (const RwTalk *self);

/* A translated sentence with the instrument's own code and words; NULL: none. Borrowed. */
const char *rw_talk_get_trouble (const RwTalk *self);

/* What is new since the last call. */
RwTalkNews rw_talk_take_news (RwTalk *self);

/* --- for the kinds of talk ------------------------------------------------------------- */

/* Both take the text, and make it news. */
void rw_talk_take_name (RwTalk *self, char *name);
void rw_talk_take_trouble (RwTalk *self, char *trouble);

G_END_DECLS
