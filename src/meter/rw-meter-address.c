/* rw-meter-address.c: where a meter is reached.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-address.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-link-port.h"
#include "rw-serial-byte-port.h"
#include "rw-tcp-byte-port.h"

/* A host name has 253 letters at most (RFC 1035, 2.3.4). */
static const glong max_host = 253;

static const RwSerialSettings usual_line
    = { .baud = 9600, .bits = 8, .parity = RW_PARITY_NONE, .stop_bits = 1, .dtr = TRUE, .rts = TRUE };

/* --- the value ----------------------------------------------------------------------- */

RwMeterAddress *
rw_meter_address_new_serial (const char             *port,
                             const RwSerialSettings *line)
{
  RwMeterAddress *self = g_new0 (RwMeterAddress, 1);

  self->kind = RW_METER_ADDRESS_SERIAL;
  self->port = g_strdup (port);
  self->line = line != NULL ? *line : usual_line;
  return self;
}

RwMeterAddress *
rw_meter_address_new_tcp (const char *host,
                          guint16     tcp_port)
{
  RwMeterAddress *self = g_new0 (RwMeterAddress, 1);

  self->kind = RW_METER_ADDRESS_TCP;
  self->host = g_strdup (host);
  self->tcp_port = tcp_port;
  return self;
}

RwMeterAddress *
rw_meter_address_copy (const RwMeterAddress *self)
{
  if (self->kind == RW_METER_ADDRESS_TCP)
    return rw_meter_address_new_tcp (self->host, self->tcp_port);
  return rw_meter_address_new_serial (self->port, &self->line);
}

void
rw_meter_address_free (RwMeterAddress *self)
{
  if (self == NULL)
    return;
  g_free (self->port);
  g_free (self->host);
  g_free (self);
}

static gboolean
line_equal (const RwSerialSettings *a,
            const RwSerialSettings *b)
{
  return a->baud == b->baud && a->bits == b->bits && a->parity == b->parity
         && a->stop_bits == b->stop_bits && !a->dtr == !b->dtr && !a->rts == !b->rts;
}

gboolean
rw_meter_address_equal (const RwMeterAddress *a,
                        const RwMeterAddress *b)
{
  if (a->kind != b->kind)
    return FALSE;
  if (a->kind == RW_METER_ADDRESS_TCP)
    return g_ascii_strcasecmp (a->host, b->host) == 0 && a->tcp_port == b->tcp_port;
  return g_strcmp0 (a->port, b->port) == 0 && line_equal (&a->line, &b->line);
}

char *
rw_meter_address_to_words (const RwMeterAddress *self)
{
  static const char parities[RW_N_PARITIES] = { 'N', 'O', 'E' };

  if (self->kind == RW_METER_ADDRESS_TCP)
    return g_strdup_printf (strchr (self->host, ':') != NULL ? "[%s]:%u" : "%s:%u", self->host,
                            self->tcp_port);
  return g_strdup_printf ("%s · %u %u%c%u", self->port, self->line.baud, self->line.bits,
                          parities[MIN (self->line.parity, RW_N_PARITIES - 1)],
                          self->line.stop_bits);
}

/* --- what was typed ------------------------------------------------------------------ */

/* Letters of any script, digits, '-', '.', '_'; or an IPv6 address, with its zone or without. */
static gboolean
is_host (const char *host)
{
  const char *last = strrchr (host, '.');

  if (!g_utf8_validate (host, -1, NULL) || *host == '\0' || *host == '-' || *host == '.'
      || g_utf8_strlen (host, -1) > max_host || strstr (host, "..") != NULL)
    return FALSE;
  if (strchr (host, ':') != NULL)
    {
      g_auto (GStrv) parts = g_strsplit (host, "%", 2);

      return g_hostname_is_ip_address (parts[0]) && (parts[1] == NULL || *parts[1] != '\0');
    }
  /* "5.02" and the like are no names: one whose last part is a number is a full IPv4 address. */
  if (strspn (last != NULL ? last + 1 : host, "0123456789") == strlen (last != NULL ? last + 1 : host)
      && (last == NULL || last[1] != '\0'))
    return g_hostname_is_ip_address (host);
  for (const char *p = host; *p != '\0'; p = g_utf8_next_char (p))
    if (strchr ("-._", *p) == NULL && !g_unichar_isalnum (g_utf8_get_char (p)))
      return FALSE;
  return TRUE;
}

/* Cuts "host", "host:port", "[v6]", "[v6]:port" or "v6"; *port is NULL when there is none.
 * FALSE for brackets that do not match. (out) (transfer full) */
static gboolean
cut_host (const char  *text,
          char       **host,
          const char **port)
{
  const char *colon = strchr (text, ':');

  *port = NULL;
  if (*text == '[')
    {
      const char *end = strchr (text, ']');

      if (end == NULL || (end[1] != '\0' && end[1] != ':'))
        return FALSE;
      *port = end[1] == ':' ? end + 2 : NULL;
      *host = g_strndup (text + 1, (gsize) (end - text - 1));
      return strchr (*host, ':') != NULL;
    }
  if (colon != NULL && strchr (colon + 1, ':') == NULL)
    *port = colon + 1;
  *host = g_strndup (text, *port != NULL ? (gsize) (colon - text) : strlen (text));
  return TRUE;
}

static RwMeterAddress *
refuse (const char *typed,
        GError    **error)
{
  g_autofree char *shown = g_utf8_make_valid (typed, -1);

  g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE,
               /* Translators: what the person typed. Keep the examples as they are. */
               _ ("“%s” is no place of a meter. Write a serial port such as /dev/ttyUSB0, or a "
                  "host and its port (1 to 65535) such as bench-box:5025."),
               shown);
  return NULL;
}

static RwMeterAddress *
parse_tcp (const char *text,
           const char *typed,
           GError    **error)
{
  g_autofree char *host = NULL;
  const char *port_text;
  guint64 port = RW_METER_ADDRESS_SCPI_PORT;

  if (!cut_host (text, &host, &port_text) || !is_host (host)
      || (port_text != NULL
          && !g_ascii_string_to_unsigned (port_text, 10, 1, G_MAXUINT16, &port, NULL)))
    return refuse (typed, error);
  return rw_meter_address_new_tcp (host, (guint16) port);
}

RwMeterAddress *
rw_meter_address_parse (const char             *typed,
                        const RwSerialSettings *line,
                        GError                **error)
{
  g_autofree char *text = g_strstrip (g_strdup (typed));

  if (*text == '\0')
    {
      g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE,
                   _ ("Nothing was written. Write a serial port such as /dev/ttyUSB0, or a host "
                      "and its port such as bench-box:5025."));
      return NULL;
    }
  if (g_ascii_strncasecmp (text, "tcp:", 4) == 0)
    return parse_tcp (text + 4, typed, error);
  if (strchr (text, '/') != NULL)
    return rw_meter_address_new_serial (text, line);
  if (g_str_has_prefix (text, "tty"))
    {
      g_autofree char *path = g_strconcat ("/dev/", text, NULL);

      return rw_meter_address_new_serial (path, line);
    }
  return parse_tcp (text, typed, error);
}

/* --- what is there ------------------------------------------------------------------- */

RwBytePort *
rw_meter_address_make_port (const RwMeterAddress *self)
{
  if (self->kind == RW_METER_ADDRESS_TCP)
    return rw_tcp_byte_port_new (self->host, self->tcp_port);
  return rw_serial_byte_port_new (self->port, &self->line);
}

RwLink *
rw_meter_address_link (const RwMeterAddress *self,
                       RwDecoder            *decoder)
{
  return rw_link_port_new (self, decoder);
}
