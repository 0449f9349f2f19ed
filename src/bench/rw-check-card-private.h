/* rw-check-card-private.h: the card's parts, for the files that show it and that act.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-check-card.h"
#include "rw-cure-question.h"
#include "rw-lead-view.h"
#include "rw-other-ways.h"
#include "rw-set-aside.h"

G_BEGIN_DECLS

struct _RwCheckCard
{
  GtkWidget       parent_instance;
  RwJob          *job;
  const char     *taken;  /* interned id of the check or cause that was taken; NULL: offered */
  const char     *chosen; /* interned id of the check that was chosen instead; NULL: the suggested one */
  const char     *cause;  /* interned id of the cause whose repair was asked for; NULL: as suggested */
  gboolean        roomy;
  GtkWidget      *box;
  GtkScrolledWindow *scroller; /* all but the buttons, which stay in sight */
  GtkWidget      *inside;
  GtkLabel       *hazard;
  GtkLabel       *safety;
  GtkLabel       *kicker;
  GtkLabel       *title;
  GtkLabel       *facts;
  GtkWidget      *setup_row;
  GtkLabel       *setup;
  GtkWidget      *setup_done;
  RwLeadView     *picture;
  GtkLabel       *steps;
  GtkWidget      *buttons; /* first, second and aside */
  GtkButton      *first;
  GtkButton      *second;
  RwSetAside     *aside;
  RwCureQuestion *question;
  GtkLabel       *why;
  GtkLabel       *account;
  GtkWidget      *outcomes;
  GtkToggleButton *unfold;
  RwOtherWays    *others;
};

/* rw-check-card.c: what is offered. Borrowed, until the next advice. */
RwAdvice            *rw_check_card_get_advice (RwCheckCard *self); /* (nullable) */
const RwAdviceCheck *rw_check_card_get_offer (RwCheckCard *self);  /* the check that is shown; NULL: a repair or nothing is */
const RwCheck       *rw_check_card_get_check (RwCheckCard *self);  /* the same */
const RwCause       *rw_check_card_get_repair (RwCheckCard *self); /* the cause whose repair is shown; (nullable) */

/* What was chosen by hand holds until it is answered, set aside or gone back from. */
void rw_check_card_forget_choice (RwCheckCard *self);
void rw_check_card_drop_stale_choice (RwCheckCard *self, RwAdvice *advice); /* advice: (nullable) */

/* What the check needs changed, as things stand. */
RwSetup rw_check_card_missing_setup (RwCheckCard *self, const RwCheck *check);

/* While something dangerous is on the leads there is nothing to be done but to stop. (nullable) */
const RwWarning *rw_check_card_find_danger (RwCheckCard *self);

/* The check that was taken showed this. */
void rw_check_card_answer (RwCheckCard *self, const char *outcome);

/* rw-check-card-show.c: shows all of it anew. */
void rw_check_card_refresh (RwCheckCard *self);

G_END_DECLS
