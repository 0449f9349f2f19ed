/* rw-projection-ask.c: what the teacher asks for, and how that is said.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-projection-private.h"

#include <glib/gi18n-lib.h>

#include "rw-projection-words.h"

void
rw_projection_set_part (RwProjection    *self,
                        RwProjectionPart part)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  g_return_if_fail ((guint) part < RW_N_PROJECTION_PARTS);
  if (self->part == part)
    return;
  self->part = part;
  rw_projection_ask (self);
}

RwProjectionPart
rw_projection_get_part (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), RW_PROJECTION_VALUES);
  return self->part;
}

void
rw_projection_next_part (RwProjection *self)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  rw_projection_set_part (self, (self->part + 1) % RW_N_PROJECTION_PARTS);
}

void
rw_projection_set_enlarged (RwProjection *self,
                            gboolean      enlarged)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->enlarged == enlarged)
    return;
  self->enlarged = enlarged;
  rw_projection_ask (self);
}

gboolean
rw_projection_get_enlarged (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->enlarged;
}

void
rw_projection_hide_rail (RwProjection *self,
                         const char   *rail,
                         gboolean      hide)
{
  g_return_if_fail (RW_IS_PROJECTION (self) && rail != NULL);

  const char *id = g_intern_string (rail);

  if (hide ? g_hash_table_add (self->hidden, (gpointer) id) : g_hash_table_remove (self->hidden, id))
    rw_projection_ask (self);
}

gboolean
rw_projection_is_hidden (RwProjection *self,
                         const char   *rail)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self) && rail != NULL, FALSE);
  return g_hash_table_contains (self->hidden, g_intern_string (rail));
}

void
rw_projection_show_all_rails (RwProjection *self)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (g_hash_table_size (self->hidden) == 0)
    return;
  g_hash_table_remove_all (self->hidden);
  rw_projection_ask (self);
}

void
rw_projection_set_spotlight (RwProjection *self,
                             const char   *rail)
{
  g_return_if_fail (RW_IS_PROJECTION (self));

  const char *id = g_intern_string (rail);

  if (self->spotlight == id)
    return;
  self->spotlight = id;
  rw_projection_ask (self);
}

const char *
rw_projection_get_spotlight (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  return self->spotlight;
}

void
rw_projection_set_blank (RwProjection *self,
                         gboolean      blank)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->blank == blank)
    return;
  self->blank = blank;
  rw_projection_touch (self);
  rw_projection_ask (self);
}

gboolean
rw_projection_get_blank (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->blank;
}

void
rw_projection_set_frozen (RwProjection *self,
                          gboolean      frozen)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->frozen == frozen)
    return;
  if (frozen)
    rw_projection_ask (self);
  self->frozen = frozen;
  if (!frozen && !self->open)
    rw_projection_end (self);
  rw_projection_ask (self);
}

gboolean
rw_projection_get_frozen (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->frozen;
}

void
rw_projection_set_dark (RwProjection *self,
                        gboolean      dark)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->dark == dark)
    return;
  self->dark = dark;
  if (self->view != NULL)
    rw_view_set_theme (self->view, dark ? RW_THEME_DARK : RW_THEME_LIGHT);
  rw_projection_touch (self);
  rw_projection_ask (self);
}

gboolean
rw_projection_get_dark (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->dark;
}

void
rw_projection_send (RwProjection    *self,
                    RwProjectionSent what)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  g_return_if_fail ((guint) what < RW_N_PROJECTION_SENT);
  if (self->sent == what)
    return;
  self->sent = what;
  rw_projection_ask (self);
}

RwProjectionSent
rw_projection_get_sent (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), RW_SENT_NOTHING);
  return self->sent;
}

gboolean
rw_projection_can_send (RwProjection    *self,
                        RwProjectionSent what)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->job != NULL && !(self->deciding && what == RW_SENT_BELIEFS)
         && rw_projection_words_sent (self->job, self->hidden, what, NULL);
}

void
rw_projection_set_deciding (RwProjection *self,
                            gboolean      deciding)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->deciding == deciding)
    return;
  self->deciding = deciding;
  rw_projection_ask (self);
}

void
rw_projection_show_text (RwProjection      *self,
                         const char        *title,
                         const char *const *lines,
                         const char *const *cells,
                         guint              n_columns,
                         gboolean           alone)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  g_return_if_fail (cells == NULL || n_columns > 0);
  g_clear_pointer (&self->said, rw_projection_content_free);
  self->said = rw_projection_content_new ();
  self->said->title = g_strdup (title);
  self->said->lines = g_strdupv ((GStrv) lines);
  self->said->cells = g_strdupv ((GStrv) cells);
  self->said->n_columns = cells != NULL ? n_columns : 0;
  self->said->alone = alone;
  rw_projection_ask (self);
}

void
rw_projection_clear_text (RwProjection *self)
{
  g_return_if_fail (RW_IS_PROJECTION (self));
  if (self->said == NULL)
    return;
  g_clear_pointer (&self->said, rw_projection_content_free);
  rw_projection_ask (self);
}

gboolean
rw_projection_has_text (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), FALSE);
  return self->said != NULL;
}

/* --- in words ------------------------------------------------------------------------------------- */

/* What the place of the part holds. (transfer full) */
static char *
say_part (RwProjection *self)
{
  if (self->sent != RW_SENT_NOTHING)
    /* Translators: what was sent over: "the last note". */
    return g_strdup_printf (_ ("%s, sent over"), rw_projection_words_sent_name (self->sent));
  if (self->said != NULL && self->said->title != NULL)
    return g_strdup (self->said->title);
  if (self->enlarged)
    /* Translators: a part of what the class sees: "trim map". */
    return g_strdup_printf (_ ("%s, enlarged"), rw_projection_words_part (self->part));
  return g_strdup (rw_projection_words_part (self->part));
}

static void
say_rails (RwProjection *self,
           GString      *text)
{
  RwProfile *profile = rw_job_get_profile (self->job);

  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    {
      const RwRail *rail = rw_profile_get_rail (profile, i);

      if (g_hash_table_contains (self->hidden, rail->id))
        {
          g_string_append (text, " · ");
          /* Translators: rail. */
          g_string_append_printf (text, _ ("%s hidden"), rail->label);
        }
      else if (rail->id == self->spotlight)
        {
          g_string_append (text, " · ");
          /* Translators: rail. */
          g_string_append_printf (text, _ ("%s in the spotlight"), rail->label);
        }
    }
}

char *
rw_projection_dup_words (RwProjection *self)
{
  g_return_val_if_fail (RW_IS_PROJECTION (self), NULL);
  if (self->job == NULL)
    return g_strdup (_ ("The class sees nothing: no job is open"));

  g_autofree char *part = say_part (self);
  GString *text = g_string_new (NULL);

  if (self->blank)
    /* Translators: a part: what the class will see. */
    g_string_append_printf (text, _ ("The class sees nothing (blank), then: %s"), part);
  else if (self->frozen)
    /* Translators: a part: what the class will see. */
    g_string_append_printf (text, _ ("The class sees a frozen picture, then: %s"), part);
  else
    /* Translators: a part. */
    g_string_append_printf (text, _ ("The class sees: %s"), part);
  say_rails (self, text);
  return g_string_free (text, FALSE);
}
