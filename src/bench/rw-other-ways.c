/* rw-other-ways.c: two checks that could be taken instead.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-other-ways.h"

#include <glib/gi18n-lib.h>

#include "rw-card-words.h"

typedef struct
{
  GtkWidget  *button;
  GtkWidget  *title;
  GtkWidget  *detail;
  const char *check; /* interned; NULL: not shown */
} Way;

struct _RwOtherWays
{
  GtkWidget  parent_instance;
  GtkWidget *box;
  Way        ways[RW_N_OTHER_WAYS];
};

/* As the main window binds them. */
static const char *const keys[RW_N_OTHER_WAYS] = { "I", "J" };

static guint chosen_signal;

G_DEFINE_FINAL_TYPE (RwOtherWays, rw_other_ways, GTK_TYPE_WIDGET)

static void
show_way (Way                 *way,
          guint                i,
          const RwAdvice      *advice,
          const RwAdviceCheck *offer)
{
  g_autofree char *minutes = rw_card_words_minutes (offer->minutes);
  g_autofree char *more = rw_card_words_more (offer->expected, rw_advice_get_expected (advice));
  g_autofree char *hazard = rw_card_words_hazard (offer->check->hazard, offer->check->who);
  g_autofree char *detail = g_strdup_printf ("%s · %s · %s", minutes, more, hazard);
  /* Translators: a check; its minutes, what it costs more and its hazard; a key. */
  g_autofree char *label = g_strdup_printf (_ ("Instead: %s, %s (%s)"), offer->check->title, detail, keys[i]);

  way->check = offer->check->id;
  gtk_label_set_text (GTK_LABEL (way->title), offer->check->title);
  gtk_label_set_text (GTK_LABEL (way->detail), detail);
  gtk_widget_set_tooltip_text (way->button, label);
  gtk_accessible_update_property (GTK_ACCESSIBLE (way->button), GTK_ACCESSIBLE_PROPERTY_LABEL, label, -1);
}

static guint
take (RwOtherWays    *self,
      const RwAdvice *advice,
      gboolean        reserved,
      guint           n)
{
  const RwAdviceCheck *best = rw_advice_get_check (advice);

  for (guint i = 0; i < rw_advice_get_n_checks (advice) && n < RW_N_OTHER_WAYS; i++)
    {
      const RwAdviceCheck *offer = rw_advice_get_ranked (advice, i);

      if ((best == NULL || offer->check != best->check) && rw_check_is_reserved (offer->check) == reserved)
        {
          show_way (&self->ways[n], n, advice, offer);
          n++;
        }
    }
  return n;
}

void
rw_other_ways_show (RwOtherWays    *self,
                    const RwAdvice *advice)
{
  g_return_if_fail (RW_IS_OTHER_WAYS (self));

  guint n = 0;

  if (advice != NULL)
    {
      n = take (self, advice, FALSE, 0);
      n = take (self, advice, TRUE, n);
    }
  for (guint i = n; i < RW_N_OTHER_WAYS; i++)
    self->ways[i].check = NULL;
  for (guint i = 0; i < RW_N_OTHER_WAYS; i++)
    gtk_widget_set_visible (self->ways[i].button, i < n);
  gtk_widget_set_visible (GTK_WIDGET (self), n > 0);
}

const char *
rw_other_ways_get (RwOtherWays *self,
                   guint        i)
{
  g_return_val_if_fail (RW_IS_OTHER_WAYS (self) && i < RW_N_OTHER_WAYS, NULL);
  return gtk_widget_get_visible (GTK_WIDGET (self)) ? self->ways[i].check : NULL;
}

static void
clicked_cb (GtkWidget   *button,
            RwOtherWays *self)
{
  for (guint i = 0; i < RW_N_OTHER_WAYS; i++)
    if (self->ways[i].button == button && self->ways[i].check != NULL)
      {
        g_signal_emit (self, chosen_signal, 0, self->ways[i].check);
        return;
      }
}

static void
rw_other_ways_dispose (GObject *object)
{
  g_clear_pointer (&RW_OTHER_WAYS (object)->box, gtk_widget_unparent);
  G_OBJECT_CLASS (rw_other_ways_parent_class)->dispose (object);
}

static void
rw_other_ways_class_init (RwOtherWaysClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = rw_other_ways_dispose;
  chosen_signal = g_signal_new ("chosen", RW_TYPE_OTHER_WAYS, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL, G_TYPE_NONE, 1,
                                G_TYPE_STRING);
  gtk_widget_class_set_css_name (GTK_WIDGET_CLASS (klass), "otherways");
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
make_way (RwOtherWays *self,
          Way         *way)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  way->title = gtk_label_new ("");
  way->detail = gtk_label_new ("");
  for (GtkWidget *label = way->title; label != NULL; label = label == way->title ? way->detail : NULL)
    {
      gtk_label_set_xalign (GTK_LABEL (label), 0);
      gtk_label_set_wrap (GTK_LABEL (label), TRUE);
      gtk_box_append (GTK_BOX (box), label);
    }
  gtk_widget_add_css_class (way->title, "plain");
  gtk_widget_add_css_class (way->detail, "caption");
  gtk_widget_add_css_class (way->detail, "quiet");
  way->button = gtk_button_new ();
  gtk_button_set_child (GTK_BUTTON (way->button), box);
  gtk_widget_add_css_class (way->button, "way");
  g_signal_connect (way->button, "clicked", G_CALLBACK (clicked_cb), self);
  gtk_box_append (GTK_BOX (self->box), way->button);
}

static void
rw_other_ways_init (RwOtherWays *self)
{
  GtkWidget *title = gtk_label_new (_ ("Instead of it"));

  self->box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 3);
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_label_set_xalign (GTK_LABEL (title), 0);
  gtk_widget_add_css_class (title, "caption");
  gtk_widget_add_css_class (title, "quiet");
  gtk_box_append (GTK_BOX (self->box), title);
  for (guint i = 0; i < RW_N_OTHER_WAYS; i++)
    make_way (self, &self->ways[i]);
}
