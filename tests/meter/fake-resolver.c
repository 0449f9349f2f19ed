/* fake-resolver.c: for tests: looks names up without a network.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "fake-resolver.h"

#include <gio/gio.h>

#define FAKE_TYPE_RESOLVER (fake_resolver_get_type ())
G_DECLARE_FINAL_TYPE (FakeResolver, fake_resolver, FAKE, RESOLVER, GResolver)

struct _FakeResolver
{
  GResolver parent_instance;
};

G_DEFINE_FINAL_TYPE (FakeResolver, fake_resolver, G_TYPE_RESOLVER)

static GList *
make_addresses (const char *first,
                const char *second)
{
  GList *found = g_list_append (NULL, g_inet_address_new_from_string (first));

  return second != NULL ? g_list_append (found, g_inet_address_new_from_string (second)) : found;
}

static void
free_addresses (gpointer found)
{
  g_resolver_free_addresses (found);
}

static void
cancelled_cb (GCancellable *cancellable,
              gpointer      data)
{
  g_autoptr (GTask) task = data;

  g_task_return_new_error (task, G_IO_ERROR, G_IO_ERROR_CANCELLED, "cancelled");
}

static void
fake_lookup_async (GResolver          *resolver,
                   const char         *name,
                   GCancellable       *cancellable,
                   GAsyncReadyCallback callback,
                   gpointer            data)
{
  g_autoptr (GTask) task = g_task_new (resolver, cancellable, callback, data);

  if (g_str_equal (name, "bench-box"))
    g_task_return_pointer (task, make_addresses ("127.0.0.1", NULL), free_addresses);
  else if (g_str_equal (name, "two.test"))
    g_task_return_pointer (task, make_addresses ("127.0.0.9", "127.0.0.1"), free_addresses);
  else if (g_str_equal (name, "slow.test"))
    g_signal_connect (cancellable, "cancelled", G_CALLBACK (cancelled_cb), g_steal_pointer (&task));
  else
    g_task_return_new_error (task, G_RESOLVER_ERROR, G_RESOLVER_ERROR_NOT_FOUND, "unknown");
}

static GList *
fake_lookup_finish (GResolver    *resolver,
                    GAsyncResult *result,
                    GError      **error)
{
  return g_task_propagate_pointer (G_TASK (result), error);
}

static void
fake_resolver_class_init (FakeResolverClass *class)
{
  GResolverClass *resolver_class = G_RESOLVER_CLASS (class);

  resolver_class->lookup_by_name_async = fake_lookup_async;
  resolver_class->lookup_by_name_finish = fake_lookup_finish;
}

static void
fake_resolver_init (FakeResolver *self)
{
}

void
fake_resolver_install (void)
{
  g_autoptr (GResolver) resolver = g_object_new (FAKE_TYPE_RESOLVER, NULL);

  g_resolver_set_default (resolver);
}
