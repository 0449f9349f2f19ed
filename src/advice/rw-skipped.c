/* rw-skipped.c: checks that cannot be done here.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-skipped.h"

gboolean
rw_skipped_is (const RwFindingSeen *seen)
{
  g_return_val_if_fail (seen != NULL, FALSE);
  return g_strcmp0 (seen->outcome, RW_SKIPPED_OUTCOME) == 0;
}

GHashTable *
rw_skipped_gather (const RwBenchState *state)
{
  GHashTable *set = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < rw_bench_state_get_n_findings (state); i++)
    {
      const RwFindingSeen *seen = rw_bench_state_get_finding (state, i);

      if (rw_skipped_is (seen))
        g_hash_table_add (set, (gpointer) g_intern_string (seen->check));
    }
  return set;
}
