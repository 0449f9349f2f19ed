/* rw-bench-pch.h: the toolkit's headers, read once for all of this folder instead of once a file. For the compiler alone,
 * which takes it as a main file: it has no #pragma once.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <gtk/gtk.h>
