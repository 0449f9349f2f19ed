/* journal-watch.h: follows what a journal tells, for the tests of the journal.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-journal.h"

typedef struct
{
  RwJournal *journal;
  RwSession *session;
  GThread   *thread;     /* where signals must arrive */
  guint      n_kept;     /* how often "kept" came */
  guint      last_kept;  /* its last number */
  gboolean   all_kept;   /* the last event of the session is */
  guint      n_troubles; /* how often "trouble" came */
  char      *trouble;    /* the last one; NULL: none, or over */
  gboolean   in_trouble, out_of_trouble; /* one flag each, for fixture_spin */
} JournalWatch;

/* Each "kept" is held against the file: an event may not be called kept before it can be read
 * back. */
void journal_watch (JournalWatch *watch, RwJournal *journal, RwSession *session);
void journal_unwatch (JournalWatch *watch);

/* The session of the fixtures in a new file. */
RwJournal *journal_new (RwSession *session, const char *path);

/* Adds an event to the watched session. */
void journal_add (JournalWatch *watch, RwEvent event);

RwEvent journal_some_reading (double t);
RwEvent journal_some_sample (double t);

/* The file holds the session, event by event, and nothing is wrong with it. */
void journal_assert_file_is (const char *path, RwSession *session);

/* The file is sound as far as it goes; how many events it holds. */
guint journal_count_sound (const char *path);
