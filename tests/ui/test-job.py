#!/usr/bin/python3
"""A job from the doors to its replay, by keyboard, as a restorer does it.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import json
import os
import tempfile

from bench_ui import Bench, Failed, poll, press, run, showing, text_of


def sessions():
    folder = os.path.join(os.environ["XDG_DATA_HOME"], "railwright", "sessions")
    return sorted(os.path.join(folder, name) for name in os.listdir(folder)) if os.path.isdir(folder) else []


def events(path, key):
    with open(path, encoding="utf-8") as file:
        lines = [json.loads(line) for line in file.read().splitlines()[1:]]
    return [line for line in lines if key in line]


def start_job(bench, name="Tidepool Racer"):
    before = set(sessions())
    close_safety(bench)
    bench.keys("ctrl+n")
    bench.find("text", "Name of the cabinet")
    bench.type(name)
    bench.keys("Return")
    bench.find("text", "Reading of +5 V, board")
    poll(lambda: set(sessions()) - before, "the job's file")
    return (set(sessions()) - before).pop()


def close_safety(bench):
    """The cautions come once, before the first job."""
    if any(window.get_name() == "Safety" for window in bench.windows()):
        bench.keys("Escape")
        poll(lambda: not any(w.get_name() == "Safety" for w in bench.windows()), "the cautions to close")


def card(bench, rail):
    return bench.find("push button", rail + ":").get_name()


def test_doors():
    """with nothing opened the window offers three doors"""
    with Bench() as bench:
        close_safety(bench)
        for name in ("A cabinet", "The practice cabinet", "A saved session"):
            bench.find("push button", name)


def test_readings():
    """digits typed anywhere become readings, Enter goes from rail to rail, and the file has them"""
    with Bench() as bench:
        path = start_job(bench)
        bench.keys("Escape")
        bench.type("5.02")
        bench.keys("Return")
        bench.find("text", "Reading of +12 V, board")
        bench.type("11,87")
        bench.keys("Return")
        bench.find("text", "Reading of −5 V, board")
        bench.type("-4.98")
        bench.keys("Return")
        poll(lambda: len(events(path, "reading")) == 3, "three readings in the file")
        values = [event["reading"]["value"] for event in events(path, "reading")]
        if values != [5.02, 11.87, -4.98]:
            raise Failed(f"the file holds {values}")
        poll(lambda: "inside" in card(bench, "+5 V"), "the verdict of +5 V")
        bench.find("label", "kept: −5 V")


def test_slips():
    """a missing minus and a slipped point are asked about before anything is kept"""
    with Bench() as bench:
        path = start_job(bench)
        bench.keys("Down", "Down")
        bench.find("text", "Reading of −5 V, board")
        bench.type("4.98")
        bench.keys("Return")
        bench.find("label", "is a minus missing?")
        if events(path, "reading"):
            raise Failed("kept before the question was answered")
        bench.keys("Return")
        poll(lambda: [e["reading"]["value"] for e in events(path, "reading")] == [-4.98], "−4.98 in the file")
        bench.type("502")
        bench.keys("Return")
        bench.find("label", "Did the decimal point or the unit slip?")
        bench.keys("ctrl+Return")
        poll(lambda: len(events(path, "reading")) == 2, "the value as typed")
        if events(path, "reading")[1]["reading"]["value"] != 502:
            raise Failed("Ctrl+Enter did not keep what was typed")


def test_undo():
    """Ctrl+Z in a filled entry edits the entry; elsewhere it takes the last reading back, and redo puts it again"""
    with Bench() as bench:
        path = start_job(bench)
        bench.type("5.02")
        bench.keys("Return")
        poll(lambda: len(events(path, "reading")) == 1, "a reading")
        bench.type("7")
        bench.keys("ctrl+z")
        entry = bench.find("text", "Reading of")
        poll(lambda: text_of(entry) == "", "the entry to be empty again")
        if events(path, "retract"):
            raise Failed("Ctrl+Z in the entry undid the reading")
        bench.keys("ctrl+z")
        poll(lambda: len(events(path, "retract")) == 1, "a retract")
        poll(lambda: "not measured" in card(bench, "+5 V"), "the card to forget")
        bench.keys("ctrl+shift+z")
        poll(lambda: len(events(path, "retract")) == 2, "the retract of the retract")
        poll(lambda: "5.02" in card(bench, "+5 V"), "the card to have it again")


def choose_symptom(bench, title):
    bench.keys("s")
    toggle = bench.find("toggle button", title + ": seen")
    press(toggle)
    bench.find("push button", "Seen: " + title)
    bench.keys("Escape")
    bench.wait_gone("toggle button", title + ": seen")


def take_check(bench, path):
    """Follows the suggested check whatever it is; returns what kind it was."""
    first = bench.find("push button", "Take it", timeout=20)
    outcomes_before = len(events(path, "finding")) + len(events(path, "reading"))
    title = next(n.get_name() for n in bench.all("label") if showing(n) and "Next check" in (n.get_name() or ""))
    press(first)
    while True:
        entry = next((n for n in bench.all("push button", "To the entry") if showing(n)), None)
        back = next((n for n in bench.all("push button", "Back") if showing(n)), None)
        if entry is not None or back is not None:
            break
    if entry is not None:
        value = {"p5": "4.71", "p12": "11.2", "m5": "-4.65", "gnd": "30 mV"}
        name = bench.find("text", "Reading of").get_name()
        typed = "40 mV" if "wire" in name else next(
            value[rail] for rail, label in (("p12", "+12"), ("m5", "−5"), ("p5", "+5")) if label in name)
        if typed == "40 mV" or True:
            bench.type(typed)
        bench.keys("Return")
        kind = "reading"
    else:
        outcome = next(n for n in bench.all("push button") if showing(n) and n.get_name() not in (
            "Back", "Open", "New", "Keep", "Undo", "Mark", "Note", "All", "It is set up so", "Trim turned", "Log")
            and n.get_parent() is not None and n.get_parent() == back.get_parent().get_parent().get_child_at_index(0)) \
            if False else first_outcome(bench, back)
        press(outcome)
        kind = "finding"
    poll(lambda: len(events(path, "finding")) + len(events(path, "reading")) == outcomes_before + 1, "the answer in the file")
    return kind, title


def first_outcome(bench, back):
    """The first outcome button stands before the card's own buttons, in the same card."""
    buttons = [n for n in bench.all("push button") if showing(n)]
    return buttons[buttons.index(back) - 1]


def test_diagnosis():
    """a symptom gives causes and a next check; two checks are followed; the session is saved, opened and replayed"""
    with Bench() as bench, tempfile.TemporaryDirectory() as folder:
        path = start_job(bench)
        choose_symptom(bench, "Resets by itself")
        chances = poll(lambda: [n.get_name() for n in bench.all("level bar") if showing(n)], "likely causes")
        take_check(bench, path)
        poll(lambda: [n.get_name() for n in bench.all("level bar") if showing(n)] != chances, "the beliefs to move")
        take_check(bench, path)
        copy = os.path.join(folder, "copy.rwlog")
        bench.keys("Escape")
        bench.keys("ctrl+s")
        name = bench.find("text", timeout=10, within=poll(lambda: next(
            (w for w in bench.windows() if w.get_name() == "Save a copy"), None), "the file dialog"))
        name.set_text_contents(copy) if hasattr(name, "set_text_contents") else bench.type(copy)
        bench.keys("Return")
        poll(lambda: os.path.exists(copy), "the copy")
        with open(path, "rb") as one, open(copy, "rb") as two:
            if one.read() != two.read():
                raise Failed("the copy differs from the session's file")
        before = os.stat(copy).st_mtime_ns
        count = len(events(copy, "n"))
    with tempfile.TemporaryDirectory() as folder:
        pass
    with tempfile.TemporaryDirectory() as folder:
        copy = os.path.join(folder, "again.rwlog")
        with open(path, "rb") as one, open(copy, "wb") as two:
            two.write(one.read())
        before = os.stat(copy).st_mtime_ns
        with Bench(copy) as bench:
            bench.find("label", "nothing is written")
            bench.find("push button", "Seen: Resets by itself")
            for _ in range(count):
                press(bench.find("push button", "One event back"))
            poll(lambda: not bench.there("push button", "Seen: Resets by itself"), "the replay to go back")
            press(bench.find("push button", "Play"))
            poll(lambda: bench.there("push button", "Seen: Resets by itself"), "the replay to get there", 60)
        if os.stat(copy).st_mtime_ns != before:
            raise Failed("the replayed file was written to")


run(test_doors, test_readings, test_slips, test_undo, test_diagnosis)
