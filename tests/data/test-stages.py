# test-stages.py: the stages of the bring-up are whole, in order, cautious, and keep the house rules of words.
# SPDX-License-Identifier: GPL-3.0-or-later
import re

from shipped import STAGES, Knowledge, Report, load

ORDER = ["look", "bare-supply", "fit-board", "first-power", "under-load", "trim", "recheck", "warm-up", "exercise", "close"]
HAZARDS = ["none", "low-voltage", "near-mains", "mains", "tube"]
TEXT_LISTS = ("needs", "steps", "ends", "stops")
DEEP = re.compile(r"\b(inside (the|a|an) supply|flyback|anode|primary|monitor chassis is opened)\b", re.I)
HAND_OVER = re.compile(r"\b(trained|licensed|competent|hand it)\b", re.I)
# What gettext would take for a printf directive, and marks that no sentence needs.
DIRECTIVE = re.compile(r"%|!|  |^\s|\s$|(?<![\w-])-\d|\d(mV|V|A|Ω|kV|cm)(?!\w)")
TITLE, SENTENCE = 40, 240


def sentences(stage):
    """(where, text) of every sentence a person reads; titles left out."""
    for key in ("purpose", "unproven"):
        yield f"{stage['id']}: {key}", stage[key]
    for key in TEXT_LISTS:
        for text in stage[key]:
            yield f"{stage['id']}: {key}", text
    for question in stage["questions"]:
        yield question["id"], question["text"]
        if "no" in question:
            yield question["id"], question["no"]


def order(stages):
    found = [stage["id"] for stage in stages]
    if found != ORDER:
        yield f"found {found}"


def cautions(stages):
    """Stated, for people, and naming mains wherever mains is near."""
    for stage in stages:
        caution = stage.get("caution", "")
        if stage["hazard"] != "none" and len(caution) < 60:
            yield f"{stage['id']}: the caution says too little"
        if HAZARDS.index(stage["hazard"]) >= HAZARDS.index("near-mains") and not re.search("mains|plug out", caution, re.I):
            yield f"{stage['id']}: hazard {stage['hazard']}, and the caution names no mains"


def terminals(stages):
    """Live at the supply's screws is beside mains: the hazard says so, and so does the caution, with covers."""
    for stage in stages:
        live = any(spot["place"] in ("terminals", "wire") for spot in stage["measure"])
        if live and stage["hazard"] != "near-mains":
            yield f"{stage['id']}: measures at the supply, hazard {stage['hazard']}"
        if live and not re.search(r"\bcovers? on", stage["caution"], re.I):
            yield f"{stage['id']}: measures at the supply, and nobody covered the mains"


def unplugging(stages):
    """Power is off before anything is plugged."""
    for stage in stages:
        for i, step in enumerate(stage["steps"]):
            if re.search(r"\b(unplug the board|fit the connector)\b", step, re.I):
                if not re.search(r"\bplug\b.*\b(out|until)|pull the plug|plug out", " ".join(stage["steps"][:i + 1]), re.I):
                    yield f"{stage['id']}: “{step}” with the power on"


def depths(stages):
    for stage in stages:
        for where, text in sentences(stage):
            if DEEP.search(text) and not HAND_OVER.search(text):
                yield f"{where}: “{text}”"


def general_cautions(stages):
    """The first thing read names all that kills, who decides, and that no reading proves a circuit dead."""
    text = stages[0]["caution"]
    for word in ("mains", "capacitor", "picture tube", "alone", "licensed", "local codes", "proves"):
        if word not in text.lower():
            yield f"look: the caution does not name {word}"


def words(stages):
    for stage in stages:
        if len(stage["title"]) > TITLE or stage["title"].endswith("."):
            yield f"{stage['id']}: “{stage['title']}”"
        for where, text in [*sentences(stage), (f"{stage['id']}: caution", stage["caution"])]:
            if DIRECTIVE.search(text):
                yield f"{where}: “{text}”"
            if not text.endswith((".", "?")) or not text[0].isupper():
                yield f"{where}: “{text}”"
        for where, text in sentences(stage):
            if len(text) > SENTENCE:
                yield f"{where}: {len(text)} characters"


def questions(stages):
    """Ids begin with the word stage, are unique, and are the check of no knowledge file."""
    ids = [question["id"] for stage in stages for question in stage["questions"]]
    checks = {check["id"] for check in Knowledge.shipped().checks}
    yield from (f"{i}: twice" for i in set(ids) if ids.count(i) > 1)
    yield from (f"{i}: is a check" for i in ids if i in checks)
    yield from (f"{i}: does not begin with stage-" for i in ids if not i.startswith("stage-"))
    for stage in stages:
        for question in stage["questions"]:
            if not question["text"].endswith("?"):
                yield f"{question['id']}: is no question"


def warm_up(stages):
    minutes = [spot.get("minutes") for spot in stages[ORDER.index("warm-up")]["measure"]]
    if minutes != [[0, 5, 15, 30, 60]]:
        yield f"minutes {minutes}"


def main():
    report = Report()
    stages = load(STAGES)["stages"]
    report.claim("all ten stages stand in the order of the work", order(stages))
    report.claim("every hazard is stated before the first step", cautions(stages))
    report.claim("mains is covered where the supply is measured", terminals(stages))
    report.claim("nothing is plugged with the power on", unplugging(stages))
    report.claim("what is inside supply and monitor is handed over", depths(stages))
    report.claim("the first caution is the whole one", general_cautions(stages))
    report.claim("words keep the house rules", words(stages))
    report.claim("questions have ids of their own", questions(stages))
    report.claim("warm-up is read at 0, 5, 15, 30 and 60 minutes", warm_up(stages))
    report.finish()


main()
