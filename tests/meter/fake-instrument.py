#!/usr/bin/env python3
# fake-instrument.py: for tests: an instrument on a pseudo-terminal that knows a little SCPI.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# Written from IEEE Std 488.2-1992 and SCPI-1999, without a look at the program: it is the other side.
# Prints the name of its port, then one line for each thing that it was told or found amiss.
#
#   fake-instrument.py PORT-LINK [nameless] [deaf=N] [slow=SECONDS] [crlf] [loud]
#
#   nameless  does not know *IDN?          deaf=N   swallows the first N READ?
#   slow=S    takes S seconds for READ?    crlf     ends its answers with CR LF
#   loud      sends an error message before each third value
import os
import pty
import sys
import termios
import time
import tty

link = sys.argv[1]
options = dict(o.partition("=")[::2] for o in sys.argv[2:])
deaf = int(options.get("deaf", 0))
slow = float(options.get("slow", 0))
end = "\r\n" if "crlf" in options else "\n"

master, slave = pty.openpty()
tty.setraw(slave, termios.TCSANOW)
os.symlink(os.ttyname(slave), link)


def note(text):
    print(text, flush=True)


def answer(text):
    os.write(master, (text + end).encode("ascii"))


def nr3(value):
    mantissa, exponent = ("%+.8E" % value).split("E")
    return "%sE%+03d" % (mantissa, int(exponent))


configured = False
count = 0
pending = b""


def read():
    """READ?: values 0, 1.5, 3 … and each tenth an overload."""
    global count, deaf
    if not configured:
        note("READ? before CONF")
        return
    if deaf > 0:
        deaf -= 1
        return
    time.sleep(slow)
    if "loud" in options and count % 3 == 2:
        answer('-230,"Data corrupt or stale"')
    answer("+9.90000000E+37" if count % 10 == 9 else nr3(1.5 * count))
    count += 1


def obey(command):
    global configured
    note("told " + command)
    if command == "*CLS":
        return
    if command == "*IDN?":
        if "nameless" not in options:
            answer("QUAYSIDE,M3,0,1.0")
    elif command == "CONF:VOLT:DC":
        configured = True
    elif command == "READ?":
        read()
    else:
        note("unknown command " + repr(command))


note("ready")
while True:
    try:
        data = os.read(master, 1024)
    except OSError:
        break
    if not data:
        break
    pending += data
    while b"\n" in pending:
        line, pending = pending.split(b"\n", 1)
        # One message at a time: a second one that is already here interrupts the query (-410).
        if pending and line.strip().endswith(b"?"):
            note("query interrupted")
        obey(line.decode("ascii").strip())
