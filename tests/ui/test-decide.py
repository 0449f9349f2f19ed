#!/usr/bin/python3
"""A replay is thought along with: decided first, written on, and gone on from, by keyboard alone.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import json
import os
import shutil

from bench_ui import Bench, Failed, newest_session, poll, press, run

ROOT = os.environ["RAILWRIGHT_SRC_ROOT"]
FOLDER = os.path.join(os.environ["XDG_DATA_HOME"], "replayed")
DEMO = os.path.join(ROOT, "demo-sessions", "lantern-drift-wiring.rwlog")


def session():
    """A copy of the demo in a folder of its own."""
    shutil.rmtree(FOLDER, ignore_errors=True)
    os.makedirs(FOLDER)
    return shutil.copy(DEMO, os.path.join(FOLDER, "lantern.rwlog"))


def lines(path):
    with open(path, encoding="utf-8") as file:
        return [json.loads(line) for line in file]


def test_decide():
    """the replay pauses before a check, the answer is compared with what was done and with the program's, and is scored"""
    with Bench(session()) as bench:
        bench.close_cautions()
        bench.keys("ctrl+d")
        bench.find("label", "it pauses at each decision")
        for _ in range(6):
            bench.keys("plus")
        bench.keys("space")
        bench.find("label", "the next step was chosen")
        rows = list(bench.all("list item", within=bench.find("list", "What would you do now?")))
        if not 2 <= len(rows) <= 5:
            raise Failed(f"{len(rows)} answers to choose from")
        for word in ("Your choice", "min expected in all", "What the program would have done"):
            if bench.there("label", word):
                raise Failed(f"{word!r} is told before the answer")
        bench.keys("Down", "Return")
        bench.find("label", "Your choice")
        bench.find("label", "What was done")
        bench.find("label", "What the program would have done")
        bench.find("label", "min expected in all")
        bench.find("label", "of 1 as good as the best")
        bench.keys("Return")
        bench.find("label", "the next step was chosen")
        bench.wait_gone("label", "Your choice")
        bench.keys("Return")
        bench.find("label", "of 2 as good as the best")
        bench.keys("ctrl+d")
        bench.wait_gone("label", "Your choice")


def told_ahead(bench):
    """What the list of chapters, the button that opens it and the slider say of what is to come."""
    bench.keys("ctrl+g")
    rows = list(bench.all("list item", within=bench.find("list", "Chapters")))
    names = [row.get_name() for row in rows] + [node.get_name() or "" for row in rows for node in bench.all("label", within=row)]
    bench.keys("Escape")
    bench.wait_gone("list", "Chapters")
    names += [f"{node.get_name()} {node.get_description()}" for node in bench.all(("toggle button", "slider", "push button"))]
    return names


def test_veil():
    """while it asks first, no chapter that lies ahead is named: not in the list, not on a button, not on the slider"""
    path = session()
    later = [event["mark"]["what"] for event in lines(path)[1:] if "mark" in event][-1]
    with Bench(path) as bench:
        bench.close_cautions()
        bench.keys(*["ctrl+Prior"] * 12)
        if sum(later in name for name in told_ahead(bench)) < 2:
            raise Failed(f"{later!r} is not in a plain list")
        bench.keys("ctrl+d")
        bench.find("label", "it pauses at each decision")
        told = told_ahead(bench)
        if any(later in name for name in told):
            raise Failed(f"told: {[name for name in told if later in name]}")
        if sum("A later chapter" in name for name in told) < 4:
            raise Failed(f"no word of later chapters: {told}")
        bench.keys(*["ctrl+Next"] * 12)
        poll(lambda: any(later in name for name in told_ahead(bench)), "the title of a chapter that has begun")
        bench.keys(*["ctrl+Prior"] * 12)
        poll(lambda: not any(later in name for name in told_ahead(bench)), "the titles to go again")


def test_annotate():
    """a note on a moment is kept beside the file, listed, gone to, and taken back; the file stays as it is"""
    path = session()
    beside = os.path.join(FOLDER, "lantern.rwnotes")
    with open(path, "rb") as file:
        before = file.read()
    with Bench(path) as bench:
        bench.close_cautions()
        bench.keys("ctrl+shift+n")
        bench.find("text", "Note")
        bench.type("the drop is in the wire")
        bench.keys("Tab")
        bench.type("Ada")
        bench.keys("Return")
        poll(lambda: os.path.exists(beside) and len(lines(beside)) == 2, "the note in its file")
        header, note = lines(beside)
        if header["session"] != lines(path)[0]["id"] or note["text"] != "the drop is in the wire" or note["by"] != "Ada":
            raise Failed(f"written: {header} {note}")
        bench.keys("comma", "comma", "comma")
        bench.keys("ctrl+shift+a")
        bench.find("label", "the drop is in the wire")
        bench.keys("Tab")
        press(bench.find("push button", "Take back: the drop is in the wire"))
        bench.wait_gone("label", "the drop is in the wire")
        poll(lambda: lines(beside)[-1] == {"retract": 1}, "the line that takes it back")
    with open(path, "rb") as file:
        if file.read() != before:
            raise Failed("the session's file was changed")


def test_branch():
    """from a moment of the replay a new session goes on by hand, with what had happened, and says where it came from"""
    path = session()
    old = lines(path)
    with Bench(path) as bench:
        bench.close_cautions()
        bench.keys("comma", "comma", "comma", "comma")
        bench.keys("ctrl+shift+e")
        bench.find("label", "is copied into a new session")
        bench.keys("Return")
        bench.find("label", "This is a new session, branched from lantern.rwlog")
        new = poll(newest_session, "the new file")
        poll(lambda: len(lines(new)) > 1, "its events")
        header, *copied = lines(new)
        if header["from"]["session"] != old[0]["id"] or header["id"] == old[0]["id"]:
            raise Failed(f"header: {header}")
        if not 0 < len(copied) < len(old) - 1 or copied != old[1:len(copied) + 1]:
            raise Failed(f"{len(copied)} events copied of {len(old) - 1}")
        bench.keys("ctrl+l")
        bench.find("label", "This session was branched from lantern.rwlog")


def test_branch_to_practice():
    """the same on a practice cabinet, which says what it cannot know"""
    with Bench(session()) as bench:
        bench.close_cautions()
        bench.keys("ctrl+shift+e")
        bench.find("label", "is copied into a new session")
        bench.keys("Down", "space", "Return")
        bench.find("label", "This is a new session, branched from lantern.rwlog")
        new = poll(lambda: newest_session(practice=True), "the new file")
        notes = [event["note"]["text"] for event in lines(new)[1:] if "note" in event]
        if not any("no symptom, no finding and no repair" in text for text in notes):
            raise Failed(f"notes: {notes}")


run(test_decide, test_veil, test_annotate, test_branch, test_branch_to_practice)
