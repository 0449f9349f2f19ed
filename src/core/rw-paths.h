/* rw-paths.h: where shipped and personal data lie.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* Shipped data: $RAILWRIGHT_DATA_DIR when set (a build tree), else the installed folder. (transfer full) */
char *rw_paths_dup_shipped (const char *below);

/* The user's own: $XDG_DATA_HOME/railwright/below. Not made. (transfer full) */
char *rw_paths_dup_user (const char *below);

/* Where sessions are kept unless somebody says otherwise: the user's sessions folder. (transfer full) */
char *rw_paths_dup_sessions (void);

/* Where sessions of practice are kept. (transfer full) */
char *rw_paths_dup_practice (void);

/* Where message catalogues lie: $RAILWRIGHT_LOCALE_DIR when set (a build tree), else the installed folder. Static. */
const char *rw_paths_get_locale_dir (void);

/* Full paths of files ending in @suffix in a folder, sorted; empty when there is no folder.
 * (transfer full) (element-type filename) */
GPtrArray *rw_paths_list (const char *folder, const char *suffix);

G_END_DECLS
