/* rw-link-words.c: what a link over a port tells people of its states.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-link-words.h"

#include <glib/gi18n-lib.h>

char *
rw_link_words_opening (const RwBytePort *port)
{
  return g_strdup_printf (_ ("Opening “%s”."), port->name);
}

char *
rw_link_words_listening (const RwBytePort *port)
{
  return g_strdup_printf (_ ("“%s” is open. Waiting for the meter's first value."), port->name);
}

char *
rw_link_words_named (const RwBytePort *port,
                     const RwTalk     *talk)
{
  /* Translators: a meter's own name for itself, and a port. */
  return g_strdup_printf (_ ("%s answers on “%s”."), rw_talk_get_name (talk), port->name);
}

char *
rw_link_words_reading (const RwBytePort *port,
                       const RwTalk     *talk)
{
  const char *name = talk != NULL ? rw_talk_get_name (talk) : NULL;

  if (name != NULL)
    /* Translators: a meter's own name for itself, and a port. */
    return g_strdup_printf (_ ("%s is read on “%s”."), name, port->name);
  return g_strdup_printf (_ ("The meter on “%s” is read."), port->name);
}

static char *
explain_no_bytes (const RwBytePort *port,
                  const RwTalk     *talk)
{
  if (talk != NULL && port->class->is_network)
    return g_strdup_printf (_ ("The meter at “%s” does not answer. Is it on and set to remote "
                               "control, and is this the right port?"),
                            port->name);
  if (talk != NULL)
    return g_strdup_printf (_ ("The meter on “%s” does not answer. Is it on, set to remote "
                               "control, and is the speed right?"),
                            port->name);
  return g_strdup_printf (_ ("Nothing comes from “%s”. Is the meter on and set to send?"),
                          port->name);
}

char *
rw_link_words_silent (const RwBytePort *port,
                      const RwTalk     *talk,
                      gboolean          heard,
                      gboolean          doubted,
                      const char       *bad)
{
  if (talk != NULL && rw_talk_get_trouble (talk) != NULL)
    return g_strdup_printf (_ ("The meter on “%s” gives no values."), port->name);
  if (!heard)
    return explain_no_bytes (port, talk);
  if (doubted)
    return g_strdup_printf (_ ("The meter on “%s” jumps about: no two of its values agree. Hold the leads "
                               "still."),
                            port->name);
  if (bad != NULL)
    /* Translators: a port, and the odd line that came from it. */
    return g_strdup_printf (_ ("What comes from “%s” makes no reading, such as “%s”. Check format "
                               "and line settings."),
                            port->name, bad);
  return g_strdup_printf (_ ("What comes from “%s” makes no reading. Check format and line "
                             "settings."),
                          port->name);
}

char *
rw_link_words_lost (const RwBytePort *port)
{
  if (port->class->is_network)
    return g_strdup_printf (_ ("“%s” hung up. Is it on, and in the network? Reading then goes on "
                               "by itself."),
                            port->name);
  return g_strdup_printf (_ ("“%s” went away. Plug the cable in again: reading then goes on "
                             "by itself."),
                          port->name);
}

char *
rw_link_words_join (const char *message,
                    const char *trouble)
{
  if (trouble == NULL)
    return g_strdup (message);
  /* Translators: two sentences, one after the other. */
  return g_strdup_printf (_ ("%s %s"), message, trouble);
}
