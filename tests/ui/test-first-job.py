#!/usr/bin/python3
"""The first job of the README, by keyboard alone, on the practice cabinet.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import re

from bench_ui import Bench, Failed, newest_session, poll, run, showing
import bench_ui


def events(key):
    return bench_ui.events(newest_session(practice=True), key)


def follow_one(bench):
    """C takes what the card suggests; answers it; returns what it was."""
    before = len(events("reading")), len(events("finding"))
    bench.keys("c")
    found = poll(lambda: next((name for name in ("To the entry", "It is fixed", "Back")
                               if bench.there("push button", name)), None), "the card to be taken", 20)
    if found == "To the entry":
        poll(lambda: any(showing(node) and re.match("Keep [−0-9]", node.get_name() or "") for node in bench.all("push button")),
             "the meter to settle", 40)
        bench.keys("space")
        poll(lambda: len(events("reading")) == before[0] + 1, "the reading in the file")
        return "reading"
    if found == "It is fixed":
        bench.keys("c")
        poll(lambda: events("repair"), "the repair in the file")
        return "repair"
    bench.keys("Return")
    poll(lambda: len(events("finding")) == before[1] + 1, "the finding in the file")
    return "finding"


def test_first_job():
    """by keyboard alone: symptom, checks as suggested, the planted fault found and repaired, all rails inside"""
    with Bench("--practice") as bench:
        bench.close_cautions()
        poll(lambda: events("sample"), "the meter to speak")
        bench.keys("s")
        bench.find("push button", "Resets by itself: seen")
        bench.keys("Return")
        poll(lambda: events("symptom"), "the symptom in the file")
        bench.keys("Escape")
        bench.wait_gone("push button", "Resets by itself: seen")
        done = []
        while not done or done[-1] != "repair":
            if len(done) > 8:
                raise Failed(f"no repair after {done}")
            poll(lambda: bench.there("push button", "Take it") or bench.there("push button", "Do it"), "the next card", 20)
            done.append(follow_one(bench))
        cause = events("repair")[0]["repair"]
        if cause != {"cause": "plus5-wire-thin", "result": "fixed"}:
            raise Failed(f"repaired {cause} after {done}")
        bench.find("label", "Fixed")
        bench.keys("b")
        for _ in range(3):
            count = len(events("reading"))
            poll(lambda: bench.there("push button", "Keep"), "a button")
            rail = bench.find("text", "Reading of").get_name()
            poll(lambda: any("settled" in (n.get_name() or "") for n in bench.all("push button")), "the meter to settle", 40)
            bench.keys("space")
            poll(lambda: len(events("reading")) == count + 1, f"{rail} in the file")
            bench.keys("Down")
            poll(lambda: bench.find("text", "Reading of").get_name() != rail, "the next rail")
        for rail in ("+5 V", "+12 V", "−5 V"):
            poll(lambda: "inside" in bench.find("push button", rail + ":").get_name(), f"{rail} inside")


run(test_first_job)
