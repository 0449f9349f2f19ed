#!/usr/bin/python3
"""The meters window: find one, add one by hand, name it, listen to two at once, edit, let go; and the next job.

SPDX-License-Identifier: GPL-3.0-or-later

usage: test-meters.py PROGRAM SHIM    the shim lets a pseudo-terminal stand for a serial port
"""

import json
import os
import sys
import time

from bench_ui import Bench, Failed, newest_session, poll, press, run, showing, states
from meter_pty import Digits11, Digits14, Lines
import bench_ui

SHIM = sys.argv[2]
ENV = {"LD_PRELOAD": SHIM}
FIND, HAND, FACTS = "Find my meter", "Add a meter by hand", "Facts about the meter"
TITLES = ("Meters", FIND, HAND, FACTS)
PATTERN = "{any};{sign};{number};{unit}"


def events(key):
    return [event[key] for event in bench_ui.events(newest_session(), key)]


def samples(meter, rail=None):
    return [s for s in events("sample") if s["meter"] == meter and rail in (None, s["rail"])]


def book():
    """The list of meters as it lies on the disk, by id."""
    path = os.path.join(os.environ["XDG_DATA_HOME"], "railwright", "meters.json")
    with open(path, encoding="utf-8") as file:
        return {meter["id"]: meter for meter in json.load(file)["meters"]}


def window(bench):
    """The meters window, whichever page it shows."""
    return next(w for w in bench.windows() if w.get_name() in TITLES)


def inside(bench, role=None, name=None):
    return [node for node in bench.all(role, name, window(bench)) if showing(node)]


def write(bench, name, text):
    poll(lambda: inside(bench, "text", name), f"the entry {name!r}")[0].set_text_contents(text)


def push(bench, name, timeout=15):
    press(poll(lambda: inside(bench, "push button", name), f"the button {name!r}", timeout)[0])


def says(bench, text):
    poll(lambda: inside(bench, None, text), f"{text!r}")


def go(bench, button, title, timeout=15):
    """Presses what leads to another page; entries of a page that is not shown yet are there already."""
    push(bench, button, timeout)
    poll(lambda: window(bench).get_name() == title, f"the page {title!r}")


def open_meters(bench):
    bench.keys("ctrl+m")
    poll(lambda: inside(bench, "push button", "Find my meter"), "the list of meters")


def focused_words(bench):
    """What the list item that has the focus says; None while none has it. Each window has a focus of its own."""
    for node in inside(bench, "list item"):
        if "focused" in states(node):
            return " ".join(label.get_name() or "" for label in bench.all("label", within=node))
    return None


def choose(bench, drop_down, words):
    """By keyboard: opens the list and goes down it."""
    push(bench, drop_down)
    poll(lambda: focused_words(bench) is not None, "the list to open")
    bench.keys("Home")
    for _ in range(12):
        if focused_words(bench) == words:
            bench.keys("Return")
            return
        bench.keys("Down")
        time.sleep(0.1)
    raise Failed(f"{words!r} is not offered")


def find_meter(bench, meter, name):
    go(bench, "Find my meter", FIND)
    write(bench, "Also try", meter.name)
    push(bench, "Search")
    go(bench, "Use this meter", FACTS, 40)
    write(bench, "Name of the meter", name)


def bad_names(bench):
    """Controls without a proper accessible name."""
    roles = {"push button", "toggle button", "text"}
    return [(n.get_role_name(), n.get_name()) for n in inside(bench)
            if "focusable" in states(n) and n.get_role_name() in roles
            and (not (n.get_name() or "").strip() or n.get_name().startswith(("Gtk", "_", "Rw")))]


def expect(truth, what):
    if not truth:
        raise Failed(what)


def test_find():
    """a meter is found, named, and listened to; its value shows; facts are asked, and corrected later"""
    meter = Digits14(5.021).start()
    with Bench(env=ENV) as bench:
        bench.start_job("Pier Pilot")
        open_meters(bench)
        expect(book().keys() == {"m1"}, f"the bench meter alone is in the book: {book()}")
        find_meter(bench, meter, "Yellow meter")
        expect(not bad_names(bench), f"names on the facts page: {bad_names(bench)}")
        push(bench, "Save and listen")
        says(bench, "Choose the class of the meter")
        write(bench, "Per cent of the value", "0,05")
        write(bench, "Counts of the last digit", "three")
        push(bench, "Save and listen")
        says(bench, "“three” is no such figure")
        expect("m2" not in book(), "half-typed facts are in the book")
        write(bench, "Counts of the last digit", "3")
        push(bench, "Save and listen")
        says(bench, "±(0.05 % + 3)")
        says(bench, "5.021")
        bench.find("push button", "5.021")
        known = book()["m2"]
        expect(known["name"] == "Yellow meter" and known["format"] == "digits-14", f"the book says {known}")
        poll(lambda: len(samples("m2")) >= 3, "samples in the file")
        facts = events("meter")[-1]
        expect((facts["id"], facts["percent"], facts["counts"]) == ("m2", 0.05, 3), f"the session holds {facts}")

        go(bench, "Edit: Yellow meter", FACTS)
        write(bench, "Name of the meter", "Yellow meter, new fuse")
        write(bench, "Per cent of the value", "0.09")
        push(bench, "Save and listen")
        says(bench, "±(0.09 % + 3)")
        facts = poll(lambda: events("meter")[-1] if events("meter")[-1]["percent"] == 0.09 else None, "the new facts")
        expect(facts["name"] == "Yellow meter, new fuse", f"the session holds {facts}")

        go(bench, "Find my meter", FIND)
        write(bench, "Also try", meter.name)
        push(bench, "Search")
        says(bench, "This job reads “Yellow meter, new fuse” there")
        bench.keys("Escape")
        push(bench, "Let go: Yellow meter, new fuse")
        poll(lambda: inside(bench, "push button", "Listen: Yellow meter, new fuse"), "the button to listen again")
        says(bench, "Not listened to")
        n = len(samples("m2"))
        bench.keys("Escape")
        poll(lambda: len(bench.windows()) == 1, "the window to close")
        poll(lambda: len(samples("m2")) == n, "no more samples")
    meter.stop()


def test_minus():
    """a meter whose minus may be read two ways is not taken before it showed one"""
    meter = Digits11(1.503).start()
    with Bench(env=ENV) as bench:
        bench.start_job("Kelp Sprint")
        open_meters(bench)
        go(bench, "Find my meter", FIND)
        write(bench, "Also try", meter.name)
        push(bench, "Search")
        poll(lambda: inside(bench, "push button", "It shows a minus now"), "the question", 40)
        expect(not inside(bench, "push button", "Use this meter"), "it can be used before its minus is known")
        says(bench, "1.503")
        meter.volts = -1.503
        time.sleep(1)
        push(bench, "It shows a minus now")
        go(bench, "Use this meter", FACTS, 40)
        write(bench, "Name of the meter", "Old meter")
        write(bench, "Per cent", "0.8")
        write(bench, "Counts", "3")
        push(bench, "Save")
        says(bench, "±(0.8 % + 3)")
        known = next(known for known in book().values() if known["name"] == "Old meter")
        expect(known["format"] == "digits-11a", f"the book says {known}")
        push(bench, "Listen: Old meter")
        says(bench, "−1.503")
    meter.stop()


def test_two():
    """two meters listen at once, each on a rail of its own, and the choice is remembered"""
    five = Digits14(5.034).start()
    minus = Lines(-4.917).start()
    with Bench(env=ENV) as bench:
        bench.start_job("Harbour Rally")
        open_meters(bench)
        push(bench, "Remove: Yellow meter, new fuse")
        push(bench, "Remove it: Yellow meter, new fuse")
        poll(lambda: not inside(bench, "push button", "Edit: Yellow"), "the row to go")
        expect("m2" not in book(), "a meter that was removed is in the book")

        find_meter(bench, five, "Left meter")
        write(bench, "Per cent", "0.5")
        write(bench, "Counts", "2")
        push(bench, "Save and listen")
        go(bench, "Add by hand", HAND)
        write(bench, "Port or host", "no such place")
        push(bench, "Next")
        expect(not bad_names(bench), f"names on the page for adding by hand: {bad_names(bench)}")
        write(bench, "Port or host", minus.name)
        write(bench, "Pattern of its lines", "{number")
        push(bench, "Next")
        says(bench, "{number")
        write(bench, "Pattern of its lines", PATTERN)
        write(bench, "Text that the meter sent", "17;-;5.012;V\n18;+;OL;V\nready\n")
        says(bench, "−5.012\u202fV, step 0.001\u202fV\noverload\nnot understood: “ready”")
        go(bench, "Next", FACTS)
        write(bench, "Name of the meter", "Right meter")
        write(bench, "Per cent", "0.8")
        write(bench, "Counts", "3")
        push(bench, "Save and listen")
        says(bench, "−4.917")
        left, right = (next(i for i, m in book().items() if m["name"] == n) for n in ("Left meter", "Right meter"))
        expect(book()[right]["pattern"] == PATTERN, f"the book says {book()[right]}")

        choose(bench, "Where Left meter is", "stays on +5 V at the board")
        choose(bench, "Where Right meter is", "stays on −5 V at the board")
        poll(lambda: len(samples(left, "p5")) >= 5 and len(samples(right, "m5")) >= 5, "samples of both")
        first = len(events("sample"))
        poll(lambda: len(events("sample")) >= first + 10, "more samples")
        for sample in events("sample")[first:]:
            there = {left: ("p5", "board", 5.034), right: ("m5", "board", -4.917)}[sample["meter"]]
            expect((sample["rail"], sample["place"]) == there[:2] and abs(sample["value"] - there[2]) < 5e-4,
                   f"a sample strayed: {sample}")
        choose(bench, "Where Right meter is", "stays on −5 V at the terminals")
        poll(lambda: samples(right, "m5")[-1]["place"] == "terminals", "the right one at the terminals")
    with Bench(env=ENV) as bench:
        bench.start_job("Harbour Rally II")
        open_meters(bench)
        push(bench, "Listen: Right meter")
        poll(lambda: samples(right), "samples in the next job")
        expect(samples(right)[-1]["place"] == "terminals", f"the choice was forgotten: {samples(right)[-1]}")
    five.stop()
    minus.stop()


run(test_find, test_minus, test_two)
