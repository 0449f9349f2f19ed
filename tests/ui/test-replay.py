#!/usr/bin/python3
"""A replay by keyboard: chapters, jumps, speeds, skipping the waiting, the scrub bar; and notes that come without it.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import json
import os
import re
import shutil
import time

from bench_ui import Bench, Failed, poll, press, run, states

DEMO = os.path.join(os.environ["RAILWRIGHT_SRC_ROOT"], "demo-sessions", "kelp-gardens-minus-five.rwlog")


def open_demo():
    bench = Bench(DEMO)
    bench.close_cautions()
    bench.find("slider", "Moment in the session")
    return bench


def chapter(bench):
    """Number and title of the present chapter, as its button tells."""
    for node in bench.all(name="Chapter "):
        found = re.match(r"Chapter (\d+) of (\d+): (.*)", node.get_name())
        if found:
            return int(found[1]), int(found[2]), found[3]
    return None


def seconds(bench):
    """What the clock of the bar shows."""
    for node in bench.all("label"):
        found = re.match(r"\u2066(\d+):(\d\d) / \d+:\d\d", node.get_name() or "")
        if found:
            return 60 * int(found[1]) + int(found[2])
    raise Failed("no clock")


def said(bench):
    return bench.find("slider", "Moment in the session").get_description()


def test_chapters():
    """chapters by keyboard: before, next, and from the list; the scrub bar says where it is"""
    with open_demo() as bench:
        poll(lambda: chapter(bench), "the chapters")
        number, count, title = chapter(bench)
        if number != count:
            raise Failed(f"a replay opens at its end, not in chapter {number} of {count}")
        bench.keys("ctrl+Prior")
        poll(lambda: chapter(bench)[0] < count, "the chapter before")
        before = chapter(bench)
        poll(lambda: f"chapter {before[0]} of {count}: {before[2]}" in said(bench), "the scrub bar to say so")
        bench.keys("ctrl+Next")
        poll(lambda: chapter(bench)[0] == before[0] + 1, "the next chapter")
        bench.keys("ctrl+g")
        bench.find("list item", "0:00: The beginning")
        bench.keys("Home", "Return")
        poll(lambda: chapter(bench)[0] == 1, "the first chapter, chosen from the list")
        bench.keys("ctrl+Prior")
        bench.find("label", "No further chapter that way.")


def test_jumps():
    """to turns, kept readings and warnings, either way, and a word where there is none"""
    with open_demo() as bench:
        poll(lambda: chapter(bench), "the chapters")
        bench.keys("ctrl+alt+2")
        bench.find("label", "Last: trim turned")
        last = seconds(bench)
        bench.keys("ctrl+alt+2")
        poll(lambda: seconds(bench) < last, "the turn before")
        bench.keys("ctrl+2")
        poll(lambda: seconds(bench) == last, "the turn after it")
        bench.keys("ctrl+3")
        poll(lambda: seconds(bench) > last, "the next kept reading")
        bench.find("label", "Last: +5 V, board")
        bench.keys("ctrl+2")
        bench.find("label", "No further turn of the trim that way.")
        bench.keys("ctrl+1", "ctrl+1", "ctrl+1", "ctrl+1", "ctrl+1", "ctrl+1", "ctrl+1", "ctrl+1")
        bench.find("label", "No further warning that way.")


def test_scrub():
    """the scrub bar takes arrows, Page keys, Home and End"""
    with open_demo() as bench:
        poll(lambda: chapter(bench), "the chapters")
        slider = bench.find("slider", "Moment in the session")
        for _ in range(30):
            if "focused" in states(slider):
                break
            bench.keys("shift+Tab")
        poll(lambda: "focused" in states(slider), "the focus on the scrub bar")
        end = seconds(bench)
        bench.keys("Home")
        poll(lambda: seconds(bench) == 0, "the beginning")
        bench.keys("Next", "Next", "Next")
        poll(lambda: abs(seconds(bench) - 0.3 * end) <= 2, "three tenths")
        bench.keys("Left")
        poll(lambda: abs(seconds(bench) - 0.29 * end) <= 2, "a hundredth back")
        bench.keys("shift+Right")
        poll(lambda: abs(seconds(bench) - 0.39 * end) <= 2, "a tenth on")
        bench.keys("End")
        poll(lambda: seconds(bench) == end, "the end")


def test_skipping():
    """the waiting is skipped by key and by button; a wait of 22 seconds goes by in four"""
    with open_demo() as bench:
        poll(lambda: chapter(bench), "the chapters")
        toggle = bench.find("push button", "Skip waiting")  # what a toggle is in GTK 4.8
        bench.keys("ctrl+shift+i")
        poll(lambda: "pressed" in states(toggle), "the button to be in")
        press(toggle)
        poll(lambda: "pressed" not in states(toggle), "the button to be out")
        bench.keys("ctrl+shift+i")
        poll(lambda: "pressed" in states(toggle), "the button to be in again")
        bench.keys("ctrl+g")
        bench.find("list item", "1:08: ")
        bench.keys("Home", "Down", "Down", "Down", "Return")
        poll(lambda: seconds(bench) == 68, "the chapter at 1:08")
        began = time.monotonic()
        bench.keys("space")
        bench.find("push button", "Pause")
        poll(lambda: seconds(bench) >= 97, "the wait from 1:16 to 1:38 to go by", 25)
        took = time.monotonic() - began
        if not 8 < took < 20:  # 29 s of the session, of which 18 are skipped
            raise Failed(f"29 s with a wait of 22 took {took:.1f} s")
        bench.keys("space")
        bench.find("push button", "Play")


def test_speeds():
    """the speeds go from a quarter to sixty times, by plus and minus"""
    with open_demo() as bench:
        for _ in range(8):
            bench.keys("minus")
        poll(lambda: any("×0.25" in (n.get_name() or "") for n in bench.all("label")), "a quarter")
        for _ in range(8):
            bench.keys("plus")
        poll(lambda: any("×60" in (n.get_name() or "") for n in bench.all("label")), "sixty times")
        bench.keys("ctrl+g")
        bench.find("list item", "0:00: The beginning")
        bench.keys("Home", "Return")
        poll(lambda: seconds(bench) == 0, "the beginning")
        bench.keys("space")
        poll(lambda: seconds(bench) == 147, "the end of the session within seconds", 8)
        bench.find("push button", "Play")


def write_notes(**about):
    """Notes in a folder of their own; @about: what their first line says of the session."""
    folder = os.path.join(os.environ["XDG_DATA_HOME"], "post")
    os.makedirs(folder, exist_ok=True)
    path = os.path.join(folder, "gift.rwnotes")
    note = {"n": 1, "t": 20, "at": None, "by": "Mo", "text": "look at the plug", "written": "2026-03-15T10:00:00Z"}
    with open(path, "w", encoding="utf-8") as file:
        for line in ({"railwright_notes": 1, **about}, note):
            print(json.dumps(line), file=file)
    return path


def test_notes_alone():
    """notes find their session among one's own, are taken in when that is wanted, and say which one is missing"""
    sessions = os.path.join(os.environ["XDG_DATA_HOME"], "railwright", "sessions")
    os.makedirs(sessions, exist_ok=True)
    session = shutil.copy(DEMO, os.path.join(sessions, "2026-03-14-kelp-gardens.rwlog"))
    beside = session.replace(".rwlog", ".rwnotes")
    with open(session, encoding="utf-8") as file:
        wanted = json.loads(file.readline())["id"]
    with Bench(write_notes(session=wanted)) as bench:
        bench.close_cautions()
        bench.find("slider", "Moment in the session")
        bench.find("label", "1 note of gift.rwnotes is not among those of this session yet.")
        if os.path.exists(beside):
            raise Failed("opening the notes wrote to others")
        press(bench.find("push button", "Take in"))
        bench.find("label", "1 new note came in.")
        bench.wait_gone("push button", "Take in")
        with open(beside, encoding="utf-8") as file:
            header, note = map(json.loads, file)
        if note["text"] != "look at the plug" or header["cabinet"] != "Kelp Gardens":
            raise Failed(f"taken in: {header} {note}")
    # While it is looked for, another file opens in a window of its own.
    missing = write_notes(session="elsewhere", cabinet="Lantern Drift", started="2026-03-14T09:30:00Z")
    with Bench(missing, session) as bench:
        bench.close_cautions()
        bench.find("slider", "Moment in the session")
        bench.find("label", "gift.rwnotes holds notes on the session of Lantern Drift that began on 2026-03-14 09:30 UTC.")


run(test_chapters, test_jumps, test_scrub, test_skipping, test_speeds, test_notes_alone)
