/* rw-meter-found-card.c: one meter that was found, and what can be done with it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-meter-found-card.h"

#include <glib/gi18n-lib.h>

#include "rw-decoder.h"
#include "rw-meter-words.h"

static GtkWidget *
make_label (const char *text,
            const char *css_class)
{
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_wrap_mode (GTK_LABEL (label), PANGO_WRAP_WORD_CHAR);
  if (css_class != NULL)
    gtk_widget_add_css_class (label, css_class);
  return label;
}

/* "95 % sure, 12 values, newest 5.012 V DC, step 0.001 V" */
static char *
describe_evidence (const RwMeterFound *found)
{
  g_autofree char *sure = rw_meter_words_sure (found->sure);
  /* Translators: how sure ("95 % sure"), number of values. */
  g_autofree char *start = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s, %u value", "%s, %u values",
                                                         found->values),
                                            sure, found->values);

  if (found->values == 0)
    return g_steal_pointer (&start);

  g_autofree char *value = rw_meter_words_value (&found->newest, found->sign_unsure);

  /* Translators: how sure and how many values, then the newest value. */
  return g_strdup_printf (_ ("%s, newest %s"), start, value);
}

static GtkWidget *
make_button (const char *label,
             const char *action,
             guint       number,
             const char *place)
{
  GtkWidget *button = gtk_button_new_with_label (label);
  g_autofree char *name = g_strdup_printf ("%s: %s", label, place);

  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_actionable_set_action_name (GTK_ACTIONABLE (button), action);
  gtk_actionable_set_action_target (GTK_ACTIONABLE (button), "u", number);
  gtk_accessible_update_property (GTK_ACCESSIBLE (button), GTK_ACCESSIBLE_PROPERTY_LABEL, name, -1);
  if (number == 0)
    gtk_widget_add_css_class (button, "suggested-action");
  return button;
}

GtkWidget *
rw_meter_found_card_new (const RwMeterFound *found,
                         guint               number)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  g_autofree char *place = rw_meter_address_to_words (found->address);
  g_autofree char *evidence = describe_evidence (found);
  const char *format = found->sign_unsure ? _ ("11-byte digits, kind of minus not known yet")
                                          : rw_decoder_get_title (found->format);
  g_autofree char *where = g_strdup_printf ("%s · %s", place, format != NULL ? format : found->format);

  gtk_widget_add_css_class (box, "card");
  gtk_box_append (GTK_BOX (box), make_label (found->identity != NULL ? found->identity : place, "section"));
  gtk_box_append (GTK_BOX (box), make_label (found->identity != NULL ? where : format, NULL));
  gtk_box_append (GTK_BOX (box), make_label (evidence, "numeric"));
  if (!found->sign_unsure)
    {
      gtk_box_append (GTK_BOX (box), make_button (_ ("Use this meter"), "found.use", number, place));
      return box;
    }
  gtk_box_append (GTK_BOX (box),
                  make_label (_ ("Two kinds of meter send this, and what means minus in one means a low battery in the "
                                 "other. Put the leads on any battery the wrong way round, so that the meter shows a "
                                 "minus, and hold them there."),
                              NULL));
  gtk_box_append (GTK_BOX (box), make_button (_ ("It shows a minus now"), "found.negative", number, place));
  return box;
}
