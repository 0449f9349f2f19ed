/* rw-text-table.c: columns of text that line up in a terminal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-text-table.h"

static const guint between = 2; /* spaces from column to column */

struct _RwTextTable
{
  guint      n_columns;
  gboolean  *right; /* one a column */
  GPtrArray *texts; /* row after row; owned */
};

RwTextTable *
rw_text_table_new (guint           n_columns,
                   const gboolean *right)
{
  g_return_val_if_fail (n_columns > 0, NULL);

  RwTextTable *self = g_new0 (RwTextTable, 1);

  self->n_columns = n_columns;
  self->right = g_memdup2 (right, n_columns * sizeof *right);
  self->texts = g_ptr_array_new_with_free_func (g_free);
  return self;
}

void
rw_text_table_free (RwTextTable *self)
{
  if (self == NULL)
    return;
  g_free (self->right);
  g_clear_pointer (&self->texts, g_ptr_array_unref);
  g_free (self);
}

void
rw_text_table_take (RwTextTable *self,
                    char        *text)
{
  g_ptr_array_add (self->texts, text != NULL ? text : g_strdup (""));
}

guint
rw_text_width (const char *text)
{
  guint width = 0;

  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      const gunichar c = g_utf8_get_char (p);

      if (!g_unichar_iszerowidth (c))
        width += g_unichar_iswide (c) ? 2 : 1;
    }
  return width;
}

static guint
column_width (const RwTextTable *self,
              guint              column)
{
  guint width = 0;

  for (guint i = column; i < self->texts->len; i += self->n_columns)
    width = MAX (width, rw_text_width (self->texts->pdata[i]));
  return width;
}

static void
append_spaces (GString *out,
               guint    n)
{
  for (guint i = 0; i < n; i++)
    g_string_append_c (out, ' ');
}

static void
trim_end (GString *out)
{
  while (out->len > 0 && out->str[out->len - 1] == ' ')
    g_string_truncate (out, out->len - 1);
}

void
rw_text_table_append (const RwTextTable *self,
                      guint              indent,
                      GString           *out)
{
  g_autofree guint *widths = g_new (guint, self->n_columns);

  for (guint i = 0; i < self->n_columns; i++)
    widths[i] = column_width (self, i);
  for (guint i = 0; i < self->texts->len; i++)
    {
      const char *text = self->texts->pdata[i];
      const guint column = i % self->n_columns;
      const guint space = widths[column] - rw_text_width (text);

      append_spaces (out, column == 0 ? indent : between);
      append_spaces (out, self->right[column] ? space : 0);
      g_string_append (out, text);
      append_spaces (out, self->right[column] ? 0 : space);
      if (column == self->n_columns - 1 || i == self->texts->len - 1)
        {
          trim_end (out);
          g_string_append_c (out, '\n');
        }
    }
}
