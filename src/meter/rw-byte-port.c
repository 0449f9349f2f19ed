/* rw-byte-port.c: what the kinds of byte port have in common: their errors.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include "rw-byte-port.h"

G_DEFINE_QUARK (rw_port_error, rw_port_error)
