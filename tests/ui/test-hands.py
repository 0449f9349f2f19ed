#!/usr/bin/python3
"""Hands-free at the bench: both hands hold probes, and nothing is touched but the rails.

SPDX-License-Identifier: GPL-3.0-or-later

usage: test-hands.py PROGRAM SHIM    the shim lets a pseudo-terminal stand for a serial port
"""

import os
import random
import sys
import time

from bench_ui import Bench, Failed, newest_session, poll, press, run
from meter_pty import PtyMeter
import bench_ui

SHIM = sys.argv[2]


class Leads(PtyMeter):
    """A meter whose leads lie about until they touch something."""

    def __init__(self):
        super().__init__(interval=0.2)
        self.at = None
        self.drift = 0.1
        self.random = random.Random(5)

    def make(self):
        self.drift += self.random.uniform(-0.12, 0.12)
        volts = self.drift if self.at is None else self.at + 0.001 * self.random.randint(-1, 1)
        return f"{volts:.3f} V DC\r\n".encode()

    def touch(self, volts):
        self.at = volts

    def lift(self):
        self.at = None
        time.sleep(1.2)


def events(key):
    return bench_ui.events(newest_session(), key)


def kept():
    return [(r["reading"]["rail"], r["reading"]["place"], r["reading"]["value"]) for r in events("reading")]


def expect_kept(n, rail, volts):
    got = poll(lambda: len(kept()) >= n and kept(), f"{n} readings kept by themselves", 20)
    time.sleep(1.5)  # and no more of the same contact
    got = kept()
    if len(got) != n or got[-1][0] != rail or abs(got[-1][2] - volts) > 0.002:
        raise Failed(f"expected {n} readings, the last {rail} {volts}; kept {got}")


def listen(bench, meter):
    bench.keys("ctrl+m")
    press(bench.find("push button", "Add by hand"))
    bench.find("text", "Port or host").set_text_contents(meter.name)
    press(bench.find("push button", "Next"))
    for name, text in (("Name of the meter", "Cable meter"), ("Per cent", "0.5"), ("Counts", "2")):
        bench.find("text", name).set_text_contents(text)
    press(bench.find("push button", "Save and listen"))
    bench.find("label", "Waiting for the meter's first value")
    bench.keys("Escape")
    poll(lambda: len(bench.windows()) == 1, "the meters window to close")


def test_hands_free():
    """rails are kept where they are touched, a value of none is asked about, and the big view shows the rail"""
    meter = Leads()
    with Bench(env={"LD_PRELOAD": SHIM}) as bench:
        bench.start_job("Pier Pilot")
        listen(bench, meter)
        meter.start()
        bench.keys("k")
        bench.find(None, "Hands-free: on")
        meter.lift()
        meter.touch(5.021)
        expect_kept(1, "p5", 5.021)
        meter.lift()
        meter.touch(11.93)
        expect_kept(2, "p12", 11.93)
        meter.lift()
        meter.touch(4.31)  # too low to be sure which rail this is
        poll(lambda: bench.there("label", "4.31"), "a question or a remark about 4.31 V", 20)
        if len(kept()) != 2:
            raise Failed(f"kept what it could not know: {kept()}")
        bench.keys("d")
        poll(lambda: any("which rail?" in (node.get_description() or "") for node in bench.all("status bar")),
             "the big view to ask which rail")
        bench.keys("d")
        bench.find("push button", "+5 V, board (Y)")
        time.sleep(1)
        bench.keys("y")
        poll(lambda: len(kept()) == 3, "the value to be kept as answered")
        if kept()[-1][0] != "p5":
            raise Failed(f"answered +5 V, kept {kept()[-1]}")
        meter.stop()


run(test_hands_free)
