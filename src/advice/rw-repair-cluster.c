/* rw-repair-cluster.c: the best order of repairs some of which lie inside something to open.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-repair-cluster.h"

#include "rw-repair-order.h"

typedef struct
{
  guint         n;
  const double *w;
  const double *c;
  const int    *cluster;
  const double *opening;
  gboolean     *open;   /* [n_clusters] */
  gboolean     *done;   /* [n] */
  guint        *sorted; /* [n]: by decreasing w/c */
} Work;

/* A way to go on: some weight for some minutes. */
typedef struct
{
  double w;
  double c;
  guint  first; /* the cause repaired first */
} Way;

/* By products, since minutes may be 0. Of equal ones the first found stays. */
static gboolean
is_better (const Way *a,
           const Way *b)
{
  return a->w * b->c > b->w * a->c;
}

static gboolean
lies_open (const Work *work,
           guint       cause)
{
  return work->cluster[cause] < 0 || work->open[work->cluster[cause]];
}

/* The best beginning of a closed cluster's content. FALSE when it holds nothing. */
static gboolean
find_prefix (const Work *work,
             int         cluster,
             Way        *best)
{
  Way sum = { 0, work->opening[cluster], 0 };
  gboolean any = FALSE;

  for (guint k = 0; k < work->n; k++)
    {
      const guint i = work->sorted[k];

      if (work->cluster[i] != cluster)
        continue;
      sum.first = any ? sum.first : i;
      sum.w += work->w[i];
      sum.c += work->c[i];
      if (!any || is_better (&sum, best))
        *best = sum;
      any = TRUE;
    }
  return any;
}

/* The cause to repair next; its cluster, if closed, is opened for it. */
static guint
find_next (const Work *work,
           guint       n_clusters)
{
  Way best = { 0 };
  gboolean any = FALSE;

  for (guint k = 0; k < work->n && !any; k++)
    {
      const guint i = work->sorted[k];

      any = !work->done[i] && lies_open (work, i);
      if (any)
        best = (Way){ work->w[i], work->c[i], i };
    }
  for (guint k = 0; k < n_clusters; k++)
    {
      Way way = { 0 };

      if (work->open[k] || !find_prefix (work, (int) k, &way))
        continue;
      if (!any || is_better (&way, &best))
        best = way;
      any = TRUE;
    }
  return best.first;
}

double
rw_repair_cluster_cost (guint         n,
                        const double *w,
                        const double *c,
                        const int    *cluster,
                        guint         n_clusters,
                        const double *opening,
                        const guint  *order)
{
  g_autofree gboolean *open = g_new0 (gboolean, n_clusters);
  double cost = 0, left = 0;

  for (guint i = 0; i < n; i++)
    left += w[i];
  for (guint k = 0; k < n; k++)
    {
      const guint i = order[k];
      const int in = cluster[i];

      if (in >= 0 && !open[in])
        {
          cost += opening[in] * left;
          open[in] = TRUE;
        }
      cost += c[i] * left;
      left -= w[i];
    }
  return cost;
}

double
rw_repair_cluster_order (guint         n,
                         const double *w,
                         const double *c,
                         const int    *cluster,
                         guint         n_clusters,
                         const double *opening,
                         guint        *order)
{
  g_autofree gboolean *open = g_new0 (gboolean, n_clusters);
  g_autofree gboolean *done = g_new0 (gboolean, n);
  g_autofree guint *sorted = g_new (guint, n);
  const Work work = { n, w, c, cluster, opening, open, done, sorted };

  rw_repair_sort (n, w, c, sorted);
  for (guint k = 0; k < n; k++)
    {
      const guint i = find_next (&work, n_clusters);

      if (cluster[i] >= 0)
        open[cluster[i]] = TRUE;
      done[i] = TRUE;
      order[k] = i;
    }
  return rw_repair_cluster_cost (n, w, c, cluster, n_clusters, opening, order);
}
