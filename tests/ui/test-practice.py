#!/usr/bin/python3
"""The practice cabinet in the window: its meter speaks, readings are kept with one key, the screw turns.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import glob
import json
import os

from bench_ui import Bench, Failed, poll, press, run, states


def journal():
    found = glob.glob(os.path.join(os.environ["XDG_STATE_HOME"], "railwright", "practice", "*.rwlog"))
    return max(found, key=os.path.getmtime) if found else None


def events(key):
    with open(journal(), encoding="utf-8") as file:
        return [event for event in map(json.loads, file.read().splitlines()[1:]) if key in event]


def test_practice():
    """the meter streams, a settled value is kept with Space, the trim moves the rail, the board is not plugged live"""
    with Bench("--practice") as bench:
        if any(window.get_name() == "Safety" for window in bench.windows()):
            bench.keys("Escape")
        poll(journal, "the practice session's file")
        poll(lambda: len(events("sample")) > 8, "samples in the file")
        poll(lambda: bench.there("push button", "Keep 4"), "a settled value to be offered", 30)
        bench.keys("space")
        first = poll(lambda: events("reading"), "a reading in the file")[0]["reading"]
        if first["rail"] != "p5" or first["place"] != "board":
            raise Failed(f"kept at the wrong spot: {first}")
        samples = [event["sample"]["value"] for event in events("sample")[-7:]]
        if not min(samples) - 0.02 <= first["value"] <= max(samples) + 0.02:
            raise Failed(f"kept {first['value']}, but the meter showed {samples}")
        for _ in range(4):
            bench.keys("bracketright")
        poll(lambda: len(events("trim")) == 1, "one trim position, one trim event")
        poll(lambda: events("sample")[-1]["sample"]["value"] > first["value"] + 0.01, "the rail to follow the screw", 30)
        poll(lambda: bench.there("push button", "+5 V: ") and "stale" in bench.find("push button", "+5 V: ").get_name(),
             "the old reading to be stale")
        bench.keys("f")
        bench.find("label", "Never plug a board with the power on")
        if len(events("setup")) != 1:
            raise Failed("the board was plugged with the power on")
        bench.keys("p")
        poll(lambda: len(events("setup")) == 2, "the power to go off")
        bench.keys("f")
        poll(lambda: events("setup")[-1]["setup"].get("board") == "out", "the board to be out")


run(test_practice)
