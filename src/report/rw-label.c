/* rw-label.c: what stands on the label of the supply, and its text.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-label.h"

#include <glib/gi18n-lib.h>

#include "rw-quantity.h"
#include "rw-report-words.h"
#include "rw-text-table.h"

static const char nothing[] = "–";

static void
clear_row (gpointer data)
{
  RwLabelRow *row = data;

  g_clear_pointer (&row->rail, g_free);
  g_clear_pointer (&row->board, g_free);
  g_clear_pointer (&row->terminals, g_free);
}

void
rw_label_free (RwLabel *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->cabinet, g_free);
  g_clear_pointer (&self->date, g_free);
  g_clear_pointer (&self->set_point, g_free);
  g_clear_pointer (&self->meter, g_free);
  g_clear_pointer (&self->warm, g_free);
  g_clear_pointer (&self->who, g_free);
  g_clear_pointer (&self->rows, g_array_unref);
  g_free (self);
}

/* The last value under load that still describes the cabinet. (nullable) */
static const RwSpotState *
find_value (const RwBenchState *state,
            const RwRail       *rail,
            RwPlace             place)
{
  const RwSpotState *view = rw_bench_state_find_view (state, rail->id, place, RW_KIND_DC, FALSE);

  return view != NULL && !view->changed_since && !view->reading.over ? view : NULL;
}

static char *
dup_value (const RwSpotState *spot)
{
  return spot != NULL ? rw_quantity_format (spot->reading.value, spot->reading.step, RW_KIND_DC) : g_strdup (nothing);
}

static char *
dup_cabinet (RwSession *session)
{
  const RwSessionHeader *header = rw_session_get_header (session);
  const char *name = *header->cabinet_name != '\0' ? header->cabinet_name : _ ("Cabinet without a name");

  return *header->cabinet_tag != '\0' ? g_strdup_printf ("%s · %s", name, header->cabinet_tag) : g_strdup (name);
}

static char *
dup_meter (RwSession         *session,
           const RwSpotState *spot)
{
  const RwMeterFacts *facts = spot != NULL ? rw_session_find_meter (session, spot->reading.meter) : NULL;

  if (facts == NULL)
    return g_strdup (nothing);

  g_autofree char *percent = rw_quantity_format_number (facts->percent, 2);
  g_autofree char *counts = rw_quantity_format_number (facts->counts, 0);

  /* Translators: a meter's name, per cent of reading, counts of the last digit. */
  return g_strdup_printf (_ ("%s, ±(%s %% + %s counts)"), facts->name, percent, counts);
}

static const char *
get_warm (const RwSpotState *spot)
{
  const RwSaid warm = spot != NULL ? spot->setup.warm : RW_SAID_NOT;

  return warm == RW_SAID_YES ? _ ("warm") : warm == RW_SAID_NO ? _ ("cold") : _ ("warm or cold: not said");
}

static void
add_row (RwLabel            *self,
         const RwBenchState *state,
         const RwRail       *rail)
{
  const RwLabelRow row = { g_strdup (rail->label), dup_value (find_value (state, rail, RW_PLACE_BOARD)),
                           dup_value (find_value (state, rail, RW_PLACE_TERMINALS)) };

  g_array_append_val (self->rows, row);
}

RwLabel *
rw_label_new (RwSession          *session,
              const RwBenchState *state,
              const char         *date,
              const char         *who)
{
  const RwProfile *profile = rw_bench_state_get_profile (state);
  const RwRail *reference = rw_profile_get_reference (profile);
  const RwSpotState *board = find_value (state, reference, RW_PLACE_BOARD);
  const RwSpotState *terminals = find_value (state, reference, RW_PLACE_TERMINALS);
  g_autofree char *at_board = dup_value (board);
  g_autofree char *at_terminals = dup_value (terminals);
  RwLabel *self = g_new0 (RwLabel, 1);

  self->cabinet = dup_cabinet (session);
  self->date = g_strdup (date);
  /* Translators: rail, value, value. */
  self->set_point = g_strdup_printf (_ ("%s: %s at the board, %s at the terminals"), reference->label, at_board,
                                     at_terminals);
  self->meter = dup_meter (session, board != NULL ? board : terminals);
  self->warm = g_strdup (get_warm (board != NULL ? board : terminals));
  self->who = g_strdup (who != NULL && *who != '\0' ? who : nothing);
  self->rows = g_array_new (FALSE, FALSE, sizeof (RwLabelRow));
  g_array_set_clear_func (self->rows, clear_row);
  for (guint i = 0; i < rw_profile_get_n_rails (profile); i++)
    add_row (self, state, rw_profile_get_rail (profile, i));
  return self;
}

GString *
rw_label_to_text (const RwLabel *self)
{
  static const gboolean right[] = { FALSE, TRUE, TRUE };
  g_autoptr (RwTextTable) table = rw_text_table_new (G_N_ELEMENTS (right), right);
  GString *out = g_string_new (NULL);

  g_string_append_printf (out, "%s\n", self->cabinet);
  /* Translators: a date, warm or cold. */
  g_string_append_printf (out, _ ("Set %s, %s"), self->date, self->warm);
  g_string_append_printf (out, "\n%s\n", self->set_point);
  rw_text_table_take (table, g_strdup (_ ("rail")));
  rw_text_table_take (table, g_strdup (_ ("board")));
  rw_text_table_take (table, g_strdup (_ ("terminals")));
  for (guint i = 0; i < self->rows->len; i++)
    {
      const RwLabelRow *row = &g_array_index (self->rows, RwLabelRow, i);

      rw_text_table_take (table, g_strdup (row->rail));
      rw_text_table_take (table, g_strdup (row->board));
      rw_text_table_take (table, g_strdup (row->terminals));
    }
  rw_text_table_append (table, 0, out);
  /* Translators: a meter with its accuracy. */
  g_string_append_printf (out, _ ("Meter: %s"), self->meter);
  g_string_append_c (out, '\n');
  /* Translators: a person. */
  g_string_append_printf (out, _ ("By: %s"), self->who);
  g_string_append_c (out, '\n');
  return out;
}
