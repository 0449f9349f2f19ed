#!/usr/bin/python3
"""A job from the doors to its replay, by keyboard, as a restorer does it.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import tempfile

from bench_ui import Bench, Failed, events, poll, press, run, showing, text_of


def card(bench, rail):
    return bench.find("push button", rail + ":").get_name()


def test_doors():
    """with nothing opened the window offers three doors"""
    with Bench() as bench:
        bench.close_cautions()
        for name in ("A cabinet", "The practice cabinet", "A saved session"):
            bench.find("push button", name)


def test_readings():
    """digits typed anywhere become readings, Enter goes from rail to rail, and the file has them"""
    with Bench() as bench:
        path = bench.start_job("Tidepool Racer")
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
        path = bench.start_job("Tidepool Racer")
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
        path = bench.start_job("Tidepool Racer")
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


def test_danger():
    """a mains-sized value stops everything: a banner, no check to take, until the slip is taken back"""
    with Bench() as bench:
        path = bench.start_job("Tidepool Racer")
        bench.find("push button", "Take it", timeout=20)
        bench.type("230")
        bench.keys("Return")
        bench.find("label", "That is a mains-sized voltage")
        bench.keys("Return")  # offers nothing to be meant: must not keep
        if events(path, "reading"):
            raise Failed("Enter kept a mains-sized value")
        bench.keys("ctrl+Return")
        bench.find("label", "is a mains-sized voltage. Take the leads away")
        bench.wait_gone("push button", "Take it")
        bench.find("label", "Stop first")
        bench.keys("ctrl+z")
        bench.find("push button", "Take it", timeout=20)


def choose_symptom(bench, title):
    bench.keys("s")
    toggle = bench.find("push button", title + ": seen")
    press(toggle)
    bench.find("push button", "Seen: " + title)
    bench.keys("Escape")
    bench.wait_gone("push button", title + ": seen")


# What a cabinet with its trim set low shows, by the spot that the entry names.
SHOWN = (("along the wire", "40 mV"), ("+12 V", "11.2"), ("−5 V", "-4.65"), ("ripple", "12 mV"), ("+5 V", "4.71"))


def take_check(bench, path):
    """Follows the suggested check, whether it measures or looks; waits until its answer is in the file."""
    before = len(events(path, "finding")) + len(events(path, "reading"))
    press(bench.find("push button", "Take it", timeout=20))
    back = bench.find("push button", "Back")
    if bench.there("push button", "To the entry"):
        name = bench.find("text", "Reading of").get_name()
        bench.type(next(value for words, value in SHOWN if words in name))
        bench.keys("Return")
    else:
        # The outcomes stand after the card's own buttons.
        buttons = [node for node in bench.all("push button") if showing(node)]
        press(buttons[buttons.index(back) + 1])
    poll(lambda: len(events(path, "finding")) + len(events(path, "reading")) == before + 1, "the answer in the file")


def test_diagnosis():
    """a symptom gives causes and a next check; two checks are followed; the session is saved, opened and replayed"""
    with tempfile.TemporaryDirectory() as folder:
        copy = os.path.join(folder, "copy.rwlog")
        with Bench() as bench:
            path = bench.start_job("Tidepool Racer")
            choose_symptom(bench, "Resets by itself")
            chances = poll(lambda: [n.get_name() for n in bench.all("level bar") if showing(n)], "likely causes")
            take_check(bench, path)
            poll(lambda: [n.get_name() for n in bench.all("level bar") if showing(n)] != chances, "the beliefs to move")
            take_check(bench, path)
            save_copy(bench, copy)
        with open(path, "rb") as one, open(copy, "rb") as two:
            if one.read() != two.read():
                raise Failed("the copy differs from the session's file")
        before = os.stat(copy).st_mtime_ns
        replay(copy)
        if os.stat(copy).st_mtime_ns != before:
            raise Failed("the replayed file was written to")


def save_copy(bench, copy):
    bench.keys("ctrl+s")
    dialog = poll(lambda: next((w for w in bench.windows() if w.get_name() == "Save a copy"), None), "the file dialog")
    name = bench.find("text", within=dialog)
    name.set_text_contents(copy)
    press(bench.find("push button", "Save", within=dialog))
    poll(lambda: os.path.exists(copy), "the copy")


def replay(path):
    """Back to the start event by event, then on to the end by playing."""
    with Bench(path) as bench:
        bench.close_cautions()
        bench.find("label", "nothing is written")
        bench.find("push button", "Seen: Resets by itself")
        for _ in range(len(events(path, "n"))):
            bench.keys("comma")
        poll(lambda: not bench.there("push button", "Seen: Resets by itself"), "the replay to go back")
        press(bench.find("push button", "Play"))
        poll(lambda: bench.there("push button", "Seen: Resets by itself"), "the replay to get there", 60)


run(test_doors, test_readings, test_slips, test_undo, test_danger, test_diagnosis)
