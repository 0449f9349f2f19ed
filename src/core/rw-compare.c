/* rw-compare.c: two sessions of one cabinet, put side by side.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * Readings are paired in rw-compare-spots.c, the trim's lines in rw-compare-lines.c, and judged together in
 * rw-compare-judge.c.
 */
#include "config.h"

#include "rw-compare.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "rw-compare-private.h"

struct _RwCompare
{
  RwCompareSide   then, now;
  RwCompareMeters meters;
  GArray         *items;    /* of RwCompareItem */
  GArray         *left;     /* of RwCompareLeft */
  GArray         *symptoms; /* of RwCompareSymptom */
  GArray         *limits;   /* of RwCompareLimit */
  GPtrArray      *remarks;  /* of char * */
  guint           n_tests;
};

static void
clear_item (gpointer data)
{
  g_free (((RwCompareItem *) data)->label);
}

static void
clear_left (gpointer data)
{
  g_free (((RwCompareLeft *) data)->label);
}

static void
clear_limit (gpointer data)
{
  RwCompareLimit *limit = data;

  g_free (limit->label);
  g_free (limit->name);
}

static void
clear_compare (gpointer data)
{
  RwCompare *self = data;

  rw_compare_side_clear (&self->then);
  rw_compare_side_clear (&self->now);
  g_clear_pointer (&self->items, g_array_unref);
  g_clear_pointer (&self->left, g_array_unref);
  g_clear_pointer (&self->symptoms, g_array_unref);
  g_clear_pointer (&self->limits, g_array_unref);
  g_clear_pointer (&self->remarks, g_ptr_array_unref);
}

/* --- symptoms ----------------------------------------------------------------------------------- */

static RwCompareSymptom *
find_symptom (RwCompare  *self,
              const char *id)
{
  const RwCompareSymptom fresh = { .id = id };

  for (guint i = 0; i < self->symptoms->len; i++)
    if (g_array_index (self->symptoms, RwCompareSymptom, i).id == id)
      return &g_array_index (self->symptoms, RwCompareSymptom, i);
  g_array_append_val (self->symptoms, fresh);
  return &g_array_index (self->symptoms, RwCompareSymptom, self->symptoms->len - 1);
}

static void
compare_symptoms (RwCompare *self)
{
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (self->then.state); i++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (self->then.state, i);
      RwCompareSymptom *symptom = find_symptom (self, seen->id);

      symptom->then_said = TRUE;
      symptom->then = seen->state;
    }
  for (guint i = 0; i < rw_bench_state_get_n_symptoms (self->now.state); i++)
    {
      const RwSymptomSeen *seen = rw_bench_state_get_symptom (self->now.state, i);
      RwCompareSymptom *symptom = find_symptom (self, seen->id);

      symptom->now_said = TRUE;
      symptom->now = seen->state;
    }
}

/* --- limits ------------------------------------------------------------------------------------- */

static gboolean
differ (double a,
        double b)
{
  return !(a == b || (isnan (a) && isnan (b)));
}

static void
compare_limit (RwCompare    *self,
               const RwRail *rail,
               const char   *name,
               double        then_lo,
               double        then_hi,
               double        now_lo,
               double        now_hi)
{
  if (!differ (then_lo, now_lo) && !differ (then_hi, now_hi))
    return;

  const RwCompareLimit limit = { g_strdup (rail->label), g_strdup (name), then_lo, then_hi, now_lo, now_hi };

  g_array_append_val (self->limits, limit);
}

static void
compare_limits (RwCompare *self)
{
  RwProfile *now = rw_session_get_profile (self->now.session);

  for (guint i = 0; i < rw_profile_get_n_rails (now); i++)
    {
      const RwRail *b = rw_profile_get_rail (now, i);
      const RwRail *a = rw_profile_find_rail (rw_session_get_profile (self->then.session), b->id);

      if (a == NULL)
        continue;
      compare_limit (self, b, _ ("at the board, loaded"), a->lo, a->hi, b->lo, b->hi);
      compare_limit (self, b, _ ("at the terminals"), a->bare_lo, a->bare_hi, b->bare_lo, b->bare_hi);
      compare_limit (self, b, _ ("never above"), NAN, a->never_above, NAN, b->never_above);
      compare_limit (self, b, _ ("ripple"), NAN, a->ripple_limit, NAN, b->ripple_limit);
    }
}

/* --- remarks ------------------------------------------------------------------------------------ */

static void G_GNUC_PRINTF (2, 3)
remark (RwCompare  *self,
        const char *format,
        ...)
{
  va_list args;

  va_start (args, format);
  g_ptr_array_add (self->remarks, g_strdup_vprintf (format, args));
  va_end (args);
}

static guint
count_common_rails (RwCompare *self)
{
  RwProfile *then = rw_session_get_profile (self->then.session), *now = rw_session_get_profile (self->now.session);
  guint n = 0;

  for (guint i = 0; i < rw_profile_get_n_rails (now); i++)
    n += rw_profile_find_rail (then, rw_profile_get_rail (now, i)->id) != NULL;
  return n;
}

static void
make_remarks (RwCompare *self)
{
  const RwSessionHeader *then = rw_session_get_header (self->then.session),
                        *now = rw_session_get_header (self->now.session);

  if (g_strcmp0 (then->id, now->id) == 0)
    remark (self, "%s", _ ("These are two files of one and the same session."));
  if (g_strcmp0 (then->cabinet_name, now->cabinet_name) != 0)
    remark (self, _ ("These are two cabinets: “%s” then, “%s” now. What differs need not have changed."),
            then->cabinet_name, now->cabinet_name);
  else if (g_strcmp0 (then->cabinet_tag, now->cabinet_tag) != 0)
    remark (self, _ ("The tags differ: “%s” then, “%s” now. Is it the same cabinet?"), then->cabinet_tag,
            now->cabinet_tag);
  if (g_strcmp0 (rw_profile_get_id (then->profile), rw_profile_get_id (now->profile)) != 0)
    remark (self, _ ("The profiles differ: “%s” then, “%s” now. Only rails that both have are compared."),
            rw_profile_get_title (then->profile), rw_profile_get_title (now->profile));
  if (count_common_rails (self) == 0)
    remark (self, "%s", _ ("The two have no rail in common."));
}

/* --- all of it ---------------------------------------------------------------------------------- */

static GArray *
new_array (guint          size,
           GDestroyNotify clear)
{
  GArray *array = g_array_new (FALSE, FALSE, size);

  g_array_set_clear_func (array, clear);
  return array;
}

RwCompare *
rw_compare_new (RwSession      *a,
                RwSession      *b,
                RwCompareMeters meters)
{
  g_return_val_if_fail (RW_IS_SESSION (a) && RW_IS_SESSION (b), NULL);

  const gboolean swap = g_date_time_compare (rw_session_get_header (a)->started, rw_session_get_header (b)->started) > 0;
  RwCompare *self = g_atomic_rc_box_new0 (RwCompare);

  self->meters = meters;
  self->items = new_array (sizeof (RwCompareItem), clear_item);
  self->left = new_array (sizeof (RwCompareLeft), clear_left);
  self->symptoms = g_array_new (FALSE, FALSE, sizeof (RwCompareSymptom));
  self->limits = new_array (sizeof (RwCompareLimit), clear_limit);
  self->remarks = g_ptr_array_new_with_free_func (g_free);
  rw_compare_side_init (&self->then, swap ? b : a);
  rw_compare_side_init (&self->now, swap ? a : b);
  rw_compare_pair_spots (&self->then, &self->now, meters, self->items, self->left);
  rw_compare_pair_lines (&self->then, &self->now, meters, self->items);
  self->n_tests = rw_compare_judge (self->items);
  compare_symptoms (self);
  compare_limits (self);
  make_remarks (self);
  return self;
}

RwCompare *
rw_compare_ref (RwCompare *self)
{
  return g_atomic_rc_box_acquire (self);
}

void
rw_compare_unref (RwCompare *self)
{
  if (self != NULL)
    g_atomic_rc_box_release_full (self, clear_compare);
}

/* --- getters ------------------------------------------------------------------------------------ */

RwSession *
rw_compare_get_then (const RwCompare *self)
{
  return self->then.session;
}

RwSession *
rw_compare_get_now (const RwCompare *self)
{
  return self->now.session;
}

RwBenchState *
rw_compare_get_then_state (const RwCompare *self)
{
  return self->then.state;
}

RwBenchState *
rw_compare_get_now_state (const RwCompare *self)
{
  return self->now.state;
}

RwCompareMeters
rw_compare_get_meters (const RwCompare *self)
{
  return self->meters;
}

guint
rw_compare_get_n_items (const RwCompare *self)
{
  return self->items->len;
}

const RwCompareItem *
rw_compare_get_item (const RwCompare *self,
                     guint            i)
{
  g_return_val_if_fail (i < self->items->len, NULL);
  return &g_array_index (self->items, RwCompareItem, i);
}

guint
rw_compare_get_n_results (const RwCompare *self,
                          RwCompareResult  result)
{
  guint n = 0;

  for (guint i = 0; i < self->items->len; i++)
    n += g_array_index (self->items, RwCompareItem, i).result == result;
  return n;
}

guint
rw_compare_get_n_tests (const RwCompare *self)
{
  return self->n_tests;
}

guint
rw_compare_get_n_left (const RwCompare *self)
{
  return self->left->len;
}

const RwCompareLeft *
rw_compare_get_left (const RwCompare *self,
                     guint            i)
{
  g_return_val_if_fail (i < self->left->len, NULL);
  return &g_array_index (self->left, RwCompareLeft, i);
}

guint
rw_compare_get_n_symptoms (const RwCompare *self)
{
  return self->symptoms->len;
}

const RwCompareSymptom *
rw_compare_get_symptom (const RwCompare *self,
                        guint            i)
{
  g_return_val_if_fail (i < self->symptoms->len, NULL);
  return &g_array_index (self->symptoms, RwCompareSymptom, i);
}

guint
rw_compare_get_n_limits (const RwCompare *self)
{
  return self->limits->len;
}

const RwCompareLimit *
rw_compare_get_limit (const RwCompare *self,
                      guint            i)
{
  g_return_val_if_fail (i < self->limits->len, NULL);
  return &g_array_index (self->limits, RwCompareLimit, i);
}

guint
rw_compare_get_n_remarks (const RwCompare *self)
{
  return self->remarks->len;
}

const char *
rw_compare_get_remark (const RwCompare *self,
                       guint            i)
{
  g_return_val_if_fail (i < self->remarks->len, NULL);
  return self->remarks->pdata[i];
}

/* The set of @side with the most readings, only of @place and @board when @like is given. */
static const RwTrimSet *
fullest_set (const RwCompareSide *side,
             const RwTrimSet     *like)
{
  const RwTrimSet *best = NULL;

  for (guint i = 0; i < side->sets->len; i++)
    {
      const RwTrimSet *set = side->sets->pdata[i];

      if (like != NULL && (set->place != like->place || set->board != like->board))
        continue;
      if (best == NULL || set->points->len > best->points->len)
        best = set;
    }
  return best;
}

const RwTrimSet *
rw_compare_get_trim_set (const RwCompare *self,
                         gboolean         now)
{
  const RwTrimSet *best = NULL;
  guint most = 0;

  for (guint i = 0; i < self->now.sets->len; i++)
    {
      const RwTrimSet *today = self->now.sets->pdata[i], *earlier = fullest_set (&self->then, today);

      if (earlier == NULL || today->points->len + earlier->points->len <= most)
        continue;
      most = today->points->len + earlier->points->len;
      best = now ? today : earlier;
    }
  return best != NULL ? best : fullest_set (now ? &self->now : &self->then, NULL);
}

const char *
rw_compare_result_to_id (RwCompareResult result)
{
  static const char *const ids[RW_N_COMPARE_RESULTS] = { "changed", "cannot-tell", "not-changed" };

  g_return_val_if_fail (result < RW_N_COMPARE_RESULTS, NULL);
  return ids[result];
}

const char *
rw_compare_result_get_label (RwCompareResult result)
{
  static const char *const labels[RW_N_COMPARE_RESULTS]
      = { N_ ("changed"), N_ ("cannot be told with these meters"), N_ ("no change beyond the meters' errors") };

  g_return_val_if_fail (result < RW_N_COMPARE_RESULTS, NULL);
  return _ (labels[result]);
}
