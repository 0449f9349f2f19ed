/* rw-theme.c: colours, dashes and markers of every picture.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-theme.h"

#include <math.h>

#define HEX(rgb)                                                                                 \
  {                                                                                              \
    ((rgb) >> 16 & 0xff) / 255.0, ((rgb) >> 8 & 0xff) / 255.0, ((rgb) &0xff) / 255.0, 1.0        \
  }
#define SEE_THROUGH(rgb, alpha) \
  { ((rgb) >> 16 & 0xff) / 255.0, ((rgb) >> 8 & 0xff) / 255.0, ((rgb) &0xff) / 255.0, (alpha) }

/* Dash and marker go with the place in the order, not with the theme. */
#define SOLID .n_dashes = 0
#define DASH(...)                                                                                \
  .dashes = { __VA_ARGS__ }, .n_dashes = sizeof ((double[]){ __VA_ARGS__ }) / sizeof (double)

#define LIGHT_SERIES                                                  \
  {                                                                   \
    { HEX (0x2062FF), RW_MARKER_CIRCLE, SOLID },                      \
    { HEX (0x532800), RW_MARKER_SQUARE, DASH (8, 4) },                \
    { HEX (0x00644B), RW_MARKER_TRIANGLE, DASH (2, 3) },              \
    { HEX (0x8E5A85), RW_MARKER_DIAMOND, DASH (8, 3, 2, 3) },         \
    { HEX (0x667500), RW_MARKER_SALTIRE, DASH (12, 4) },              \
    { HEX (0x0C0B95), RW_MARKER_CROSS, DASH (4, 2) },                 \
  }
#define DARK_SERIES                                                   \
  {                                                                   \
    { HEX (0x5DDFFF), RW_MARKER_CIRCLE, SOLID },                      \
    { HEX (0xBAC500), RW_MARKER_SQUARE, DASH (8, 4) },                \
    { HEX (0xA2BB84), RW_MARKER_TRIANGLE, DASH (2, 3) },              \
    { HEX (0x9491FC), RW_MARKER_DIAMOND, DASH (8, 3, 2, 3) },         \
    { HEX (0xCDFF9D), RW_MARKER_SALTIRE, DASH (12, 4) },              \
    { HEX (0xF085B0), RW_MARKER_CROSS, DASH (4, 2) },                 \
  }

/* In the order of RwVerdict: none, inside, close, outside, blind. */
#define LIGHT_VERDICTS                                                                           \
  {                                                                                              \
    HEX (0x595959), HEX (0x00644B), HEX (0x665500), HEX (0xAB1C60), HEX (0x595959)               \
  }
#define DARK_VERDICTS                                                                            \
  {                                                                                              \
    HEX (0xB8B8B8), HEX (0xA2BB84), HEX (0xCDFF9D), HEX (0xF085B0), HEX (0xB8B8B8)               \
  }

static const RwTheme themes[RW_N_THEMES] = {
  [RW_THEME_LIGHT] = {
    .paper = HEX (0xFFFFFF), .ink = HEX (0x1A1A1A), .quiet = HEX (0x595959), .line = HEX (0x7A7A7A),
    .grid = HEX (0xE2E2E2), .tint = SEE_THROUGH (0x1A1A1A, 0.035),
    .hatch = SEE_THROUGH (0x1A1A1A, 0.075), .accent = HEX (0x1A1A1A),
    .verdicts = LIGHT_VERDICTS, .series = LIGHT_SERIES, .weight = 1.0,
  },
  [RW_THEME_DARK] = {
    .paper = HEX (0x2D2D2D), .ink = HEX (0xF0F0F0), .quiet = HEX (0xB8B8B8), .line = HEX (0x9A9A9A),
    .grid = HEX (0x444444), .tint = SEE_THROUGH (0xF0F0F0, 0.035),
    .hatch = SEE_THROUGH (0xF0F0F0, 0.07), .accent = HEX (0xF0F0F0),
    .verdicts = DARK_VERDICTS, .series = DARK_SERIES, .weight = 1.0,
  },
  [RW_THEME_LIGHT_CONTRAST] = {
    .paper = HEX (0xFFFFFF), .ink = HEX (0x000000), .quiet = HEX (0x000000), .line = HEX (0x000000),
    .grid = HEX (0xB0B0B0), .tint = HEX (0xFFFFFF), .hatch = HEX (0xB0B0B0),
    .accent = HEX (0x000000), .verdicts = LIGHT_VERDICTS, .series = LIGHT_SERIES, .weight = 1.6,
  },
  [RW_THEME_DARK_CONTRAST] = {
    .paper = HEX (0x000000), .ink = HEX (0xFFFFFF), .quiet = HEX (0xFFFFFF), .line = HEX (0xFFFFFF),
    .grid = HEX (0x606060), .tint = HEX (0x000000), .hatch = HEX (0x606060),
    .accent = HEX (0xFFFFFF), .verdicts = DARK_VERDICTS, .series = DARK_SERIES, .weight = 1.6,
  },
};

const RwTheme *
rw_theme_get (RwThemeId id)
{
  return &themes[(guint) id < RW_N_THEMES ? id : RW_THEME_LIGHT];
}

guint
rw_theme_series_index (const RwProfile *profile,
                       const char      *rail_id)
{
  const int index = rw_profile_index_of (profile, rail_id);
  const guint n = rw_profile_get_n_rails (profile);

  if (index >= 0)
    return (guint) index;
  return g_strcmp0 (rail_id, RW_RAIL_GROUND) == 0 ? n : n + 1;
}

RwSeriesStyle
rw_theme_series (const RwTheme *theme,
                 guint          index)
{
  const guint round = index / RW_N_SERIES;
  const RwSeriesStyle *shape = &theme->series[(index + round) % RW_N_SERIES];
  RwSeriesStyle style = *shape;

  style.color = theme->series[index % RW_N_SERIES].color;
  return style;
}

/* Relative luminance of sRGB, WCAG 2.1. */
static double
luminance (RwColor color)
{
  static const double weights[] = { 0.2126, 0.7152, 0.0722 };
  const double parts[] = { color.r, color.g, color.b };
  double sum = 0;

  for (guint i = 0; i < G_N_ELEMENTS (parts); i++)
    sum += weights[i]
           * (parts[i] <= 0.03928 ? parts[i] / 12.92 : pow ((parts[i] + 0.055) / 1.055, 2.4));
  return sum;
}

double
rw_color_contrast (RwColor a,
                   RwColor b)
{
  const double la = luminance (a), lb = luminance (b);

  return (MAX (la, lb) + 0.05) / (MIN (la, lb) + 0.05);
}
