/* rw-tcp-byte-port.c: a TCP connection as a byte port.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Opening looks the name up, then tries its addresses one after the other; each gets an equal
 * share of the time that is left. All waiting ends when the port is cancelled.
 *
 * A peer that is gone without a word (switched off, cable pulled) is found by the kernel: on
 * a line without traffic by keepalive probes (after 5 s, then each 2 s, three in vain: 11 s),
 * after a question by the time that it stays unacknowledged (10 s). (RFC 1122, 4.2.3.6;
 * RFC 5482, TCP_USER_TIMEOUT)
 */
#include "config.h"

#include "rw-tcp-byte-port.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <string.h>

static const gint64 open_limit_us = 4 * G_USEC_PER_SEC;
static const gint64 write_wait_us = 200 * 1000;
static const int idle_s = 5;
static const int probe_s = 2;
static const int n_probes = 3;
static const int unanswered_ms = 10000;

typedef struct
{
  RwBytePort    parent;
  char         *host;
  guint16       port;
  GCancellable *cancellable; /* of the owner */
  GSocket      *socket;      /* NULL while closed */
} RwTcpBytePort;

static RwTcpBytePort *
get_self (RwBytePort *port)
{
  return (RwTcpBytePort *) port;
}

/* --- errors -------------------------------------------------------------------------- */

static void
explain_lookup (RwTcpBytePort *self,
                const GError  *cause,
                GError       **error)
{
  if (g_error_matches (cause, G_RESOLVER_ERROR, G_RESOLVER_ERROR_NOT_FOUND))
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_NOT_THERE,
                 _ ("There is no “%s” in the network. Check the name, or write its number."),
                 self->host);
  else
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
                 /* Translators: a host's name, and the system's own words. */
                 _ ("“%s” could not be looked up: %s. Check the network, or write its number."),
                 self->host, cause->message);
}

static void
explain_connect (RwTcpBytePort *self,
                 const GError  *cause,
                 GError       **error)
{
  const char *name = self->parent.name;

  if (g_error_matches (cause, G_IO_ERROR, G_IO_ERROR_CONNECTION_REFUSED))
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_REFUSED,
                 _ ("“%s” is there, but takes no connection on port %u. Check the port, and that "
                    "nobody else is connected."),
                 self->host, self->port);
  else if (g_error_matches (cause, G_IO_ERROR, G_IO_ERROR_TIMED_OUT))
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
                 _ ("No answer from “%s”. Is it on, and in the same network?"), name);
  else
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
                 /* Translators: a host and port, and the system's own words. */
                 _ ("“%s” cannot be reached: %s. Check the name and the network."), name,
                 cause->message);
}

/* --- looking up ---------------------------------------------------------------------- */

/* A lookup that knows when to end. */
typedef struct
{
  GMainContext *context;
  GCancellable *cancellable; /* of this lookup: also by time */
  gboolean      timed_out;
  GAsyncResult *result;
} Lookup;

static void
looked_up_cb (GObject      *source,
              GAsyncResult *result,
              gpointer      data)
{
  ((Lookup *) data)->result = g_object_ref (result);
}

static gboolean
lookup_timeout_cb (gpointer data)
{
  Lookup *self = data;

  self->timed_out = TRUE;
  g_cancellable_cancel (self->cancellable);
  return G_SOURCE_REMOVE;
}

static void
owner_cancelled_cb (GCancellable *owner,
                    gpointer      data)
{
  g_cancellable_cancel (data);
}

static void
run_lookup (Lookup     *self,
            GResolver  *resolver,
            const char *host,
            guint       limit_ms)
{
  g_autoptr (GSource) timeout = g_timeout_source_new (limit_ms);

  g_source_set_callback (timeout, lookup_timeout_cb, self, NULL);
  g_source_attach (timeout, self->context);
  g_resolver_lookup_by_name_async (resolver, host, self->cancellable, looked_up_cb, self);
  while (self->result == NULL)
    g_main_context_iteration (self->context, TRUE);
  g_source_destroy (timeout);
}

/* Addresses (of GInetAddress) of a name, or NULL. (transfer full) */
static GList *
look_up (RwTcpBytePort *self,
         GError       **error)
{
  g_autoptr (GMainContext) context = g_main_context_new ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GResolver) resolver = g_resolver_get_default ();
  g_autoptr (GError) cause = NULL;
  Lookup lookup = { .context = context, .cancellable = cancellable };
  const gulong handler = g_cancellable_connect (
      self->cancellable, G_CALLBACK (owner_cancelled_cb), cancellable, NULL);
  GList *found;

  g_main_context_push_thread_default (context);
  run_lookup (&lookup, resolver, self->host, (guint) (open_limit_us / 1000));
  found = g_resolver_lookup_by_name_finish (resolver, lookup.result, &cause);
  g_object_unref (lookup.result);
  g_main_context_pop_thread_default (context);
  g_cancellable_disconnect (self->cancellable, handler);
  if (lookup.timed_out && found == NULL)
    g_set_error (error, RW_PORT_ERROR, RW_PORT_ERROR_FAILED,
                 _ ("Nobody in the network says where “%s” is. Check the network, or write its "
                    "number."),
                 self->host);
  else if (g_error_matches (cause, G_IO_ERROR, G_IO_ERROR_CANCELLED))
    g_propagate_error (error, g_steal_pointer (&cause));
  else if (found == NULL)
    explain_lookup (self, cause, error);
  return found;
}

/* Where to connect to (of GSocketAddress), or NULL. (transfer full) */
static GPtrArray *
find_places (RwTcpBytePort *self,
             GError       **error)
{
  GPtrArray *places = g_ptr_array_new_with_free_func (g_object_unref);
  /* An address in digits, also with a zone ("fe80::1%eth0"), which the resolver would lose. */
  GSocketAddress *literal = g_inet_socket_address_new_from_string (self->host, self->port);

  if (literal != NULL)
    {
      g_ptr_array_add (places, literal);
      return places;
    }

  GList *found = look_up (self, error);

  for (GList *l = found; l != NULL; l = l->next)
    g_ptr_array_add (places, g_inet_socket_address_new (l->data, self->port));
  g_resolver_free_addresses (found);
  if (places->len == 0)
    g_clear_pointer (&places, g_ptr_array_unref);
  return places;
}

/* --- connecting ---------------------------------------------------------------------- */

/* Best effort: a system without one of these still has its own, longer limits. */
static void
set_up (GSocket *socket)
{
  g_socket_set_blocking (socket, FALSE);
  g_socket_set_keepalive (socket, TRUE);
  g_socket_set_option (socket, IPPROTO_TCP, TCP_NODELAY, 1, NULL);
  g_socket_set_option (socket, IPPROTO_TCP, TCP_KEEPIDLE, idle_s, NULL);
  g_socket_set_option (socket, IPPROTO_TCP, TCP_KEEPINTVL, probe_s, NULL);
  g_socket_set_option (socket, IPPROTO_TCP, TCP_KEEPCNT, n_probes, NULL);
  g_socket_set_option (socket, IPPROTO_TCP, TCP_USER_TIMEOUT, unanswered_ms, NULL);
}

static gboolean
finish_connect (RwTcpBytePort  *self,
                GSocket        *socket,
                GSocketAddress *place,
                gint64          limit_us,
                GError        **error)
{
  g_autoptr (GError) cause = NULL;

  if (g_socket_connect (socket, place, self->cancellable, &cause))
    return TRUE;
  if (!g_error_matches (cause, G_IO_ERROR, G_IO_ERROR_PENDING))
    {
      g_propagate_error (error, g_steal_pointer (&cause));
      return FALSE;
    }
  return g_socket_condition_timed_wait (socket, G_IO_OUT, limit_us, self->cancellable, error)
         && g_socket_check_connect_result (socket, error);
}

/* A connection to a free port of this very machine may, by chance, be one with itself. */
static gboolean
is_itself (GSocket *socket)
{
  g_autoptr (GSocketAddress) local = g_socket_get_local_address (socket, NULL);
  g_autoptr (GSocketAddress) remote = g_socket_get_remote_address (socket, NULL);
  guint8 a[128] = { 0 }, b[128] = { 0 };

  return local != NULL && remote != NULL && g_socket_address_to_native (local, a, sizeof a, NULL)
         && g_socket_address_to_native (remote, b, sizeof b, NULL) && memcmp (a, b, sizeof a) == 0;
}

/* (transfer full) */
static GSocket *
connect_to (RwTcpBytePort  *self,
            GSocketAddress *place,
            gint64          limit_us,
            GError        **error)
{
  g_autoptr (GSocket) socket = g_socket_new (g_socket_address_get_family (place),
                                             G_SOCKET_TYPE_STREAM, G_SOCKET_PROTOCOL_TCP, error);

  if (socket == NULL)
    return NULL;
  set_up (socket);
  if (!finish_connect (self, socket, place, limit_us, error))
    return NULL;
  if (is_itself (socket))
    {
      g_set_error_literal (error, G_IO_ERROR, G_IO_ERROR_CONNECTION_REFUSED, "");
      return NULL;
    }
  return g_steal_pointer (&socket);
}

/* Keeps the reason that tells most: somebody who refused is there. */
static void
keep_reason (GError **kept,
             GError  *reason)
{
  if (*kept != NULL && g_error_matches (*kept, G_IO_ERROR, G_IO_ERROR_CONNECTION_REFUSED))
    {
      g_error_free (reason);
      return;
    }
  g_clear_error (kept);
  *kept = reason;
}

static gboolean
tcp_open (RwBytePort *port,
          GError    **error)
{
  RwTcpBytePort *self = get_self (port);
  const gint64 until_us = g_get_monotonic_time () + open_limit_us;
  g_autoptr (GPtrArray) places = find_places (self, error);
  g_autoptr (GError) cause = NULL;

  if (places == NULL)
    return FALSE;
  for (guint i = 0; i < places->len && self->socket == NULL; i++)
    {
      const gint64 left_us = MAX (until_us - g_get_monotonic_time (), G_USEC_PER_SEC / 4);
      GError *reason = NULL;

      if (g_cancellable_set_error_if_cancelled (self->cancellable, error))
        return FALSE;
      self->socket = connect_to (self, g_ptr_array_index (places, i), left_us / (places->len - i),
                                 &reason);
      if (reason != NULL)
        keep_reason (&cause, reason);
    }
  if (self->socket != NULL)
    return TRUE;
  if (!g_cancellable_set_error_if_cancelled (self->cancellable, error))
    explain_connect (self, cause, error);
  return FALSE;
}

/* --- open ---------------------------------------------------------------------------- */

static int
tcp_get_fd (RwBytePort *port)
{
  return g_socket_get_fd (get_self (port)->socket);
}

static gssize
tcp_read (RwBytePort *port,
          guint8     *bytes,
          gsize       n)
{
  g_autoptr (GError) error = NULL;
  const gssize got = g_socket_receive_with_blocking (get_self (port)->socket, (char *) bytes, n,
                                                     FALSE, NULL, &error);

  if (got > 0)
    return got;
  return g_error_matches (error, G_IO_ERROR, G_IO_ERROR_WOULD_BLOCK) ? 0 : -1;
}

static gboolean
tcp_write (RwBytePort *port,
           const char *text,
           gsize       n)
{
  RwTcpBytePort *self = get_self (port);

  while (n > 0)
    {
      g_autoptr (GError) error = NULL;
      const gssize sent
          = g_socket_send_with_blocking (self->socket, text, n, FALSE, self->cancellable, &error);

      if (sent > 0)
        {
          text += sent;
          n -= (gsize) sent;
        }
      else if (!g_error_matches (error, G_IO_ERROR, G_IO_ERROR_WOULD_BLOCK)
               || !g_socket_condition_timed_wait (self->socket, G_IO_OUT, write_wait_us,
                                                  self->cancellable, NULL))
        return FALSE;
    }
  return TRUE;
}

static void
tcp_drop_input (RwBytePort *port)
{
  guint8 bytes[4096];

  while (tcp_read (port, bytes, sizeof bytes) > 0)
    ;
}

/* The descriptor tells. */
static gboolean
tcp_is_there (RwBytePort *port)
{
  return TRUE;
}

static void
tcp_close (RwBytePort *port)
{
  RwTcpBytePort *self = get_self (port);

  if (self->socket != NULL)
    g_socket_close (self->socket, NULL);
  g_clear_object (&self->socket);
}

static void
tcp_cancel (RwBytePort *port)
{
  g_cancellable_cancel (get_self (port)->cancellable);
}

static void
tcp_free (RwBytePort *port)
{
  RwTcpBytePort *self = get_self (port);

  tcp_close (port);
  g_object_unref (self->cancellable);
  g_free (self->parent.name);
  g_free (self->host);
  g_free (self);
}

static const RwBytePortClass tcp_class = {
  .open = tcp_open,
  .get_fd = tcp_get_fd,
  .read = tcp_read,
  .write = tcp_write,
  .drop_input = tcp_drop_input,
  .is_there = tcp_is_there,
  .close = tcp_close,
  .free = tcp_free,
  .cancel = tcp_cancel,
  .is_network = TRUE,
  .torn_ms = 200,
  .reopen_ms = 1000,
};

RwBytePort *
rw_tcp_byte_port_new (const char *host,
                      guint16     port)
{
  RwTcpBytePort *self = g_new0 (RwTcpBytePort, 1);

  self->parent.class = &tcp_class;
  self->parent.name
      = g_strdup_printf (strchr (host, ':') != NULL ? "[%s]:%u" : "%s:%u", host, port);
  self->host = g_strdup (host);
  self->port = port;
  self->cancellable = g_cancellable_new ();
  return &self->parent;
}
