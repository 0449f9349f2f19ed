/* rw-trim-map-words.c: what the trim map says in words.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-trim-map-words.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "rw-quantity.h"

static const double cover = 1.96; /* standard uncertainties either side: 95 % */
static const double longest_time = 1e9; /* seconds: a clock shows no more */

static const char *
label_of (const RwTrimSet *set,
          guint            rail)
{
  return rw_profile_get_rail (set->profile, rail)->label;
}

static const char *
reference_label (const RwTrimSet *set)
{
  return label_of (set, set->reference);
}

static char *
volts_of (double value,
          double digit)
{
  return rw_quantity_format (value, digit, RW_KIND_DC);
}

/* "5.06 V ±0.02 V" */
static char *
value_and_spread (double value,
                  double u)
{
  g_autofree char *shown = volts_of (value, rw_trim_map_reading_digit (u));
  g_autofree char *spread = rw_quantity_format_u (u, RW_KIND_DC);

  return spread[0] != '\0' ? g_strconcat (shown, " ", spread, NULL) : g_steal_pointer (&shown);
}

char *
rw_trim_map_words_volts (const RwTrimSet *set,
                         double           volts)
{
  return volts_of (volts, rw_trim_map_digit (set));
}

/* Some reading has a place across. */
static gboolean
has_placed (const RwTrimSet *set)
{
  for (guint i = 0; i < set->points->len; i++)
    if (isfinite (g_array_index (set->points, RwTrimPoint, i).x))
      return TRUE;
  return FALSE;
}

char *
rw_trim_map_words_instead (const RwTrimSet *set)
{
  if (set == NULL || set->points->len == 0)
    return g_strdup (_ ("Read the rails once, turn the trim, and read them again: then this chart "
                        "shows what a turn does to every rail and where the one screw should "
                        "stand."));
  if (!has_placed (set))
    /* Translators: %s is the reference rail, "+5 V". */
    return g_strdup_printf (_ ("Read %s as well, without turning the trim: every other rail is "
                               "drawn against it."),
                            reference_label (set));
  return NULL;
}

char *
rw_trim_map_words_axis (const RwTrimSet *set)
{
  const char *label = reference_label (set);
  g_autofree char *where =
      set->place == RW_PLACE_TERMINALS
          /* Translators: below an axis in volts; %s is a rail, "+5 V". */
          ? g_strdup_printf (_ ("Reference %s, at the terminals"), label)
      : set->place == RW_PLACE_CHIP
          ? g_strdup_printf (_ ("Reference %s, at the far chip"), label)
          : g_strdup_printf (_ ("Reference %s, at the board"), label);

  if (set->board == RW_SAID_NO)
    return g_strconcat (where, " · ", _ ("board out"), NULL);
  return g_steal_pointer (&where);
}

typedef gboolean (*RailFunc) (const RwTrimSet *set, guint rail);

/* "+12 V, −5 V"; NULL when @wanted is true of none. */
static char *
list_rails (const RwTrimSet *set,
            RailFunc         wanted)
{
  g_autoptr (GPtrArray) labels = g_ptr_array_new ();
  const guint n = rw_profile_get_n_rails (set->profile);

  for (guint i = 0; i < n; i++)
    if (wanted (set, i))
      g_ptr_array_add (labels, (gpointer) label_of (set, i));
  if (labels->len == 0)
    return NULL;
  g_ptr_array_add (labels, NULL);
  return g_strjoinv (", ", (char **) labels->pdata);
}

static gboolean
was_read (const RwTrimSet *set,
          guint            rail)
{
  for (guint i = 0; i < set->points->len; i++)
    if (g_array_index (set->points, RwTrimPoint, i).rail == rail)
      return TRUE;
  return FALSE;
}

static gboolean
is_not_read (const RwTrimSet *set,
             guint            rail)
{
  return !was_read (set, rail);
}

/* Read, but only at positions whose place across nobody knows. */
static gboolean
is_not_tied (const RwTrimSet *set,
             guint            rail)
{
  RwTrimLine line;

  return was_read (set, rail) && !rw_trim_fit_get_line (set->fit, rail, &line);
}

static gboolean
is_without_limits (const RwTrimSet *set,
                   guint            rail)
{
  return was_read (set, rail) && !rw_trim_map_has_limits (set, rail);
}

static gboolean
is_left_out (const RwTrimSet *set,
             guint            rail)
{
  RwTrimLine line;

  return rw_trim_fit_get_line (set->fit, rail, &line) && rw_trim_map_has_limits (set, rail)
         && rail < 64 && (set->window.kept >> rail & 1) == 0;
}

/* Takes @rails, which may be NULL. */
static void
note_rails (GPtrArray  *notes,
            const char *format,
            char       *rails)
{
  if (rails != NULL)
    {
      g_autoptr (GString) note = g_string_new (format);

      g_string_replace (note, "%s", rails, 1);
      g_ptr_array_add (notes, g_strdup (note->str));
    }
  g_free (rails);
}

/* All readings are of one trim position: slopes are what the profile makes expect. */
static gboolean
is_one_position (const RwTrimSet *set)
{
  for (guint i = 1; i < set->points->len; i++)
    if (g_array_index (set->points, RwTrimPoint, i).position
        != g_array_index (set->points, RwTrimPoint, 0).position)
      return FALSE;
  return set->n_lined > 1;
}

char *
rw_trim_map_words_note (const RwTrimSet *set)
{
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);

  /* Translators: %s is a list of rails, "+12 V, −5 V". */
  note_rails (notes, _ ("Not read yet: %s"), list_rails (set, is_not_read));
  /* Translators: %s is a list of rails that were read where the reference rail was not. */
  note_rails (notes, _ ("Not tied to the reference yet: %s"), list_rails (set, is_not_tied));
  note_rails (notes, _ ("No limits laid down: %s"), list_rails (set, is_without_limits));
  if (is_one_position (set))
    g_ptr_array_add (notes, g_strdup (_ ("One trim position so far: another narrows the bands")));
  if (rw_trim_fit_get_unclear (set->fit))
    g_ptr_array_add (notes, g_strdup (_ ("The readings agree poorly: the bands allow for it")));
  if (notes->len == 0)
    return NULL;
  g_ptr_array_add (notes, NULL);
  return g_strjoinv (" · ", (char **) notes->pdata);
}

char *
rw_trim_map_words_set_label (const RwTrimSet *set)
{
  g_autofree char *volts = rw_trim_map_words_volts (set, set->window.best);
  g_autofree char *without = set->window.exists ? NULL : list_rails (set, is_left_out);

  if (without == NULL)
    /* Translators: label of a vertical line: "5.06 V set point". */
    return g_strdup_printf (_ ("%s set point"), volts);
  /* Translators: no position suits all rails; this one is best when the rails of the list are left
   * out of account: "5.06 V best without −5 V". */
  return g_strdup_printf (_ ("%s best without %s"), volts, without);
}

char *
rw_trim_map_words_bound_label (const RwTrimSet *set,
                               gboolean         lower)
{
  const guint rail = (guint) (lower ? set->window.low_rail : set->window.high_rail);
  g_autofree char *volts = volts_of (rw_trim_map_bound (set, rail, lower), 0.01);

  /* Translators: a rail, then volts of the reference rail: "−5 V needs ≥ 5.31 V". */
  return g_strdup_printf (lower ? _ ("%s needs ≥ %s") : _ ("%s allows ≤ %s"),
                          label_of (set, rail), volts);
}

char *
rw_trim_map_words_conflict (const RwTrimSet *set)
{
  if (set->window.low_rail >= 0 && set->window.low_rail == set->window.high_rail)
    /* Translators: %s is a rail, "−5 V". */
    return g_strdup_printf (_ ("no position suits all: the trim does not bring %s inside"),
                            label_of (set, (guint) set->window.low_rail));
  return g_strdup (_ ("no position suits all"));
}

char *
rw_trim_map_words_now_label (const RwTrimSet    *set,
                             const RwTrimMapNow *now,
                             gboolean            past)
{
  const gboolean measured = now->live ? now->from == (int) set->reference
                                      : rw_trim_map_is_read_now (set, set->reference);
  g_autofree char *volts = rw_trim_map_words_volts (set, now->x);

  if (past)
    /* Translators: where the trim stood when that visit ended, in volts of the reference rail. */
    return g_strdup_printf (measured ? _ ("at the end %s") : _ ("at the end about %s"), volts);
  /* Translators: where the trim stands, in volts of the reference rail; measured or worked out. */
  return g_strdup_printf (measured ? _ ("now %s") : _ ("now about %s"), volts);
}

char *
rw_trim_map_words_point (const RwTrimSet   *set,
                         const RwTrimPoint *point)
{
  const char *label = label_of (set, point->rail);
  g_autofree char *value = value_and_spread (point->value, point->u);
  g_autofree char *across = value_and_spread (point->x, point->u_x);
  g_autofree char *when = rw_quantity_format_clock (CLAMP (point->t, 0, longest_time));
  g_autofree char *what =
      point->rail == set->reference
          /* Translators: a rail and what it showed: "+5 V: 5.06 V ±0.02 V". */
          ? g_strdup_printf (_ ("%s: %s"), label, value)
          /* Translators: rail, what it showed, reference rail, where that was: "−5 V: −4.71 V
           * ±0.02 V, +5 V at 5.06 V ±0.01 V". */
          : g_strdup_printf (_ ("%s: %s, %s at %s"), label, value, reference_label (set), across);

  if (!point->outlier)
    return g_strconcat (what, " · ", when, NULL);
  return g_strconcat (what, " · ", _ ("outlier, left out of the lines"), " · ", when, NULL);
}

char *
rw_trim_map_words_line (const RwTrimSet *set,
                        guint            rail,
                        double           x)
{
  g_autofree char *across = volts_of (x, 0.01);
  RwTrimExpected expected;

  if (rail == set->reference || !rw_trim_fit_expect (set->fit, rail, x, 0, &expected))
    return g_strdup_printf (_ ("%s: %s"), label_of (set, rail), across);

  g_autofree char *value = volts_of (expected.value, 0.01);
  g_autofree char *lo = volts_of (expected.lo, 0.01);
  g_autofree char *hi = volts_of (expected.hi, 0.01);

  /* Translators: rail, volts, the two ends of where it is with 95 %, reference rail, its volts:
   * "−5 V: expected −4.66 V (−4.70 V to −4.62 V) when +5 V is 5.06 V". */
  return g_strdup_printf (_ ("%s: expected %s (%s to %s) when %s is %s"), label_of (set, rail),
                          value, lo, hi, reference_label (set), across);
}

char *
rw_trim_map_words_set_point (const RwTrimSet *set)
{
  g_autofree char *label = rw_trim_map_words_set_label (set);
  g_autofree char *margin = rw_quantity_format_chance (CLAMP (set->window.margin, 0, 1));

  if (!(set->window.margin >= 0))
    /* Translators: "5.06 V set point", then what is wrong with it. */
    return g_strdup_printf (_ ("%s, and even there a rail is outside its limits"), label);
  if (!isfinite (set->chance) || !set->window.exists) /* the chance is one of all rails */
    /* Translators: "5.06 V set point"; the margin is 100 % in the middle between the limits and
     * 0 % on a limit. */
    return g_strdup_printf (_ ("%s: smallest margin %s"), label, margin);

  g_autofree char *chance = rw_quantity_format_chance (set->chance);

  /* Translators: as before, then how likely it is that all rails are inside there. */
  return g_strdup_printf (_ ("%s: smallest margin %s, all inside with a chance of %s"), label,
                          margin, chance);
}

/* "set by −5 V" for an end of the window; the reference's own limits are an end like any other. */
static char *
end_words (const RwTrimSet *set,
           double           volts,
           int              rail)
{
  g_autofree char *end = rw_trim_map_words_volts (set, volts);

  if (rail < 0)
    return g_steal_pointer (&end);
  /* Translators: an end of the window and the rail that sets it: "4.98 V (−5 V)". */
  return g_strdup_printf (_ ("%s (%s)"), end, label_of (set, (guint) rail));
}

char *
rw_trim_map_words_window (const RwTrimSet *set)
{
  const RwTrimWindow *window = &set->window;
  g_autofree char *from = end_words (set, window->lo, window->low_rail);
  g_autofree char *to = end_words (set, window->hi, window->high_rail);
  const char *label = reference_label (set);

  if (isfinite (window->lo) && isfinite (window->hi))
    /* Translators: reference rail, the two ends, each with the rail that sets it in brackets. */
    return g_strdup_printf (_ ("Window: %s from %s to %s"), label, from, to);
  if (isfinite (window->lo))
    return g_strdup_printf (_ ("Window: %s from %s up"), label, from);
  if (isfinite (window->hi))
    return g_strdup_printf (_ ("Window: %s up to %s"), label, to);
  return g_strdup (_ ("Window: everywhere"));
}

/* " · −5 V: expected −4.66 V" */
static void
append_expected (GString              *out,
                 const RwTrimSet      *set,
                 const RwTrimMapNow   *now,
                 guint                 rail,
                 const RwTrimExpected *expected)
{
  g_autofree char *value = volts_of (expected->value, 0.01);

  g_string_append (out, " · ");
  if ((int) rail == now->from)
    g_string_append_printf (out, _ ("%s: %s"), label_of (set, rail), value);
  else
    /* Translators: a rail and volts that nobody measured. */
    g_string_append_printf (out, _ ("%s: expected %s"), label_of (set, rail), value);
}

char *
rw_trim_map_words_now (const RwTrimSet  *set,
                       const RwTrimLive *live,
                       gboolean          past)
{
  GString *out = g_string_new (NULL);
  const guint n = rw_profile_get_n_rails (set->profile);
  RwTrimMapNow now;
  RwTrimExpected expected;

  if (!rw_trim_map_now (set, live, &now))
    return g_string_free (out, FALSE);

  g_autofree char *where = rw_trim_map_words_now_label (set, &now, past);

  g_string_append_printf (out, _ ("%s: %s"), reference_label (set), where);
  for (guint i = 0; i < n; i++)
    if (i != set->reference && (now.live || !rw_trim_map_is_read_now (set, i))
        && rw_trim_map_expect_now (set, live, &now, i, &expected))
      append_expected (out, set, &now, i, &expected);
  return g_string_free (out, FALSE);
}

/* --- the whole picture -------------------------------------------------------------------- */

/* @words become a sentence of their own. Takes @words. */
static void
say (GString *out,
     char    *words)
{
  if (words != NULL && words[0] != '\0')
    {
      if (out->len > 0)
        g_string_append_c (out, ' ');
      g_string_append (out, words);
      if (!g_str_has_suffix (words, "."))
        g_string_append_c (out, '.');
    }
  g_free (words);
}

/* Takes @words. */
static char *
capitalised (char *words)
{
  g_autofree char *head = g_utf8_substring (words, 0, 1);
  g_autofree char *upper = g_utf8_strup (head, -1);
  char *sentence = g_strconcat (upper, words + strlen (head), NULL);

  g_free (words);
  return sentence;
}

static void
say_window (const RwTrimSet *set,
            GString         *out)
{
  const RwTrimWindow *window = &set->window;

  if (window->exists && isfinite (window->best))
    say (out, rw_trim_map_words_window (set));
  if (!window->exists)
    {
      say (out, capitalised (rw_trim_map_words_conflict (set)));
      if (window->low_rail != window->high_rail)
        {
          say (out, rw_trim_map_words_bound_label (set, TRUE));
          say (out, rw_trim_map_words_bound_label (set, FALSE));
        }
    }
  if (isfinite (window->best))
    say (out, rw_trim_map_words_set_point (set));
}

static void
say_rail (const RwTrimSet *set,
          guint            rail,
          GString         *out)
{
  RwTrimLine line;

  if (rail == set->reference || !rw_trim_fit_get_line (set->fit, rail, &line))
    return;

  g_autofree char *slope = rw_quantity_format_number (line.slope, 2);
  g_autofree char *spread = rw_quantity_format_number (cover * line.slope_u, 2);

  /* Translators: rail, its change in volts and the 95 % spread of that, reference rail:
   * "−5 V changes by −0.96 ±0.05 V for each volt of +5 V (4 readings)." */
  say (out, g_strdup_printf (ngettext ("%s changes by %s ±%s V for each volt of %s (%u reading)",
                                       "%s changes by %s ±%s V for each volt of %s (%u readings)",
                                       line.n_readings),
                             label_of (set, rail), slope, spread, reference_label (set),
                             line.n_readings));
  if (isfinite (set->window.best))
    say (out, rw_trim_map_words_line (set, rail, set->window.best));
}

static void
say_outliers (const RwTrimSet *set,
              GString         *out)
{
  for (guint i = 0; i < set->points->len; i++)
    {
      const RwTrimPoint *point = &g_array_index (set->points, RwTrimPoint, i);

      if (point->outlier)
        say (out, rw_trim_map_words_point (set, point));
    }
}

char *
rw_trim_map_words_summary (const RwTrimSet  *set,
                           const RwTrimLive *live,
                           gboolean          past,
                           gboolean          note)
{
  g_autofree char *instead = rw_trim_map_words_instead (set);
  GString *out = g_string_new (NULL);

  if (instead != NULL)
    {
      say (out, g_steal_pointer (&instead));
      return g_string_free (out, FALSE);
    }
  say (out, rw_trim_map_words_axis (set));
  say_window (set, out);
  for (guint i = 0; i < rw_profile_get_n_rails (set->profile); i++)
    say_rail (set, i, out);
  say (out, rw_trim_map_words_now (set, live, past));
  say_outliers (set, out);
  if (note)
    say (out, rw_trim_map_words_note (set));
  return g_string_free (out, FALSE);
}
