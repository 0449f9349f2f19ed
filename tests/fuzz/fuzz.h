/* fuzz.h: what the fuzz targets share: how a broken promise is reported.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>
#include <stdint.h>

G_BEGIN_DECLS

/* Called once, before the first input. Always 0. */
int LLVMFuzzerInitialize (int *argc, char ***argv);

/* Called by libFuzzer with every input that it thinks of. Always 0. */
int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

/* Says what went wrong and ends the target; libFuzzer then keeps the input. */
void fuzz_fail (const char *format, ...) G_GNUC_PRINTF (1, 2) G_GNUC_NORETURN;

#define fuzz_expect(claim)                                                                        \
  G_STMT_START                                                                                    \
  {                                                                                               \
    if (G_UNLIKELY (!(claim)))                                                                    \
      fuzz_fail ("%s:%d: broken promise: %s", __FILE__, __LINE__, #claim);                        \
  }                                                                                               \
  G_STMT_END

/* The bytes alone on the heap, so that a read past their end is caught. Never NULL. Free with
 * free (). */
uint8_t *fuzz_alone (const uint8_t *data, size_t size);

/* A message for people says something, in valid UTF-8. */
void fuzz_expect_text (const char *text);

G_END_DECLS
