/* rw-report-plan-page.c: a plan on paper.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-plan-page.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>
#include <pango/pangocairo.h>

#include "rw-report-plan-lines.h"
#include "rw-theme.h"

/* Points. */
static const double level_indent = 15, line_gap = 2.5, rule_offset = 9;
static const guint longest_page = 888;

typedef struct
{
  guint  first, end; /* lines, end not with it */
} Page;

struct _RwReportPlanPages
{
  GPtrArray *lines;   /* of RwPlanLine */
  GArray    *pages;   /* of Page */
  double    *heights; /* of each line, with the gap below it */
  char      *title;
};

/* --- lines ---------------------------------------------------------------------------------------- */

static double
indent_of (const RwPlanLine *line)
{
  return RW_PAPER_MARGIN + line->level * level_indent;
}

static const char *
sign_of (RwPlanLineKind kind)
{
  return kind == RW_PLAN_LINE_DANGER ? "⚠ " : "";
}

/* @page: where the caution stands that this line repeats, 1 …; no matter for others. */
static PangoLayout *
make_layout (cairo_t          *cr,
             const RwPlanLine *line,
             guint             page)
{
  g_autofree char *words = rw_plan_line_dup_text (line, page);
  g_autofree char *text = g_strconcat (sign_of (line->kind), words, NULL);
  const gboolean bold = line->kind == RW_PLAN_LINE_CHECK || line->kind == RW_PLAN_LINE_DANGER;

  return rw_paper_new_layout (cr, text, RW_PAPER_TEXT_SIZE, bold, RW_PAPER_WIDTH - RW_PAPER_MARGIN - indent_of (line));
}

/* Before anything has its page: with room for the longest number. */
static double
measure (cairo_t          *cr,
         const RwPlanLine *line)
{
  g_autoptr (PangoLayout) layout = make_layout (cr, line, longest_page);

  return rw_paper_get_height (layout) + line_gap + (line->kind == RW_PLAN_LINE_KNOWN ? line_gap : 0);
}

/* --- pages ---------------------------------------------------------------------------------------- */

/* What must not stand last on a page: a danger, whose step would follow on the next one, and an outcome. */
static gboolean
wants_next (const RwPlanLine *line)
{
  return line->kind == RW_PLAN_LINE_DANGER || line->kind == RW_PLAN_LINE_OUTCOME;
}

/* The first line that does not fit. */
static guint
end_of_page (const RwReportPlanPages *self,
             guint                    first)
{
  const double room = RW_PAPER_ROOM;
  double used = 0;
  guint end = first;

  while (end < self->lines->len && used + self->heights[end] <= room)
    used += self->heights[end++];
  if (end == self->lines->len)
    return end;
  while (end > first + 1 && wants_next (self->lines->pdata[end - 1]))
    end--;
  return MAX (end, first + 1);
}

static void
break_pages (RwReportPlanPages *self)
{
  guint first = 0;

  do
    {
      const Page page = { first, end_of_page (self, first) };

      g_array_append_val (self->pages, page);
      first = page.end;
    }
  while (first < self->lines->len);
}

static char *
dup_title (RwSession *session)
{
  const RwSessionHeader *header = session != NULL ? rw_session_get_header (session) : NULL;

  if (header == NULL || header->cabinet_name == NULL || *header->cabinet_name == '\0')
    return g_strdup (_ ("Plan"));
  if (header->cabinet_tag == NULL || *header->cabinet_tag == '\0')
    /* Translators: name of the cabinet. */
    return g_strdup_printf (_ ("Plan: %s"), header->cabinet_name);
  /* Translators: name and tag of the cabinet. */
  return g_strdup_printf (_ ("Plan: %s · %s"), header->cabinet_name, header->cabinet_tag);
}

RwReportPlanPages *
rw_report_plan_pages_new (const RwReportPlan *plan,
                          RwSession          *session)
{
  g_return_val_if_fail (plan != NULL, NULL);

  RwReportPlanPages *self = g_new0 (RwReportPlanPages, 1);
  cairo_surface_t *surface = cairo_pdf_surface_create (NULL, RW_PAPER_WIDTH, RW_PAPER_HEIGHT);
  cairo_t *cr = cairo_create (surface);

  self->lines = rw_report_plan_lines (plan);
  self->pages = g_array_new (FALSE, FALSE, sizeof (Page));
  self->heights = g_new0 (double, self->lines->len + 1);
  self->title = dup_title (session);
  for (guint i = 0; i < self->lines->len; i++)
    self->heights[i] = measure (cr, self->lines->pdata[i]);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  break_pages (self);
  return self;
}

void
rw_report_plan_pages_free (RwReportPlanPages *self)
{
  if (self == NULL)
    return;
  g_ptr_array_unref (self->lines);
  g_array_unref (self->pages);
  g_free (self->heights);
  g_free (self->title);
  g_free (self);
}

guint
rw_report_plan_pages_count (const RwReportPlanPages *self)
{
  g_return_val_if_fail (self != NULL, 0);
  return self->pages->len;
}

/* --- drawing -------------------------------------------------------------------------------------- */

static void
set_color (cairo_t *cr,
           RwColor  color)
{
  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a);
}

/* The page where caution @number is said in full, 1 …. */
static guint
find_caution (const RwReportPlanPages *self,
              guint                    number)
{
  for (guint page = 0; page < self->pages->len; page++)
    {
      const Page *lines = &g_array_index (self->pages, Page, page);

      for (guint i = lines->first; i < lines->end; i++)
        {
          const RwPlanLine *line = self->lines->pdata[i];

          if (line->caution == number && !line->repeats)
            return page + 1;
        }
    }
  return 0;
}

/* Rules at the left of every level that the line is below. */
static void
draw_rules (cairo_t          *cr,
            const RwPlanLine *line,
            double            y,
            double            height)
{
  set_color (cr, rw_theme_get (RW_THEME_LIGHT)->grid);
  cairo_set_line_width (cr, 0.7);
  for (guint level = 0; level < line->level; level++)
    {
      const double x = RW_PAPER_MARGIN + (level + 1) * level_indent - rule_offset;

      cairo_move_to (cr, x, y);
      cairo_line_to (cr, x, y + height);
    }
  cairo_stroke (cr);
}

static void
draw_line (const RwReportPlanPages *self,
           cairo_t                 *cr,
           guint                    index,
           double                   y)
{
  const RwTheme *theme = rw_theme_get (RW_THEME_LIGHT);
  const RwPlanLine *line = self->lines->pdata[index];
  g_autoptr (PangoLayout) layout = make_layout (cr, line, line->repeats ? find_caution (self, line->caution) : 0);
  const gboolean quiet = line->kind == RW_PLAN_LINE_RARE || line->kind == RW_PLAN_LINE_CUT;

  draw_rules (cr, line, y, self->heights[index]);
  set_color (cr, line->kind == RW_PLAN_LINE_DANGER ? theme->verdicts[RW_VERDICT_OUTSIDE]
                 : quiet                           ? theme->quiet
                                                   : theme->ink);
  cairo_move_to (cr, indent_of (line), y);
  pango_cairo_show_layout (cr, layout);
}

void
rw_report_plan_pages_draw (const RwReportPlanPages *self,
                           cairo_t                 *cr,
                           guint                    page)
{
  g_return_if_fail (self != NULL && cr != NULL && page < self->pages->len);

  const Page *lines = &g_array_index (self->pages, Page, page);
  double y = RW_PAPER_TOP;

  rw_paper_draw_frame (cr, self->title,
                       _ ("A computed guess and no safety device. Mains and picture tubes are left to trained people; local "
                          "rules decide."),
                       page, self->pages->len);
  for (guint i = lines->first; i < lines->end; i++)
    {
      draw_line (self, cr, i, y);
      y += self->heights[i];
    }
}

/* --- PDF ------------------------------------------------------------------------------------------ */

static void
draw_cb (cairo_t      *cr,
         guint         page,
         gconstpointer data)
{
  rw_report_plan_pages_draw (data, cr, page);
}

gboolean
rw_report_plan_save_pdf (const RwReportPlan *plan,
                         RwSession          *session,
                         const char         *path,
                         GError            **error)
{
  g_return_val_if_fail (plan != NULL && path != NULL, FALSE);

  g_autoptr (RwReportPlanPages) pages = rw_report_plan_pages_new (plan, session);
  const RwPaper paper = { RW_PAPER_WIDTH, RW_PAPER_HEIGHT, rw_report_plan_pages_count (pages), pages->title,
                          session != NULL ? rw_session_get_header (session)->started : NULL };

  return rw_paper_save_pdf (&paper, draw_cb, pages, path, error);
}
