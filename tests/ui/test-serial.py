#!/usr/bin/python3
"""A meter on a serial cable, in the window: listen, keep what settled, and notice when it is unplugged.

SPDX-License-Identifier: GPL-3.0-or-later

usage: test-serial.py PROGRAM SHIM    the shim lets a pseudo-terminal stand for a serial port
"""

import os
import sys
import threading
import time
import tty

from bench_ui import Bench, Failed, newest_session, poll, press, run
import bench_ui

SHIM = sys.argv[2]


class Meter:
    """Sends lines, as a meter does, five a second; with numbers that tell whether one was lost."""

    def __init__(self):
        self.ours, theirs = os.openpty()
        tty.setraw(theirs)
        self.name = os.ttyname(theirs)
        self.theirs = theirs
        self.sent = 0
        self.volts = 5.021
        self.stop = threading.Event()
        self.thread = threading.Thread(target=self.talk, daemon=True)

    def talk(self):
        while not self.stop.wait(0.2):
            os.write(self.ours, f"{self.volts + 0.001 * (self.sent % 2):.3f} V DC\r\n".encode())
            self.sent += 1

    def turn_to(self, volts):
        """As somebody turns the screw: in small steps over two seconds."""
        start, steps = self.volts, 20
        for i in range(1, steps + 1):
            self.volts = start + (volts - start) * i / steps
            time.sleep(0.1)

    def fall_silent(self):
        self.stop.set()
        self.thread.join()

    def unplug(self):
        os.close(self.theirs)
        os.close(self.ours)


def events(key):
    return bench_ui.events(newest_session(), key)


def test_serial():
    """values arrive, the settled one is kept with Space, a turn of the trim is noticed once, and unplugging leaves a gap within a second"""
    meter = Meter()
    with Bench(env={"LD_PRELOAD": SHIM}) as bench:
        bench.start_job("Pier Pilot")
        bench.keys("ctrl+m")
        press(bench.find("push button", "Add by hand"))
        bench.find("text", "Port or host").set_text_contents(meter.name)
        press(bench.find("push button", "Next"))
        for name, text in (("Name of the meter", "Cable meter"), ("Per cent", "0.5"), ("Counts", "2")):
            bench.find("text", name).set_text_contents(text)
        press(bench.find("push button", "Save and listen"))
        bench.find("label", "Waiting for the meter's first value")
        meter.thread.start()
        poll(lambda: len(events("sample")) >= 3, "samples in the file")
        bench.keys("Escape")
        bench.find("push button", "settled", timeout=30)
        bench.keys("space")
        reading = poll(lambda: events("reading"), "a kept reading")[0]["reading"]
        if not 5.0209 <= reading["value"] <= 5.0221 or reading["place"] != "board" or reading["step"] != 0.001:
            raise Failed(f"kept {reading}")
        meter.turn_to(5.101)
        poll(lambda: events("trim"), "the turn noticed by itself", 15)
        bench.find("label", "A turn of the trim was noticed")
        time.sleep(3)
        if len(events("trim")) != 1:
            raise Failed(f"one turn was noticed {len(events('trim'))} times")
        meter.fall_silent()
        poll(lambda: len(events("sample")) == meter.sent, f"each of {meter.sent} values as one sample", 5)
        meter.unplug()
        start = time.monotonic()
        poll(lambda: events("gap"), "a gap in the file", 5)
        waited = time.monotonic() - start
        if waited > 1.6:
            raise Failed(f"unplugging took {waited:.1f} s to show in the file")


run(test_serial)
