/* rw-serial-settings.h: how a serial line is set.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

typedef enum
{
  RW_PARITY_NONE,
  RW_PARITY_ODD,
  RW_PARITY_EVEN,
  RW_N_PARITIES
} RwParity;

/* A plain value. No flow control: meters have none. */
typedef struct
{
  guint    baud;      /* 75 … 4 000 000; the driver has the last word */
  guint    bits;      /* 7 or 8 */
  RwParity parity;
  guint    stop_bits; /* 1 or 2 */
  gboolean dtr;       /* Data Terminal Ready asserted; powers the optical cable of some meters */
  gboolean rts;       /* Request To Send asserted */
} RwSerialSettings;

G_END_DECLS
