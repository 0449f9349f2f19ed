/* rw-practice-model.h: the physics of a cabinet: supply, wiring and board, stepped through time.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * A plain struct: parameters that a person (or a fault) may change at any time, state that a step
 * moves on, and a random generator of its own. Nothing is allocated; copying the struct copies
 * the cabinet. Volts, amperes, ohms, farads, seconds throughout. A rail's numbers are magnitudes;
 * `sign` says which side of 0 V it lies. The formulas stand in rw-practice-circuit.c (at an
 * instant), rw-practice-parts.c (single parts), rw-practice-ripple.c (AC) and rw-practice-model.c
 * (through time).
 */
#pragma once

#include "rw-kinds.h"
#include "rw-practice-random.h"

G_BEGIN_DECLS

#define RW_PRACTICE_MAX_RAILS 8

/* The model always moves in steps of this many seconds: one period of full-wave ripple at 50 Hz,
 * so that ripple is a size and not a waveform here. */
#define RW_PRACTICE_STEP 0.01

/* The raw capacitor of a linear supply can be probed under this id, at the terminals only. */
#define RW_PRACTICE_RAIL_RAW "raw"

typedef enum
{
  RW_PRACTICE_SWITCHER, /* one loop on the reference rail, further windings follow */
  RW_PRACTICE_LINEAR    /* transformer, bridge, raw capacitor, regulator */
} RwPracticeSupply;

/* Where a rail gets its volts from. */
typedef enum
{
  RW_PRACTICE_REFERENCE, /* the one that the loop regulates */
  RW_PRACTICE_FOLLOWER,  /* a winding: moves with the reference */
  RW_PRACTICE_REGULATED, /* a three-terminal regulator of its own: does not move with the trim */
  RW_PRACTICE_UNREGULATED /* bridge and capacitor, nothing else */
} RwPracticeFeed;

typedef enum
{
  RW_PRACTICE_SENSE_NONE, /* regulated at the terminals */
  RW_PRACTICE_SENSE_BOARD, /* regulated at the edge connector */
  RW_PRACTICE_SENSE_OPEN  /* sense line broken: a catch resistor holds the terminals high */
} RwPracticeSense;

typedef enum
{
  RW_PRACTICE_BOARD_DEAD,  /* no power, or too little to do anything */
  RW_PRACTICE_BOARD_RESET, /* held in reset, or starting */
  RW_PRACTICE_BOARD_RUNNING
} RwPracticeBoard;

/* One conductor from the supply's screw to a chip. Ohms at 20 °C and cold contacts. */
typedef struct
{
  double screw_ohms;
  double fuse_ohms;    /* a fuse and its clips in this wire; 0: none to speak of */
  double crimp_ohms;   /* lug and connector crimps */
  double wire_ohms;
  double contact_ohms; /* all fingers of the edge connector that carry it, together */
  double contact_hot;  /* share of their heat that is in the hottest one */
  double trace_ohms;   /* finger to far chip, there and back; 0 for ground */
  double contact_warm; /* share by which screw, crimp and contact have grown once all is warm */
  double wander;       /* share (standard deviation) by which they tremble untouched */
  gboolean open;       /* broken: no current */
  gboolean jerks;      /* a joint of it opens for a moment, state.jerk_ohms */
} RwPracticePath;

/* Transformer winding, bridge and capacitor of a linear feed. */
typedef struct
{
  double winding_volts;  /* AC rms at nominal mains, loaded */
  double winding_ohms;   /* winding and bridge together */
  double bridge_volts;   /* two diode drops */
  double farads;
  gboolean half_wave;    /* one bridge diode open */
} RwPracticeRaw;

typedef struct
{
  const char    *id; /* interned */
  double         sign;    /* +1 or −1 */
  double         nominal; /* magnitude */
  RwPracticeFeed feed;

  /* The supply's side. Follower: V = alive·((N/N1)(V1 + VF1 + I1·r1) − VF − I·r). */
  double turns;       /* N/N1; 1 for the reference */
  double diode_volts; /* VF */
  double ohms;        /* r: copper, diode and capacitor as DC sees them */
  double load_ohms;   /* fall of a regulated output per ampere: load regulation */
  double dynamic_ohms; /* fall per ampere of a sudden load step */
  double bleed_amps;  /* bleed resistor inside the supply, at nominal */
  double minimum_amps; /* below this load regulation suffers; 0: needs none */
  double peak_share;  /* share by which an unloaded winding rises to its peaks */
  double alive;       /* 1 healthy … 0 lost */
  double fixed_volts; /* REGULATED: its regulator's output */
  RwPracticeRaw raw;  /* linear REFERENCE and UNREGULATED only */

  /* Ripple of the switching frequency at full load, as an averaging meter shows it. */
  double switch_ripple_volts;

  /* The board's side. */
  double load_amps;    /* board running, at nominal volts */
  double load_follow;  /* 0: constant current … 1: like a resistor */
  double pulse_amps;   /* AC current that the sound amplifier draws, averaging-meter amperes */
  double filter_ohms;  /* what is left of the board's filter at that frequency */
  double ghost_volts;  /* what the board feeds back into an open wire (own polarity reversed) */
  RwPracticePath path;
} RwPracticeRail;

typedef struct
{
  RwPracticeSupply supply;
  guint            n_rails;
  guint            reference; /* index */
  int              audio;     /* index of the rail that feeds the sound amplifier; −1 none */
  RwPracticeRail   rail[RW_PRACTICE_MAX_RAILS];
  RwPracticePath   ground;

  /* Regulation. */
  double          trim_lo_volts, trim_hi_volts; /* reference at trim position 0 and 1 */
  double          trim_start;                   /* position when the cabinet comes in */
  RwPracticeSense sense;
  double          sense_catch_share; /* with the sense line open the terminals rise by this share */
  double          dropout_volts;     /* linear: raw less output at which regulation ends */
  double          ripple_rejection;  /* linear: output ripple over raw ripple while regulating */
  double          over_volts;        /* reference at which the supply latches off; 0: never */
  double          over_rest_seconds; /* off for this long clears the latch */
  gboolean        latched_start;     /* it comes in latched */

  /* Mains and capacity. */
  double mains_share;     /* mains over nominal */
  double mains_hertz;     /* 50 or 60 */
  double mains_needed;    /* switcher: share of mains needed for full output */
  double limit_watts;     /* what the supply can give; 0: no limit */
  double limit_warm;      /* share of it that is gone once the supply is hot */
  double full_amps;       /* reference current that counts as full load */
  double sink_share;      /* followers sink by this share without any reference load */
  double tick_share;      /* below this share of minimum load the supply ticks */

  /* Warming and noise. */
  double warm_seconds;    /* time constant */
  double warm_reference;  /* share by which the reference has moved once warm */
  double reference_noise; /* volts, slow wander of the reference */
  double load_noise;      /* share, slow wander of the load */

  /* The board. */
  double step_rate;          /* sudden load steps a second */
  double step_share;         /* their size at most, share of the load */
  double reset_below_volts;  /* reference rail at the chip */
  double reset_hold_seconds; /* that long below */
  double start_above_volts;  /* it starts again above this, a little below the last */
  double reset_seconds;      /* time to start again */
  double dead_below_volts;
  double garble_below_volts; /* memory errors below this, at the chip */
  double own_reset_rate;     /* resets a second of the board's own making */
  gboolean own_picture;      /* its picture is wrong by itself, its memory good */
  gboolean own_garble;       /* garbles its picture by itself */
  double loop_volts;         /* AC along the sound's ground, of a loop */
  gboolean own_palette;      /* all its colours are wrong by itself */
  double own_hum_volts;      /* AC that the amplifier or a ground loop adds to what is heard */
  double amp_loss;           /* 0: a good sound amplifier … 1: nothing is left of it */
  double hum_volts;          /* ripple on the audio rail at the board that can be heard */
  gboolean needs_bias;       /* memory that needs its negative bias and +12 */
  double   own_reset_warm;   /* resets a second of its own making, once it is warm */
  gboolean own_dead;         /* does nothing, whatever its rails do */
  gboolean slow_start;       /* its reset holds for good after a rest; a second switch-on works */
  gboolean knock_resets;     /* resets when it is tapped */
  double   battery_volts;    /* what keeps its scores */

  /* Fuses, and what else can be found without the power on. */
  double   fuse_ohms; /* fuse and holder ahead of the reference rail; INFINITY: blown */
  double   tap_ratio; /* the transformer's winding over what it should be; 0: plug missing */
  double   earth_ohms; /* plug's earth pin to bare metal */
  double   light_rise; /* volts by which a weak loop lets the reference rise without load */
  double   cold_share; /* share by which the supply's own ohms are greater cold */
  gboolean start_weak; /* a switcher that only ever tries to start */

  /* Lamps, controls, loudspeaker, monitor, meter. */
  double lamp_amps;         /* drawn by a shorted lamp or coin circuit, at nominal volts */
  gboolean lamp_fuse_open;
  double panel_ground_ohms; /* control panel's ground chain */
  double switch_ohms;       /* one switch, closed */
  double speaker_ohms;
  double speaker_loss;      /* 0 … 1: how much of the sound its path loses now and then */
  double tube_share;        /* light that is left */
  double monitor_hum_share; /* ripple of the monitor's own supply over what makes bars */
  double video_ground_ohms;
  double meter_gain;        /* what every meter here shows over what is there */

  /* How this cabinet is made. */
  gboolean lamps_on_supply; /* its lamps hang on the supply, not on the mains transformer */
  gboolean amp_beside;      /* the sound amplifier sits beside the game board, not on it */
  gboolean crack_on_board;  /* a header cracks at the game board, not at the supply */
  gboolean dull_fingers;    /* its edge looks dull, good or not */
  gboolean trim_touched;    /* somebody has turned the trim before it came in */
  gboolean bulges;          /* its capacitors show when they are tired */
  gboolean tap_high;        /* a wrong tap gives too much, not too little */
  gboolean pass_shorts;     /* a pass transistor dies shorted, not open */
  gboolean drifts_up;       /* a reference drifts up, not down */
  gboolean barks;           /* a bad reset part kicks several times a second */
  gboolean coin_switch;     /* the bad switch is a coin switch */
  gboolean colour_wire;     /* the bad video wire is a colour, not ground or sync */

  /* A joint that opens, or a wiper that lifts, for a moment, by itself. */
  double jerk_rate;  /* times a second */
  double jerk_ohms;  /* most that it adds to the paths that jerk */
  double jerk_volts; /* most by which the reference jumps, either way */
} RwPracticeParams;

/* What a rail does now. Signed volts against the supply's 0 V. */
typedef struct
{
  double amps;          /* magnitude, drawn by the board */
  double terminal_volts;
  double finger_volts;  /* at the board's finger */
  double chip_volts;    /* at the far chip, already against board ground at that chip */
  double path_ohms;     /* screw to finger, as it is now */
} RwPracticeFlow;

typedef struct
{
  guint64         steps; /* since the start */
  gboolean        power;
  gboolean        fitted;
  double          trim; /* 0 … 1 */
  double          level; /* how far the supply has come up, 0 … 1 */
  double          warm;  /* 0 … 1 */
  double          on_seconds;  /* since power was switched on; 0 when off */
  double          off_seconds; /* since power was switched off; 0 when on */
  gboolean        tripped;
  gboolean        ticking;
  double          tick_phase;   /* seconds into the tick */
  double          wander_reference; /* volts */
  double          wander_load;      /* share */
  double          wander_contact;   /* standard deviations */
  double          step_left;        /* seconds of load step to come */
  double          step_amps;        /* share of the load that it adds now */
  double          jerk_left;        /* seconds of a jerk to come */
  double          jerk_ohms;        /* what it adds now */
  double          jerk_volts;
  double          shake_left;       /* seconds that a shaken joint still moves */
  double          shake_ohms;       /* what it adds to the reference rail's path */
  gboolean        knocked;          /* the board has just been tapped */
  gboolean        rested;           /* it was off for long before it was switched on */
  RwPracticeBoard board;
  double          below_seconds;    /* reference rail has been too low for */
  double          start_seconds;    /* board has been in reset for */
  guint           resets;
  double          reset_chip_volts; /* reference rail at the chip when it last reset */
  double          edge_shown;       /* reference rail at the edge, as a meter follows it */
  double          edge_usual;       /* its slow mean while the board has power */
  double          edge_lowest;      /* lowest of edge_shown; INFINITY: not watched yet */
  guint           fast_resets;      /* in a row, each hardly after a start */
  double          reset_gap;        /* seconds between the last two */
  double          reset_age; /* seconds since the last reset; INFINITY when there was none */
  double          fold;             /* 1: full output … 0: the supply gives up */
  double          raw_volts;        /* linear: mean of the reference's raw capacitor */
  double          raw_ripple;       /* its peak-to-peak ripple */
  double          ground_volts;     /* board ground above the supply's 0 V */
  RwPracticeFlow  flow[RW_PRACTICE_MAX_RAILS];
} RwPracticeState;

typedef struct
{
  RwPracticeParams params;
  RwPracticeState  state;
  RwPracticeRandom random;
} RwPracticeModel;

/* Puts the state at rest (power off, cold, board fitted, trim at params.trim_start) and seeds the
 * generator. The parameters must stand. */
void rw_practice_model_start (RwPracticeModel *self, guint64 seed);

/* One step of RW_PRACTICE_STEP. Returns TRUE when the board reset in it. */
gboolean rw_practice_model_step (RwPracticeModel *self);

/* What an ideal meter shows, without noise. DC: volts, red lead on the rail and black on the
 * ground of that place; at the wire: red on the supply's screw, black on the board's finger;
 * "gnd" at the wire: red on the board's ground finger, black on the supply's 0 V. Ripple: AC
 * volts of an averaging meter. NaN when there is no such spot (other kinds, unknown rail, board
 * places without a board). */
double rw_practice_model_get_volts (const RwPracticeModel *self, const char *rail, RwPlace place,
                                    RwKind kind);

/* TRUE when leads can be put there at all, board fitted or not. */
gboolean rw_practice_model_has_spot (const RwPracticeModel *self, const char *rail, RwPlace place,
                                     RwKind kind);

/* The rail that lamps on the supply hang on: the lowest positive one from 6 V on, else the
 * reference. */
guint rw_practice_params_lamp_rail (const RwPracticeParams *self);

/* Index, or −1. */
int rw_practice_params_index_of (const RwPracticeParams *self, const char *rail);

G_END_DECLS
