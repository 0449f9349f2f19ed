/* rw-line-pattern.c: a user's own description of a meter's lines.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-line-pattern.h"

#include <glib/gi18n-lib.h>
#include <string.h>

#include "rw-decoder.h"
#include "rw-line-text.h"

#define MINUS_SIGN "\u2212"

typedef enum
{
  NODE_LITERAL,
  NODE_BLANK,
  NODE_ANY,
  NODE_NUMBER,
  NODE_SIGN,
  NODE_MODE,
  NODE_UNIT,
  NODE_FIXED_UNIT
} NodeKind;

typedef struct
{
  NodeKind   kind;
  char      *literal;   /* LITERAL */
  char     **overloads; /* NUMBER: the user's words; may be empty */
  RwUnitText unit;      /* FIXED_UNIT */
  gboolean   after_any; /* NUMBER: only blanks between an {any} and this */
} Node;

struct _RwLinePattern
{
  char   *text;
  GArray *nodes; /* of Node */
};

typedef enum
{
  MATCH,
  MISMATCH,
  HOPELESS /* not even with more taken by an {any} further left */
} Outcome;

/* --- making one ---------------------------------------------------------------------- */

static void
clear_node (gpointer data)
{
  Node *node = data;

  g_free (node->literal);
  g_strfreev (node->overloads);
}

static Node *
node_at (const RwLinePattern *self,
         guint                i)
{
  return &g_array_index (self->nodes, Node, i);
}

static Node *
add_node (RwLinePattern *self,
          NodeKind       kind)
{
  const Node node = { .kind = kind };

  g_array_append_val (self->nodes, node);
  return node_at (self, self->nodes->len - 1);
}

static void
add_literal (RwLinePattern *self,
             char           byte)
{
  Node *last = self->nodes->len > 0 ? node_at (self, self->nodes->len - 1) : NULL;

  if (last == NULL || last->kind != NODE_LITERAL)
    {
      last = add_node (self, NODE_LITERAL);
      last->literal = g_strdup ("");
    }

  g_autofree char *before = g_steal_pointer (&last->literal);

  last->literal = g_strdup_printf ("%s%c", before, byte);
}

static gboolean
comes_after_any (const RwLinePattern *self)
{
  guint i = self->nodes->len;

  while (i > 0 && node_at (self, i - 1)->kind == NODE_BLANK)
    i--;
  return i > 0 && node_at (self, i - 1)->kind == NODE_ANY;
}

static void
add_number (RwLinePattern *self,
            const char    *field)
{
  const gboolean after_any = comes_after_any (self);
  Node *node = add_node (self, NODE_NUMBER);

  node->after_any = after_any;
  node->overloads = g_strsplit (field + strlen ("number"), "|", -1);
}

static gboolean
add_field (RwLinePattern *self,
           const char    *field,
           GError       **error)
{
  RwUnitText unit;

  if (g_str_equal (field, "number") || g_str_has_prefix (field, "number|"))
    add_number (self, field);
  else if (g_str_equal (field, "unit"))
    add_node (self, NODE_UNIT);
  else if (g_str_equal (field, "sign"))
    add_node (self, NODE_SIGN);
  else if (g_str_equal (field, "mode"))
    add_node (self, NODE_MODE);
  else if (g_str_equal (field, "any"))
    add_node (self, NODE_ANY);
  else if (g_str_has_prefix (field, "unit=")
           && rw_unit_text_read (field + 5, strlen (field + 5), &unit))
    add_node (self, NODE_FIXED_UNIT)->unit = unit;
  else
    {
      g_set_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN,
                   /* Translators: the words in braces are typed by people as they are. */
                   _ ("The pattern has “{%s}”, which means nothing here. Use {number}, {unit}, "
                      "{unit=mV}, {sign}, {mode} or {any}."),
                   field);
      return FALSE;
    }
  return TRUE;
}

/* Reads one field, blank or character; the place behind it, NULL on an error. */
static const char *
add_next (RwLinePattern *self,
          const char    *at,
          GError       **error)
{
  const gsize blanks = rw_line_text_blanks (at, strlen (at));
  const gboolean brace = *at == '{' || *at == '}';

  if (blanks > 0)
    {
      add_node (self, NODE_BLANK);
      return at + blanks;
    }
  if (!brace || at[1] == *at)
    {
      add_literal (self, *at);
      return at + (brace ? 2 : 1);
    }

  const char *end = strchr (at, '}');

  if (end == NULL || *at == '}')
    {
      g_set_error (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN,
                   /* Translators: two braces stand for one that is meant as itself. */
                   _ ("The pattern has a brace without its other half at “%s”. For a brace as such "
                      "write it twice."),
                   at);
      return NULL;
    }

  g_autofree char *field = g_strndup (at + 1, (gsize) (end - at) - 1);

  return add_field (self, field, error) ? end + 1 : NULL;
}

/* One number and one unit. */
static gboolean
check (const RwLinePattern *self,
       GError             **error)
{
  guint numbers = 0;
  guint units = 0;

  for (guint i = 0; i < self->nodes->len; i++)
    {
      numbers += node_at (self, i)->kind == NODE_NUMBER;
      units += node_at (self, i)->kind == NODE_UNIT || node_at (self, i)->kind == NODE_FIXED_UNIT;
    }
  if (numbers == 1 && units == 1)
    return TRUE;
  g_set_error_literal (error, RW_DECODER_ERROR, RW_DECODER_ERROR_PATTERN,
                       numbers != 1
                           ? _ ("The pattern needs the field {number} once, such as in "
                                "“{number} {unit}”.")
                           : _ ("The pattern needs one unit: {unit} where the line says it, or "
                                "{unit=V} where it does not."));
  return FALSE;
}

RwLinePattern *
rw_line_pattern_new (const char *text,
                     GError    **error)
{
  g_autoptr (RwLinePattern) self = g_new0 (RwLinePattern, 1);

  self->text = g_utf8_make_valid (text, -1);
  self->nodes = g_array_new (FALSE, FALSE, sizeof (Node));
  g_array_set_clear_func (self->nodes, clear_node);

  g_strstrip (self->text); /* as lines are */
  for (const char *at = self->text; *at != '\0';)
    {
      at = add_next (self, at, error);
      if (at == NULL)
        return NULL;
    }
  return check (self, error) ? g_steal_pointer (&self) : NULL;
}

void
rw_line_pattern_free (RwLinePattern *self)
{
  if (self == NULL)
    return;
  g_free (self->text);
  g_array_unref (self->nodes);
  g_free (self);
}

const char *
rw_line_pattern_get_text (const RwLinePattern *self)
{
  return self->text;
}

/* --- reading a line ------------------------------------------------------------------ */

typedef struct
{
  const RwLinePattern *pattern;
  const char          *clean;
  gsize                n;
  char                 mark;
  RwLineFields        *fields;
} Reader;

/* What stands left of a number that comes after an {any} must not belong to it: no digit or
 * mark right before it, and no sign, not even with blanks between. */
static gboolean
begins_number (const Reader *reader,
               gsize         at)
{
  const char *before = reader->clean + at;

  if (at > 0 && strchr ("0123456789.,:/", before[-1]) != NULL)
    return FALSE;
  while (before > reader->clean && (before[-1] == ' ' || before[-1] == '\t'))
    before--;
  if (before == reader->clean)
    return TRUE;

  const gsize left = (gsize) (before - reader->clean);
  const gsize n = strlen (MINUS_SIGN);

  return before[-1] != '-' && before[-1] != '+'
         && (left < n || memcmp (before - n, MINUS_SIGN, n) != 0);
}

static gsize
scan_own_overload (const Node *node,
                   const char *text,
                   gsize       n)
{
  for (char *const *word = node->overloads; *word != NULL; word++)
    {
      const gsize length = strlen (*word);

      if (length > 0 && length <= n && memcmp (text, *word, length) == 0)
        return length;
    }
  return 0;
}

/* What may come behind the number is for the next node to say where that is text; else it
 * must end here. */
static gboolean
ends_number (const Reader *reader,
             guint         next,
             gsize         at)
{
  const guint end = reader->pattern->nodes->len;

  while (next < end && node_at (reader->pattern, next)->kind == NODE_BLANK)
    next++;

  const NodeKind kind = next < end ? node_at (reader->pattern, next)->kind : NODE_ANY;
  const char *rest = reader->clean + at;
  const gsize n = reader->n - at;

  if (kind == NODE_LITERAL)
    return TRUE;
  if (!rw_line_text_ends_number (rest, n))
    return FALSE;
  return kind != NODE_ANY || rw_line_text_word (rest, n) == 0;
}

static gboolean
take_number (const Reader *reader,
             guint         i,
             gsize        *at)
{
  const Node *node = node_at (reader->pattern, i);
  const char *text = reader->clean + *at;
  const gsize n = reader->n - *at;
  const gsize own = scan_own_overload (node, text, n);
  const gsize over = own > 0 ? own : rw_number_scan_overload (text, n);
  const gsize bytes
      = over > 0 ? over : rw_number_scan (text, n, reader->mark, &reader->fields->number);

  if (bytes == 0 || (node->after_any && !begins_number (reader, *at))
      || !ends_number (reader, i + 1, *at + bytes))
    return FALSE;
  if (over == 0 && reader->fields->signed_apart && !g_ascii_isdigit (*text)
      && *text != reader->mark)
    return FALSE; /* two signs */
  reader->fields->over = over > 0;
  reader->fields->has_number = over == 0;
  *at += bytes;
  return TRUE;
}

static void
take_sign (const Reader *reader,
           gsize        *at)
{
  const char *text = reader->clean + *at;
  const gboolean minus_sign = g_str_has_prefix (text, MINUS_SIGN);

  reader->fields->signed_apart = minus_sign || *text == '-' || *text == '+';
  reader->fields->negative = minus_sign || *text == '-';
  if (reader->fields->signed_apart)
    *at += minus_sign ? strlen (MINUS_SIGN) : 1;
}

/* The longest piece of the word that is a unit. */
static gboolean
take_unit (const Reader *reader,
           gsize        *at)
{
  const char *text = reader->clean + *at;

  for (gsize n = rw_line_text_word (text, reader->n - *at); n > 0; n--)
    if (rw_unit_text_read (text, n, &reader->fields->unit))
      {
        reader->fields->has_unit = TRUE;
        reader->fields->dc |= reader->fields->unit.mode == RW_METER_MODE_DC;
        reader->fields->ac |= reader->fields->unit.mode == RW_METER_MODE_AC;
        *at += n;
        return TRUE;
      }
  return FALSE;
}

static void
take_mode (const Reader *reader,
           gsize        *at)
{
  const char *text = reader->clean + *at;

  for (gsize n = rw_line_text_word (text, reader->n - *at); n > 0; n--)
    if (rw_line_fields_take_mode (reader->fields, text, n))
      {
        *at += n;
        break;
      }
  /* "AC+DC" */
  if (reader->fields->ac && !reader->fields->dc
      && g_ascii_strncasecmp (reader->clean + *at, "+DC", 3) == 0)
    {
      reader->fields->dc = TRUE;
      *at += 3;
    }
}

/* One node that is no {any}; moves @at behind what it takes. */
static gboolean
take_node (const Reader *reader,
           guint         i,
           gsize        *at)
{
  const Node *node = node_at (reader->pattern, i);

  switch (node->kind)
    {
    case NODE_LITERAL:
      if (!g_str_has_prefix (reader->clean + *at, node->literal))
        return FALSE;
      *at += strlen (node->literal);
      return TRUE;
    case NODE_BLANK:
      *at += rw_line_text_blanks (reader->clean + *at, reader->n - *at);
      return TRUE;
    case NODE_NUMBER:
      return take_number (reader, i, at);
    case NODE_SIGN:
      take_sign (reader, at);
      return TRUE;
    case NODE_MODE:
      take_mode (reader, at);
      return TRUE;
    case NODE_UNIT:
      return take_unit (reader, at);
    case NODE_FIXED_UNIT:
      reader->fields->unit = node->unit;
      reader->fields->has_unit = TRUE;
      return TRUE;
    case NODE_ANY:
    default:
      g_return_val_if_reached (FALSE);
    }
}

static Outcome
match (const Reader *reader,
       guint         i,
       gsize         at)
{
  for (; i < reader->pattern->nodes->len; i++)
    {
      if (node_at (reader->pattern, i)->kind != NODE_ANY)
        {
          if (!take_node (reader, i, &at))
            return MISMATCH;
          continue;
        }
      if (i + 1 == reader->pattern->nodes->len)
        return MATCH;

      const RwLineFields before = *reader->fields;

      for (gsize skip = at; skip <= reader->n; skip++)
        {
          const Outcome outcome = match (reader, i + 1, skip);

          if (outcome != MISMATCH)
            return outcome;
          *reader->fields = before;
        }
      return HOPELESS;
    }
  return at == reader->n ? MATCH : MISMATCH;
}

gboolean
rw_line_pattern_read (const RwLinePattern *self,
                      const char          *clean,
                      gsize                n,
                      char                 mark,
                      RwLineFields        *fields)
{
  const Reader reader = { self, clean, n, mark, fields };

  memset (fields, 0, sizeof *fields);
  return match (&reader, 0, 0) == MATCH;
}
