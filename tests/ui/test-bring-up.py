#!/usr/bin/python3
"""The bring-up by keyboard alone: from the complaint through the stages to the label on the supply.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import tempfile

from bench_ui import Bench, Failed, newest_session, poll, run, showing
import bench_ui


def events(key):
    """Of the job that was written to last, on the bench or at the practice cabinet."""
    found = [path for path in (newest_session(), newest_session(practice=True)) if path is not None]
    return bench_ui.events(max(found, key=os.path.getmtime), key)


class Side:
    """The side of the bring-up; what is sought is sought there alone, which is quicker."""

    def __init__(self, bench):
        bench.keys("u")
        self.bench = bench
        node = bench.find("push button", "Stage: Look and isolate")
        while not any("Look and isolate" == (n.get_name() or "")[3:] for n in bench.all("label", within=node)):
            node = node.get_parent()
        self.node = node

    def there(self, role, name):
        return any(showing(n) for n in self.bench.all(role, name, within=self.node))

    def find(self, role, name):
        return self.bench.find(role, name, within=self.node)

    def wait_gone(self, role, name):
        poll(lambda: not self.there(role, name), f"{role} {name!r} to go")

    def stands(self, title, word):
        """The stage stands in the list by this word."""
        poll(lambda: self.there("push button", f"Stage: {title}, {word}"), f"{title!r} to be {word!r}")


def enter(side, title):
    """O goes to the next stage, or to the first; its hazards are stated before its steps; O again says they were read."""
    bench = side.bench
    stages = len(events("stage"))
    bench.keys("o")
    poll(lambda: len(events("stage")) == stages + 1, f"{title!r} to be entered")
    side.find("push button", "I have read this")
    if any(side.there("label", head) for head in ("Steps", "To be measured", "To be answered")):
        raise Failed(f"{title!r}: what is to be done shows before its hazards were read")
    bench.keys("o")
    poll(lambda: events("stage")[-1]["stage"].get("read") is True, "what was read in the file")
    side.wait_gone("push button", "I have read this")


def answer(side, question, key):
    bench = side.bench
    poll(lambda: side.there("label", question), question)
    count = len(events("finding"))
    bench.keys(key)
    poll(lambda: len(events("finding")) == count + 1, f"the answer to {question!r}")
    return events("finding")[-1]["finding"]


def read(side, shown):
    """C aims at the first spot; each value kept aims at the next. @shown: pairs of a part of the spot's words and what
    the meter shows there, the first that fits."""
    bench = side.bench
    button = side.find("push button", "(C)")
    bench.keys("c")
    spots = []
    while showing(button):
        spots.append(button.get_name())
        count = len(events("reading"))
        bench.type(next(value for part, value in shown if part in spots[-1]))
        bench.keys("Return")
        poll(lambda: len(events("reading")) == count + 1, f"a reading: {spots[-1]}")
        poll(lambda: not showing(button) or button.get_name() != spots[-1], "the next spot, or none")
    return spots


def switch(bench, key, what, value):
    """The key tells the other of what was said last; the first time, that it is on, fitted or warm."""
    for _ in range(2):
        count = len(events("setup"))
        bench.keys(key)
        poll(lambda: len(events("setup")) > count, f"{what} to be said")
        if events("setup")[-1]["setup"].get(what) == value:
            return
    raise Failed(f"{what} is not {value}: {events('setup')}")


def say_complaint(bench):
    bench.keys("s")
    bench.find("push button", "Resets by itself: seen", timeout=30)
    bench.keys("Return")
    poll(lambda: events("symptom"), "the complaint in the file")
    bench.keys("Escape")
    bench.wait_gone("push button", "Resets by itself: seen")


def look(side):
    bench = side.bench
    enter(side, "Look and isolate")
    said = answer(side, "Is the plug out of its outlet?", "e")
    if said != {"check": "stage-plug-out", "outcome": "no"}:
        raise Failed(f"answered {said}")
    side.find("label", "Stop: The cabinet is not isolated")
    side.stands("Look and isolate", "stopped")
    if side.there("label", "Pull the plug and wait five minutes."):
        raise Failed("the steps show while the stage is stopped")
    before = len(events("stage"))
    bench.keys("o")
    bench.find("label", "This stage is stopped")
    if len(events("stage")) != before:
        raise Failed("a stopped stage was left by its key")
    bench.keys("ctrl+z")
    side.wait_gone("label", "Stop: The cabinet is not isolated")
    for question in ("Is the plug out of its outlet?", "Does the earth wire reach all metal", "Are the mains screws covered?",
                     "Is it free of burnt plugs"):
        answer(side, question, "y")
    side.find("label", "Pull the plug and wait five minutes.")


def bare_supply(side):
    bench = side.bench
    enter(side, "Supply without the board")
    switch(bench, "f", "board", "out")
    switch(bench, "p", "power", "on")
    spots = read(side, (("ripple", "12 mV"), ("+5 V", "5.9"), ("+12 V", "12.1"), ("−5 V", "-5.05")))
    if len(spots) != 4 or not all("terminals" in spot for spot in spots):
        raise Failed(f"asked for {spots}")
    if any(r["reading"]["place"] != "terminals" for r in events("reading")):
        raise Failed(f"kept {events('reading')}")
    answer(side, "Does a dummy load hang on the supply?", "y")


def fit_board(side):
    """A rail too high without a board stops the next stage until it was put right."""
    bench = side.bench
    enter(side, "Fit the board")
    side.find("label", "Stop: The power is on")
    switch(bench, "p", "power", "off")
    side.find("label", "Stop: Do not fit the board: +5 V stands at 5.9")
    side.stands("Fit the board", "stopped")
    switch(bench, "p", "power", "on")
    bench.keys("alt+1", "t")
    bench.find("text", "Reading of +5 V, terminals")
    bench.type("5.12")
    bench.keys("Return")
    switch(bench, "p", "power", "off")
    side.stands("Fit the board", "now")
    for question in ("Have the rails fallen", "Do key and row", "Is this the cabinet's own board"):
        answer(side, question, "y")
    switch(bench, "f", "board", "fitted")


LOADED = (("ripple", "12 mV"), ("wire of ground", "320 mV"), ("wire of", "60 mV"), ("+12 V, terminals", "12.1"),
          ("+12 V", "12.02"), ("−5 V, terminals", "-5.05"), ("−5 V", "-5.03"), ("+5 V, terminals", "5.12"), ("+5 V", "4.74"))
TURNED = (("+12 V", "12.32"), ("−5 V", "-5.05"), ("+5 V, terminals", "5.22"), ("+5 V", "4.99"))


def power(side):
    bench = side.bench
    enter(side, "First power")
    switch(bench, "p", "power", "on")
    read(side, LOADED)
    side.stands("First power", "now")
    enter(side, "Under load")
    spots = read(side, LOADED)
    if len(spots) < 8:
        raise Failed(f"asked for {spots} alone")


def trim(side):
    """What is lost in the wiring stops the trim; a reason goes past it and stays written down."""
    bench = side.bench
    enter(side, "Set the trim")
    side.stands("Set the trim", "stopped")
    side.find("label", "Stop: ")
    bench.keys("F7")
    poll(lambda: "focused" in bench_ui.states(side.find("text", "Why you go on")), "the reason to be asked for")
    bench.type("the wire comes on Friday")
    bench.keys("Return")
    poll(lambda: events("stage")[-1]["stage"].get("against") == "the wire comes on Friday", "the reason in the file")
    side.stands("Set the trim", "now")
    side.find("label", "Gone past: ")
    side.find("label", "Mark how the trim stands now.")
    bench.keys("r")
    poll(lambda: events("trim"), "the turn in the file")
    read(side, TURNED)


def rest(side):
    bench = side.bench
    enter(side, "Read every rail again")
    read(side, TURNED)
    enter(side, "Warm-up")
    read(side, TURNED)
    answer(side, "After 20 minutes, can the connector be held?", "y")
    enter(side, "Volume, lamps, cold starts")
    for question in ("volume up and down", "all lamps on", "three cold starts"):
        answer(side, question, "y")


def close(side, path):
    bench = side.bench
    enter(side, "Close")
    switch(bench, "p", "power", "off")
    side.find("text", "Who did it")
    answer(side, "Are all covers and earth wires back on?", "y")
    bench.keys("ctrl+shift+l")
    poll(lambda: next((w for w in bench.windows() if w.get_name() == "Save the label"), None), "the file dialog")
    poll(lambda: bench.focused().get_role_name() == "text", "the name in focus")
    bench.keys("ctrl+a")
    bench.type(path)
    bench.keys("Return")
    poll(lambda: os.path.exists(path) and os.path.getsize(path) > 0, "the label")
    bench.find("label", "The label was saved as")


def test_bring_up():
    """from the complaint through the stages to the label, by keyboard alone; gates stop, and a reason goes past them"""
    with tempfile.TemporaryDirectory() as folder, Bench() as bench:
        bench.start_job("Tidepool Racer")
        bench.keys("Escape")
        say_complaint(bench)
        side = Side(bench)
        side.stands("Look and isolate", "ahead")
        look(side)
        bare_supply(side)
        fit_board(side)
        power(side)
        trim(side)
        rest(side)
        path = os.path.join(folder, "label.pdf")
        close(side, path)
        with open(path, "rb") as file:
            if not file.read().startswith(b"%PDF-"):
                raise Failed("the label is no PDF")
        bench.keys("ctrl+l")
        bench.find("label", "Are all covers and earth wires back on?", within=poll(
            lambda: next(w for w in bench.windows() if w.get_name() == "What was done"), "what was done"))
        entered = [e["stage"]["id"] for e in events("stage") if "read" not in e["stage"] and "against" not in e["stage"]]
        if entered != ["look", "bare-supply", "fit-board", "first-power", "under-load", "trim", "recheck", "warm-up",
                       "exercise", "close"]:
            raise Failed(f"the file has the stages {entered}")


def measure(side):
    """C, and Space as soon as the practice meter has settled; returns the spots."""
    button = side.find("push button", "(C)")
    side.bench.keys("c")
    spots = []

    def kept(count):
        side.bench.keys("space")
        return len(events("reading")) > count

    while showing(button):
        spots.append(button.get_name())
        count = len(events("reading"))
        poll(lambda: kept(count), f"a reading: {spots[-1]}", 30, 0.3)
        poll(lambda: not showing(button) or button.get_name() != spots[-1], "the next spot, or none")
    return spots


def test_practice():
    """the practice cabinet's meter reads a stage from its first spot to its last; a value that ruins a board stops it"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: events("sample"), "the meter to speak")
        side = Side(bench)
        enter(side, "Look and isolate")
        side.find("label", "Stop: The power is on")
        switch(bench, "p", "power", "off")
        for question in ("Is the plug out", "Does the earth wire", "Are the mains screws", "Is it free of burnt"):
            answer(side, question, "y")
        enter(side, "Supply without the board")
        switch(bench, "f", "board", "out")
        switch(bench, "p", "power", "on")
        if len(measure(side)) != 4:
            raise Failed("not every rail and the ripple were asked for")
        bare = {r["reading"]["rail"]: r["reading"]["value"] for r in events("reading") if r["reading"]["kind"] == "dc"}
        if set(bare) != {"p5", "p12", "m5"} or not 4.5 < bare["p5"] < 5.6:
            raise Failed(f"read {bare}")
        switch(bench, "p", "power", "off")
        enter(side, "Fit the board")
        for question in ("Have the rails fallen", "Do key and row", "Is this the cabinet's own board"):
            answer(side, question, "y")
        switch(bench, "f", "board", "fitted")
        enter(side, "First power")
        switch(bench, "p", "power", "on")
        measure(side)
        side.stands("First power", "now")
        bench.keys("alt+1", "b")
        bench.find("text", "Reading of +5 V, board")
        bench.type("5.95")
        bench.keys("Return")
        bench.find("label", "Off now: +5 V stands at 5.95")
        side.stands("First power", "stopped")
        if side.there("label", "Steps") or side.there("label", "To be measured"):
            raise Failed("there is something to be done while the power must go off")


run(test_bring_up, test_practice)
