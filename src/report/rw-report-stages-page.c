/* rw-report-stages-page.c: the record of a bring-up on paper.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-report-stages-page.h"

#include <cairo-pdf.h>
#include <glib/gi18n-lib.h>

#include "rw-paper.h"
#include "rw-stage-record.h"
#include "rw-theme.h"

/* Points. */
static const double heading_gap = 12, line_gap = 3, indent = 15;

struct _RwReportStagesPages
{
  GArray *lines;   /* of RwRecordLine */
  GArray *firsts;  /* of guint: the first line of each page */
  double *heights; /* of each line, with the gap above it */
  char   *title;
};

static double
get_left (const RwRecordLine *line)
{
  return RW_PAPER_MARGIN
         + (line->kind == RW_RECORD_HEADING  ? 0
            : line->kind == RW_RECORD_ADVICE ? 2 * indent
                                             : indent);
}

static char *
dup_text (const RwRecordLine *line)
{
  if (line->kind == RW_RECORD_STAGE)
    /* Translators: shape, title of a stage, how it stands. */
    return g_strdup_printf (_ ("%s %s: %s"), rw_stage_status_get_glyph (line->status), line->text,
                            rw_stage_status_get_label (line->status));
  return line->kind == RW_RECORD_STOP
             ? g_strdup_printf ("%s %s", rw_stage_status_get_glyph (RW_STAGE_BLOCKED), line->text)
             : g_strdup (line->text);
}

static PangoLayout *
make_layout (cairo_t            *cr,
             const RwRecordLine *line)
{
  g_autofree char *text = dup_text (line);

  return rw_paper_new_layout (cr, text, RW_PAPER_TEXT_SIZE, line->kind == RW_RECORD_HEADING,
                              RW_PAPER_WIDTH - RW_PAPER_MARGIN - get_left (line));
}

static const RwRecordLine *
get_line (const RwReportStagesPages *self,
          guint                      i)
{
  return &g_array_index (self->lines, RwRecordLine, i);
}

static double
get_gap (const RwRecordLine *line)
{
  return line->kind == RW_RECORD_HEADING ? heading_gap : line_gap;
}

/* --- pages -------------------------------------------------------------------------------------- */

static void
measure (RwReportStagesPages *self)
{
  cairo_surface_t *surface = cairo_pdf_surface_create (NULL, RW_PAPER_WIDTH, RW_PAPER_HEIGHT);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < self->lines->len; i++)
    {
      g_autoptr (PangoLayout) layout = make_layout (cr, get_line (self, i));

      self->heights[i] = rw_paper_get_height (layout) + get_gap (get_line (self, i));
    }
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
}

/* No heading stands last on a page, nor a reason without the advice it goes against. */
static gboolean
wants_next (const RwRecordLine *line)
{
  return line->kind == RW_RECORD_HEADING || line->kind == RW_RECORD_AGAINST;
}

static void
break_pages (RwReportStagesPages *self)
{
  guint first = 0;

  do
    {
      double used = 0;
      guint end = first;

      g_array_append_val (self->firsts, first);
      while (end < self->lines->len && used + self->heights[end] <= RW_PAPER_ROOM)
        used += self->heights[end++];
      while (end < self->lines->len && end > first + 1 && wants_next (get_line (self, end - 1)))
        end--;
      first = MAX (end, first + 1);
    }
  while (first < self->lines->len);
}

static char *
dup_title (RwSession *session)
{
  const RwSessionHeader *header = rw_session_get_header (session);

  if (*header->cabinet_name == '\0')
    return g_strdup (_ ("Record of the bring-up"));
  if (*header->cabinet_tag == '\0')
    /* Translators: name of the cabinet. */
    return g_strdup_printf (_ ("Record of the bring-up: %s"), header->cabinet_name);
  /* Translators: name and tag of the cabinet. */
  return g_strdup_printf (_ ("Record of the bring-up: %s · %s"), header->cabinet_name, header->cabinet_tag);
}

RwReportStagesPages *
rw_report_stages_pages_new (const RwStages *stages,
                            RwSession      *session)
{
  g_return_val_if_fail (stages != NULL && session != NULL, NULL);

  RwReportStagesPages *self = g_new0 (RwReportStagesPages, 1);

  self->lines = rw_stage_record_list (stages);
  self->firsts = g_array_new (FALSE, FALSE, sizeof (guint));
  self->heights = g_new0 (double, self->lines->len + 1);
  self->title = dup_title (session);
  measure (self);
  break_pages (self);
  return self;
}

void
rw_report_stages_pages_free (RwReportStagesPages *self)
{
  if (self == NULL)
    return;
  g_array_unref (self->lines);
  g_array_unref (self->firsts);
  g_free (self->heights);
  g_free (self->title);
  g_free (self);
}

guint
rw_report_stages_pages_count (const RwReportStagesPages *self)
{
  g_return_val_if_fail (self != NULL, 0);
  return self->firsts->len;
}

/* --- drawing ------------------------------------------------------------------------------------ */

static void
draw_line (cairo_t            *cr,
           const RwRecordLine *line,
           double              y)
{
  const RwTheme *theme = rw_theme_get (RW_THEME_LIGHT);
  const RwColor color = line->kind == RW_RECORD_STOP ? theme->verdicts[RW_VERDICT_OUTSIDE] : theme->ink;
  g_autoptr (PangoLayout) layout = make_layout (cr, line);

  cairo_set_source_rgba (cr, color.r, color.g, color.b, color.a);
  cairo_move_to (cr, get_left (line), y);
  pango_cairo_show_layout (cr, layout);
}

void
rw_report_stages_pages_draw (const RwReportStagesPages *self,
                             cairo_t                   *cr,
                             guint                      page)
{
  g_return_if_fail (self != NULL && cr != NULL && page < self->firsts->len);

  const guint end = page + 1 < self->firsts->len ? g_array_index (self->firsts, guint, page + 1) : self->lines->len;
  double y = RW_PAPER_TOP;

  rw_paper_draw_frame (cr, self->title,
                       _ ("What was said and measured at the bench. Readings are no proof that a circuit is dead; local "
                          "rules decide."),
                       page, self->firsts->len);
  for (guint i = g_array_index (self->firsts, guint, page); i < end; i++)
    {
      draw_line (cr, get_line (self, i), y + get_gap (get_line (self, i)));
      y += self->heights[i];
    }
}

static void
draw_cb (cairo_t      *cr,
         guint         page,
         gconstpointer data)
{
  rw_report_stages_pages_draw (data, cr, page);
}

gboolean
rw_report_stages_save_pdf (const RwStages *stages,
                           RwSession      *session,
                           const char     *path,
                           GError        **error)
{
  g_autoptr (RwReportStagesPages) pages = rw_report_stages_pages_new (stages, session);
  const RwPaper paper = { RW_PAPER_WIDTH, RW_PAPER_HEIGHT, rw_report_stages_pages_count (pages), pages->title,
                          rw_session_get_header (session)->started };

  return rw_paper_save_pdf (&paper, draw_cb, pages, path, error);
}
