"""The side of the bring-up, worked by keys: stages entered, spots read, questions answered, the label saved.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os

import bench_ui
from bench_ui import Failed, newest_session, poll, showing


def events(key):
    """Of the job that was written to last, on the bench or at the practice cabinet."""
    found = [path for path in (newest_session(), newest_session(practice=True)) if path is not None]
    return bench_ui.events(max(found, key=os.path.getmtime), key)


class Side:
    """The side of the bring-up; what is sought is sought there alone, which is quicker."""

    def __init__(self, bench):
        bench.keys("u")
        self.bench = bench
        node = bench.find("push button", "Stage: Look and isolate")
        while not any("Look and isolate" == (n.get_name() or "")[3:] for n in bench.all("label", within=node)):
            node = node.get_parent()
        self.node = node

    def there(self, role, name):
        return any(showing(n) for n in self.bench.all(role, name, within=self.node))

    def find(self, role, name):
        return self.bench.find(role, name, within=self.node)

    def says(self):
        return [n.get_name() for n in self.bench.all("label", within=self.node) if showing(n) and n.get_name()]

    def wait_gone(self, role, name):
        poll(lambda: not self.there(role, name), f"{role} {name!r} to go")

    def stands(self, title, word):
        """The stage stands in the list by this word."""
        poll(lambda: self.there("push button", f"Stage: {title}, {word}"), f"{title!r} to be {word!r}")


def enter(side, title):
    """O goes to the next stage, or to the first; its hazards are stated before its steps; O again says they were read."""
    bench = side.bench
    stages = len(events("stage"))
    poll(lambda: any(showing(n) and title in (n.get_name() or "") and "(O)" in n.get_name()
                     for n in bench.all("push button", within=side.node)), f"the way to {title!r}; {side.says()}")
    bench.keys("o")
    try:
        poll(lambda: len(events("stage")) == stages + 1, f"{title!r} to be entered")
    except Failed as error:
        raise Failed(f"{error}; the side says {side.says()}")
    side.find("push button", "I have read this")
    if any(side.there("label", head) for head in ("Steps", "To be measured", "To be answered")):
        raise Failed(f"{title!r}: what is to be done shows before its hazards were read")
    bench.keys("o")
    poll(lambda: events("stage")[-1]["stage"].get("read") is True, "what was read in the file")
    side.wait_gone("push button", "I have read this")


def answer(side, question, key):
    bench = side.bench
    poll(lambda: side.there("label", question), question)
    count = len(events("finding"))
    bench.keys(key)
    poll(lambda: len(events("finding")) == count + 1, f"the answer to {question!r}")
    return events("finding")[-1]["finding"]


def read(side, shown):
    """C aims at the first spot; each value kept aims at the next. @shown: pairs of a part of the spot's words and what
    the meter shows there, the first that fits."""
    bench = side.bench
    button = side.find("push button", "(C)")
    bench.keys("c")
    spots = []
    while showing(button):
        spots.append(button.get_name())
        count = len(events("reading"))
        bench.type(next(value for part, value in shown if part in spots[-1]))
        bench.keys("Return")
        poll(lambda: len(events("reading")) == count + 1, f"a reading: {spots[-1]}")
        poll(lambda: not showing(button) or button.get_name() != spots[-1], "the next spot, or none")
    return spots


def switch(bench, key, what, value):
    """The key tells the other of what was said last; the first time, that it is on, fitted or warm."""
    for _ in range(2):
        count = len(events("setup"))
        bench.keys(key)
        poll(lambda: len(events("setup")) > count, f"{what} to be said")
        if events("setup")[-1]["setup"].get(what) == value:
            return
    raise Failed(f"{what} is not {value}: {events('setup')}")


def measure(side):
    """C, and Space as soon as the practice meter has settled; returns the spots."""
    button = side.find("push button", "(C)")
    side.bench.keys("c")
    spots = []

    def kept(count):
        side.bench.keys("space")
        return len(events("reading")) > count

    while showing(button):
        spots.append(button.get_name())
        count = len(events("reading"))
        poll(lambda: kept(count), f"a reading: {spots[-1]}", 30, 0.15)
        poll(lambda: not showing(button) or button.get_name() != spots[-1], "the next spot, or none")
    return spots


def save_label(bench, path):
    save(bench, "ctrl+shift+l", "label", path)


def save_record(bench, path):
    save(bench, "ctrl+shift+r", "record", path)


def save(bench, keys, what, path):
    bench.keys(keys)
    poll(lambda: next((w for w in bench.windows() if w.get_name() == f"Save the {what}"), None), "the file dialog")
    poll(lambda: bench.focused().get_role_name() == "text", "the name in focus")
    bench.keys("ctrl+a")
    bench.type(path)
    bench.keys("Return")
    poll(lambda: os.path.exists(path) and os.path.getsize(path) > 0, f"the {what}")
    bench.find("label", f"The {what} was saved as")
    with open(path, "rb") as file:
        if not file.read().startswith(b"%PDF-"):
            raise Failed(f"the {what} is no PDF")
