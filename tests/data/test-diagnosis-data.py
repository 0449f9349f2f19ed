# test-diagnosis-data.py: the diagnosis is consistent on every shipped profile, and each rule finds a broken copy.
# SPDX-License-Identifier: GPL-3.0-or-later
import copy
import pathlib

import caution_rules as caution
import diagnosis_rules as rules
from bench_facts import PRINTED
from shipped import Knowledge, Report, load, row

ACCEPTED = load(pathlib.Path(__file__).with_name("close-causes.json"))
LEAST = {"symptoms": 35, "causes": 45, "checks": 60}


def enough(knowledge):
    for kind, least in LEAST.items():
        if len(getattr(knowledge, kind)) < least:
            yield f"{kind}: only {len(getattr(knowledge, kind))}"


def sources(knowledge):
    """What is an estimate says so, and so does what stands in print."""
    for kind, printed in PRINTED.items():
        marked = {entry["id"] for entry in getattr(knowledge, kind) if entry["source"] == "published"}
        for identity in marked ^ set(printed.split()):
            yield f"{identity}: published or an estimate?"


def bench(knowledge):
    return rules.apart_at_the_bench(knowledge, ACCEPTED)


def symptom(k, identity):
    return next(entry for entry in k.symptoms if entry["id"] == identity)


def drop_symptoms(k):
    del k.symptoms[34:]


def more_than_is_known(k):
    k.check("drop-where")["source"] = "published"


def chance_above_one(k):
    symptom(k, "resets")["chance"]["trim-low"] = 1.2


def row_too_short(k):
    k.check("self-test")["chance"]["default"] = [0.7, 0.2, 0.1]


def row_off_by_a_hundredth(k):
    k.check("p5-board-loaded")["chance"]["trim-low"][0] += 0.01


def negative_chance(k):
    chances = k.check("p5-board-loaded")["chance"]["trim-low"]
    chances[0], chances[1] = -0.1, chances[1] + chances[0] + 0.1


def gap(k):
    k.check("p5-board-loaded")["outcomes"][1]["to"] = 4.7


def overlap(k):
    k.check("p5-board-loaded")["outcomes"][2]["from"] = 4.7


def closed_end(k):
    k.check("p5-board-loaded")["outcomes"][-1]["to"] = 9


def marks_fall(k):
    first, second = k.check("p5-board-loaded")["outcomes"][:2]
    first["to"] = second["from"] = 4.8


def unknown_cause(k):
    symptom(k, "resets")["chance"]["gremlins"] = 0.3


def unknown_recheck(k):
    k.cause("trim-low")["repair"]["recheck"].append("p5-moon")


def unknown_rail(k):
    k.check("m5-board-loaded")["measure"]["rail"] = "m7"


def unknown_need(k):
    k.cause("minus5-open-wire")["needs"]["rails"] = ["m7"]


def recheck_elsewhere(k):
    k.cause("trim-low")["repair"]["recheck"] = ["m5-board-loaded"]


def forget(k, cause):
    for entry in k.symptoms + k.checks + k.computed:
        entry["chance"].pop(cause, None)


def no_rows(k):
    forget(k, "trim-worn")


def twins(k):
    forget(k, "plus5-wire-thin")
    for entry in k.symptoms + k.checks + k.computed:
        entry["chance"]["plus5-wire-thin"] = row(entry, "poor-crimp")


def only_the_trained_can_tell(k):
    for check in k.checks:
        if check["chance"].get("plus5-wire-thin"):
            check["who"] = "trained"
    for computed in k.computed:
        computed["chance"]["plus5-wire-thin"] = row(computed, "poor-crimp")


def exception_not_needed(k):
    k.check("bars-board-out")["who"] = "anyone"


def flat_symptom(k):
    table = symptom(k, "scores-lost")["chance"]
    for cause in table:
        table[cause] = 0.2


def no_expected_value(k):
    k.check("p5-board-loaded")["how"].pop()


def no_mode(k):
    check = k.check("p5-ripple-board")
    check["how"] = [step.replace("AC", "the other") for step in check["how"]]


def no_place(k):
    check = k.check("m5-terminals-bare")
    check["how"] = [step.replace("screw", "thing") for step in check["how"]]


def no_meaning(k):
    k.check("drop-where")["outcomes"][2]["meaning"] = ""


def no_detail(k):
    symptom(k, "resets")["detail"] = ""


def bare_repair(k):
    k.cause("trim-low")["repair"]["steps"] = ["Mains screws are near: turn it up."]


def row_for_other(k):
    symptom(k, "resets")["chance"]["other"] = 0.3


def heavy_other(k):
    k.cause("other")["prior"] *= 3


def nothing_broad(k):
    del k.cause("other")["broad"]


def one_sided(k):
    del k.cause("trim-high")["often_with"]["edge-burnt"]


def never_together(k):
    for one, two in (("raw-capacitor-tired", "output-capacitors-tired"),) * 2:
        k.cause(one).setdefault("often_with", {})[two] = 2
        k.cause(two).setdefault("often_with", {})[one] = 2


def with_nobody(k):
    k.cause("trim-high")["often_with"]["gremlins"] = 2


def no_caution(k):
    del k.check("fuse-ohms")["safety"]


def empty_caution(k):
    k.check("p5-terminals-loaded")["safety"] = "Take care."


def mild_hazard(k):
    k.check("supply-heat")["hazard"] = "low-voltage"


def into_the_primary(k):
    k.check("p5-dummy-load")["how"].insert(1, "Probe the primary for 300 V.")


def cover_later(k):
    how = k.check("p5-terminals-loaded")["how"]
    how[0], how[1] = how[1], how[0]


def mains_for_anyone(k):
    k.check("mains-outlet-volts")["who"] = "anyone"


def repair_without_hazard(k):
    k.cause("wrong-tap")["repair"]["hazard"] = "low-voltage"


def caution_comes_late(k):
    steps = k.cause("loose-terminal-screw")["repair"]["steps"]
    steps.append(steps.pop(0))


def do_it_yourself(k):
    k.cause("supply-primary-dead")["repair"]["who"] = "anyone"


def open_the_monitor(k):
    k.cause("video-ground-open")["repair"].update(hazard="near-mains", steps=[
        "The picture tube is near: unplug.", "Take the red lead off the anode.", "Mend it."])


def plug_left_in(k):
    k.cause("edge-burnt")["repair"]["steps"] = ["Cut back to bright copper.", "Renew the pins.", "Measure."]


RULES = [
    ("there is as much as was promised", enough, [drop_symptoms]),
    ("figures are marked as printed or estimated", sources, [more_than_is_known]),
    ("chances are chances and add up to 1", rules.shares,
     [chance_above_one, row_too_short, row_off_by_a_hundredth, negative_chance]),
    ("numeric outcomes tile the line", rules.tiling, [gap, overlap, closed_end, marks_fall]),
    ("every cause, check and rail spoken of exists", rules.references,
     [unknown_cause, unknown_recheck, unknown_rail, unknown_need]),
    ("every repair can be proved wherever it is needed", rules.provable, [recheck_elsewhere]),
    ("every cause is moved by a check of its profile", rules.movable, [no_rows]),
    ("any two causes of a profile can be told apart", rules.apart, [twins]),
    ("anyone can tell them apart, but for accepted pairs", bench,
     [twins, only_the_trained_can_tell, exception_not_needed]),
    ("every symptom points to a cause", rules.pointing, [flat_symptom]),
    ("steps, places, modes, expected values and meanings are told", rules.told,
     [no_expected_value, no_mode, no_place, no_meaning, no_detail, bare_repair]),
    ("what the list does not have is broad and light", rules.broad, [row_for_other, heavy_other, nothing_broad]),
    ("faults that come together are said so from both sides", rules.often,
     [one_sided, never_together, with_nobody]),
    ("no check meets a danger without its caution", caution.checks,
     [no_caution, empty_caution, mild_hazard, into_the_primary]),
    ("covers come first, live mains and tubes are for trained people", caution.live,
     [cover_later, mains_for_anyone]),
    ("repairs name their danger first and hand over what is deep", caution.repairs,
     [repair_without_hazard, caution_comes_late, do_it_yourself, open_the_monitor, plug_left_in]),
]


def unnoticed(knowledge, rule, breaks):
    """Each broken copy must draw a complaint of its own, or the rule would prove nothing."""
    before = set(rule(knowledge))
    for spoil in breaks:
        broken = copy.deepcopy(knowledge)
        spoil(broken)
        if set(rule(broken)) <= before:
            yield f"{spoil.__name__} goes unnoticed"


def main():
    knowledge = Knowledge.shipped()
    report = Report()
    for claim, rule, breaks in RULES:
        report.claim(claim, rule(knowledge))
        report.claim(f"a broken copy is found where {claim}", unnoticed(knowledge, rule, breaks))
    report.finish()


main()
