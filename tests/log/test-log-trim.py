# test-log-trim.py: what the summary says of the trim, for supplies whose truth is known here alone.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A supply of windings: V = (N/N1)(x + VF1) − VF. The meter shows truth times its scale error, plus an error
# of its own within its counts. What is said is judged as the meter shows it.
import json
import random

import log_runner
from log_runner import succeed, write

LIMITS = {"p5": (4.9, 5.2), "p12": (10.8, 13.2), "m5": (-5.5, -4.5)}
STEP = {"p5": 0.001, "p12": 0.01, "m5": 0.001}
COUNTS = 2


def header(percent):
    rails = [{"id": rail, "label": rail, "nominal": nominal, "limits": list(LIMITS[rail]), "priority": i + 1,
              "follows_trim": "yes"}
             for i, (rail, nominal) in enumerate([("p5", 5.0), ("p12", 12.0), ("m5", -5.0)])]
    return {"railwright": 1, "id": "t", "started": "2026-03-14T09:30:00Z", "cabinet": {"name": "Tidepool Racer"},
            "profile": {"id": "three", "title": "Three", "reference": "p5", "rails": rails},
            "meters": [{"id": "m1", "name": "meter", "percent": percent, "counts": COUNTS}]}


class Supply:
    def __init__(self, dice, weak_minus=0.0):
        self.scale = 1 + dice.uniform(-0.005, 0.005)
        ratio = 2.4 * dice.uniform(0.92, 1.08)
        self.lines = {"p5": (0.0, 1.0), "p12": (ratio * 0.5 - 0.9 + dice.uniform(-0.5, 0.5), ratio),
                      "m5": (-0.05 + weak_minus + dice.uniform(-0.1, 0.1), -dice.uniform(0.9, 1.05))}

    def shown(self, rail, x):
        """What the meter shows of a rail, without its own error, when the reference shows x."""
        offset, slope = self.lines[rail]
        return offset * self.scale + slope * x

    def margin(self, x):
        return min(1 - abs(self.shown(rail, x) - (lo + hi) / 2) / ((hi - lo) / 2)
                   for rail, (lo, hi) in LIMITS.items())

    def best(self):
        """By brute force, finer than anybody can turn."""
        return max((self.margin(4.5 + i / 20000), 4.5 + i / 20000) for i in range(20001))


def session_of(supply, dice, positions, missing=0.0):
    events = [{"setup": {"power": "on", "board": "fitted"}}]
    for k, x in enumerate(positions):
        if k > 0:
            events.append({"trim": {"moved": True}})
        for rail in LIMITS:
            if k > 0 and dice.random() < missing:
                continue
            noisy = supply.shown(rail, x) + dice.uniform(-COUNTS, COUNTS) * STEP[rail]
            events.append({"reading": {"rail": rail, "place": "board", "kind": "dc", "value": noisy,
                                       "step": STEP[rail], "meter": "m1"}})
    lines = [header(0.5)] + [{"n": i + 1, "t": float(i), **event} for i, event in enumerate(events)]
    return write("supply.rwlog", ("\n".join(json.dumps(line) for line in lines) + "\n").encode())


def trim_of(path):
    whole = json.loads(succeed("summary", path, "--json"))
    assert len(whole["trim"]) == 1, whole["trim"]
    return whole["trim"][0]


def test_the_set_has_the_keys_of_the_format():
    dice = random.Random(1)
    it = trim_of(session_of(Supply(dice), dice, [4.95, 5.15]))
    assert list(it)[:4] == ["place", "board", "reference", "positions"]
    for key in ["rails", "window", "best", "chance", "predicted", "conflict"]:
        assert key in it, key
    assert (it["place"], it["board"], it["reference"], it["positions"]) == ("board", "fitted", "p5", 2)
    assert [one["rail"] for one in it["rails"]] == ["p12", "m5"]
    for one in it["rails"]:
        assert {"rail", "slope", "slope_u", "offset", "offset_u"} <= set(one)
    for one in it["predicted"]:
        assert {"rail", "value", "u", "margin"} <= set(one)


def test_predictions_and_set_points_of_supplies_with_a_known_truth():
    dice = random.Random(20260314)
    held = asked = good = 0
    for _ in range(60):
        supply = Supply(dice)
        positions = [4.95 + dice.uniform(-0.03, 0.03), 5.18 + dice.uniform(-0.03, 0.03), 5.06][:dice.choice([2, 3])]
        it = trim_of(session_of(supply, dice, positions, missing=0.15))
        margin, _ = supply.best()
        if not it["complete"] or it["window"] is None:
            continue
        good += supply.margin(it["best"]) > margin - 0.03
        for one in it["predicted"]:
            asked += 1
            held += one["low"] <= supply.shown(one["rail"], it["best"]) <= one["high"]
    assert asked >= 100
    # 95 % of 100 or more: fewer than 88 % or fewer good set points than 90 % would be more than chance.
    assert held >= 0.88 * asked, (held, asked)
    assert good >= 0.45 * asked, (good, asked)


def test_no_window_is_said_with_the_pair_that_excludes_each_other():
    dice = random.Random(7)
    for _ in range(10):
        supply = Supply(dice, weak_minus=1.5)
        assert supply.best()[0] < 0
        it = trim_of(session_of(supply, dice, [4.95, 5.15]))
        assert it["window"] is None and it["chance"] < 0.05, it
        assert it["conflict"]["rails"][0] == "m5" and it["conflict"]["rails"][1] in ("p5", "p12"), it
        assert it["conflict"]["text"]


def test_a_slip_among_many_is_named():
    dice = random.Random(9)
    supply = Supply(dice)
    path = session_of(supply, dice, [4.9, 4.98, 5.06, 5.14, 5.22])
    lines = [json.loads(line) for line in open(path, encoding="utf-8")]
    slip = [line for line in lines if line.get("reading", {}).get("rail") == "p12"][2]
    slip["reading"]["value"] += 1.0
    it = trim_of(write("slip.rwlog", ("\n".join(json.dumps(line) for line in lines) + "\n").encode()))
    assert it["outliers"] == [slip["n"]], it["outliers"]


def test_a_rail_that_gives_up_half_way_is_told_from_a_line():
    dice = random.Random(11)
    supply = Supply(dice)
    path = session_of(supply, dice, [4.9, 4.98, 5.06, 5.14, 5.22])
    lines = [json.loads(line) for line in open(path, encoding="utf-8")]
    assert [one["curved"] for one in trim_of(path)["rails"]] == [False, False]
    for line in lines:
        if line.get("reading", {}).get("rail") == "m5":
            line["reading"]["value"] = max(line["reading"]["value"], supply.shown("m5", 5.06))
    it = trim_of(write("bent.rwlog", ("\n".join(json.dumps(line) for line in lines) + "\n").encode()))
    assert [one["curved"] for one in it["rails"]] == [False, True], it["rails"]


if __name__ == "__main__":
    log_runner.main(globals())
