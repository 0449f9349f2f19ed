/* rw-knowledge-private.h: the inside of a knowledge, for those that fill it.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-knowledge.h"

G_BEGIN_DECLS

/* Invariant: an id stands once in its list. Filled by the maker, then left alone. */
struct _RwKnowledge
{
  GPtrArray *symptoms; /* of RwSymptom */
  GPtrArray *causes;   /* of RwCause */
  GPtrArray *checks;   /* of RwCheck */
  GPtrArray *computed; /* of RwComputed */
};

RwKnowledge *rw_knowledge_new_empty (void);
RwKnowledge *rw_knowledge_copy (RwKnowledge *self); /* lists of its own, the entries shared */

/* Every entry begins with its interned id. */
const char *rw_knowledge_id_of (gconstpointer entry);

/* Index in one of the lists, or −1. */
int rw_knowledge_find (const GPtrArray *list, const char *id);

G_END_DECLS
