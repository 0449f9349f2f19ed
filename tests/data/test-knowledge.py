# test-knowledge.py: what a schema cannot say of symptoms, causes and checks.
# SPDX-License-Identifier: GPL-3.0-or-later
import itertools

from shipped import Knowledge, Report, profiles, row

NEEDED = {
    "symptoms": """
        resets garbled-graphics audio-hum dead supply-ticks warm-freeze cold-start picture-bars
        no-sound burning-smell thump-cures lamps-dim fuse-blows boot-loop""",
    "causes": """
        trim-low trim-high supply-fine other minus5-lost-supply minus5-open-wire
        minimum-load-missing edge-oxidised ground-wire-poor plus5-wire-thin poor-crimp
        loose-terminal-screw output-capacitors-tired audio-filter-tired audio-ground-loop
        audio-amp-bad raw-capacitor-tired bridge-diode-open low-mains supply-overloaded board-short
        sense-open meter-or-leads socket-oxidised""",
    "checks": """
        p5-terminals-bare p5-terminals-loaded p5-board-loaded p5-chip-loaded p5-drop-wire
        ground-drop-wire p12-board-loaded p12-terminals-loaded m5-board-loaded m5-terminals-loaded
        m5-terminals-bare p5-ripple-terminals p5-ripple-board p12-ripple-board raw12-board-loaded
        raw12-ripple-board edge-connector-look look-and-smell earth-continuity wiggle-test
        hum-volume-zero hum-board-out trim-seal-look board-swap-donor""",
    "computed": "trim-window-board trim-window-terminals",
}
KINDS = ("symptoms", "causes", "checks", "computed")
HAZARDS = ["none", "low-voltage", "near-mains", "mains", "tube"]
# The least that is said before a hazardous step: a check's safety sentence, a repair's first step.
WORD_OF = {"near-mains": "mains", "mains": "mains", "tube": "picture tube"}

# By how much some outcome must raise a cause, and how far apart two causes' rows must lie somewhere, at least.
MOVES = 2.5
APART = 0.3
# What is computed from readings that count already may move causes apart by this much at most. A drop or a fall
# is all that the second of its two readings counts by, and may move them by more.
FLAT = 6
FLAT_DIFFERENCE = 25
# By how much each outcome of a computed finding raises the causes that it points to, at least.
POINTS = 2
POINTS_TO = {
    "none-suits": "minimum-load-missing minus5-lost-supply p12-lost-supply output-capacitors-tired supply-overloaded",
    "higher-suits": "trim-low",
    "lower-suits": "trim-high",
}
# Causes that may stay unmoved, and pairs that may stay together, each with its reason.
UNMOVED = {"other": "stands for what the list does not have, and has no rows of its own"}
TOGETHER = {}

K = Knowledge.shipped()
EVERYTHING = K.symptoms + K.causes + K.checks + K.computed


def identities():
    for kind in KINDS:
        ids = [entry["id"] for entry in getattr(K, kind)]
        for twice in {i for i in ids if ids.count(i) > 1}:
            yield f"{kind}: {twice} comes twice"
        for missing in set(NEEDED[kind].split()) - set(ids):
            yield f"{kind}: {missing} is missing"
    for check in K.checks + K.computed:
        ids = [outcome["id"] for outcome in check["outcomes"]]
        if len(set(ids)) != len(ids):
            yield f"{check['id']}: an outcome comes twice"


def chances():
    for symptom in K.symptoms:
        for cause, p in symptom["chance"].items():
            if not 0.001 <= p <= 0.97:
                yield f"{symptom['id']}: {cause}: {p}"
    for check in K.checks + K.computed:
        for cause, ps in check["chance"].items():
            if not all(0.005 <= p <= 0.98 for p in ps):
                yield f"{check['id']}: {cause}: {ps}: nothing at a bench is that sure"


def thresholds_in_titles():
    """A title names the thresholds it stands between, in volts or millivolts."""
    for check in K.checks:
        for outcome in check["outcomes"]:
            for end in ("from", "to"):
                if end in outcome and not says(outcome["title"], outcome[end]):
                    yield f"{check['id']}: “{outcome['title']}” does not name {outcome[end]}"


def says(title, volts):
    title = title.replace("−", "-")
    numbers = {word.strip("+") for word in title.split()}
    values = {float(word) for word in numbers if word.replace("-", "").replace(".", "").isdigit()}
    units = [1, 1000] if "mV" in title else [1]
    return any(abs(value / unit - volts) < 1e-9 for value in values for unit in units)


def hazards():
    for entry in EVERYTHING:
        deed = entry.get("repair", entry)
        if "hazard" not in deed:
            continue
        word, first = WORD_OF.get(deed["hazard"]), deed.get("safety") or deed.get("steps", [""])[0]
        if word and word not in first.lower():
            yield f"{entry['id']}: hazard {deed['hazard']}, but what is read first does not name the {word}"
        if deed["hazard"] in ("mains", "tube") and deed["who"] == "anyone":
            yield f"{entry['id']}: hazard {deed['hazard']} is left to anyone"
    for check in K.checks:
        measure, rank = check.get("measure"), HAZARDS.index(check["hazard"])
        text = " ".join(check["how"]).lower()
        if measure and measure["place"] in ("terminals", "wire") and rank < HAZARDS.index("near-mains"):
            yield f"{check['id']}: leads at the supply are near mains"
        if rank == 0 and check["setup"]["power"] == "on":
            yield f"{check['id']}: power on is no hazard “none”"
        if "mains screws" in text and rank < HAZARDS.index("near-mains") and check["setup"]["power"] != "off":
            yield f"{check['id']}: speaks of mains screws, hazard {check['hazard']}"


def covers_come_first():
    """At the terminals with power on, the cover is fitted in the first step, before any lead touches."""
    for check in K.checks:
        measure = check.get("measure")
        if measure and measure["place"] in ("terminals", "wire"):
            if not any(word in check["how"][0].lower() for word in ("cover the mains", "covers on")):
                yield f"{check['id']}: its first step does not cover the mains"


def setups():
    for check in K.checks:
        setup, measure = check["setup"], check.get("measure")
        if measure and setup["power"] != "on":
            yield f"{check['id']}: measures volts with power {setup['power']}"
        if measure and measure["place"] != "terminals" and setup["board"] != "fitted":
            yield f"{check['id']}: {measure['place']} without a board"
        if check["id"].endswith("-bare") and setup["board"] != "out":
            yield f"{check['id']}: bare means board out"
        if check["id"].endswith("-loaded") and setup["board"] != "fitted":
            yield f"{check['id']}: loaded means board fitted"


def one_check_a_spot():
    """Two checks of one spot in one setup could not both be answered by a reading."""
    seen = {}
    for check in K.checks:
        if "measure" in check:
            spot = (*check["measure"].values(), check["setup"]["board"])
            if spot in seen:
                yield f"{check['id']} and {seen[spot]} measure the same spot in the same setup"
            seen[spot] = check["id"]


def rails_have_checks():
    for profile in profiles():
        measures = [check.get("measure", {}) for check in K.for_profile(profile).checks]
        measured = {(measure.get("rail"), measure.get("place")) for measure in measures}
        for rail in profile["rails"]:
            if (rail["id"], "board") not in measured:
                yield f"{profile['id']}: no check measures {rail['id']} at the board"


def average_row(entry, causes):
    total = sum(cause["prior"] for cause in causes)
    rows = [(cause["prior"] / total, row(entry, cause["id"])) for cause in causes]
    return [sum(w * r[i] for w, r in rows) for i in range(len(entry["outcomes"]))]


def movable():
    """Some outcome of some check makes the cause at least MOVES times as likely, wherever it occurs."""
    for profile in profiles():
        here = K.for_profile(profile)
        averages = {check["id"]: average_row(check, here.causes) for check in here.checks}
        for cause in here.causes:
            best = max(p / q for check in here.checks
                       for p, q in zip(row(check, cause["id"]), averages[check["id"]]))
            if best < MOVES and cause["id"] not in UNMOVED:
                yield f"{profile['id']}: no outcome raises {cause['id']} more than {best:.1f} times"


def apart(here, one, two):
    """The largest total variation distance between two causes' rows over all checks and symptoms."""
    checks = (sum(abs(p - q) for p, q in zip(row(c, one), row(c, two))) / 2 for c in here.checks)
    symptoms = (abs(row(s, one) - row(s, two)) for s in here.symptoms)
    return max(itertools.chain(checks, symptoms))


def distinguishable():
    for profile in profiles():
        here = K.for_profile(profile)
        listed = [cause["id"] for cause in here.causes if not cause.get("broad")]
        for one, two in itertools.combinations(listed, 2):
            if apart(here, one, two) < APART and (one, two) not in TOGETHER:
                yield f"{profile['id']}: nothing tells {one} from {two} ({apart(here, one, two):.2f})"


def wrong_meter():
    for check in K.checks:
        if "measure" in check and "meter-or-leads" not in check["chance"]:
            yield f"{check['id']}: a wrong meter can spoil it, but has no row"


def points():
    for computed in (entry for entry in K.computed if entry["of"] == "trim-window"):
        outcomes = [outcome["id"] for outcome in computed["outcomes"]]
        for outcome, causes in POINTS_TO.items():
            at = outcomes.index(outcome)
            for cause in causes.split():
                ratio = row(computed, cause)[at] / computed["chance"]["default"][at]
                if ratio < POINTS:
                    yield f"{computed['id']}: {outcome} raises {cause} only {ratio:.1f} times"


def flat():
    for computed in K.computed:
        for outcome, chances_of in zip(computed["outcomes"], zip(*computed["chance"].values())):
            most = FLAT_DIFFERENCE if computed["of"] in ("drop", "fall") else FLAT
            if max(chances_of) / min(chances_of) > most + 1e-9:
                yield f"{computed['id']}: {outcome['id']}: from {min(chances_of)} to {max(chances_of)}"


def main():
    report = Report()
    report.claim("ids are unique and the needed ones are there", identities())
    report.claim("no chance is certain", chances())
    report.claim("outcome titles name their thresholds", thresholds_in_titles())
    report.claim("hazards say so first, and mains and tube are not for anyone", hazards())
    report.claim("at the terminals the mains is covered first", covers_come_first())
    report.claim("setups fit what is measured", setups())
    report.claim("no two checks measure the same spot in the same setup", one_check_a_spot())
    report.claim("every rail of every profile is measured at the board", rails_have_checks())
    report.claim("every cause can be moved by a check", movable())
    report.claim("any two causes can be told apart", distinguishable())
    report.claim("a wrong meter has a row of its own wherever one measures", wrong_meter())
    report.claim("what is computed points to the causes that make it", points())
    report.claim("what is computed from counted readings moves causes mildly", flat())
    report.finish()


main()
