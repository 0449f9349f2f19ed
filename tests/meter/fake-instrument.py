#!/usr/bin/env python3
# fake-instrument.py: for tests: an instrument on a pseudo-terminal or in the network that knows a little SCPI.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Written from IEEE Std 488.2-1992 and SCPI-1999, without a look at the program: it is the other side.
# Prints "ready" (and its TCP port), then one line for each thing that it was told or found amiss.
#
#   fake-instrument.py PORT-LINK|tcp[:PORT] [nameless] [deaf=N] [slow=SECONDS] [crlf] [loud] [noac] [faults=N] [mute]
#
#   nameless  does not know *IDN?          deaf=N    swallows the first N READ?
#   slow=S    takes S seconds for READ?    crlf      ends its answers with CR LF
#   loud      sends an error message before each third value
#   noac      does not know CONF:VOLT:AC   faults=N  finds N faults in itself at each CONF
#   mute      does not know SYST:ERR?
#
# What it measures tells what it was set to: DC 0, 1.5, 3 …; AC -1, -2, -3 …; ohms 1000000, 1000001 …; each
# tenth DC value is an overload.
import os
import pty
import socket
import sys
import termios
import time
import tty

place = sys.argv[1]
options = dict(o.partition("=")[::2] for o in sys.argv[2:])
deaf = int(options.get("deaf", 0))
slow = float(options.get("slow", 0))
faults = int(options.get("faults", 0))
end = "\r\n" if "crlf" in options else "\n"


def note(text):
    print(text, flush=True)


def nr3(value):
    mantissa, exponent = ("%+.8E" % value).split("E")
    return "%sE%+03d" % (mantissa, int(exponent))


class Instrument:
    def __init__(self, send):
        self.send = send
        self.kind = None
        self.errors = []
        self.pending = b""

    def answer(self, text):
        self.send((text + end).encode("ascii"))

    def measure(self):
        number = counts[self.kind]
        counts[self.kind] += 1
        if self.kind == "VOLT:AC":
            return nr3(-1 - number)
        if self.kind == "RES":
            return nr3(1e6 + number)
        return "+9.90000000E+37" if number % 10 == 9 else nr3(1.5 * number)

    def read(self):
        global deaf
        if self.kind is None:
            note("READ? before CONF")
            return
        if deaf > 0:
            deaf -= 1
            return
        time.sleep(slow)
        if "loud" in options and counts[self.kind] % 3 == 2:
            self.answer('-230,"Data corrupt or stale"')
        self.answer(self.measure())

    def configure(self, kind):
        if kind not in counts or ("noac" in options and kind == "VOLT:AC"):
            self.errors.append('-113,"Undefined header;CONF:%s"' % kind)
            return
        self.kind = kind
        self.errors += ['+5%02d,"Fan ""%d"" stands still"' % (i, i) for i in range(faults)]

    def obey(self, command):
        note("told " + command)
        if command == "*CLS":
            self.errors.clear()
        elif command == "*IDN?" and "nameless" not in options:
            self.answer("QUAYSIDE,M3,0,1.0")
        elif command.startswith("CONF:"):
            self.configure(command[5:])
        elif command == "READ?":
            self.read()
        elif command == "SYST:ERR?" and "mute" not in options:
            self.answer(self.errors.pop(0) if self.errors else '+0,"No error"')
        else:
            self.errors.append('-113,"Undefined header"')

    def hear(self, data):
        self.pending += data
        while b"\n" in self.pending:
            line, self.pending = self.pending.split(b"\n", 1)
            # One message at a time: a second one that is already here interrupts the query (-410).
            if self.pending and line.strip().endswith(b"?"):
                note("query interrupted")
            self.obey(line.decode("ascii").strip())


def serve(read, send):
    """Until the line is cut."""
    instrument = Instrument(send)
    try:
        while True:
            data = read(1024)
            if not data:
                break
            instrument.hear(data)
    except OSError:
        pass


counts = {"VOLT:DC": 0, "VOLT:AC": 0, "RES": 0}

if place.startswith("tcp"):
    server = socket.create_server(("127.0.0.1", int(place[4:] or 0)))
    note("ready %d" % server.getsockname()[1])
    while True:
        line, _ = server.accept()
        note("connected")
        serve(line.recv, line.sendall)
else:
    master, slave = pty.openpty()
    tty.setraw(slave, termios.TCSANOW)
    os.symlink(os.ttyname(slave), place)
    note("ready")
    serve(lambda n: os.read(master, n), lambda data: os.write(master, data))
