/* rw-quantity.c: numbers as people read and type them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-quantity.h"

#include <glib/gi18n-lib.h>
#include <locale.h>
#include <math.h>
#include <string.h>

G_DEFINE_QUARK (rw_quantity_error, rw_quantity_error)

#define MINUS "−"             /* U+2212 */
#define THIN "\xE2\x80\xAF"   /* U+202F, narrow no-break space */

/* Below these a voltage is shown in millivolts: when the meter resolves them, and when its last digit says
 * that it is on its millivolt range. */
static const double millivolts_below = 0.2;
static const double millivolt_range_below = 1.0;

/* --- typed in ----------------------------------------------------------------------------------- */

typedef struct
{
  const char *symbol; /* as typed, case kept */
  RwKind      kind;
  int         power; /* of ten, to base units */
} Unit;

static const Unit units[] = {
  { "V", RW_KIND_DC, 0 },
  { "v", RW_KIND_DC, 0 },
  { "mV", RW_KIND_DC, -3 },
  { "mv", RW_KIND_DC, -3 },
  { "μV", RW_KIND_DC, -6 },
  { "uV", RW_KIND_DC, -6 },
  { "kV", RW_KIND_DC, 3 },
  { "Ω", RW_KIND_OHMS, 0 },
  { "ohm", RW_KIND_OHMS, 0 },
  { "mΩ", RW_KIND_OHMS, -3 },
  { "kΩ", RW_KIND_OHMS, 3 },
  { "k", RW_KIND_OHMS, 3 },
  { "MΩ", RW_KIND_OHMS, 6 },
  { "M", RW_KIND_OHMS, 6 },
  { "A", RW_KIND_AMPS, 0 },
  { "mA", RW_KIND_AMPS, -3 },
  { "°C", RW_KIND_CELSIUS, 0 },
  { "C", RW_KIND_CELSIUS, 0 },
  { "m", RW_KIND_DC, -3 },
};

static const char *const overload_words[] = { "OL", "O.L", "0L", "0.L", ".OL", "OVLD", "OVER" };

static gboolean
refuse (RwQuantityError code,
        GError        **error,
        const char     *text)
{
  if (code == RW_QUANTITY_ERROR_EMPTY)
    g_set_error_literal (error, RW_QUANTITY_ERROR, code, _ ("Type what the meter shows."));
  else if (code == RW_QUANTITY_ERROR_UNIT)
    g_set_error (error, RW_QUANTITY_ERROR, code, _ ("“%s” has a unit that does not fit here."), text);
  else
    g_set_error (error, RW_QUANTITY_ERROR, code,
                 _ ("“%s” is not a number. Type it as the meter shows it, such as 5.02 or 35 mV."), text);
  return FALSE;
}

static gboolean
is_space (gunichar c)
{
  /* Also what has no width: word joiner, byte order mark. */
  return g_unichar_isspace (c) || c == 0x200B || c == 0x2060 || c == 0xFEFF;
}

/* Characters that people take for one another, as the one that the tables above know. */
static gunichar
unify (gunichar c)
{
  if ((c >= 0x2010 && c <= 0x2015) || c == 0x2212 || c == 0xFE63 || c == 0xFF0D)
    return '-';
  if (c == 0x00B5)
    return 0x03BC; /* micro sign: mu */
  return c == 0x2126 ? 0x03A9 : c; /* ohm sign: omega */
}

/* The text without spaces around it, around the sign and before the unit. NULL when a space stands inside
 * the digits: nobody can tell whether "5 02" is 502 or 5.02. */
static char *
squeeze (const char *text)
{
  g_autoptr (GString) out = g_string_new (NULL);
  gboolean space = FALSE;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = unify (g_utf8_get_char (p));

      if (is_space (c))
        {
          space = TRUE;
          continue;
        }
      if (space && out->len > 0 && strchr ("0123456789.,", out->str[out->len - 1]) != NULL
          && c < 0x80 && (g_ascii_isdigit ((char) c) || c == '.' || c == ','))
        return NULL;
      space = FALSE;
      g_string_append_unichar (out, c);
    }
  return g_string_free (g_steal_pointer (&out), FALSE);
}

static gboolean
find_power (const char *unit,
            RwKind      kind,
            int        *power)
{
  const RwKind wanted = kind == RW_KIND_RIPPLE ? RW_KIND_DC : kind;

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (units[i].kind == wanted && g_str_equal (units[i].symbol, unit))
      {
        *power = units[i].power;
        return TRUE;
      }
  return FALSE;
}

/* What stands behind an overload word; NULL when the text does not start with one. */
static const char *
skip_overload (const char *squeezed)
{
  /* Dashes where the digits should be: "----", "1----". */
  const char *dashes = *squeezed == '1' ? squeezed + 1 : squeezed;
  const gsize n_dashes = strspn (dashes, "-");

  if (n_dashes >= 3)
    return dashes + n_dashes;

  const char *word = *squeezed == '-' || *squeezed == '+' ? squeezed + 1 : squeezed;

  for (guint i = 0; i < G_N_ELEMENTS (overload_words); i++)
    if (g_ascii_strncasecmp (word, overload_words[i], strlen (overload_words[i])) == 0)
      return word + strlen (overload_words[i]);
  return NULL;
}

/* An overload word, alone or with a unit. */
static gboolean
is_overload (const char *squeezed,
             RwKind      kind)
{
  const char *rest = skip_overload (squeezed);
  int power;

  return rest != NULL && (*rest == '\0' || find_power (rest, kind, &power));
}

/* Splits "-12,04mV" into the number with a point, its decimals, and the unit. FALSE: no number. */
static gboolean
split_number (const char  *squeezed,
              GString     *number,
              guint       *decimals,
              const char **unit)
{
  guint digits = 0;
  gboolean mark = FALSE;
  const char *p = squeezed;

  *decimals = 0;
  if (*p == '-' || *p == '+')
    g_string_append_c (number, *p++);
  for (; *p != '\0'; p++)
    {
      if (g_ascii_isdigit (*p))
        {
          g_string_append_c (number, *p);
          digits++;
          *decimals += mark;
        }
      else if ((*p == '.' || *p == ',') && !mark)
        {
          mark = TRUE;
          g_string_append_c (number, '.');
        }
      else
        break;
    }
  *unit = p;
  return digits > 0 && digits <= 12;
}

gboolean
rw_quantity_parse (const char      *text,
                   RwKind           kind,
                   RwQuantityTyped *out,
                   GError         **error)
{
  g_autoptr (GString) number = g_string_new (NULL);
  guint decimals;
  const char *unit;
  int power = 0;

  if (!g_utf8_validate (text, -1, NULL))
    return refuse (RW_QUANTITY_ERROR_NUMBER, error, "?");

  g_autofree char *squeezed = squeeze (text);

  if (squeezed == NULL)
    return refuse (RW_QUANTITY_ERROR_NUMBER, error, text);
  if (*squeezed == '\0')
    return refuse (RW_QUANTITY_ERROR_EMPTY, error, text);
  *out = (RwQuantityTyped){ .value = NAN, .over = TRUE };
  if (is_overload (squeezed, kind))
    return TRUE;
  if (!split_number (squeezed, number, &decimals, &unit))
    return refuse (RW_QUANTITY_ERROR_NUMBER, error, text);
  if (*unit != '\0' && (g_ascii_isdigit (*unit) || strchr (".,-+:eE", *unit) != NULL))
    return refuse (RW_QUANTITY_ERROR_NUMBER, error, text);
  if (*unit != '\0' && !find_power (unit, kind, &power))
    return refuse (RW_QUANTITY_ERROR_UNIT, error, text);

  /* One conversion from decimal text, so that 35 mV is the same double as 0.035 V. */
  g_autofree char *exact = g_strdup_printf ("%se%d", number->str, power);
  g_autofree char *step = g_strdup_printf ("1e%d", power - (int) decimals);

  out->over = FALSE;
  out->value = g_ascii_strtod (exact, NULL);
  out->step = g_ascii_strtod (step, NULL);
  out->has_sign = *squeezed == '-' || *squeezed == '+';
  out->has_unit = *unit != '\0';
  return TRUE;
}

/* --- shown -------------------------------------------------------------------------------------- */

int
rw_quantity_decimals (double step)
{
  if (!(step > 0))
    return 3;
  return CLAMP ((int) ceil (-log10 (step) - 1e-6), 0, 6);
}

static gboolean
is_all_zeros (const char *number)
{
  return strpbrk (number, "123456789") == NULL;
}

/* printf obeys the locale's decimal mark; only the minus is ours. Nothing shows as "−0.00". */
char *
rw_quantity_format_number (double value,
                           int    decimals)
{
  g_autofree char *plain = g_strdup_printf ("%.*f", decimals, fabs (value));
  const gboolean negative = value < 0 && !is_all_zeros (plain);

  return g_strconcat (negative ? MINUS : "", plain, NULL);
}

static gboolean
wants_millivolts (double value,
                  double step,
                  RwKind kind)
{
  if (kind != RW_KIND_DC && kind != RW_KIND_RIPPLE)
    return FALSE;
  if (step > 0 && step < 0.0005)
    return fabs (value) < millivolt_range_below;
  return fabs (value) < millivolts_below && (step == 0 || step < 0.0051);
}

char *
rw_quantity_format (double value,
                    double step,
                    RwKind kind)
{
  if (!isfinite (value))
    return g_strdup ("OL");

  const gboolean milli = wants_millivolts (value, step, kind);
  g_autofree char *number = milli
                                ? rw_quantity_format_number (value * 1e3, step > 0 ? rw_quantity_decimals (step * 1e3) : 1)
                                : rw_quantity_format_number (value, rw_quantity_decimals (step));

  return g_strconcat (number, THIN, milli ? "mV" : rw_kind_get_unit (kind), NULL);
}

char *
rw_quantity_format_signed (double value,
                           double step,
                           RwKind kind)
{
  g_autofree char *plain = rw_quantity_format (value, step, kind);

  return g_strconcat (isfinite (value) && value > 0 && !is_all_zeros (plain) ? "+" : "", plain, NULL);
}

char *
rw_quantity_format_u (double u,
                      RwKind kind)
{
  const double half = 1.96 * u;

  if (!(half > 0))
    return g_strdup ("");

  const gboolean milli = wants_millivolts (half, 0, kind);
  const double shown = milli ? half * 1e3 : half;
  const int decimals = CLAMP (1 - (int) floor (log10 (shown)), 0, 4);
  g_autofree char *number = rw_quantity_format_number (shown, decimals);

  return g_strconcat ("±", number, THIN, milli ? "mV" : rw_kind_get_unit (kind), NULL);
}

/* Whole seconds that an int holds, whatever a file says. */
static int
whole_seconds (double seconds)
{
  return (int) floor (fmin (fmax (seconds, 0), 1e9));
}

char *
rw_quantity_format_clock (double seconds)
{
  const int total = whole_seconds (seconds);

  if (total >= 3600)
    return g_strdup_printf ("%d:%02d:%02d", total / 3600, total / 60 % 60, total % 60);
  return g_strdup_printf ("%d:%02d", total / 60, total % 60);
}

char *
rw_quantity_format_age (double seconds)
{
  const int total = whole_seconds (seconds);

  if (total < 60)
    /* Translators: an age in seconds, as short as can be. */
    return g_strdup_printf (_ ("%d s"), total);
  if (total < 3600)
    /* Translators: an age in minutes. */
    return g_strdup_printf (_ ("%d min"), total / 60);
  /* Translators: an age in hours. */
  return g_strdup_printf (_ ("%d h"), total / 3600);
}

char *
rw_quantity_format_chance (double share)
{
  if (share > 0 && share < 0.01)
    return g_strdup (_ ("< 1 %"));
  if (share > 0.99 && share < 1)
    return g_strdup (_ ("> 99 %"));
  /* Translators: a chance in per cent. */
  return g_strdup_printf (_ ("%.0f %%"), share * 100);
}
