#!/usr/bin/python3
"""The practice cabinet in the window: its meter speaks, readings are kept with one key, the screw turns.

SPDX-License-Identifier: GPL-3.0-or-later
"""

from bench_ui import Bench, Failed, newest_session, poll, run
import bench_ui


def events(key):
    return bench_ui.events(newest_session(practice=True), key)


def test_practice():
    """the meter streams, a settled value is kept with Space, the trim moves the rail, the board is not plugged live"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the practice session's file")
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
