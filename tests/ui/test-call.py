#!/usr/bin/python3
"""Call it first at the practice cabinet, and a lesson paged through, by keyboard alone.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import subprocess

from bench_ui import Bench, Failed, events, newest_session, poll, run, showing, xdo


def labels(bench):
    return [node.get_name().replace("\N{NARROW NO-BREAK SPACE}", " ") for node in bench.all("label")
            if showing(node) and node.get_name()]


def said(bench, words, timeout=15.0):
    """Waits until some label or status says this; returns it."""
    def found():
        for node in bench.all(("label", "status bar", "notification", "alert")):
            name = (node.get_name() or "").replace("\N{NARROW NO-BREAK SPACE}", " ")
            if words in name and showing(node):
                return name
        return None

    return poll(found, f"“{words}”", timeout)


def keep(bench, path):
    count = len(events(path, "reading"))

    def kept():
        bench.keys("space")
        return len(events(path, "reading")) > count

    poll(kept, "a reading", 30, 0.4)


def calls(path):
    return [event["call"] for event in events(path, "call")]


def two_positions(bench, path):
    """+5 V and +12 V at the board, a turn, +5 V again: enough for a prediction of +12 V."""
    bench.keys("Escape")
    keep(bench, path)
    bench.keys("alt+2")
    keep(bench, path)
    bench.keys("Escape", "bracketright", "bracketright", "bracketright")
    poll(lambda: events(path, "trim"), "the turn")
    bench.keys("alt+1")
    keep(bench, path)
    bench.keys("alt+2")


def call(bench, who, value, give=None):
    bench.find("text", "Who calls")
    bench.type(who)
    bench.keys("Return")
    bench.type(value)
    if give is not None:
        bench.keys("Tab")
        bench.type(give)
    bench.keys("Return")


def hands(bench):
    """From the name on: value, plus or minus, Add, then the three counts."""
    bench.keys("Tab", "Tab", "Tab", "Tab")
    bench.type("3")
    bench.keys("Tab")
    bench.type("5")
    bench.keys("Tab")
    bench.type("12")
    bench.keys("Return")


def test_a_round_of_calls():
    """two calls and a show of hands, revealed with the reading: scores are shown, and the file has every event"""
    with Bench() as bench:
        bench.close_cautions()
        bench.keys("ctrl+t")
        bench.find("text", "Reading of +5 V, board")
        path = poll(lambda: newest_session(practice=True), "the practice session")
        two_positions(bench, path)
        bench.keys("ctrl+k")
        bench.find("push button", "Ask the class")
        bench.keys("Return")
        asked = poll(lambda: calls(path), "the question in the file")[0]
        if asked["ask"] != "p12" or asked["place"] != "board" or not 8 < asked["was"] < 14:
            raise Failed(f"asked {asked}")
        poll(lambda: not bench.there("push button", "+12 V:"), "+12 V to be hidden, since no projector is open")
        call(bench, "team 1", "11.9", "0.2")
        poll(lambda: len(calls(path)) == 2, "the first call")
        call(bench, "team 2", "x")
        said(bench, "x")  # what was wrong is said, nothing is written
        bench.keys("ctrl+a")
        bench.type("12,1")
        bench.keys("Return")
        poll(lambda: len(calls(path)) == 3, "the second call")
        hands(bench)
        poll(lambda: len(calls(path)) == 4, "the hands")
        if calls(path)[1:] != [{"by": "team 1", "value": 11.9, "give": 0.2}, {"by": "team 2", "value": 12.1},
                               {"lower": 3, "same": 5, "higher": 12}]:
            raise Failed(f"written: {calls(path)}")
        bench.keys("ctrl+shift+k")
        said(bench, "Now read it")
        keep(bench, path)
        poll(lambda: len(calls(path)) == 5, "the reveal in the file")
        if calls(path)[-1] != {"reveal": events(path, "reading")[-1]["n"]}:
            raise Failed(f"revealed {calls(path)[-1]}")
        said(bench, "+12 V, board: ")
        said(bench, "The program expected ")
        shown = poll(lambda: {"team 1", "team 2", "show of hands", "the program"} <= set(labels(bench)) and labels(bench),
                     "everybody's points")
        points = [float(text) for text in shown if text.isdigit()]
        if not points or not all(0 <= point <= 100 for point in points):
            raise Failed(f"points {points}")
        bench.find("push button", "+12 V:")
        bench.keys("ctrl+z", "ctrl+z")  # the reveal, then its reading
        poll(lambda: len(events(path, "retract")) == 2, "the undo")


def where(bench, number):
    return said(bench, f"What the screw does · {number} of 12")


def test_a_lesson():
    """a lesson is chosen, paged to its end and back by the keys of a presenter's clicker, and a round opens with its step"""
    with Bench() as bench:
        bench.close_cautions()
        bench.keys("ctrl+shift+o")
        bench.find("list item", "What the screw does")
        bench.keys("Return")
        where(bench, 1)
        bench.wait_window()
        path = poll(lambda: newest_session(practice=True), "the lesson's session")
        for number in range(2, 6):
            bench.keys("Next")
            where(bench, number)
        bench.keys("Prior")
        where(bench, 4)
        bench.keys("Next", "Next")
        where(bench, 6)
        poll(lambda: [c["ask"] for c in calls(path)] == ["p12"], "the round of +12 V")
        call(bench, "row 1", "11.5")
        poll(lambda: len(calls(path)) == 2, "a call")
        bench.keys("Prior", "Next")  # nobody is asked twice
        where(bench, 6)
        if len(calls(path)) != 2:
            raise Failed(f"asked again: {calls(path)}")
        bench.keys("ctrl+shift+k")
        keep(bench, path)
        said(bench, "Done: on with Page Down.")
        bench.keys("Next", "Next")
        where(bench, 8)
        bench.keys("Next")
        said(bench, "A round of calls is open")
        where(bench, 8)
        for number in range(9, 13):
            bench.keys("Next")
            where(bench, number)
        said(bench, "row 1: rounds 1, points ")
        bench.keys("Next")
        where(bench, 12)
        if [c.get("ask") for c in calls(path) if "ask" in c] != ["p12", "m5"] or calls(path)[-1] != {"drop": True}:
            raise Failed(f"asked: {calls(path)}")


def large_text(percent):
    subprocess.run(["xprop", "-root", "-f", "RESOURCE_MANAGER", "8s", "-set", "RESOURCE_MANAGER",
                    f"Xft.dpi: {96 * percent // 100}"], check=True)


def page_through(lesson, down):
    """Every step of a lesson, with its rounds open, before a class: nothing is pushed out of the window."""
    with Bench() as bench:
        bench.close_cautions()
        bench.keys("ctrl+shift+o")
        bench.find("list item", lesson)
        bench.keys(*["Down"] * down, "Return")
        said(bench, f"{lesson} · 1 of ")
        bench.wait_window()
        window = bench.xid
        bench.keys("F5")
        said(bench, "The class sees:")
        xdo("windowactivate", "--sync", window)
        for step in range(16):
            height = int(xdo("getwindowgeometry", "--shell", window).split("HEIGHT=")[1].split()[0])
            if height > 800:
                raise Failed(f"{lesson}: after {step} presses the window is {height} pixels high")
            bench.keys("Next")
        said(bench, "The score")


def test_large_text():
    """with text half as large again a lesson stays in a window 800 pixels high, whatever its steps say and open"""
    large_text(150)
    try:
        page_through("What the screw does", 0)
        page_through("Wiring or supply?", 2)
    finally:
        large_text(100)


run(test_a_round_of_calls, test_a_lesson, test_large_text)
