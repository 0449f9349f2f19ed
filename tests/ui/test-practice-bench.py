#!/usr/bin/python3
"""The practice bench in its own window: leads put by keyboard alone, mistakes stopped, a drill to its end.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import json

from bench_ui import Bench, Failed, newest_session, poll, run, states
import bench_ui
from drill_ui import begin, focus_window, go, put, spot

DRILL = "1-3"


def events(key):
    return bench_ui.events(newest_session(practice=True), key)


def shown(sample):
    """Volts; a reading over the range has none."""
    return sample["sample"].get("value") or 0


def keep(place):
    """Keeps the settled value as soon as there is one; returns it."""
    before = len(events("reading"))

    def kept(bench):
        bench.keys("ctrl+Return")
        return len(events("reading")) > before

    return lambda bench: (poll(lambda: kept(bench), f"a reading at the {place}", 40, 0.4), events("reading")[-1]["reading"])[1]


def test_drill():
    """a drill by keyboard alone: leads, terminals and board read, a plug wiggled, mistakes stopped, the end told"""
    with Bench() as bench:
        window = begin(bench, DRILL)
        with open(newest_session(practice=True), encoding="utf-8") as file:
            header = json.loads(file.readline())
        if DRILL not in header["cabinet"]["name"]:
            raise Failed(f"the file does not say which drill it is: {header['cabinet']}")
        spots = [n.get_name() for n in bench.all("push button", within=window)]
        if sum("screw at the supply" in name for name in spots) < 3 or any(not name.strip() for name in spots):
            raise Failed(f"spots without a name: {spots}")

        go(bench, "Left Left Left", "+5 V, screw at the supply")
        put(bench, "Return", "red")
        go(bench, "Up", "0 V, screw at the supply")
        put(bench, "space", "black")
        bench.keys("t")
        poll(lambda: any(s["sample"]["place"] == "terminals" for s in events("sample")), "samples at the terminals")
        terminals = keep("terminals")(bench)
        go(bench, "Down Right Right Right", "+5 V, edge finger on the board")
        put(bench, "Return", "red")
        go(bench, "Up", "0 V, edge finger on the board")
        put(bench, "space", "black")
        bench.keys("b")
        board = keep("board")(bench)
        if (terminals["rail"], terminals["place"], board["rail"], board["place"]) != ("p5", "terminals", "p5", "board"):
            raise Failed(f"kept at the wrong spots: {terminals}, {board}")
        if not 0.1 < terminals["value"] - board["value"] < 1:
            raise Failed(f"no drop from {terminals['value']} to {board['value']}, though a wire is bad")

        bench.keys("z")
        bench.find("label", "Wiggle", within=window)
        bench.keys("f")
        bench.find("label", "pulled with the power on", within=window)
        if any(event["setup"].get("board") == "out" for event in events("setup")):
            raise Failed("the board was pulled with the power on")
        poll(lambda: any("pulled with the power on" in e["note"]["text"] for e in events("note")), "the mistake to be noted")

        go(bench, "Left Left Left", "0 V, screw at the supply")
        for _ in range(12):
            if spot(bench).startswith("Mains screw"):
                break
            bench.keys("Down")
        poll(lambda: spot(bench).startswith("Mains screw"), "a mains screw in focus")
        notes = len(events("note"))
        bench.keys("Return")
        poll(lambda: len(events("note")) > notes, "the mains to be noted")
        if "tip is here" in spot(bench):
            raise Failed("a tip is on the mains")

        bench.keys("F8")
        focus_window(bench, "The end of this drill")
        bench.find("push button", "Show what it was")
        bench.keys("Tab", "Return")
        bench.find("label", "Which check decided", timeout=60)
        bench.find("label", "Ground wire too thin")
        bench.find("label", "1 time a lead was on its way to the mains")
        path = newest_session(practice=True)
    with Bench(path) as bench:
        bench.find("label", "replay")
        bench.find("label", f"Drill {DRILL}")


def test_wrong_spot():
    """what is written down is what the person says, wherever the leads are"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the session's file")
        bench.keys("ctrl+b")
        focus_window(bench, "Practice bench")
        go(bench, "Down", "+12 V, edge finger on the board")
        put(bench, "Return", "red")
        poll(lambda: any(s["sample"]["rail"] == "p5" and shown(s) > 10 for s in events("sample")),
             "twelve volts written down as +5")
        bench.keys("Page_Down")
        poll(lambda: events("sample")[-1]["sample"]["rail"] == "p12", "the claim to move")
        if not shown(events("sample")[-1]) > 10:
            raise Failed("the leads moved with what was said")
        bench.keys("BackSpace")
        poll(lambda: abs(shown(events("sample")[-1])) < 1, "the leads in the air to read nothing")


def test_tab():
    """Tab stays one press in the picture and reaches every control of the window"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: newest_session(practice=True), "the session's file")
        bench.keys("ctrl+b")
        window = focus_window(bench, "Practice bench")
        wanted = {"Power", "Board fitted", "Trim a little up", "10 min", "Red here", "Wiggle", "Listen", "New drill…",
                  "Dial of the meter", "Range of the meter", "Red lead in the amps jack"}
        reached, spots = set(), 0
        for _ in range(40):
            bench.keys("Tab")
            names = [n.get_name() or "" for n in bench.all(within=window) if "focused" in states(n)]
            spots += any("low voltage" in name for name in names)
            reached.update(names)
            if wanted <= reached:
                break
        if not wanted <= reached:
            raise Failed(f"Tab does not reach {sorted(wanted - reached)}")
        if spots > 2:
            raise Failed(f"Tab stays {spots} presses in the picture")


run(test_drill, test_wrong_spot, test_tab)
