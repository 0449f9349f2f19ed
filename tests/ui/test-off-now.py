#!/usr/bin/python3
"""First power, watched: what the meter shows says "off now" before anything is kept, and not when the supply is well.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import time

from bench_ui import Bench, Failed, poll, press, run
from drill_ui import begin, focus_window
from stage_ui import Side, events, switch

SHORTED = "1-18"  # a drill whose board is shorted: the supply cannot hold it up
HIGH = "1-1"  # one whose trim stands too high


def come_to_first_power(bench):
    """A quick job may start anywhere; the power is off, the board in, the leads at the reference on the board."""
    side = Side(bench)
    switch(bench, "p", "power", "off")
    press(side.find("push button", "Stage: First power"))
    side.find("push button", "Go to “First power”")
    bench.keys("o")
    side.find("push button", "I have read this")
    bench.keys("o")
    side.wait_gone("push button", "I have read this")
    bench.keys("alt+1", "b")
    return side


def volts():
    """What the meter shows; the newest."""
    return events("sample")[-1]["sample"].get("value") or 0


def is_told(bench):
    return bench.there("label", "Off now: +5 V stands at")


def check_stopped(side):
    """The words are everywhere, the work nowhere, and nothing was kept."""
    poll(lambda: side.there("label", "Stop: Off now: +5 V"), "the stage to say it too")
    side.stands("First power", "stopped")
    if side.there("label", "Steps") or side.there("push button", "(C)"):
        raise Failed("there is something to be done while the power must go off")
    entered = len(events("stage"))
    side.bench.keys("o")
    side.bench.find("label", "This stage is stopped")
    if len(events("stage")) != entered or events("reading"):
        raise Failed("the stage was left, or a value was kept")


def check_over(side):
    """The power goes off, and the words with it."""
    switch(side.bench, "p", "power", "off")
    poll(lambda: not is_told(side.bench), "the words to go")
    poll(lambda: not side.there("label", "Stop: Off now"), "the stage to be open again")


def test_too_low():
    """a board that pulls the supply down is told in the first seconds under power, from the live value alone"""
    with Bench() as bench:
        begin(bench, SHORTED)
        bench.keys("Escape")
        focus_window(bench, "· practice")
        side = come_to_first_power(bench)
        switch(bench, "p", "power", "on")
        start = time.monotonic()
        poll(lambda: is_told(bench), "off now", 6)
        waited = time.monotonic() - start
        poll(lambda: 0 < volts() < 4, "the value to be in the file", 2)
        if waited > 5:
            raise Failed(f"told after {waited:.1f} s")
        check_stopped(side)
        check_over(side)


def test_too_high():
    """a supply that is turned too high is told at once; turned back with the power off, it comes up and is let be"""
    with Bench() as bench:
        begin(bench, HIGH)
        bench.keys("Escape")
        focus_window(bench, "· practice")
        side = come_to_first_power(bench)
        switch(bench, "p", "power", "on")
        poll(lambda: is_told(bench), "off now", 4)
        poll(lambda: volts() > 5.5, "the value to be in the file", 2)
        check_stopped(side)
        check_over(side)
        bench.keys(*["bracketleft"] * 36)
        poll(lambda: volts() < 0.5, "the rail to fall")
        switch(bench, "p", "power", "on")
        end = time.monotonic() + 4
        while time.monotonic() < end:
            if is_told(bench):
                raise Failed(f"told at {volts()} V while the supply came up")
        if not 4.5 < volts() < 5.45:
            raise Failed(f"the supply stands at {volts()} V")
        side.stands("First power", "now")


run(test_too_low, test_too_high)
