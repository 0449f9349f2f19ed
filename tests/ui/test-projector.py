#!/usr/bin/python3
"""The projector by keyboard, from both windows: what the class sees, what it does not, and what the teacher is told.

SPDX-License-Identifier: GPL-3.0-or-later
"""

from bench_ui import Bench, Failed, poll, run, xdo


class Class(Bench):
    """A job with three readings and the projector open."""

    def begin(self):
        self.start_job("Tidepool Racer")
        for value in ("5.02", "11.87", "-4.91"):
            self.type(value)
            self.keys("Return")
        self.keys("Up")  # wraps: back from the first rail would be the last
        self.keys("F5")
        self.projector = poll(lambda: next((w for w in self.windows() if w.get_name() == "Projector"), None),
                              "the projector")
        self.wait_seen(lambda seen: "11.87" in seen, "the values")

    def seen(self):
        """What a screen reader is told of the projector's picture."""
        node = next(n for n in self.all(within=self.projector) if n.get_name() == "What the class sees")
        return node.get_description() or ""

    def wait_seen(self, check, what):
        try:
            return poll(lambda: check(self.seen()), what, 6)
        except Failed as error:
            raise Failed(f"{error}; seen: {self.seen()!r}")

    def wait_told(self, words):
        self.find(None, words, timeout=6)

    def focus(self, name):
        xid = poll(lambda: xdo("search", "--onlyvisible", "--name", name).split(), f"the window {name!r}")[-1]
        xdo("windowfocus", "--sync", xid)
        return xid


def test_follows():
    """the projector opens and closes by a key, and its values follow a reading that was just kept"""
    with Class() as bench:
        bench.begin()
        bench.wait_told("The class sees: values")
        seen = bench.seen()
        for words in ("+5 V: 5.02", "+12 V: 11.87", "−5 V: −4.91", "inside"):
            if words not in seen:
                raise Failed(f"{words!r} is not seen: {seen!r}")
        bench.focus("Tidepool Racer")
        bench.keys("alt+1")
        bench.type("5.11")
        bench.keys("Return")
        bench.wait_seen(lambda seen: "5.11" in seen and "5.02" not in seen, "the new reading")
        bench.keys("F5")
        poll(lambda: not any(w.get_name() == "Projector" for w in bench.windows()), "the projector to close")


def test_parts():
    """each part comes by a key, the check without beliefs, and one part can be enlarged"""
    with Class() as bench:
        bench.begin()
        for part, words in (("trim map", "Trim map"), ("chart over time", "Chart over time"), ("next check", "check")):
            bench.keys("F6")
            bench.wait_told(f"The class sees: {part}")
            bench.wait_seen(lambda seen, words=words: words in seen, part)
            if part == "next check" and "%" in bench.seen():
                raise Failed(f"beliefs are seen: {bench.seen()!r}")
        bench.keys("F6")
        bench.keys("shift+F6")
        bench.wait_told("values, enlarged")
        bench.wait_seen(lambda seen: seen.count(" V:") == 1, "one rail alone")
        bench.keys("shift+F6")
        bench.wait_seen(lambda seen: seen.count(" V:") == 3, "all rails again")


def test_blank_freeze_hide():
    """blank shows nothing, freeze holds what was seen, a hidden rail is nowhere, each from the main window"""
    with Class() as bench:
        bench.begin()
        bench.keys("F2")
        bench.wait_seen(lambda seen: seen == "", "nothing")
        bench.wait_told("The class sees nothing (blank)")
        bench.keys("F2")
        bench.wait_seen(lambda seen: "11.87" in seen, "the values")
        bench.focus("Tidepool Racer")
        bench.keys("alt+2", "shift+F2")
        bench.wait_told("+12 V hidden")
        for _ in range(4):
            bench.wait_seen(lambda seen: "+12" not in seen and "11.87" not in seen, "the rail to go")
            bench.keys("F6")
        bench.keys("shift+F2")
        bench.wait_seen(lambda seen: "11.87" in seen, "the rail again")
        bench.keys("F3")
        bench.wait_told("frozen picture")
        bench.keys("alt+1")
        bench.type("5.31")
        bench.keys("Return", "F6")
        bench.wait_told("frozen picture, then: trim map")
        if "5.02" not in bench.seen() or "5.31" in bench.seen():
            raise Failed(f"the frozen picture changed: {bench.seen()!r}")
        bench.keys("F6", "F6", "F6", "F3")
        bench.wait_seen(lambda seen: "5.31" in seen, "the present again")


def test_keys_in_the_projector():
    """the same keys work while the projector's window has the focus, the choice of a rail among them"""
    with Class() as bench:
        bench.begin()
        bench.focus("^Projector$")
        bench.keys("F2")
        bench.wait_seen(lambda seen: seen == "", "nothing")
        bench.keys("F2", "alt+3", "F4")
        bench.wait_told("−5 V in the spotlight")
        bench.keys("F4", "shift+F2")
        bench.wait_told("−5 V hidden")
        bench.wait_seen(lambda seen: "−5" not in seen and "11.87" in seen, "the rail to go")
        bench.keys("shift+F2", "F6")
        bench.wait_told("The class sees: trim map")
        bench.keys("F3")
        bench.wait_told("frozen picture")
        bench.keys("F3", "shift+F5", "F5")
        poll(lambda: not any(w.get_name() == "Projector" for w in bench.windows()), "the projector to close")


def test_clicker():
    """a presenter's clicker pages a lesson from the projector's window, and each step shows the class what it says"""
    with Class() as bench:
        bench.close_cautions()
        bench.keys("ctrl+shift+o")
        bench.find("list item", "What the screw does")
        bench.keys("Return")
        bench.find("label", "What the screw does · 1 of 12", timeout=20)
        bench.keys("F5")
        bench.projector = poll(lambda: next((w for w in bench.windows() if w.get_name() == "Projector"), None),
                               "the projector")
        bench.wait_seen(lambda seen: "A cabinet that resets." in seen, "the first step's text")
        bench.focus("^Projector$")
        bench.keys("Next")
        bench.find("label", "What the screw does · 2 of 12")
        bench.wait_seen(lambda seen: "A cabinet" not in seen and "+12 V" in seen, "the values")
        bench.wait_told("+5 V in the spotlight")
        bench.keys("Next", "Next")
        bench.wait_told("+12 V hidden")
        bench.wait_seen(lambda seen: "+12 V" not in seen and "+5 V" in seen, "+12 V to go")
        bench.keys("Prior")
        bench.find("label", "What the screw does · 3 of 12")
        bench.wait_seen(lambda seen: "+12 V" in seen, "+12 V to come back")


def test_private():
    """a note and the likely causes are private until they are sent over, and again when they are taken back"""
    with Class() as bench:
        bench.begin()
        bench.focus("Tidepool Racer")
        bench.keys("Escape", "alt+1")
        bench.keys("n")
        poll(lambda: bench.focused() is not None and bench.focused().get_role_name() == "text", "the note's field")
        bench.type("It is the edge connector")
        bench.keys("Return")
        for _ in range(4):
            bench.keys("F6")
            if "edge" in bench.seen():
                raise Failed(f"private words are seen: {bench.seen()!r}")
        bench.keys("ctrl+shift+y")
        bench.find("push button", "The last note")
        bench.keys("alt+n")
        bench.wait_seen(lambda seen: "It is the edge connector" in seen, "the note")
        bench.wait_told("the last note, sent over")
        bench.keys("ctrl+shift+y")
        bench.wait_seen(lambda seen: "edge" not in seen and "11.87" in seen, "the note to be taken back")
        bench.keys("ctrl+shift+y")
        bench.find("push button", "The likely causes")
        bench.keys("alt+c")
        bench.wait_seen(lambda seen: "Likely causes" in seen and "%" in seen, "the causes")
        bench.keys("ctrl+shift+y")
        bench.wait_seen(lambda seen: "%" not in seen, "the causes to be taken back")


def test_full_screen():
    """on one screen it is a plain window, which F11 makes fill the screen and Escape lets go"""
    with Class() as bench:
        bench.begin()

        def width(xid):
            lines = xdo("getwindowgeometry", "--shell", xid).split()
            return int(next(line for line in lines if line.startswith("WIDTH=")).split("=")[1])

        xid = bench.focus("^Projector$")
        if width(xid) >= 1280:
            raise Failed("it fills the only screen")
        bench.keys("F11")
        poll(lambda: width(xid) == 1280, "full screen")
        bench.keys("Escape")
        poll(lambda: width(xid) < 1280, "a window again")


if __name__ == "__main__":
    run(test_follows, test_parts, test_blank_freeze_hide, test_keys_in_the_projector, test_clicker, test_private,
        test_full_screen)
