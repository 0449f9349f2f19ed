"""Meters on pseudo-terminals that stand for serial ports: ones that send frames of digits, one that sends lines.

SPDX-License-Identifier: GPL-3.0-or-later

The frame of digits-14, as the data sheets of its chips lay it out: range 0x30+n, five digits 0x30+d, function,
status (bit 2 minus, bit 1 battery low, bit 0 overload), option bytes, carriage return, line feed. For volts the
function is 0x3B and range 1 is 22.000 V. The meter's line is 7O1; a pseudo-terminal has eight bits, so its bytes come
as through an adapter that is set to 8N1: with the odd parity in the eighth bit.
"""

import os
import threading
import tty


class PtyMeter:
    """Sends what make() gives, some times a second, from start() until stop()."""

    def __init__(self, interval=0.2):
        self.ours, self.theirs = os.openpty()
        tty.setraw(self.theirs)
        self.name = os.ttyname(self.theirs)
        self.interval = interval
        self.ended = threading.Event()
        self.thread = threading.Thread(target=self._talk, daemon=True)

    def make(self):
        raise NotImplementedError

    def _talk(self):
        while not self.ended.wait(self.interval):
            os.write(self.ours, self.make())

    def start(self):
        self.thread.start()
        return self

    def stop(self):
        self.ended.set()
        self.thread.join()
        os.close(self.theirs)
        os.close(self.ours)


def with_odd_parity(frame):
    return bytes(byte | (0 if bin(byte).count("1") % 2 else 0x80) for byte in frame)


class Digits14(PtyMeter):
    """DC volts on the range of 22.000 V."""

    def __init__(self, volts, **rest):
        super().__init__(**rest)
        self.volts = volts

    def make(self):
        counts = round(abs(self.volts) * 1000)
        status = 0x30 | (4 if self.volts < 0 else 0)
        option = bytes([0x30, 0x30, 0x30 | 8 | 2, 0x30])  # DC, automatic range
        return with_odd_parity(b"1" + b"%05d" % counts + bytes([0x3B, status]) + option + b"\r\n")


class Digits11(PtyMeter):
    """DC volts on the range of 6.000 V, as digits-11a: 0x34 in the status is a minus, in digits-11b a low battery."""

    def __init__(self, volts, **rest):
        super().__init__(**rest)
        self.volts = volts

    def make(self):
        counts = round(abs(self.volts) * 1000)
        status = 0x30 | (4 if self.volts < 0 else 0)
        return with_odd_parity(b"0" + b"%04d" % counts + bytes([0x3B, status, 0x30, 0x30 | 8 | 2]) + b"\r\n")


class Lines(PtyMeter):
    """Lines such as "17;-;5.012;V"."""

    def __init__(self, volts, **rest):
        super().__init__(**rest)
        self.volts = volts
        self.n = 0

    def make(self):
        self.n += 1
        sign = "-" if self.volts < 0 else "+"
        return f"{self.n};{sign};{abs(self.volts):.3f};V\r\n".encode()
