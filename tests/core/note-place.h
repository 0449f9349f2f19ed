/* note-place.h: what the tests of notes on a session share: a folder for them, and words for what they hold.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-annotations.h"

#define NOTE_ID "0b6a1f0e-8f6a-4c53-9d5f-3f1f8f0f7a11"
#define NOTE_OTHER "6f9a3a52-3b9a-4b9e-8a7c-0d7f0e4b2c11"
#define NOTE_HEADER "{\"railwright_notes\":1,\"session\":\"" NOTE_ID "\"}\n"
#define NOTE_LINE(n, t, text) "{\"n\":" #n ",\"t\":" #t ",\"at\":null,\"by\":\"Mo\",\"text\":\"" text "\",\"written\":\"2026-03-14T18:00:00Z\"}\n"

/* fixture_init () with a data folder of the user's that is the test's own, to be removed in the end. (transfer full) */
char *note_init (int *argc, char ***argv);

/* Paths in a folder of the test's own; no file is there at first. */
typedef struct
{
  char *folder;
  char *session; /* job.rwlog */
  char *beside;  /* job.rwnotes */
  char *gift;    /* gift.rwnotes */
} NotePlace;

void note_place_set_up (NotePlace *at, gconstpointer data);
void note_place_tear_down (NotePlace *at, gconstpointer data);

/* A test that is given such a place. */
#define note_test(path, func) \
  g_test_add (path, NotePlace, NULL, note_place_set_up, func, note_place_tear_down)

/* The moment at which all of these are written. (transfer full) */
GDateTime *note_written (void);

/* Writes a note of Ada's; its number. */
guint note_add (RwAnnotations *notes, double t, guint at, const char *text);

/* Writes a call, @second of the minute of note_written (), and clears @said; its number. */
guint note_add_call (RwAnnotations *notes, guint at, RwCallSaid said, int second);

/* @expected: "t text|t text". */
void note_assert_told (RwAnnotations *notes, const char *expected);

/* @expected: "n form|n form". */
void note_assert_called (RwAnnotations *notes, const char *expected);

/* What a file holds. (transfer full) */
char *note_read_text (const char *path);

/* Lines that must have a good header of NOTE_ID. (transfer full) */
RwAnnotations *note_read (const char *text);
