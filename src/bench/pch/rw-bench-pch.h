/* rw-bench-pch.h: the toolkit's headers, read once for all of this folder instead of once a file. For the compiler alone.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "config.h"

#include <glib/gi18n-lib.h>
#include <gtk/gtk.h>
