/* rw-profile.h: the rails of a cabinet, their limits, and where they are measured.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include <gio/gio.h>
#include <json-glib/json-glib.h>

#include "rw-kinds.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PROFILE_ERROR_READ,   /* the file could not be read */
  RW_PROFILE_ERROR_FORMAT, /* not JSON, or a key is missing or wrong; the message names file and key */
} RwProfileError;
#define RW_PROFILE_ERROR (rw_profile_error_quark ())
GQuark rw_profile_error_quark (void);

typedef enum
{
  RW_FOLLOWS_NO,
  RW_FOLLOWS_YES,
  RW_FOLLOWS_UNKNOWN
} RwFollows;

/* Volts throughout. lo < hi also for a negative rail. */
typedef struct
{
  const char *id;    /* interned */
  char       *label; /* "+5 V" */
  char       *feeds; /* free words: "logic" */
  double      nominal;
  double      lo, hi;           /* at the board, loaded */
  double      bare_lo, bare_hi; /* at the terminals, board out */
  double      never_above;      /* a magnitude; INFINITY when not given */
  double      ripple_limit;     /* volts AC; INFINITY when not given */
  int         priority;         /* 1 first */
  RwFollows   follows_trim;
} RwRail;

/* Immutable and reference-counted. */
typedef struct _RwProfile RwProfile;

/* @node: an object as in the profile format. @where names the file in messages. (transfer full) */
RwProfile *rw_profile_new_from_node (JsonNode *node, const char *where, GError **error);
RwProfile *rw_profile_load (const char *path, GError **error);
RwProfile *rw_profile_ref (RwProfile *self);
void       rw_profile_unref (RwProfile *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (RwProfile, rw_profile_unref)

const char   *rw_profile_get_id (const RwProfile *self);
const char   *rw_profile_get_title (const RwProfile *self);
guint         rw_profile_get_n_rails (const RwProfile *self);
const RwRail *rw_profile_get_rail (const RwProfile *self, guint index);
const RwRail *rw_profile_find_rail (const RwProfile *self, const char *id); /* (nullable) */
int           rw_profile_index_of (const RwProfile *self, const char *id);  /* −1: not there */
const RwRail *rw_profile_get_reference (const RwProfile *self);

/* The object it was made from, unknown keys included; borrowed. */
JsonNode *rw_profile_get_node (const RwProfile *self);

/* Every profile of the user's folder and the shipped one, the user's first, an id only once.
 * Files that cannot be read are told to @problem (one message a file) and left out.
 * (transfer full) (element-type RwProfile) */
GPtrArray *rw_profile_list (GPtrArray *problems);

/* Limits that hold at a place: bare limits at the terminals, the board's elsewhere; for a drop along
 * a wire ±0.100 V, along ground ±0.050 V (trade practice, an estimate); for ripple [−∞, ripple_limit].
 * FALSE when nothing is laid down for this spot. @rail may be NULL for ground. */
gboolean rw_rail_limits_at (const RwRail *rail, const char *rail_id, RwPlace place, RwKind kind,
                            double *lo, double *hi);

/* Position between limits: −1 weak limit, 0 middle, +1 strong limit; a negative rail's strong limit is
 * the more negative one (@nominal < 0). One-sided limits: 0 at zero, +1 at the limit. */
double rw_position (double value, double lo, double hi, gboolean negative);

/* 1 − |position|. */
double rw_margin (double value, double lo, double hi);

G_END_DECLS
