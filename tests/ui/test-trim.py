#!/usr/bin/python3
"""Trimming at the bench, by keyboard: two positions are read, and the rest is expected, advised and asked for.

SPDX-License-Identifier: GPL-3.0-or-later
"""

from bench_ui import Bench, Failed, events, poll, run, xdo


def card(bench, rail):
    return bench.find("push button", rail + ":").get_name()


def read_all(bench, *values):
    for value in values:
        bench.type(value)
        bench.keys("Return")


def summary_of_map(bench):
    return bench.find("image", "Trim map").get_description()


def test_trim():
    """after two positions the others are expected, the map says the window, and the recheck goes to its end"""
    with Bench() as bench:
        path = bench.start_job("Tidepool Racer")
        bench.keys("Escape", "v")
        poll(lambda: "Trim map" in bench.find("image", "Trim map").get_name(), "the map")
        bench.keys("Escape")
        read_all(bench, "5.18", "12.30", "-4.86")
        poll(lambda: len(events(path, "reading")) == 3, "three readings")
        bench.keys("r")
        poll(lambda: len(events(path, "trim")) == 1, "the turn in the file")
        poll(lambda: "read again: next" in card(bench, "+5 V"), "+5 V asked for first")
        bench.find("status bar", "Read again after the turn, board: +5 V next")
        read_all(bench, "4.92")
        # 0.26 V down on +5 V: the profile expects 0.62 V less on +12 V.
        poll(lambda: "expected, not measured" in card(bench, "+12 V"), "+12 V expected")
        if "≈ 11.7" not in card(bench, "+12 V").replace("\N{NARROW NO-BREAK SPACE}", " "):
            raise Failed(f"+12 V is expected as {card(bench, '+12 V')}")
        poll(lambda: "was 12.30" in card(bench, "+12 V"), "what +12 V was")
        xdo("mousemove", 2, 2)  # nothing pointed at: the map tells all of it
        # The entry goes to the rail that tells most: −5 V, near its limit.
        bench.find("text", "Reading of −5 V, board")
        read_all(bench, "-4.62")
        bench.find("text", "Reading of +12 V, board")
        read_all(bench, "11.69")
        poll(lambda: "inside" in card(bench, "+12 V") and "expected" not in card(bench, "+12 V"), "+12 V measured")
        words = poll(lambda: "set point" in summary_of_map(bench).lower() and summary_of_map(bench), "the map's words")
        if "+12 V" not in words or "−5 V" not in words:
            raise Failed(f"the map says {words}")


run(test_trim)
