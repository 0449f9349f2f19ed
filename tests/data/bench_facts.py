# bench_facts.py: what bench practice tells of faults, for the study of the tables; estimates of the trade.
# SPDX-License-Identifier: GPL-3.0-or-later

C5, SW12, SW24, M12, LIN, DRAM = ("classic-5-12-m5", "switcher-5-12", "switcher-5-12-24", "switcher-5-12-m12",
                                  "linear-5-audio", "dram-5-12-m5")

# cause: (profile, symptom, {check: a value in volts, or an outcome})
SIGNATURES = {
    "trim-low": (C5, "resets", {
        "p5-terminals-loaded": 4.74, "p5-board-loaded": 4.68, "p5-drop-wire": 0.045,
        "ground-drop-wire": 0.02, "p5-ripple-terminals": 0.012, "p12-board-loaded": 11.2,
        "trim-response": "smooth"}),
    "trim-high": (C5, "chips-hot", {
        "p5-terminals-loaded": 5.48, "p5-board-loaded": 5.4, "p5-drop-wire": 0.06, "p12-board-loaded": 13.1,
        "trim-response": "smooth", "trim-seal-look": "turned"}),
    "trim-worn": (C5, "thump-cures", {
        "p5-board-loaded": 4.72, "p5-terminals-loaded": 4.8, "p5-drop-wire": 0.05, "trim-response": "jumps",
        "tap-test": "supply", "look-and-smell": "clean"}),
    "output-capacitors-tired": (C5, "resets", {
        "p5-terminals-loaded": 5.02, "p5-board-loaded": 4.93, "p5-ripple-terminals": 0.085,
        "p5-ripple-board": 0.09, "p5-drop-wire": 0.06, "p5-minmax-reset": "dip",
        "look-and-smell": "bulged"}),
    "minimum-load-missing": (SW12, "supply-ticks", {
        "p5-terminals-bare": 4.2, "p5-dummy-load": "starts", "p5-terminals-loaded": 5.1,
        "board-input-ohms": "normal", "p5-board-loaded": 5.02, "p5-ripple-terminals": 0.01}),
    "supply-overloaded": (C5, "resets", {
        "p5-terminals-bare": 5.05, "p5-terminals-loaded": 4.78, "p12-terminals-loaded": 11.1,
        "p5-current": "near", "supply-heat": "hot", "split-load": "any"}),
    "supply-overheats": (C5, "warm-freeze", {
        "p5-terminals-loaded": 5.05, "p5-board-loaded": 4.98, "p5-drop-wire": 0.06, "warm-up-drift": "both",
        "supply-heat": "still", "p5-ripple-terminals": 0.015}),
    "supply-primary-dead": (C5, "dead", {
        "p5-terminals-bare": 0.02, "p5-dummy-load": "dead", "unplug-wait": "dead", "fuse-ohms": "good",
        "mains-path-ohms": "through", "m5-terminals-bare": -0.01, "board-input-ohms": "normal"}),
    "p12-lost-supply": (C5, "no-sound", {
        "p12-terminals-bare": 0.3, "p12-terminals-loaded": 0.2, "p12-board-loaded": 0.2,
        "p5-board-loaded": 5.03, "m5-board-loaded": -5.0, "fuse-ohms": "good"}),
    "minus5-lost-supply": (DRAM, "garbled-graphics", {
        "m5-terminals-bare": -0.1, "m5-board-loaded": -0.3, "p5-board-loaded": 5.02,
        "p12-board-loaded": 12.0, "fuse-ohms": "good", "p5-ripple-board": 0.012}),
    "minus12-lost-supply": (M12, "distorted-sound", {
        "m12-terminals-bare": -0.2, "m12-board-loaded": -0.1, "p5-board-loaded": 5.0,
        "p12-board-loaded": 12.1, "hum-volume-zero": "goes", "fuse-ohms": "good"}),
    "p24-lost-supply": (SW24, "no-sound", {
        "p24-terminals-bare": 0.4, "p24-board-loaded": 0.3, "p5-board-loaded": 5.0, "p12-board-loaded": 12.1,
        "fuse-ohms": "good", "speaker-path": "good"}),
    "raw-capacitor-tired": (LIN, "resets", {
        "p5-terminals-loaded": 4.98, "p5-board-loaded": 4.91, "p5-ripple-terminals": 0.06,
        "bigcap-ripple": "double", "bigcap-dc": "right", "p5-minmax-reset": "dip"}),
    "bridge-diode-open": (LIN, "audio-hum", {
        "bigcap-ripple": "single", "bigcap-dc": "low", "p5-ripple-terminals": 0.12,
        "hum-volume-zero": "stays", "raw12-board-loaded": 10.2, "p5-board-loaded": 4.7}),
    "bridge-diode-shorted": (LIN, "fuse-blows", {
        "p5-terminals-bare": 0.0, "fuse-ohms": "open", "secondary-volts": "one",
        "board-input-ohms": "normal", "bigcap-dc": "none", "unplug-wait": "dead"}),
    "pass-transistor-bad": (LIN, "board-dead", {
        "p5-terminals-bare": 8.9, "p5-dummy-load": "over", "trim-response": "none", "bigcap-dc": "high",
        "bigcap-ripple": "usual", "secondary-volts": "right"}),
    "regulator-drifted": (LIN, "warm-freeze", {
        "p5-terminals-loaded": 4.82, "p5-board-loaded": 4.76, "trim-response": "none",
        "warm-up-drift": "both", "bigcap-ripple": "usual", "p5-current": "normal"}),
    "sense-open": (LIN, "chips-hot", {
        "p5-terminals-loaded": 5.75, "p5-board-loaded": 5.55, "sense-drop": "off", "trim-response": "none",
        "bigcap-ripple": "usual", "p5-drop-wire": 0.06}),
    "protection-latched": (C5, "dead", {
        "p5-terminals-bare": 0.01, "unplug-wait": "back", "trim-seal-look": "turned",
        "mains-path-ohms": "through", "board-input-ohms": "normal", "fuse-ohms": "good"}),
    "edge-oxidised": (C5, "resets", {
        "p5-terminals-loaded": 5.12, "p5-board-loaded": 4.74, "p5-drop-wire": 0.26, "ground-drop-wire": 0.09,
        "drop-where": "edge", "edge-connector-look": "dull"}),
    "edge-burnt": (C5, "burning-smell", {
        "p5-terminals-loaded": 5.18, "p5-board-loaded": 4.7, "p5-drop-wire": 0.38, "drop-where": "edge",
        "connector-temperature": "hot", "edge-connector-look": "dark"}),
    "poor-crimp": (C5, "resets", {
        "p5-terminals-loaded": 5.1, "p5-board-loaded": 4.78, "p5-drop-wire": 0.27, "ground-drop-wire": 0.03,
        "drop-where": "joint", "crimp-tug": "pin"}),
    "ground-wire-poor": (C5, "resets", {
        "p5-terminals-loaded": 5.08, "p5-board-loaded": 4.8, "p5-drop-wire": 0.06, "ground-drop-wire": 0.21,
        "p5-ripple-board": 0.045, "edge-connector-look": "bright"}),
    "plus5-wire-thin": (C5, "resets", {
        "p5-terminals-loaded": 5.15, "p5-board-loaded": 4.82, "p5-drop-wire": 0.26, "drop-where": "spread",
        "wiggle-test": "still", "edge-connector-look": "bright"}),
    "loose-terminal-screw": (C5, "resets", {
        "p5-terminals-loaded": 5.1, "p5-board-loaded": 4.83, "p5-drop-wire": 0.22, "drop-where": "screw",
        "crimp-tug": "screw", "wiggle-test": "screw"}),
    "minus5-open-wire": (DRAM, "garbled-graphics", {
        "m5-terminals-bare": -5.1, "m5-terminals-loaded": -5.2, "m5-board-loaded": 0.5,
        "p5-board-loaded": 5.02, "p12-board-loaded": 12.0, "crimp-tug": "pin"}),
    "fuse-holder-tired": (LIN, "thump-cures", {
        "fuse-ohms": "raised", "fuse-holder-look": "slack", "p5-terminals-loaded": 4.7,
        "p5-board-loaded": 4.64, "tap-test": "supply", "secondary-volts": "one"}),
    "fuse-blown": (LIN, "board-dead", {
        "fuse-ohms": "open", "p5-terminals-bare": 0.0, "bigcap-dc": "none", "board-input-ohms": "short",
        "look-and-smell": "misfit", "secondary-volts": "one"}),
    "connector-shifted": (C5, "board-dead", {
        "look-and-smell": "misfit", "board-input-ohms": "short", "m5-board-loaded": 2.8,
        "p5-board-loaded": 0.4, "p5-terminals-bare": 5.05, "wiggle-test": "still"}),
    "panel-ground-open": (C5, "controls-erratic", {
        "panel-ground-drop": "bad", "ground-ohms": "panel", "p5-board-loaded": 5.0, "ground-drop-wire": 0.02,
        "edge-connector-look": "bright", "self-test": "passes"}),
    "lamp-circuit-short": (C5, "lamps-dim", {
        "split-load": "lamps", "fuse-ohms": "open", "p5-terminals-loaded": 4.8, "p5-board-loaded": 4.75,
        "p5-drop-wire": 0.06, "board-input-ohms": "normal"}),
    "cracked-joint": (C5, "warm-freeze", {
        "crimp-tug": "ring", "wiggle-test": "harness", "p5-board-loaded": 4.85, "tap-test": "supply",
        "edge-connector-look": "bright", "p5-terminals-loaded": 5.05}),
    "low-mains": (SW12, "evening-fails", {
        "mains-outlet-volts": "sags", "p5-terminals-loaded": 4.85, "p5-board-loaded": 4.78,
        "p5-drop-wire": 0.05, "p5-terminals-bare": 5.0, "trim-seal-look": "sealed"}),
    "wrong-tap": (LIN, "lamps-dim", {
        "selector-look": "wrong", "secondary-volts": "low", "bigcap-dc": "low", "p5-terminals-loaded": 4.7,
        "mains-outlet-volts": "right", "look-and-smell": "misfit"}),
    "mains-path-open": (C5, "dead", {
        "p5-terminals-bare": 0.0, "mains-path-ohms": "open", "unplug-wait": "dead", "supply-heat": "still",
        "fuse-ohms": "good", "board-input-ohms": "normal"}),
    "earth-missing": (C5, "tingle", {
        "earth-continuity": "bad", "look-and-smell": "misfit", "p5-board-loaded": 5.02,
        "hum-volume-zero": "stays", "p5-drop-wire": 0.05, "ground-drop-wire": 0.02}),
    "board-short": (C5, "supply-ticks", {
        "p5-terminals-bare": 5.05, "p5-terminals-loaded": 1.2, "board-input-ohms": "short",
        "split-load": "board", "p5-dummy-load": "steady", "look-and-smell": "brown"}),
    "memory-bad": (C5, "garbled-graphics", {
        "p5-board-loaded": 5.02, "m5-board-loaded": -5.0, "p12-board-loaded": 12.0, "self-test": "names",
        "tap-test": "still", "socket-reseat": "same"}),
    "socket-oxidised": (C5, "thump-cures", {
        "p5-board-loaded": 5.02, "p5-drop-wire": 0.05, "tap-test": "board", "wiggle-test": "still",
        "socket-reseat": "better", "self-test": "names"}),
    "board-trace-loss": (C5, "memory-error", {
        "p5-board-loaded": 5.02, "p5-chip-loaded": 4.72, "p5-drop-wire": 0.05, "ground-drop-wire": 0.02,
        "p5-terminals-loaded": 5.1, "p5-ripple-board": 0.015}),
    "reset-part-bad": (C5, "cold-start", {
        "p5-board-loaded": 5.02, "p5-minmax-reset": "none", "reset-pin": "stuck", "p5-ripple-board": 0.012,
        "tap-test": "still", "self-test": "refuses"}),
    "board-corroded": (C5, "warm-freeze", {
        "look-and-smell": "crust", "p5-board-loaded": 5.02, "p5-minmax-reset": "none", "tap-test": "board",
        "edge-connector-look": "dull", "self-test": "names"}),
    "supply-fine": (C5, "boot-loop", {
        "p5-terminals-loaded": 5.1, "p5-board-loaded": 5.02, "p5-chip-loaded": 4.98, "p5-ripple-board": 0.01,
        "p5-minmax-reset": "none", "m5-board-loaded": -5.0, "tap-test": "still", "socket-reseat": "same"}),
    "audio-filter-tired": (C5, "audio-hum", {
        "hum-volume-zero": "stays", "p12-ripple-board": 0.15, "amp-input-short": "stays",
        "audio-rail-loud": "collapses", "speaker-dc": "none", "audio-ground-drop": "good"}),
    "audio-amp-bad": (C5, "distorted-sound", {
        "speaker-dc": "offset", "hum-volume-zero": "stays", "p12-board-loaded": 11.1,
        "p12-ripple-board": 0.03, "amp-input-short": "stays", "audio-ground-drop": "good"}),
    "audio-ground-loop": (C5, "audio-hum", {
        "audio-ground-drop": "high", "p12-ripple-board": 0.03, "speaker-dc": "none", "hum-board-out": "gone",
        "amp-input-short": "stops", "ground-drop-wire": 0.07}),
    "speaker-path-open": (C5, "no-sound", {
        "speaker-path": "bad", "p12-board-loaded": 12.0, "m5-board-loaded": -5.0, "speaker-dc": "none",
        "hum-volume-zero": "quiet", "p5-board-loaded": 5.02}),
    "monitor-filter-tired": (C5, "picture-bars", {
        "bars-board-out": "stays", "ground-drop-wire": 0.02, "p5-ripple-board": 0.012,
        "p5-board-loaded": 5.02, "video-ground": "good", "audio-ground-drop": "good"}),
    "video-ground-open": (C5, "picture-rolls", {
        "video-ground": "bad", "bars-board-out": "gone", "ground-ohms": "picture", "p5-board-loaded": 5.02,
        "ground-drop-wire": 0.03, "p5-ripple-board": 0.012}),
    "switch-bad": (C5, "control-dead", {
        "panel-ground-drop": "one", "p5-board-loaded": 5.02, "self-test": "passes", "crimp-tug": "firm",
        "ground-ohms": "good"}),
    "scores-battery-flat": (C5, "scores-lost", {
        "self-test": "forgets", "p5-board-loaded": 5.02, "p5-ripple-board": 0.01, "look-and-smell": "clean",
        "tap-test": "still"}),
    "monitor-worn": (C5, "picture-dim", {
        "bars-board-out": "dim", "p5-board-loaded": 5.02, "video-ground": "good", "self-test": "passes"}),
    "meter-or-leads": (C5, "resets", {
        "meter-self-check": "fails", "p5-terminals-loaded": 4.8, "m5-board-loaded": 5.0,
        "p5-drop-wire": 0.001, "p5-ripple-board": 5.0, "wiggle-test": "still"}),
}

# What written accounts, data sheets and manuals tell of; whatever is not named here is an estimate of the trade.
# The chances themselves are estimates throughout: nobody has published counts.
PRINTED = {
    "symptoms": """
        coins-wrong resets watchdog-barks memory-error thump-cures garbled-graphics picture-bars
        picture-dim picture-rolls sound-bars audio-hum picture-buzz no-sound distorted-sound amp-hot
        dead cold-start lamps-dim fuse-blows burning-smell evening-fails tingle""",
    "causes": """
        board-short memory-bad socket-oxidised board-trace-loss reset-part-bad board-corroded
        low-mains wrong-tap earth-missing audio-filter-tired audio-amp-bad audio-ground-loop
        monitor-filter-tired video-ground-open trim-low trim-high output-capacitors-tired
        minimum-load-missing supply-overloaded supply-primary-dead raw-capacitor-tired
        bridge-diode-shorted pass-transistor-bad regulator-drifted sense-open protection-latched
        edge-oxidised edge-burnt poor-crimp ground-wire-poor plus5-wire-thin fuse-holder-tired
        fuse-blown connector-shifted""",
    "checks": """
        tap-test reset-pin self-test socket-reseat board-swap-donor p5-drop-wire ground-drop-wire
        connector-temperature sense-drop look-and-smell edge-connector-look fuse-ohms
        fuse-holder-look selector-look earth-continuity m5-board-loaded bars-board-out video-ground
        p24-board-loaded p5-board-loaded p5-chip-loaded p5-minmax-reset p5-current p5-terminals-bare
        p5-dummy-load p5-terminals-loaded p5-ripple-terminals hum-volume-zero speaker-dc unplug-wait
        supply-heat supply-swap mains-outlet-volts bigcap-dc""",
}

# What settles two look-alikes: (how, profile, one, other, evidence for one, evidence for the other)
PAIRS = [
    ("terminals against board", C5, "trim-low", "edge-oxidised",
     {"p5-terminals-loaded": 4.72, "p5-board-loaded": 4.68},
     {"p5-terminals-loaded": 5.12, "p5-board-loaded": 4.72}),
    ("terminals against board", C5, "trim-low", "poor-crimp",
     {"p5-terminals-loaded": 4.72, "p5-board-loaded": 4.68},
     {"p5-terminals-loaded": 5.12, "p5-board-loaded": 4.72}),
    ("terminals against board", C5, "trim-low", "ground-wire-poor",
     {"p5-terminals-loaded": 4.72, "p5-board-loaded": 4.68},
     {"p5-terminals-loaded": 5.1, "p5-board-loaded": 4.82}),
    ("where it drops", C5, "edge-oxidised", "plus5-wire-thin",
     {"drop-where": "edge"}, {"drop-where": "spread"}),
    ("where it drops", C5, "edge-oxidised", "poor-crimp",
     {"drop-where": "edge"}, {"drop-where": "joint"}),
    ("where it drops", C5, "poor-crimp", "loose-terminal-screw",
     {"drop-where": "joint"}, {"drop-where": "screw"}),
    ("a close look", C5, "edge-burnt", "edge-oxidised",
     {"edge-connector-look": "dark"}, {"edge-connector-look": "dull"}),
    ("+5 V wire against ground wire", C5, "plus5-wire-thin", "ground-wire-poor",
     {"p5-drop-wire": 0.25, "ground-drop-wire": 0.03}, {"p5-drop-wire": 0.05, "ground-drop-wire": 0.2}),
    ("half the load off", C5, "output-capacitors-tired", "supply-overloaded",
     {"split-load": "same", "p5-ripple-terminals": 0.09}, {"split-load": "any", "p5-ripple-terminals": 0.01}),
    ("the frequency of the ripple", LIN, "raw-capacitor-tired", "bridge-diode-open",
     {"bigcap-ripple": "double"}, {"bigcap-ripple": "single"}),
    ("winding against capacitor", LIN, "raw-capacitor-tired", "low-mains",
     {"secondary-volts": "right", "bigcap-ripple": "double"},
     {"secondary-volts": "low", "bigcap-ripple": "usual"}),
    ("−5 V with the board out", C5, "minus5-lost-supply", "minus5-open-wire",
     {"m5-terminals-bare": -0.2}, {"m5-terminals-bare": -5.1}),
    ("−5 V at both ends", C5, "minus5-open-wire", "memory-bad",
     {"m5-terminals-loaded": -5.1, "m5-board-loaded": 0.5},
     {"m5-terminals-loaded": -3.0, "m5-board-loaded": -3.0}),
    ("−5 V until the board goes in", C5, "minus5-lost-supply", "board-short",
     {"m5-terminals-bare": -0.2, "m5-terminals-loaded": -0.2},
     {"m5-terminals-bare": -5.1, "m5-terminals-loaded": -0.5}),
    ("hum against bars, board out", C5, "audio-filter-tired", "monitor-filter-tired",
     {"hum-board-out": "stays", "bars-board-out": "without"},
     {"hum-board-out": "without", "bars-board-out": "stays"}),
    ("the sound ground", C5, "audio-filter-tired", "audio-ground-loop",
     {"audio-ground-drop": "good"}, {"audio-ground-drop": "high"}),
    ("DC on the speaker", C5, "audio-amp-bad", "audio-filter-tired",
     {"speaker-dc": "offset"}, {"speaker-dc": "none", "audio-rail-loud": "collapses"}),
    ("a dip while it resets", C5, "socket-oxidised", "edge-oxidised",
     {"p5-minmax-reset": "none"}, {"p5-minmax-reset": "dip"}),
    ("a dip while it resets", C5, "supply-fine", "output-capacitors-tired",
     {"p5-minmax-reset": "none"}, {"p5-minmax-reset": "dip"}),
    ("does the trim obey", LIN, "trim-high", "sense-open",
     {"trim-response": "smooth", "sense-drop": "same"}, {"trim-response": "none", "sense-drop": "off"}),
    ("five minutes unplugged", C5, "protection-latched", "supply-primary-dead",
     {"unplug-wait": "back"}, {"unplug-wait": "dead"}),
    ("the mains path", C5, "mains-path-open", "supply-primary-dead",
     {"mains-path-ohms": "open"}, {"mains-path-ohms": "through"}),
    ("a dummy load", C5, "minimum-load-missing", "supply-primary-dead",
     {"p5-dummy-load": "starts"}, {"p5-dummy-load": "dead"}),
    ("the screen with the board out", C5, "monitor-worn", "monitor-filter-tired",
     {"bars-board-out": "dim"}, {"bars-board-out": "stays"}),
    ("one switch against several", C5, "switch-bad", "panel-ground-open",
     {"panel-ground-drop": "one"}, {"panel-ground-drop": "bad"}),
    ("what the self-test says", C5, "scores-battery-flat", "memory-bad",
     {"self-test": "forgets"}, {"self-test": "names"}),
    ("edge against far chip", C5, "board-trace-loss", "edge-oxidised",
     {"p5-board-loaded": 5.0, "p5-chip-loaded": 4.7}, {"p5-board-loaded": 4.7, "p5-chip-loaded": 4.65}),
]

# How often a cause, or a group of causes, lies behind a symptom: per cent, over all cabinets.
# What is not listed makes up the rest.
FREQUENCIES = {
    "resets": [("edge-oxidised edge-burnt poor-crimp", 30),
        ("output-capacitors-tired raw-capacitor-tired", 20), ("trim-low", 15), ("ground-wire-poor", 8),
        ("cracked-joint", 7), ("socket-oxidised", 7), ("reset-part-bad", 5), ("bridge-diode-shorted", 3)],
    "boot-loop": [("supply-fine socket-oxidised", 35),
        ("trim-low edge-oxidised edge-burnt poor-crimp ground-wire-poor plus5-wire-thin", 25),
        ("memory-bad", 15), ("reset-part-bad", 8), ("output-capacitors-tired", 8),
        ("supply-primary-dead", 5)],
    "dead": [("mains-path-open", 35), ("fuse-blown fuse-holder-tired", 20), ("supply-primary-dead", 20),
        ("wrong-tap", 5), ("protection-latched", 5), ("bridge-diode-shorted", 5)],
    "board-dead": [("supply-primary-dead pass-transistor-bad regulator-drifted", 30),
        ("edge-burnt poor-crimp", 25), ("board-short", 10), ("connector-shifted", 5),
        ("supply-fine socket-oxidised", 20)],
    "supply-ticks": [("board-short", 30), ("minimum-load-missing", 25), ("output-capacitors-tired", 20),
        ("supply-primary-dead", 15), ("supply-overloaded", 5)],
    "cold-start": [("supply-primary-dead output-capacitors-tired", 40), ("reset-part-bad", 20),
        ("cracked-joint", 15), ("raw-capacitor-tired", 10)],
    "warm-freeze": [("cracked-joint poor-crimp", 25), ("supply-fine memory-bad", 25),
        ("regulator-drifted pass-transistor-bad", 12), ("supply-overheats", 10),
        ("output-capacitors-tired", 8), ("edge-oxidised", 8), ("trim-high", 4)],
    "garbled-graphics": [("memory-bad socket-oxidised", 50), ("board-trace-loss edge-oxidised", 15),
        ("trim-low poor-crimp ground-wire-poor", 15), ("minus5-lost-supply minus5-open-wire", 5),
        ("board-corroded", 5)],
    "memory-error": [("socket-oxidised", 40), ("memory-bad", 30),
        ("trim-low edge-oxidised board-trace-loss poor-crimp ground-wire-poor", 15),
        ("output-capacitors-tired raw-capacitor-tired", 5),
        ("minus5-lost-supply minus5-open-wire p12-lost-supply", 5)],
    "picture-bars": [("monitor-filter-tired", 45), ("ground-wire-poor audio-ground-loop", 20),
        ("raw-capacitor-tired bridge-diode-shorted bridge-diode-open", 15)],
    "audio-hum": [("audio-filter-tired", 40), ("audio-amp-bad", 20), ("audio-ground-loop", 20),
        ("raw-capacitor-tired bridge-diode-open bridge-diode-shorted", 15)],
    "no-sound": [("audio-amp-bad", 25), ("speaker-path-open", 25), ("p12-lost-supply fuse-blown", 20),
        ("minus5-lost-supply minus12-lost-supply minus5-open-wire", 10), ("supply-fine", 15)],
    "lamps-dim": [("edge-oxidised edge-burnt poor-crimp ground-wire-poor", 35), ("supply-overloaded", 20),
        ("low-mains", 10), ("wrong-tap", 10)],
    "fuse-blows": [("bridge-diode-shorted", 25), ("board-short", 25), ("audio-amp-bad", 20),
        ("connector-shifted", 8)],
    "burning-smell": [("edge-burnt poor-crimp", 60), ("supply-overloaded", 15), ("lamp-circuit-short", 8),
        ("board-short", 10)],
    "thump-cures": [("edge-oxidised", 40), ("poor-crimp cracked-joint", 25), ("socket-oxidised", 20),
        ("fuse-holder-tired", 8)],
    "evening-fails": [("low-mains", 60), ("raw-capacitor-tired", 20)],
    "chips-hot": [("trim-high", 35), ("sense-open", 25), ("minus5-lost-supply minus5-open-wire", 15),
        ("supply-overheats", 15)],
    "watchdog-barks": [("supply-fine socket-oxidised", 45),
        ("trim-low edge-oxidised edge-burnt poor-crimp ground-wire-poor", 25), ("memory-bad", 12),
        ("board-corroded", 8), ("output-capacitors-tired", 5)],
    "controls-erratic": [("panel-ground-open", 40), ("edge-oxidised edge-burnt", 20), ("supply-fine", 20),
        ("trim-low", 8), ("board-corroded", 8)],
    "picture-rolls": [("video-ground-open ground-wire-poor", 45), ("monitor-filter-tired", 30),
        ("trim-low", 5)],
    "sound-bars": [("ground-wire-poor", 35), ("audio-filter-tired", 25),
        ("supply-overloaded p12-lost-supply", 20)],
    "picture-buzz": [("audio-ground-loop ground-wire-poor", 35), ("output-capacitors-tired", 25),
        ("minus5-lost-supply minus12-lost-supply minus5-open-wire", 15)],
    "distorted-sound": [("audio-filter-tired", 40), ("audio-amp-bad", 30),
        ("p12-lost-supply trim-low supply-overloaded", 20), ("speaker-path-open", 8)],
    "amp-hot": [("audio-amp-bad", 45), ("audio-filter-tired", 30)],
    "fuse-later": [("fuse-holder-tired", 35), ("supply-overloaded lamp-circuit-short", 25),
        ("raw-capacitor-tired", 10)],
    "bench-fine": [("edge-oxidised edge-burnt poor-crimp ground-wire-poor plus5-wire-thin", 50),
        ("trim-low output-capacitors-tired supply-overloaded raw-capacitor-tired", 30),
        ("supply-overheats", 10), ("low-mains", 5)],
    "sprites-wrong": [("socket-oxidised memory-bad supply-fine", 65), ("board-trace-loss", 15),
        ("supply-overheats", 8)],
    "palette-wrong": [("memory-bad supply-fine", 55),
        ("trim-low edge-oxidised poor-crimp ground-wire-poor board-trace-loss", 15), ("socket-oxidised", 15)],
    "colour-missing": [("edge-oxidised edge-burnt poor-crimp video-ground-open", 45), ("monitor-worn", 30),
        ("supply-fine memory-bad", 20)],
    "picture-dim": [("monitor-worn monitor-filter-tired", 75), ("low-mains", 8),
        ("ground-wire-poor video-ground-open", 8), ("fuse-holder-tired poor-crimp", 6)],
    "hum-with-volume": [("minus5-lost-supply minus12-lost-supply p12-lost-supply minus5-open-wire", 35),
        ("audio-filter-tired", 30), ("audio-ground-loop ground-wire-poor", 20)],
    "mains-fuse-blows": [("supply-primary-dead", 35), ("bridge-diode-shorted", 20),
        ("monitor-worn monitor-filter-tired", 25), ("wrong-tap", 5)],
    "control-dead": [("switch-bad", 80), ("supply-fine", 12)],
    "coins-wrong": [("switch-bad", 50), ("p12-lost-supply p24-lost-supply", 12), ("lamp-circuit-short", 10),
        ("panel-ground-open", 8)],
    "scores-lost": [("scores-battery-flat", 60), ("board-corroded", 10),
        ("trim-low edge-oxidised output-capacitors-tired raw-capacitor-tired", 8)],
    "tingle": [("earth-missing", 75)],
}
