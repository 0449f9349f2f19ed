/* fake-line.c: for tests: a serial line down to its bits, with a meter at the other end.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fake-line.h"

#include <fcntl.h>
#include <glib-unix.h>
#include <string.h>
#include <unistd.h>

static const gulong feed_us = 4000;

/* One frame on its way: a level a bit. */
typedef struct
{
  double   start, end; /* seconds, monotonic */
  double   bit;        /* seconds */
  guint8  *levels;
  guint    n;
  gboolean asked;
} Sending;

typedef struct
{
  RwBytePort       parent;
  FakeLine        *line;
  RwSerialSettings settings;
  int              fds[2];
  GThread         *feeder;
  int              stop;
  double           opened, cursor;
} FakePort;

static double
get_now (void)
{
  return (double) g_get_monotonic_time () / 1e6;
}

static void
clear_sending (gpointer data)
{
  g_free (((Sending *) data)->levels);
}

FakeLine *
fake_line_new (const char *name,
               const char *format)
{
  static guint32 seed = 1001;
  FakeLine *self = g_new0 (FakeLine, 1);

  self->name = g_strdup (name);
  self->line = *rw_decoder_get_usual_line (format);
  self->frames = g_ptr_array_new_with_free_func ((GDestroyNotify) g_bytes_unref);
  self->pause = 0.35;
  self->delay = 0.15;
  self->error = -1;
  self->born = get_now ();
  self->written = g_string_new (NULL);
  g_mutex_init (&self->lock);
  self->spoil_rand = g_rand_new_with_seed (seed);
  self->rand = g_rand_new_with_seed (seed++);
  self->sendings = g_array_new (FALSE, FALSE, sizeof (Sending));
  g_array_set_clear_func (self->sendings, clear_sending);
  return self;
}

void
fake_line_free (FakeLine *self)
{
  g_assert_cmpuint (self->open_now, ==, 0);
  g_free (self->name);
  g_ptr_array_unref (self->frames);
  g_string_free (self->written, TRUE);
  g_rand_free (self->spoil_rand);
  g_rand_free (self->rand);
  g_array_unref (self->sendings);
  g_mutex_clear (&self->lock);
  g_free (self);
}

void
fake_line_add_hex (FakeLine   *self,
                   const char *hex)
{
  GByteArray *bytes = g_byte_array_new ();

  for (const char *p = hex; *p != '\0'; p += strcspn (p, " "), p += strspn (p, " "))
    {
      const guint8 byte = (guint8) g_ascii_strtoull (p, NULL, 16);

      g_byte_array_append (bytes, &byte, 1);
    }
  g_ptr_array_add (self->frames, g_byte_array_free_to_bytes (bytes));
}

void
fake_line_add_text (FakeLine   *self,
                    const char *text)
{
  g_ptr_array_add (self->frames, g_bytes_new (text, strlen (text)));
}

/* --- the sender ---------------------------------------------------------------------- */

static void
put_byte (GByteArray             *levels,
          const RwSerialSettings *line,
          guint8                  byte)
{
  static const guint8 low = 0, high = 1;
  guint ones = 0;

  g_byte_array_append (levels, &low, 1);
  for (guint bit = 0; bit < line->bits; bit++)
    {
      const guint8 level = (byte >> bit) & 1;

      ones += level;
      g_byte_array_append (levels, &level, 1);
    }
  if (line->parity != RW_PARITY_NONE)
    {
      const guint8 level = (guint8) ((ones & 1) ^ (line->parity == RW_PARITY_ODD ? 1 : 0));

      g_byte_array_append (levels, &level, 1);
    }
  for (guint stop = 0; stop < line->stop_bits; stop++)
    g_byte_array_append (levels, &high, 1);
}

static void
send_at (FakeLine *self,
         double    start,
         gboolean  asked)
{
  GBytes *frame = self->frames->pdata[self->next_frame++ % self->frames->len];
  GByteArray *levels = g_byte_array_new ();
  Sending sending = { .start = start, .bit = 1.0 / self->line.baud, .asked = asked };
  gsize n;
  const guint8 *bytes = g_bytes_get_data (frame, &n);

  for (gsize i = 0; i < n; i++)
    {
      const gboolean spoilt = g_rand_double (self->spoil_rand) < self->spoil;

      put_byte (levels, &self->line,
                spoilt ? bytes[i] ^ (guint8) g_rand_int_range (self->spoil_rand, 1, 256) : bytes[i]);
    }
  sending.n = levels->len;
  sending.end = start + sending.n * sending.bit;
  sending.levels = g_byte_array_free (levels, FALSE);
  g_array_append_val (self->sendings, sending);
}

static void
send_until (FakeLine *self,
            double    now)
{
  while (self->pause > 0)
    {
      const guint n = self->sendings->len;
      const double last = n > 0 ? g_array_index (self->sendings, Sending, n - 1).end : self->born;

      if (last + self->pause > now + 0.1)
        return;
      send_at (self, last + self->pause, FALSE);
    }
}

/* --- the receiver -------------------------------------------------------------------- */

static const Sending *
find_sending (const FakeLine *self,
              double          t)
{
  for (guint i = self->sendings->len; i > 0; i--)
    {
      const Sending *sending = &g_array_index (self->sendings, Sending, i - 1);

      if (t >= sending->start && t < sending->end)
        return sending;
      if (t >= sending->end)
        return NULL;
    }
  return NULL;
}

static gboolean
get_level (const FakeLine *self,
           double          t)
{
  const Sending *sending = find_sending (self, t);

  return sending == NULL
         || sending->levels[MIN ((guint) ((t - sending->start) / sending->bit), sending->n - 1)] != 0;
}

/* When the line is next at @level, from t on; +inf when not known yet. */
static double
find_level (const FakeLine *self,
            double          t,
            gboolean        level)
{
  if (get_level (self, t) == level)
    return t;
  for (guint i = 0; i < self->sendings->len; i++)
    {
      const Sending *sending = &g_array_index (self->sendings, Sending, i);

      if (sending->end <= t)
        continue;
      for (guint bit = 0; bit < sending->n; bit++)
        {
          const double begin = sending->start + bit * sending->bit;

          if (begin >= t && (sending->levels[bit] != 0) == level)
            return begin;
        }
      if (level)
        return MAX (sending->end, t);
    }
  return G_MAXDOUBLE;
}

/* The next byte that is complete by now. A start bit that is over in its middle was none. */
static gboolean
receive (FakePort *port,
         double    now,
         guint8   *byte)
{
  const FakeLine *line = port->line;
  const RwSerialSettings *set = &port->settings;
  const double width = 1.0 / (line->any_speed ? line->line.baud : set->baud);
  const guint bits = set->bits + (set->parity != RW_PARITY_NONE);

  for (;;)
    {
      const double edge = find_level (line, port->cursor, FALSE);
      const double stop = edge + width * (1.5 + bits);
      guint value = 0;

      if (edge > now || stop > now)
        return FALSE;
      if (get_level (line, edge + width / 2))
        {
          port->cursor = find_level (line, edge + width / 2, TRUE);
          continue;
        }
      for (guint bit = 0; bit < set->bits; bit++)
        value |= (guint) get_level (line, edge + width * (1.5 + bit)) << bit;
      /* Without a stop bit, the next start bit is looked for when the line is high again. */
      port->cursor = find_level (line, stop, TRUE);
      *byte = (guint8) value;
      return TRUE;
    }
}

static gboolean
is_powered (const FakePort *port)
{
  const RwSerialSettings *wanted = &port->line->line;

  return !port->line->needs_power
         || (!port->settings.dtr == !wanted->dtr && !port->settings.rts == !wanted->rts);
}

static void
feed (FakePort *port)
{
  FakeLine *line = port->line;
  const double now = get_now ();
  guint8 byte;

  send_until (line, now);
  while (is_powered (port) && receive (port, now, &byte))
    {
      const Sending *sending = find_sending (line, port->cursor - 1e-4);

      if (sending != NULL && !sending->asked)
        line->last_byte = now;
      g_assert_cmpint (write (port->fds[1], &byte, 1), ==, 1);
    }
  if (g_rand_double (line->rand) < line->glitches * (double) feed_us / 1e6)
    {
      byte = (guint8) g_rand_int_range (line->rand, 0, 256);
      g_assert_cmpint (write (port->fds[1], &byte, 1), ==, 1);
    }
}

static gpointer
run (gpointer data)
{
  FakePort *port = data;

  while (g_atomic_int_get (&port->stop) == 0)
    {
      g_mutex_lock (&port->line->lock);
      feed (port);
      g_mutex_unlock (&port->line->lock);
      g_usleep (feed_us);
    }
  return NULL;
}

/* --- the port ------------------------------------------------------------------------ */

static gboolean
fake_open (RwBytePort *base,
           GError    **error)
{
  FakePort *port = (FakePort *) base;

  if (port->line->error >= 0)
    {
      g_set_error (error, RW_PORT_ERROR, port->line->error, "“%s” is locked.", base->name);
      return FALSE;
    }
  g_assert_true (g_unix_open_pipe (port->fds, FD_CLOEXEC, NULL));
  g_mutex_lock (&port->line->lock);
  port->line->opens++;
  port->line->open_now++;
  g_assert_cmpuint (port->line->open_now, ==, 1);
  port->opened = port->cursor = get_now ();
  g_mutex_unlock (&port->line->lock);
  port->feeder = g_thread_new ("fake line", run, port);
  return TRUE;
}

static int
fake_get_fd (RwBytePort *base)
{
  return ((FakePort *) base)->fds[0];
}

static gssize
fake_read (RwBytePort *base,
           guint8     *bytes,
           gsize       n)
{
  return read (((FakePort *) base)->fds[0], bytes, n);
}

static gboolean
fake_write (RwBytePort *base,
            const char *text,
            gsize       n)
{
  FakePort *port = (FakePort *) base;
  FakeLine *line = port->line;
  const double now = get_now ();
  const RwSerialSettings *a = &port->settings, *b = &line->line;

  g_mutex_lock (&line->lock);
  g_string_append_printf (line->written, "%.*s@%u ", (int) strcspn (text, "\n"), text, a->baud);
  line->asked_unheard |= line->listened < 1;
  line->asked_talking |= line->last_byte > 0 && now - line->last_byte < 2;
  if (g_strcmp0 (line->question, text) == 0 && is_powered (port)
      && (line->any_speed || (a->baud == b->baud && a->bits == b->bits && a->parity == b->parity)))
    send_at (line, now + line->delay, TRUE);
  g_mutex_unlock (&line->lock);
  return TRUE;
}

static void
fake_drop_input (RwBytePort *base)
{
}

static gboolean
fake_is_there (RwBytePort *base)
{
  return TRUE;
}

static void
fake_close (RwBytePort *base)
{
  FakePort *port = (FakePort *) base;

  g_atomic_int_set (&port->stop, 1);
  g_thread_join (port->feeder);
  close (port->fds[0]);
  close (port->fds[1]);
  g_mutex_lock (&port->line->lock);
  port->line->open_now--;
  port->line->listened += get_now () - port->opened;
  g_mutex_unlock (&port->line->lock);
}

static void
fake_free (RwBytePort *base)
{
  g_free (base->name);
  g_free (base);
}

static const RwBytePortClass fake_class = {
  .open = fake_open,
  .get_fd = fake_get_fd,
  .read = fake_read,
  .write = fake_write,
  .drop_input = fake_drop_input,
  .is_there = fake_is_there,
  .close = fake_close,
  .free = fake_free,
};

RwBytePort *
fake_line_make_port (const RwMeterAddress *address,
                     gpointer              lines)
{
  const gboolean serial = address->kind == RW_METER_ADDRESS_SERIAL;
  const char *name = serial ? address->port : address->host;
  FakePort *port = g_new0 (FakePort, 1);

  port->parent.class = &fake_class;
  port->parent.name = g_strdup (name);
  port->settings = address->line;
  for (guint i = 0; i < ((GPtrArray *) lines)->len; i++)
    {
      FakeLine *line = ((GPtrArray *) lines)->pdata[i];

      if (g_str_equal (line->name, name))
        port->line = line;
    }
  g_assert_nonnull (port->line);
  if (!serial)
    port->settings = port->line->line;
  return &port->parent;
}
