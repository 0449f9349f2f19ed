/* rw-check-card.c: what to do next.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * States: offered (title, why, what each outcome would tell) → taken (steps, outcomes to choose or the entry
 * to fill) → the finding or reading is an event, the advice changes, and the next check is offered.
 * A repair goes the same way: offered → taken (steps) → "fixed" or "no change".
 */
#include "config.h"

#include "rw-check-card.h"

#include <glib/gi18n-lib.h>

#include "rw-practice-look.h"
#include "rw-quantity.h"

struct _RwCheckCard
{
  GtkWidget   parent_instance;
  RwJob      *job;
  const char *taken; /* interned id of the check or cause that was taken; NULL: offered */
  GtkWidget  *box;
  GtkLabel   *kicker;
  GtkLabel   *safety;
  GtkLabel   *title;
  GtkLabel   *facts;
  GtkLabel   *why;
  GtkWidget  *setup_row;
  GtkLabel   *setup;
  GtkWidget  *setup_done;
  GtkLabel   *steps;
  GtkWidget  *outcomes;
  GtkButton  *first;
  GtkButton  *second;
};

static guint aimed_signal;

G_DEFINE_FINAL_TYPE (RwCheckCard, rw_check_card, GTK_TYPE_WIDGET)

static void
show_text (GtkLabel   *label,
           const char *text)
{
  gtk_label_set_text (label, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (label), text != NULL && *text != '\0');
}

static void
show_button (GtkButton  *button,
             const char *text)
{
  gtk_button_set_label (button, text != NULL ? text : "");
  gtk_widget_set_visible (GTK_WIDGET (button), text != NULL);
}

static const RwCheck *
offered_check (RwCheckCard *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;

  if (advice == NULL || rw_advice_get_kind (advice) != RW_ADVICE_CHECK)
    return NULL;
  return rw_advice_get_check (advice)->check;
}

static const RwCause *
offered_repair (RwCheckCard *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;

  return advice != NULL && rw_advice_get_kind (advice) == RW_ADVICE_REPAIR ? rw_advice_get_repair (advice) : NULL;
}

/* --- the setup a check wants --------------------------------------------------------------------- */

/* Only what differs from how things stand. */
static RwSetup
missing_setup (RwCheckCard   *self,
               const RwCheck *check)
{
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));
  RwSetup missing = { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT };

  if (check->power != RW_SAID_NOT && check->power != now.power_on)
    missing.power_on = check->power;
  if (check->board != RW_SAID_NOT && check->board != now.board_fitted)
    missing.board_fitted = check->board;
  if (check->warm == RW_SAID_YES && check->warm != now.warm)
    missing.warm = check->warm;
  return missing;
}

/* What has to be done to get there; NULL when it is not known how things stand. (transfer full) */
static char *
dup_way_there (const RwSetup *missing,
               const RwSetup *now)
{
  GString *text;

  if ((missing->power_on != RW_SAID_NOT && now->power_on == RW_SAID_NOT)
      || (missing->board_fitted != RW_SAID_NOT && now->board_fitted == RW_SAID_NOT))
    return NULL;
  text = g_string_new (NULL);
  if (missing->board_fitted != RW_SAID_NOT)
    g_string_append (text, missing->board_fitted
                               ? _ ("First switch off, wait for the rails to fall, and fit the board. Check the key and "
                                    "the row twice.")
                               : _ ("First switch off, wait for the rails to fall, and take the board out."));
  if (missing->power_on != RW_SAID_NOT)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "",
                            missing->power_on ? _ ("Then switch on.") : _ ("Switch off and pull the plug."));
  if (missing->warm == RW_SAID_YES)
    g_string_append_printf (text, "%s%s", text->len > 0 ? " " : "", _ ("Let it warm up first."));
  return g_string_free (text, FALSE);
}

static void
show_setup (RwCheckCard   *self,
            const RwCheck *check)
{
  const RwSetup missing = missing_setup (self, check);
  const RwSetup now = rw_bench_state_get_setup (rw_job_get_state (self->job));
  const gboolean any = missing.power_on != RW_SAID_NOT || missing.board_fitted != RW_SAID_NOT
                       || missing.warm != RW_SAID_NOT;
  g_autofree char *way = dup_way_there (&missing, &now);
  RwEvent wanted = rw_event_make_setup (0, missing);
  g_autofree char *words = rw_event_describe (&wanted, NULL);
  /* Translators: power, board, warm, as the check needs them. */
  g_autofree char *needs = g_strdup_printf (_ ("It needs: %s."), words);

  show_text (self->setup, way != NULL ? way : needs);
  gtk_widget_set_visible (self->setup_row, any);
}

static void
setup_done_cb (RwCheckCard *self)
{
  const RwCheck *check = offered_check (self);

  if (check != NULL)
    rw_job_set_setup (self->job, missing_setup (self, check));
}

/* --- outcomes ------------------------------------------------------------------------------------- */

static void
clear_outcomes (RwCheckCard *self)
{
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->outcomes)) != NULL)
    gtk_box_remove (GTK_BOX (self->outcomes), child);
}

static void
outcome_cb (GtkWidget   *button,
            RwCheckCard *self)
{
  const char *outcome = g_object_get_data (G_OBJECT (button), "outcome");
  RwEvent event = rw_event_make_finding (0, self->taken, outcome);

  self->taken = NULL;
  rw_job_add (self->job, &event);
  g_signal_emit (self, aimed_signal, 0); /* the button goes; the keyboard must not go with it */
}

/* "Below 4.80 V · 31 % → +5 V at the terminals" */
static char *
foretell (const RwAdviceOutcome *outcome)
{
  g_autofree char *chance = rw_quantity_format_chance (outcome->chance);

  if (outcome->next_title == NULL)
    return g_strdup_printf ("%s · %s", outcome->outcome->title, chance);
  if (outcome->next == RW_ACTION_REPAIR)
    /* Translators: what a check shows, its chance, the repair that follows. */
    return g_strdup_printf (_ ("%s · %s → repair: %s"), outcome->outcome->title, chance, outcome->next_title);
  /* Translators: what a check shows, its chance, the check that follows. */
  return g_strdup_printf (_ ("%s · %s → %s"), outcome->outcome->title, chance, outcome->next_title);
}

static void
add_outcome_label (RwCheckCard           *self,
                   const RwAdviceOutcome *outcome)
{
  g_autofree char *text = foretell (outcome);
  GtkWidget *label = gtk_label_new (text);

  g_autofree char *tip = *outcome->outcome->meaning != '\0'
                             ? g_strdup_printf ("%s\n%s", text, outcome->outcome->meaning)
                             : g_strdup (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_widget_add_css_class (label, "caption");
  gtk_widget_set_tooltip_text (label, tip);
  gtk_box_append (GTK_BOX (self->outcomes), label);
}

/* @seen: it is what the practice cabinet shows. */
static void
add_outcome_button (RwCheckCard     *self,
                    const RwOutcome *outcome,
                    gboolean         seen)
{
  GtkWidget *button = gtk_button_new_with_label (outcome->title);
  GtkWidget *label = gtk_button_get_child (GTK_BUTTON (button));

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_widget_set_tooltip_text (button, outcome->meaning);
  if (seen)
    gtk_widget_add_css_class (button, "suggested-action");
  g_object_set_data (G_OBJECT (button), "outcome", (gpointer) g_intern_string (outcome->id));
  g_signal_connect (button, "clicked", G_CALLBACK (outcome_cb), self);
  gtk_box_append (GTK_BOX (self->outcomes), button);
}

/* What eyes and ears find at the practice cabinet, since nobody can look at it. */
static void
add_seen (RwCheckCard   *self,
          const RwCheck *check,
          const char    *seen)
{
  const int index = rw_check_find_outcome (check, seen);

  if (index < 0)
    return;

  /* Translators: what a look at the practice cabinet shows. */
  g_autofree char *text = g_strdup_printf (_ ("At the practice cabinet you find: %s"), check->outcomes[index].title);
  GtkWidget *label = gtk_label_new (text);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_add_css_class (label, "strong");
  gtk_box_append (GTK_BOX (self->outcomes), label);
}

static void
show_outcomes (RwCheckCard   *self,
               RwAdvice      *advice,
               const RwCheck *check)
{
  const gboolean choose = self->taken != NULL && !check->measures;
  RwPracticeCabinet *cabinet = rw_job_get_cabinet (self->job);
  const char *seen = choose && cabinet != NULL ? rw_practice_look (cabinet, check->id) : NULL;

  if (seen != NULL)
    add_seen (self, check, seen);
  for (guint i = 0; choose && i < check->n_outcomes; i++)
    add_outcome_button (self, &check->outcomes[i], g_strcmp0 (check->outcomes[i].id, seen) == 0);
  for (guint i = 0; !choose && i < rw_advice_get_n_outcomes (advice); i++)
    if (rw_advice_get_outcome (advice, i)->chance >= 0.01)
      add_outcome_label (self, rw_advice_get_outcome (advice, i));
}

/* --- the card ------------------------------------------------------------------------------------- */

static char *
join_steps (char **steps)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; steps != NULL && steps[i] != NULL; i++)
    g_string_append_printf (text, "%s%u. %s", i > 0 ? "\n" : "", i + 1, steps[i]);
  return g_string_free (text, FALSE);
}

static char *
dup_facts (double   minutes,
           RwHazard hazard,
           RwWho    who)
{
  g_autofree char *time = rw_quantity_format_number (minutes, minutes < 9.95 && minutes != (int) minutes ? 1 : 0);

  if (who == RW_WHO_ANYONE)
    /* Translators: minutes, hazard: "3 min · low voltage". */
    return g_strdup_printf (_ ("%s min · %s"), time, rw_hazard_get_label (hazard));
  /* Translators: minutes, hazard, who may do it. */
  return g_strdup_printf (_ ("%s min · %s · %s"), time, rw_hazard_get_label (hazard), rw_who_get_label (who));
}

static char *
dup_safety (const char *safety)
{
  return safety != NULL && *safety != '\0' ? g_strdup_printf ("⚠ %s", safety) : NULL;
}

static char *
dup_account (RwAdvice            *advice,
             const RwAdviceCheck *best)
{
  g_autofree char *with = rw_quantity_format_number (best->expected, 0);
  g_autofree char *without = rw_quantity_format_number (rw_advice_get_repairs_only (advice), 0);

  /* Translators: minutes expected in all with this check, and without it. */
  return g_strdup_printf (_ ("Next check · %s min expected in all, %s without measuring"), with, without);
}

static void
show_check (RwCheckCard *self,
            RwAdvice    *advice)
{
  const RwAdviceCheck *best = rw_advice_get_check (advice);
  const RwCheck *check = best->check;
  const gboolean taken = self->taken == check->id;
  g_autofree char *safety = dup_safety (check->safety);
  g_autofree char *facts = dup_facts (best->minutes, check->hazard, check->who);
  g_autofree char *steps = join_steps (check->how);
  g_autofree char *account = dup_account (advice, best);

  if (!taken)
    self->taken = NULL;
  show_text (self->kicker, account);
  show_text (self->safety, safety);
  show_text (self->title, check->title);
  show_text (self->facts, facts);
  show_text (self->why, taken ? NULL : check->why);
  show_setup (self, check);
  show_text (self->steps, taken ? steps : NULL);
  show_outcomes (self, advice, check);
  show_button (self->first, taken ? check->measures ? _ ("To the entry") : NULL : _ ("Take it"));
  show_button (self->second, taken ? _ ("Back") : _ ("Not now"));
}

/* The hazard before the step: the first step of a repair beside or past mains says it (a rule of the data);
 * who may do it is said whenever not everybody may. */
static char *
dup_repair_safety (const RwCause *cause)
{
  if (cause->repair.hazard >= RW_HAZARD_NEAR_MAINS && cause->repair.steps[0] != NULL)
    return dup_safety (cause->repair.steps[0]);
  if (cause->repair.who == RW_WHO_ANYONE)
    return NULL;
  /* Translators: hazard, who may do it. */
  return g_strdup_printf (_ ("⚠ %s; %s. Local rules decide."),
                          rw_hazard_get_label (cause->repair.hazard), rw_who_get_label (cause->repair.who));
}

static void
show_repair (RwCheckCard *self,
             RwAdvice    *advice)
{
  const RwCause *cause = rw_advice_get_repair (advice);
  const gboolean taken = self->taken == cause->id;
  g_autofree char *steps = join_steps (cause->repair.steps);
  g_autofree char *facts = dup_facts (cause->repair.minutes, cause->repair.hazard, cause->repair.who);
  const RwCauseBelief *belief = rw_belief_find_cause (rw_advice_get_belief (advice), cause->id);
  g_autofree char *chance = rw_quantity_format_chance (belief != NULL ? belief->p : 0);
  /* Translators: chance that this is the cause, the cause. */
  g_autofree char *kicker = g_strdup_printf (_ ("Repair now · %s likely: %s"), chance, cause->title);
  g_autofree char *safety = dup_repair_safety (cause);

  if (!taken)
    self->taken = NULL;
  show_text (self->kicker, kicker);
  show_text (self->safety, safety);
  show_text (self->title, cause->repair.title);
  show_text (self->facts, facts);
  show_text (self->why, taken ? NULL : cause->detail);
  show_text (self->steps, taken ? steps : NULL);
  gtk_widget_set_visible (self->setup_row, FALSE);
  show_button (self->first, taken ? _ ("It is fixed") : _ ("Do it"));
  show_button (self->second, taken ? _ ("No change") : NULL);
}

static void
show_words (RwCheckCard *self,
            const char  *title,
            const char  *why)
{
  show_text (self->kicker, NULL);
  show_text (self->safety, NULL);
  show_text (self->title, title);
  show_text (self->facts, NULL);
  show_text (self->why, why);
  show_text (self->steps, NULL);
  gtk_widget_set_visible (self->setup_row, FALSE);
  show_button (self->first, NULL);
  show_button (self->second, NULL);
}

/* While something dangerous is on the leads there is nothing to be done but to stop. (nullable) */
static const RwWarning *
find_danger (RwCheckCard *self)
{
  RwBenchState *state = rw_job_get_state (self->job);

  for (guint i = 0; i < rw_bench_state_get_n_warnings (state); i++)
    if (rw_bench_state_get_warning (state, i)->danger)
      return rw_bench_state_get_warning (state, i);
  return NULL;
}

static void
refresh (RwCheckCard *self)
{
  RwAdvice *advice = self->job != NULL ? rw_job_get_advice (self->job) : NULL;

  clear_outcomes (self);
  if (advice == NULL)
    {
      const char *problem = self->job != NULL ? rw_job_get_advice_problem (self->job) : NULL;

      show_words (self, problem != NULL ? _ ("No advice") : _ ("Thinking…"), problem);
      return;
    }

  const RwWarning *danger = find_danger (self);

  if (danger != NULL)
    {
      self->taken = NULL;
      show_words (self, _ ("Stop first"), _ ("No check is suggested until the danger above is over and the rail was measured "
                                             "again, or a slip of typing was taken back."));
      return;
    }
  switch (rw_advice_get_kind (advice))
    {
    case RW_ADVICE_CHECK:
      show_check (self, advice);
      break;
    case RW_ADVICE_REPAIR:
      show_repair (self, advice);
      break;
    case RW_ADVICE_DONE:
      show_words (self, _ ("Fixed"), _ ("Measure every rail once more, let it warm up, and write down what was done."));
      break;
    case RW_ADVICE_NOTHING:
    default:
      show_words (self, _ ("Nothing more to suggest"),
                  _ ("What was seen fits no cause known for this cabinet. Ask somebody, and keep the session as the record."));
    }
  gtk_widget_set_sensitive (GTK_WIDGET (self->first), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (GTK_WIDGET (self->second), rw_job_can_write (self->job));
  gtk_widget_set_sensitive (self->setup_done, rw_job_can_write (self->job));
}

/* --- buttons -------------------------------------------------------------------------------------- */

static void
aim (RwCheckCard   *self,
     const RwCheck *check)
{
  rw_job_set_spot (self->job, check->rail, check->place, check->kind);
  g_signal_emit (self, aimed_signal, 0);
}

static void
finish_repair (RwCheckCard   *self,
               RwRepairResult result)
{
  RwEvent event = rw_event_make_repair (0, self->taken, result);

  self->taken = NULL;
  rw_job_add (self->job, &event);
  g_signal_emit (self, aimed_signal, 0);
}

/* The outcome that the practice cabinet shows, else the first one. */
static void
focus_outcome (RwCheckCard *self)
{
  for (GtkWidget *child = gtk_widget_get_first_child (self->outcomes); child != NULL;
       child = gtk_widget_get_next_sibling (child))
    if (gtk_widget_has_css_class (child, "suggested-action"))
      {
        gtk_widget_grab_focus (child);
        return;
      }
  gtk_widget_child_focus (self->outcomes, GTK_DIR_TAB_FORWARD);
}

void
rw_check_card_take (RwCheckCard *self)
{
  const RwCheck *check = offered_check (self);
  const RwCause *cause = offered_repair (self);

  if (self->job == NULL || !rw_job_can_write (self->job) || find_danger (self) != NULL)
    return;
  if (check != NULL)
    {
      self->taken = check->id;
      refresh (self);
      if (check->measures)
        aim (self, check);
      else
        focus_outcome (self);
    }
  else if (cause != NULL && self->taken == cause->id)
    finish_repair (self, RW_REPAIR_FIXED);
  else if (cause != NULL)
    {
      self->taken = cause->id;
      rw_job_repair (self->job, cause->id);
      refresh (self);
    }
}

static void
second_cb (RwCheckCard *self)
{
  const RwCheck *check = offered_check (self);

  if (check != NULL && self->taken != check->id)
    rw_job_skip_check (self->job, check->id);
  else if (check == NULL && self->taken != NULL)
    finish_repair (self, RW_REPAIR_NO_CHANGE);
  else
    {
      self->taken = NULL;
      refresh (self);
    }
}

void
rw_check_card_set_job (RwCheckCard *self,
                       RwJob       *job)
{
  g_return_if_fail (RW_IS_CHECK_CARD (self));
  if (self->job != NULL)
    g_signal_handlers_disconnect_by_data (self->job, self);
  self->taken = NULL;
  g_set_object (&self->job, job);
  if (job != NULL)
    g_signal_connect_object (job, "advice", G_CALLBACK (refresh), self, G_CONNECT_SWAPPED);
  refresh (self);
}

static void
rw_check_card_dispose (GObject *object)
{
  RwCheckCard *self = RW_CHECK_CARD (object);

  g_clear_object (&self->job);
  gtk_widget_dispose_template (GTK_WIDGET (self), RW_TYPE_CHECK_CARD);
  G_OBJECT_CLASS (rw_check_card_parent_class)->dispose (object);
}

static void
rw_check_card_class_init (RwCheckCardClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = rw_check_card_dispose;
  aimed_signal = g_signal_new ("aimed", RW_TYPE_CHECK_CARD, G_SIGNAL_RUN_LAST, 0, NULL, NULL, NULL,
                               G_TYPE_NONE, 0);
  gtk_widget_class_set_template_from_resource (widget_class, "/org/railwright/bench/rw-check-card.ui");
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, box);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, kicker);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, safety);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, title);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, facts);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, why);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup_row);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, setup_done);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, steps);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, outcomes);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, first);
  gtk_widget_class_bind_template_child (widget_class, RwCheckCard, second);
}

static void
rw_check_card_init (RwCheckCard *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect_swapped (self->first, "clicked", G_CALLBACK (rw_check_card_take), self);
  g_signal_connect_swapped (self->second, "clicked", G_CALLBACK (second_cb), self);
  g_signal_connect_swapped (self->setup_done, "clicked", G_CALLBACK (setup_done_cb), self);
}
