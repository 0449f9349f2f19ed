/* test-mailbox.c: what one thread posts another gets: all of it, in order, in slices.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-mailbox.h"

typedef struct
{
  RwMailbox *box;
  guint      n;        /* delivered */
  gint64     work_us;  /* what a delivery takes */
  guint      flush_at; /* at which value to flush, shut */
  guint      shut_at;
  guint      counted;  /* counts.values of the last delivery */
} Owner;

static void
deliver (const RwMail          *mail,
         const RwDecoderCounts *counts,
         gpointer               data)
{
  Owner *self = data;
  const gint64 until_us = g_get_monotonic_time () + self->work_us;

  g_assert_cmpuint ((guint) mail->value.value, ==, self->n);
  self->n++;
  self->counted = (guint) counts->values;
  while (g_get_monotonic_time () < until_us)
    ;
  if (self->n == self->flush_at)
    rw_mailbox_flush (self->box);
  if (self->n == self->shut_at)
    rw_mailbox_shut (self->box);
}

/* Posts the values from first on in one go. */
static void
post (RwMailbox *box,
      guint      first,
      guint      n)
{
  g_autoptr (GArray) mails = g_array_new (FALSE, FALSE, sizeof (RwMail));
  const RwDecoderCounts counts = { .values = first + n };

  for (guint i = first; i < first + n; i++)
    {
      const RwMail mail = { .value = { .value = i } };

      g_array_append_val (mails, mail);
    }
  rw_mailbox_post (box, mails, &counts);
  g_assert_cmpuint (mails->len, ==, 0);
}

static gboolean
count_cb (gpointer data)
{
  ++*(guint *) data;
  return G_SOURCE_CONTINUE;
}

/* 100 ms of work in one post: the main loop turns meanwhile, and nothing more needs to be
 * posted. */
static void
test_slices (void)
{
  g_autoptr (GMainContext) context = g_main_context_new ();
  Owner owner = { .work_us = 50 };
  guint idles = 0;
  GSource *idle = g_idle_source_new ();
  const gint64 until_us = g_get_monotonic_time () + 5 * G_USEC_PER_SEC;

  owner.box = rw_mailbox_new (context, deliver, &owner);
  g_source_set_callback (idle, count_cb, &idles, NULL);
  g_source_attach (idle, context);
  post (owner.box, 0, 2000);
  while (owner.n < 2000 && g_get_monotonic_time () < until_us)
    g_main_context_iteration (context, FALSE);
  g_assert_cmpuint (owner.n, ==, 2000);
  g_assert_cmpuint (owner.counted, ==, 2000);
  g_assert_cmpuint (idles, >=, 10);
  g_source_destroy (idle);
  g_source_unref (idle);
  rw_mailbox_shut (owner.box);
  rw_mailbox_unref (owner.box);
}

static void
test_flush_within (void)
{
  g_autoptr (GMainContext) context = g_main_context_new ();
  Owner owner = { .flush_at = 3 };

  owner.box = rw_mailbox_new (context, deliver, &owner);
  post (owner.box, 0, 10);
  post (owner.box, 10, 10);
  g_main_context_iteration (context, TRUE);
  g_assert_cmpuint (owner.n, ==, 20);
  rw_mailbox_shut (owner.box);
  rw_mailbox_unref (owner.box);
}

static void
test_shut_within (void)
{
  g_autoptr (GMainContext) context = g_main_context_new ();
  Owner owner = { .shut_at = 3 };

  owner.box = rw_mailbox_new (context, deliver, &owner);
  post (owner.box, 0, 10);
  g_main_context_iteration (context, TRUE);
  post (owner.box, 10, 10);
  g_main_context_iteration (context, FALSE);
  g_assert_cmpuint (owner.n, ==, 3);
  rw_mailbox_unref (owner.box);
}

static gpointer
post_many (gpointer data)
{
  for (guint i = 0; i < 20000; i++)
    post (data, i, 1);
  return NULL;
}

/* Posted one by one while the owner sleeps and wakes: none is slept through. */
static void
test_wakes (void)
{
  g_autoptr (GMainContext) context = g_main_context_new ();
  Owner owner = { 0 };
  GThread *thread;

  owner.box = rw_mailbox_new (context, deliver, &owner);
  thread = g_thread_new ("poster", post_many, owner.box);
  while (owner.n < 20000)
    g_main_context_iteration (context, TRUE);
  g_thread_join (thread);
  rw_mailbox_shut (owner.box);
  rw_mailbox_unref (owner.box);
}

int
main (int    argc,
      char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/mailbox/delivers all in slices", test_slices);
  g_test_add_func ("/mailbox/may be flushed while it delivers", test_flush_within);
  g_test_add_func ("/mailbox/delivers nothing once it is shut", test_shut_within);
  g_test_add_func ("/mailbox/sleeps through nothing", test_wakes);
  return g_test_run ();
}
