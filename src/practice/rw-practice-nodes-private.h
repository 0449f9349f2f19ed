/* rw-practice-nodes-private.h: the points of a practice cabinet as the circuit knows them.
 * SPDX-License-Identifier: GPL-3.0-or-later
 */
#pragma once

#include "rw-practice-cabinet-private.h"
#include "rw-practice-nodes.h"

G_BEGIN_DECLS

typedef enum
{
  RW_PRACTICE_POINT_STRIP,
  RW_PRACTICE_POINT_HARNESS_SUPPLY,
  RW_PRACTICE_POINT_HARNESS_BOARD,
  RW_PRACTICE_POINT_EDGE,
  RW_PRACTICE_POINT_CHIP, /* up to here: along a conductor, from the supply to the board */
  RW_PRACTICE_POINT_SENSE,
  RW_PRACTICE_POINT_RAW_PLUS,
  RW_PRACTICE_POINT_RAW_MINUS,
  RW_PRACTICE_POINT_AC1,
  RW_PRACTICE_POINT_AC2,
  RW_PRACTICE_POINT_FUSE1,
  RW_PRACTICE_POINT_FUSE2,
  RW_PRACTICE_POINT_SOUND_GROUND,
  RW_PRACTICE_POINT_SPEAKER_PLUS,
  RW_PRACTICE_POINT_SPEAKER_MINUS,
  RW_PRACTICE_POINT_MONITOR,
  RW_PRACTICE_POINT_CHASSIS,
  RW_PRACTICE_POINT_EARTH,
  RW_PRACTICE_POINT_LAMP_PLUS,
  RW_PRACTICE_POINT_LAMP_MINUS,
  RW_PRACTICE_POINT_MAINS
} RwPracticePoint;

#define RW_PRACTICE_GROUND (-1)  /* the ground return, where a rail's index is asked for */
#define RW_PRACTICE_NO_RAIL (-2)

/* Ohms that volts and ohms both need. */
#define RW_PRACTICE_CATCH_OHMS 47.0     /* from the terminals to the sense screw, 30–100 Ω */
#define RW_PRACTICE_LAMP_WIRE_OHMS 0.1  /* each of its two */
#define RW_PRACTICE_SPEAKER_SHARE 0.8   /* of what a loudspeaker says it has, at DC */

#define RW_PRACTICE_MOST_NODES (5 * (RW_PRACTICE_MAX_RAILS + 1) + 16)

typedef struct
{
  RwPracticeNode  node;
  RwPracticePoint point;
  int             rail; /* index in the parameters, RW_PRACTICE_GROUND, RW_PRACTICE_NO_RAIL */
} RwPracticeTouch;

/* All points of a cabinet whose parameters stand; (element-type RwPracticeTouch) (transfer full) */
GArray *rw_practice_nodes_build (const RwPracticeParams *params, RwProfile *profile);

/* Index, or −1. */
int rw_practice_nodes_find (const GArray *nodes, const char *id);
int rw_practice_nodes_find_point (const GArray *nodes, RwPracticePoint point, int rail);

/* The reading that two points (neither NULL) make; FALSE: none. */
gboolean rw_practice_nodes_read_as (const RwPracticeTouch *red,
                                    const RwPracticeTouch *black,
                                    RwPracticePair        *out);

/* Ohms between two points (indices) once all volts are gone; INFINITY when nothing joins them. */
double   rw_practice_nodes_ohms (const RwPracticeCabinet *self, guint a, guint b);
gboolean rw_practice_nodes_are_joined (const RwPracticeCabinet *self, guint a, guint b);

/* The same as rw_practice_cabinet_measure (), without the ohms. */
void rw_practice_nodes_measure_volts (const RwPracticeCabinet *self,
                                      const char              *red,
                                      const char              *black,
                                      RwPracticePair          *out);

/* Volts above the supply's 0 V. Any island of points that nothing joins to it stands at 0. */
double rw_practice_nodes_volts (const RwPracticeCabinet *self, const RwPracticeTouch *touch);
/* AC volts between two points that are joined. */
double rw_practice_nodes_ac (const RwPracticeCabinet *self,
                             const RwPracticeTouch   *a,
                             const RwPracticeTouch   *b);

/* Ohms from the screw to a point along a conductor, as they are now, and to its finger. */
double rw_practice_nodes_way_ohms (const RwPracticeModel *model, const RwPracticeTouch *touch);
double rw_practice_nodes_path_ohms (const RwPracticeModel *model, int rail);

G_END_DECLS
