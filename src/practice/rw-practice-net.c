/* rw-practice-net.c: a network of resistors: is there a way, and how many ohms.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Two points stay, all others are eliminated one by one: a star of conductances g1 … gk is the same as a mesh with
 * gi·gj/Σg between every two of its ends (star-mesh transformation, Rosen 1924; for three it is star-delta). What is
 * left between the two is the answer. It is Gaussian elimination of Kirchhoff's equations with every term positive:
 * nothing is ever subtracted, so micro-ohms beside gigaohms cost no digits. Only + × / are used.
 */
#include "config.h"

#include "rw-practice-net.h"

#include <math.h>
#include <string.h>

static const double least_ohms = 1e-6;

void
rw_practice_net_start (RwPracticeNet *self,
                       guint          n)
{
  g_return_if_fail (n <= RW_PRACTICE_NET_MOST);
  memset (self, 0, sizeof *self);
  self->n = n;
}

void
rw_practice_net_join (RwPracticeNet *self,
                      guint          a,
                      guint          b,
                      double         ohms)
{
  g_return_if_fail (a < self->n && b < self->n);
  if (a == b || isnan (ohms) || isinf (ohms))
    return;
  self->siemens[a][b] += 1 / MAX (least_ohms, ohms);
  self->siemens[b][a] = self->siemens[a][b];
}

/* Takes point @k out of @net. */
static void
eliminate (RwPracticeNet *net,
           guint          k)
{
  double *star = net->siemens[k];
  double sum = 0;

  for (guint i = 0; i < net->n; i++)
    sum += star[i];
  for (guint i = 0; sum > 0 && i < net->n; i++)
    for (guint j = 0; star[i] > 0 && j < net->n; j++)
      if (j != i)
        net->siemens[i][j] += star[i] * star[j] / sum;
  for (guint i = 0; i < net->n; i++)
    star[i] = net->siemens[i][k] = 0;
}

double
rw_practice_net_ohms (const RwPracticeNet *self,
                      guint                a,
                      guint                b)
{
  g_return_val_if_fail (a < self->n && b < self->n, NAN);
  if (a == b)
    return 0;

  RwPracticeNet net = *self;

  for (guint k = 0; k < net.n; k++)
    if (k != a && k != b)
      eliminate (&net, k);
  return net.siemens[a][b] > 0 ? 1 / net.siemens[a][b] : (double) INFINITY;
}

gboolean
rw_practice_net_has_way (const RwPracticeNet *self,
                         guint                a,
                         guint                b)
{
  g_return_val_if_fail (a < self->n && b < self->n, FALSE);

  guint reached[RW_PRACTICE_NET_MOST] = { a }, n = 1;
  gboolean seen[RW_PRACTICE_NET_MOST] = { FALSE };

  seen[a] = TRUE;
  for (guint at = 0; at < n && !seen[b]; at++)
    for (guint i = 0; i < self->n; i++)
      if (!seen[i] && self->siemens[reached[at]][i] > 0)
        {
          seen[i] = TRUE;
          reached[n++] = i;
        }
  return seen[b];
}
