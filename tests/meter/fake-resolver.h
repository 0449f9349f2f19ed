/* fake-resolver.h: for tests: looks names up without a network.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * "bench-box" is this machine, "nobody.test" does not exist, "slow.test" is never answered,
 * "two.test" is an address where nobody is and then this machine.
 */
#pragma once

#include <glib.h>

/* From now on all lookups of this process go there. */
void fake_resolver_install (void);
