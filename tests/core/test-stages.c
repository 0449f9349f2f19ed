/* test-stages.c: every gate of the bring-up, both sides of each threshold, and what lies on the fence.
 * SPDX-License-Identifier: GPL-3.0-or-later
 *
 * The meter m1 is ±(0.5 % + 2 counts), so at 5.40 V with three decimals u = (0.027 + 0.002)/√3 = 0.017 V; a chance of
 * 0.95 takes 1.645 u = 0.028 V. Values are chosen from that by hand: 5.36 passes a limit of 5.40, 5.40 does not, 5.44
 * is beyond it.
 */
#include "config.h"

#include <math.h>
#include <string.h>

#include "rw-bench-state.h"
#include "stage-play.h"

/* One row: what happened, which stage is asked, which reason must (or must not) stand there, and how grave. */
typedef struct
{
  const char *name;
  const char *events; /* of stage_play */
  RwStage     stage;
  const char *id;     /* reason looked for */
  RwGate      gate;   /* of the reason; RW_GATE_OPEN: it must not stand there */
  const char *words;  /* (nullable) part of its text */
} Row;

#define BARE "off out; on; "
#define GOOD_12_5 "r p12 terminals 12.0; r m5 terminals -5.0; "
#define FITTED "off out; off in; on; "
#define LOADED FITTED "r p5 board 5.02; "

static const Row rows[] = {
  /* --- the setup --- */
  { "look with the power on", "on", RW_STAGE_LOOK, "power-on", RW_GATE_STOP, "pull the plug" },
  { "look with the power off", "off", RW_STAGE_LOOK, "power-on", RW_GATE_OPEN, NULL },
  { "look, nobody said", "", RW_STAGE_LOOK, "power-unsaid", RW_GATE_WARN, "Nobody said" },
  { "look, plug not out", "a stage-plug-out no", RW_STAGE_LOOK, "answer-no", RW_GATE_STOP, "not isolated" },
  { "look, plug out", "a stage-plug-out yes", RW_STAGE_LOOK, "answer-no", RW_GATE_OPEN, NULL },
  { "look, no earth", "a stage-earth-good no", RW_STAGE_BARE_SUPPLY, "look-no", RW_GATE_STOP, "earth" },
  { "look, earth made good", "a stage-earth-good no; a stage-earth-good yes", RW_STAGE_BARE_SUPPLY, "look-no",
    RW_GATE_OPEN, NULL },
  { "look, not sound: warned of there, no matter of isolation", "a stage-looks-sound no", RW_STAGE_BARE_SUPPLY, "look-no",
    RW_GATE_OPEN, NULL },
  { "bare, isolation not said", "", RW_STAGE_BARE_SUPPLY, "not-isolated", RW_GATE_WARN, "earth" },
  { "bare, isolation said", "a stage-plug-out yes; a stage-earth-good yes; a stage-mains-covered yes",
    RW_STAGE_BARE_SUPPLY, "not-isolated", RW_GATE_OPEN, NULL },
  { "bare, board in", "off in", RW_STAGE_BARE_SUPPLY, "board-in", RW_GATE_STOP, "unplug" },
  { "bare, board out", "off out", RW_STAGE_BARE_SUPPLY, "board-in", RW_GATE_OPEN, NULL },
  { "fit with the power on", "on out", RW_STAGE_FIT_BOARD, "power-on", RW_GATE_STOP, "0.5 V" },
  { "fit with the power off", "off out", RW_STAGE_FIT_BOARD, "power-on", RW_GATE_OPEN, NULL },
  { "fit, nobody said", "out", RW_STAGE_FIT_BOARD, "power-unsaid", RW_GATE_WARN, NULL },
  { "plugged with the power on", "on out; in", RW_STAGE_FIRST_POWER, "plugged-live", RW_GATE_WARN, "memory" },
  { "pulled with the power on", "on in; out", RW_STAGE_FIT_BOARD, "plugged-live", RW_GATE_WARN, "memory" },
  { "plugged with the power off", "off out; in; on", RW_STAGE_FIRST_POWER, "plugged-live", RW_GATE_OPEN, NULL },
  { "plugged, nobody said of power", "out; in", RW_STAGE_FIRST_POWER, "plugged-live", RW_GATE_OPEN, NULL },
  { "first power, board out", "on out", RW_STAGE_FIRST_POWER, "board-out", RW_GATE_STOP, NULL },
  { "first power, board in", "on in", RW_STAGE_FIRST_POWER, "board-out", RW_GATE_OPEN, NULL },
  { "first power, key not checked", "a stage-key-checked no", RW_STAGE_FIRST_POWER, "answer-no", RW_GATE_STOP, "row" },
  { "under load, power off", "off in", RW_STAGE_UNDER_LOAD, "power-off", RW_GATE_WARN, NULL },
  { "under load, power on", "on in", RW_STAGE_UNDER_LOAD, "power-off", RW_GATE_OPEN, NULL },

  { "bare, board not spoken of", "off", RW_STAGE_BARE_SUPPLY, "board-unsaid", RW_GATE_WARN, "say so" },
  { "bare, board spoken of", "off out", RW_STAGE_BARE_SUPPLY, "board-unsaid", RW_GATE_OPEN, NULL },

  /* --- the supply without the board --- */
  { "a bare rail past never stops the supply's own stage", BARE "r p5 terminals 5.6", RW_STAGE_BARE_SUPPLY,
    "bare-never-above", RW_GATE_STOP, "Power off" },
  { "a bare rail beyond stops the supply's own stage", BARE "r p5 terminals 5.44", RW_STAGE_BARE_SUPPLY, "bare-beyond",
    RW_GATE_STOP, NULL },
  { "a bare rail on the fence warns in the supply's own stage", BARE "r p5 terminals 5.40", RW_STAGE_BARE_SUPPLY,
    "bare-close", RW_GATE_WARN, NULL },
  { "a bare rail inside objects to nothing", BARE "r p5 terminals 5.36", RW_STAGE_BARE_SUPPLY, "bare-close", RW_GATE_OPEN,
    NULL },
  { "what was not read yet is no reason there", BARE, RW_STAGE_BARE_SUPPLY, "bare-unread", RW_GATE_OPEN, NULL },
  { "its ripple warns there", BARE "ac p5 terminals 0.090", RW_STAGE_BARE_SUPPLY, "bare-ripple", RW_GATE_WARN, NULL },
  { "a rail past never with nobody having said where the board is", "on; r p5 terminals 5.6", RW_STAGE_BARE_SUPPLY,
    "never-above", RW_GATE_STOP, "Off now" },
  { "-5 past never either way round", BARE "r m5 terminals -7.1", RW_STAGE_BARE_SUPPLY, "bare-never-above", RW_GATE_STOP,
    NULL },
  { "bare never read", BARE, RW_STAGE_FIT_BOARD, "bare-unread", RW_GATE_STOP, "not read" },
  { "bare read", BARE "r p5 terminals 5.05; " GOOD_12_5, RW_STAGE_FIT_BOARD, "bare-unread", RW_GATE_OPEN, NULL },
  { "one rail unread", BARE "r p5 terminals 5.05; r p12 terminals 12.0", RW_STAGE_FIT_BOARD, "bare-unread", RW_GATE_STOP,
    "−5 V" },
  { "read with the board in", "on in; r p5 terminals 5.05; " GOOD_12_5, RW_STAGE_FIT_BOARD, "bare-unread", RW_GATE_STOP,
    "+5 V" },
  { "bare overload", BARE "o p5 terminals", RW_STAGE_FIT_BOARD, "bare-over", RW_GATE_STOP, "overload" },
  { "bare, then trim", BARE "r p5 terminals 5.05; trim", RW_STAGE_FIT_BOARD, "bare-stale", RW_GATE_STOP, "+5 V" },
  { "bare, then repair", BARE "r p5 terminals 5.05; fixed trim-low", RW_STAGE_FIT_BOARD, "bare-stale", RW_GATE_STOP, NULL },
  { "bare, then a repair of nothing", BARE "r p5 terminals 5.05; failed trim-low", RW_STAGE_FIT_BOARD, "bare-stale",
    RW_GATE_OPEN, NULL },
  { "bare, then power off and board in", BARE "r p5 terminals 5.05; off; in", RW_STAGE_FIT_BOARD, "bare-stale",
    RW_GATE_OPEN, NULL },
  { "bare high", BARE "r p5 terminals 5.44", RW_STAGE_FIT_BOARD, "bare-beyond", RW_GATE_STOP, "Do not fit the board" },
  { "bare high on the fence", BARE "r p5 terminals 5.40", RW_STAGE_FIT_BOARD, "bare-close", RW_GATE_WARN, "too close" },
  { "bare high on the fence is no pass", BARE "r p5 terminals 5.38", RW_STAGE_FIT_BOARD, "bare-close", RW_GATE_WARN, NULL },
  { "bare high inside", BARE "r p5 terminals 5.36", RW_STAGE_FIT_BOARD, "bare-close", RW_GATE_OPEN, NULL },
  { "bare low", BARE "r p5 terminals 4.71", RW_STAGE_FIT_BOARD, "bare-beyond", RW_GATE_STOP, "4.75" },
  { "bare low on the fence", BARE "r p5 terminals 4.75", RW_STAGE_FIT_BOARD, "bare-close", RW_GATE_WARN, NULL },
  { "bare low inside", BARE "r p5 terminals 4.79", RW_STAGE_FIT_BOARD, "bare-beyond", RW_GATE_OPEN, NULL },
  { "bare past never", BARE "r p5 terminals 5.54", RW_STAGE_FIT_BOARD, "bare-never-above", RW_GATE_STOP, "5.50" },
  { "bare past never on the fence", BARE "r p5 terminals 5.50", RW_STAGE_FIT_BOARD, "bare-beyond", RW_GATE_STOP, NULL },
  { "bare past never not yet", BARE "r p5 terminals 5.46", RW_STAGE_FIT_BOARD, "bare-never-above", RW_GATE_OPEN, NULL },
  { "−5 past never", BARE "r m5 terminals -7.1", RW_STAGE_FIT_BOARD, "bare-never-above", RW_GATE_STOP, "−7.00" },
  { "−5 right", BARE "r m5 terminals -5.1", RW_STAGE_FIT_BOARD, "bare-never-above", RW_GATE_OPEN, NULL },
  { "+5 the wrong way round", BARE "r p5 terminals -5.03", RW_STAGE_FIT_BOARD, "bare-sign", RW_GATE_STOP, "wrong way" },
  { "−5 the wrong way round", BARE "r m5 terminals 5.0", RW_STAGE_FIT_BOARD, "bare-sign", RW_GATE_STOP, "−5 V" },
  { "−5 a little positive is missing", BARE "r m5 terminals 0.31", RW_STAGE_FIT_BOARD, "bare-missing", RW_GATE_STOP, NULL },
  { "+5 missing", BARE "r p5 terminals 0.02", RW_STAGE_FIT_BOARD, "bare-missing", RW_GATE_STOP, "missing" },
  { "+5 not quite missing", BARE "r p5 terminals 0.51", RW_STAGE_FIT_BOARD, "bare-missing", RW_GATE_OPEN, NULL },
  { "−5 missing with memory", BARE "r m5 terminals 0.0", RW_STAGE_FIT_BOARD, "bare-missing", RW_GATE_STOP, "memory" },
  { "a switcher without load", BARE "r p5 terminals 0.02", RW_STAGE_FIT_BOARD, "bare-missing", RW_GATE_STOP, "dummy load" },
  { "its ripple", BARE "r p5 terminals 5.05; ac p5 terminals 0.090", RW_STAGE_FIT_BOARD, "bare-ripple", RW_GATE_WARN, NULL },
  { "its ripple on the fence", BARE "ac p5 terminals 0.050", RW_STAGE_FIT_BOARD, "bare-ripple", RW_GATE_WARN, NULL },
  { "its ripple right", BARE "ac p5 terminals 0.020", RW_STAGE_FIT_BOARD, "bare-ripple", RW_GATE_OPEN, NULL },
  { "a donor board, unproven", BARE "r p5 terminals 5.05; a stage-own-board no", RW_STAGE_FIT_BOARD, "donor-unproven",
    RW_GATE_STOP, "+12 V, −5 V" },
  { "a donor board, on the fence", BARE "r p5 terminals 5.40; " GOOD_12_5 "a stage-own-board no", RW_STAGE_FIT_BOARD,
    "donor-unproven", RW_GATE_STOP, "+5 V" },
  { "a donor board, proven", BARE "r p5 terminals 5.05; " GOOD_12_5 "a stage-own-board no", RW_STAGE_FIT_BOARD,
    "donor-unproven", RW_GATE_OPEN, NULL },
  { "one's own board", BARE "a stage-own-board yes", RW_STAGE_FIT_BOARD, "donor-unproven", RW_GATE_OPEN, NULL },
  { "what was seen stops first power too", BARE "r p5 terminals 5.54; off; in; on", RW_STAGE_FIRST_POWER,
    "bare-never-above", RW_GATE_STOP, NULL },
  { "what was not read only warns there", "on in", RW_STAGE_FIRST_POWER, "supply-unproven", RW_GATE_WARN, NULL },
  { "what was not read does not stop there", "on in", RW_STAGE_FIRST_POWER, "bare-unread", RW_GATE_OPEN, NULL },
  { "all read: nothing unproven", BARE "r p5 terminals 5.05; " GOOD_12_5 "off; in", RW_STAGE_FIRST_POWER,
    "supply-unproven", RW_GATE_OPEN, NULL },

  /* --- the first seconds: 4.0 to 5.5 V; u at 4 V is 0.0127, at 5.5 V 0.0170 --- */
  { "first power low", FITTED "r p5 board 3.97", RW_STAGE_FIRST_POWER, "off-now", RW_GATE_STOP, "Off now" },
  { "first power low on the fence", FITTED "r p5 board 4.00", RW_STAGE_FIRST_POWER, "off-close", RW_GATE_WARN, "too close" },
  { "first power low but on", FITTED "r p5 board 4.03", RW_STAGE_FIRST_POWER, "off-close", RW_GATE_OPEN, NULL },
  { "first power low at the terminals", FITTED "r p5 terminals 3.9", RW_STAGE_FIRST_POWER, "off-now", RW_GATE_STOP, NULL },
  { "first power, newest counts", FITTED "r p5 board 3.9; r p5 board 5.0", RW_STAGE_FIRST_POWER, "off-now", RW_GATE_OPEN,
    NULL },
  { "first power, newest counts wherever it is", FITTED "r p5 terminals 3.9; r p5 board 5.0", RW_STAGE_FIRST_POWER, "off-now",
    RW_GATE_OPEN, NULL },
  { "first power, newest counts there too", FITTED "r p5 board 5.0; r p5 terminals 3.9", RW_STAGE_FIRST_POWER, "off-now",
    RW_GATE_STOP, NULL },
  { "first power, before plugging", "on in; r p5 board 3.9; off; out; in; on", RW_STAGE_FIRST_POWER, "off-now",
    RW_GATE_OPEN, NULL },
  { "first power overload", FITTED "o p5 board", RW_STAGE_FIRST_POWER, "off-now", RW_GATE_STOP, "overload" },
  { "+12 overload", FITTED "o p12 board", RW_STAGE_FIRST_POWER, "never-close", RW_GATE_WARN, "overload" },
  { "under power past never", FITTED "r p5 board 5.54", RW_STAGE_UNDER_LOAD, "never-above", RW_GATE_STOP, "5.50" },
  { "under power past never, fence", FITTED "r p5 board 5.50", RW_STAGE_UNDER_LOAD, "never-close", RW_GATE_WARN, NULL },
  { "under power below never", FITTED "r p5 board 5.46", RW_STAGE_UNDER_LOAD, "never-close", RW_GATE_OPEN, NULL },
  { "+12 past never", FITTED "r p12 board 15.2", RW_STAGE_UNDER_LOAD, "never-above", RW_GATE_STOP, "15.00" },
  { "−5 past never under power", FITTED "r m5 board -7.1", RW_STAGE_UNDER_LOAD, "never-above", RW_GATE_STOP, "−7.00" },
  { "wrong way round under power", FITTED "r m5 board 4.9", RW_STAGE_FIRST_POWER, "sign", RW_GATE_STOP, "leads" },
  { "right way round under power", FITTED "r m5 board -4.9", RW_STAGE_FIRST_POWER, "sign", RW_GATE_OPEN, NULL },
  { "−5 missing at the board", FITTED "r m5 board -0.4", RW_STAGE_FIRST_POWER, "guard-missing", RW_GATE_STOP, "memory" },
  { "−5 half there", FITTED "r m5 board -2.50", RW_STAGE_FIRST_POWER, "guard-close", RW_GATE_WARN, NULL },
  { "−5 weak but there", FITTED "r m5 board -2.55", RW_STAGE_FIRST_POWER, "guard-close", RW_GATE_OPEN, NULL },
  { "+12 missing is no guard", FITTED "r p12 board 0.4", RW_STAGE_FIRST_POWER, "guard-missing", RW_GATE_OPEN, NULL },

  /* --- the trim --- */
  { "trim with the board out", "on out", RW_STAGE_TRIM, "trim-before-load", RW_GATE_STOP, "without load" },
  { "trim with the board in", LOADED, RW_STAGE_TRIM, "trim-before-load", RW_GATE_OPEN, NULL },
  { "trim, load never read", "on in", RW_STAGE_TRIM, "load-unread", RW_GATE_STOP, "under load" },
  { "trim, load read", LOADED, RW_STAGE_TRIM, "load-unread", RW_GATE_OPEN, NULL },
  { "trim, load read before plugging", LOADED "off; out; in; on", RW_STAGE_TRIM, "load-unread", RW_GATE_STOP, NULL },
  { "trim, second turn", LOADED "trim", RW_STAGE_TRIM, "load-unread", RW_GATE_OPEN, NULL },
  { "trim, load read as overload", FITTED "o p5 board", RW_STAGE_TRIM, "load-unread", RW_GATE_STOP, NULL },
  { "chased by the trim", LOADED "r p5 terminals 5.34", RW_STAGE_TRIM, "wiring-not-trim", RW_GATE_STOP, "wiring" },
  { "perhaps chased", FITTED "r p5 board 5.08; r p5 terminals 5.30", RW_STAGE_TRIM, "wiring-close", RW_GATE_WARN, NULL },
  { "not chased", FITTED "r p5 board 5.08; r p5 terminals 5.26", RW_STAGE_TRIM, "wiring-close", RW_GATE_OPEN, NULL },
  { "both high is trim", FITTED "r p5 board 5.30; r p5 terminals 5.34", RW_STAGE_TRIM, "wiring-not-trim", RW_GATE_OPEN, NULL },
  { "a quarter volt lost", FITTED "r p5 board 4.80; r p5 terminals 5.06", RW_STAGE_TRIM, "wiring-not-trim", RW_GATE_STOP,
    NULL },
  { "nearly a quarter volt lost", FITTED "r p5 board 4.80; r p5 terminals 5.05", RW_STAGE_TRIM, "wiring-close",
    RW_GATE_WARN, NULL },
  { "less than a quarter volt lost", FITTED "r p5 board 4.80; r p5 terminals 5.04", RW_STAGE_TRIM, "wiring-close",
    RW_GATE_OPEN, NULL },
  { "drops unread", LOADED, RW_STAGE_TRIM, "drop-unread", RW_GATE_WARN, NULL },
  { "drops read", LOADED "r p5 wire 0.040; r gnd wire 0.020", RW_STAGE_TRIM, "drop-unread", RW_GATE_OPEN, NULL },
  { "ground drop beyond", LOADED "r gnd wire 0.060", RW_STAGE_TRIM, "drop-beyond", RW_GATE_WARN, "ground" },
  { "ground drop far beyond", LOADED "r gnd wire 0.110", RW_STAGE_TRIM, "drop-beyond", RW_GATE_STOP, "mend" },
  { "ground drop on the fence", LOADED "r gnd wire 0.050", RW_STAGE_TRIM, "drop-close", RW_GATE_WARN, NULL },
  { "ground drop good", LOADED "r gnd wire 0.045", RW_STAGE_TRIM, "drop-close", RW_GATE_OPEN, NULL },
  { "+5 drop far beyond", LOADED "r p5 wire 0.210", RW_STAGE_TRIM, "drop-beyond", RW_GATE_STOP, "+5 V" },
  { "+5 drop good", LOADED "r p5 wire 0.090", RW_STAGE_TRIM, "drop-beyond", RW_GATE_OPEN, NULL },
  { "turned without load", "on out; trim", RW_STAGE_RECHECK, "trim-no-load", RW_GATE_WARN, "board out" },
  { "turned without load, then with", "on out; trim; off; in; on; trim", RW_STAGE_RECHECK, "trim-no-load", RW_GATE_OPEN,
    NULL },

  /* --- after it --- */
  { "turned and not rechecked", LOADED "r p12 board 12.0; r m5 board -5.0; trim; r p5 board 5.05", RW_STAGE_WARM_UP,
    "recheck-due", RW_GATE_STOP, "+12 V, −5 V" },
  { "turned and half rechecked", LOADED "trim; r p5 board 5.05; r p12 board 12.0", RW_STAGE_EXERCISE, "recheck-due",
    RW_GATE_STOP, "−5 V" },
  { "turned and rechecked", LOADED "trim; r p5 board 5.05; r p12 board 12.0; r m5 board -5.0", RW_STAGE_CLOSE,
    "recheck-due", RW_GATE_OPEN, NULL },
  { "rechecked at the terminals only", LOADED "trim; r p5 board 5.05; r p12 terminals 12.0; r m5 board -5.0",
    RW_STAGE_CLOSE, "recheck-due", RW_GATE_STOP, "+12 V" },
  { "never turned", LOADED, RW_STAGE_CLOSE, "recheck-due", RW_GATE_OPEN, NULL },
  { "never turned, unread", LOADED, RW_STAGE_CLOSE, "board-unread", RW_GATE_WARN, "+12 V, −5 V" },
  { "rechecking with a rail out, never turned", FITTED "r p5 board 4.86", RW_STAGE_RECHECK, "rail-outside", RW_GATE_STOP,
    "4.90" },
  { "rechecking with a rail out after a turn", FITTED "trim; r p5 board 4.86", RW_STAGE_RECHECK, "rail-outside",
    RW_GATE_STOP, "4.90" },
  { "rechecking on the fence", FITTED "r p5 board 4.90", RW_STAGE_RECHECK, "rail-close", RW_GATE_WARN, "too close" },
  { "rechecking inside", FITTED "r p5 board 4.94", RW_STAGE_RECHECK, "rail-close", RW_GATE_OPEN, NULL },
  { "rechecking, out before the turn", FITTED "r p5 board 4.86; trim", RW_STAGE_RECHECK, "rail-outside", RW_GATE_OPEN,
    NULL },
  { "closing with a rail out", FITTED "r p5 board 4.86", RW_STAGE_CLOSE, "rail-outside", RW_GATE_STOP, "4.90" },
  { "closing on the fence", FITTED "r p5 board 4.90", RW_STAGE_CLOSE, "rail-close", RW_GATE_WARN, "too close" },
  { "closing inside", FITTED "r p5 board 4.94", RW_STAGE_CLOSE, "rail-close", RW_GATE_OPEN, NULL },
  { "warming with a rail out", FITTED "r p5 board 4.86", RW_STAGE_WARM_UP, "rail-outside", RW_GATE_WARN, NULL },
  { "a cold start failed", "a stage-cold-starts no", RW_STAGE_CLOSE, "fault-there", RW_GATE_WARN, "still there" },
  { "closing with a complaint", "y resets", RW_STAGE_CLOSE, "symptom-there", RW_GATE_STOP, "“resets”" },
  { "closing without", "", RW_STAGE_CLOSE, "symptom-there", RW_GATE_OPEN, NULL },
  { "closing, complaint never there", "absent resets", RW_STAGE_CLOSE, "symptom-there", RW_GATE_OPEN, NULL },
  { "closing, complaint cured", "y resets; gone resets", RW_STAGE_CLOSE, "symptom-there", RW_GATE_OPEN, NULL },
  { "closing, complaint fixed", "y resets; fixed trim-low", RW_STAGE_CLOSE, "symptom-there", RW_GATE_OPEN, NULL },
  { "closing, complaint came back", "y resets; fixed trim-low; y resets", RW_STAGE_CLOSE, "symptom-there", RW_GATE_STOP,
    NULL },
  { "closing, a repair that changed nothing", "y resets; failed trim-low", RW_STAGE_CLOSE, "symptom-there", RW_GATE_STOP,
    NULL },
  { "closing, one of two cured", "y resets; y hum; failed trim-low; gone resets", RW_STAGE_CLOSE, "symptom-there",
    RW_GATE_STOP, "“hum”" },
  { "closing, the complaint taken back", "y resets; undo", RW_STAGE_CLOSE, "symptom-there", RW_GATE_OPEN, NULL },
  { "a complaint stops no stage before", "y resets", RW_STAGE_EXERCISE, "symptom-there", RW_GATE_OPEN, NULL },
  { "a hot plug", "a stage-connector-cool no", RW_STAGE_EXERCISE, "answer-no", RW_GATE_STOP, "hold" },
  { "covers off", "a stage-covers-on no", RW_STAGE_CLOSE, "answer-no", RW_GATE_STOP, "hand over" },
  { "covers on", "a stage-covers-on yes", RW_STAGE_CLOSE, "answer-no", RW_GATE_OPEN, NULL },
  { "warm-up begun warm", "on in; t 301; s warm-up", RW_STAGE_WARM_UP, "warm-not-cold", RW_GATE_WARN, NULL },
  { "warm-up begun cold", "on in; t 299; s warm-up", RW_STAGE_WARM_UP, "warm-not-cold", RW_GATE_OPEN, NULL },
};

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_autoptr (RwStages) stages = stage_play (row->events, 0);
  const RwGateReason *reason = stage_play_find (stages, row->stage, row->id);

  if (row->gate == RW_GATE_OPEN)
    {
      if (reason != NULL)
        g_error ("%s: %s", row->id, reason->text);
      return;
    }
  g_assert_nonnull (reason);
  g_test_message ("%s", reason->text);
  g_assert_cmpint (reason->gate, ==, row->gate);
  g_assert_cmpint (stages->stages[row->stage].gate, >=, row->gate);
  if (row->words != NULL)
    g_assert_nonnull (strstr (reason->text, row->words));
}

/* Whatever is off or hard comes first, and "off" is said only while the power may be on. */
static void
test_off_replaces_everything (void)
{
  g_autoptr (RwStages) on = stage_play (FITTED "r p5 board 3.5; s first-power", 0);
  g_autoptr (RwStages) off = stage_play (FITTED "r p5 board 3.5; s first-power; off", 0);

  g_assert_cmpstr (rw_stages_get_off (on)->id, ==, "off-now");
  g_assert_cmpstr (rw_stages_get_reason (on, RW_STAGE_FIRST_POWER)->id, ==, "off-now");
  g_assert_null (rw_stages_get_off (off));
  g_assert_cmpint (off->stages[RW_STAGE_FIRST_POWER].gate, ==, RW_GATE_STOP);
  g_assert_cmpstr (rw_stages_get_reason (off, RW_STAGE_FIRST_POWER)->id, ==, "hazard-unread");
}

/* A reference of 12 V has the same span in proportion: 9.6 to 13.2 V. u at 9.6 V: (0.048 + 0.002)/√3 = 0.029 V. */
static void
test_span_in_proportion_of_the_reference (void)
{
  static const struct
  {
    double   value;
    gboolean off;
  } points[] = { { 9.54, TRUE }, { 9.6, FALSE }, { 9.7, FALSE }, { 13.1, FALSE }, { 13.28, TRUE }, { 4.9, TRUE } };
  g_autoptr (RwProfile) profile = stage_play_profile_12 ();
  const RwSetup setup = { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT };

  for (guint i = 0; i < G_N_ELEMENTS (points); i++)
    {
      const RwReading sample = rw_reading_make ("p12", RW_PLACE_BOARD, RW_KIND_DC, points[i].value, 0.001, NULL);
      RwGateReason reason = { 0 };
      const gboolean off
          = rw_stages_look_live (profile, setup, &sample, (0.005 * points[i].value + 0.002) / sqrt (3), &reason);

      g_assert_cmpint (off, ==, points[i].off);
      if (off)
        g_assert_cmpstr (reason.id, ==, "off-now");
      rw_gate_reason_clear (&reason);
    }
}

/* A live sample counts only where it can mean the board. */
static void
test_live_samples (void)
{
  static const struct
  {
    RwSetup  setup;
    RwPlace  place;
    RwKind   kind;
    gboolean off;
  } cases[] = {
    { { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }, RW_PLACE_BOARD, RW_KIND_DC, TRUE },
    { { RW_SAID_NOT, RW_SAID_NOT, RW_SAID_NOT }, RW_PLACE_TERMINALS, RW_KIND_DC, TRUE },
    { { RW_SAID_YES, RW_SAID_NO, RW_SAID_NOT }, RW_PLACE_TERMINALS, RW_KIND_DC, FALSE },
    { { RW_SAID_NO, RW_SAID_YES, RW_SAID_NOT }, RW_PLACE_BOARD, RW_KIND_DC, FALSE },
    { { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }, RW_PLACE_WIRE, RW_KIND_DC, FALSE },
    { { RW_SAID_YES, RW_SAID_YES, RW_SAID_NOT }, RW_PLACE_BOARD, RW_KIND_RIPPLE, FALSE },
  };
  g_autoptr (RwProfile) profile = stage_play_profile ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const RwReading sample = rw_reading_make ("p5", cases[i].place, cases[i].kind, 3.2, 0.001, NULL);
      RwGateReason reason = { 0 };

      g_assert_cmpint (rw_stages_look_live (profile, cases[i].setup, &sample, 0.01, &reason), ==, cases[i].off);
      rw_gate_reason_clear (&reason);
    }
}

/* A linear supply needs no dummy load: it is neither asked for nor spoken of. */
static void
test_linear_needs_no_dummy_load (void)
{
  g_autoptr (RwStages) linear = stage_play_linear ("off out; on; r p5 terminals 0.02", 0);
  g_autoptr (RwStages) loaded = stage_play (BARE "a stage-dummy-load yes; r p5 terminals 0.02", 0);
  const RwGateReason *reason = stage_play_find (linear, RW_STAGE_FIT_BOARD, "bare-missing");

  g_assert_null (strstr (reason->text, "dummy"));
  g_assert_cmpuint (linear->stages[RW_STAGE_BARE_SUPPLY].questions->len, ==, 0);
  reason = stage_play_find (loaded, RW_STAGE_FIT_BOARD, "bare-missing");
  g_assert_null (strstr (reason->text, "dummy"));
  g_assert_cmpuint (loaded->stages[RW_STAGE_BARE_SUPPLY].questions->len, ==, 1);
}

/* The warning of a reading and the gate of the supply without its board: whenever one says "power off", the other
 * objects, for every rail and all volts around what the profile never allows. */
static void
test_warning_and_gate_agree (void)
{
  static const struct
  {
    const char *rail;
    double      most;
  } rails[] = { { "p5", 5.5 }, { "p12", 15 }, { "m5", -7 } };

  for (guint i = 0; i < G_N_ELEMENTS (rails); i++)
    for (double share = 0.98; share < 1.03; share += 0.0007)
      {
        g_autofree char *commands = g_strdup_printf (BARE "r %s terminals %.4f", rails[i].rail, share * rails[i].most);
        g_autoptr (RwSession) session = stage_play_session (commands);
        g_autoptr (RwBenchState) state = rw_bench_state_new (session);
        g_autoptr (RwStages) stages = stage_play (commands, 0);
        const guint n = rw_bench_state_get_n_warnings (state);
        const char *text = n > 0 ? rw_bench_state_get_warning (state, 0)->text : "";
        const RwGateReason *reason = rw_stages_get_reason (stages, RW_STAGE_FIT_BOARD);
        const gboolean sure = stage_play_find (stages, RW_STAGE_BARE_SUPPLY, "bare-never-above") != NULL;

        g_assert_cmpint (sure, ==, strstr (text, "is past") != NULL);
        if (strstr (text, "Power off") != NULL)
          g_assert_cmpint (stages->stages[RW_STAGE_BARE_SUPPLY].gate, ==, RW_GATE_STOP);
        g_assert_true (reason != NULL);
      }
}

/* E32: asked from outside, whatever the stage. */
static void
test_donor (void)
{
  g_autoptr (RwStages) unproven = stage_play ("on in; r p5 board 5.0", 0);
  g_autoptr (RwStages) proven = stage_play (BARE "r p5 terminals 5.05; " GOOD_12_5, 0);
  g_autofree char *text = NULL, *none = NULL;

  g_assert_cmpint (rw_stages_judge_donor (unproven, &text), ==, RW_GATE_STOP);
  g_assert_nonnull (strstr (text, "+5 V, +12 V, −5 V"));
  g_assert_cmpint (rw_stages_judge_donor (proven, &none), ==, RW_GATE_OPEN);
  g_assert_null (none);
}

/* A retracted reading closes no gate and opens none. */
static void
test_retracted_reading_counts_for_nothing (void)
{
  g_autoptr (RwStages) stages = stage_play (FITTED "r p5 board 3.5; undo", 0);

  g_assert_null (stage_play_find (stages, RW_STAGE_FIRST_POWER, "off-now"));
}

int
main (int    argc,
      char **argv)
{
  fixture_init (&argc, &argv);
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      g_autofree char *words = g_strdelimit (g_strdup (rows[i].name), " ,:/", '-');
      g_autofree char *name = g_strdup_printf ("/stages/gate/%s", words);

      g_test_add_data_func (name, &rows[i], test_row);
    }
  g_test_add_func ("/stages/off-replaces-everything", test_off_replaces_everything);
  g_test_add_func ("/stages/span-in-proportion-of-the-reference", test_span_in_proportion_of_the_reference);
  g_test_add_func ("/stages/live-samples-count-where-they-mean-the-board", test_live_samples);
  g_test_add_func ("/stages/linear-needs-no-dummy-load", test_linear_needs_no_dummy_load);
  g_test_add_func ("/stages/warning-and-gate-agree-about-a-bare-supply", test_warning_and_gate_agree);
  g_test_add_func ("/stages/donor-needs-a-proven-supply", test_donor);
  g_test_add_func ("/stages/retracted-reading-counts-for-nothing", test_retracted_reading_counts_for_nothing);
  return g_test_run ();
}
