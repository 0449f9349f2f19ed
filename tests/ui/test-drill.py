#!/usr/bin/python3
"""A drill by keyboard alone, from the complaint to the label and its end.

SPDX-License-Identifier: GPL-3.0-or-later
"""

import os
import re
import tempfile

from bench_ui import Bench, Failed, poll, run, showing, states
from drill_ui import begin, complaint, go, has_come, is_cured, put, say
from stage_ui import Side, answer, enter, events, measure, save_label, switch

DRILL = "1-12"  # a poor crimp in a cabinet of two rails
MOST_STEPS = 14


def keep_by_hand(bench):
    """In the bench window: the tips on +5 V at the supply's screws, the settled value kept there."""
    go(bench, "Left Left Left", "+5 V, screw at the supply")
    put(bench, "Return", "red")
    go(bench, "Up", "0 V, screw at the supply")
    put(bench, "space", "black")
    bench.keys("t")

    def kept():
        bench.keys("ctrl+Return")
        return events("reading")

    reading = poll(kept, "a reading", 30, 0.4)[0]["reading"]
    if (reading["rail"], reading["place"]) != ("p5", "terminals") or not 4.9 < reading["value"] < 5.4:
        raise Failed(f"kept {reading}")


class Card:
    """The card of the next step; what is sought is sought there alone."""

    def __init__(self, bench):
        self.bench = bench
        node = bench.find("push button", "Take it")
        while not any("Ask another way" in (n.get_name() or "") for n in bench.all(within=node)):
            node = node.get_parent()
        self.node = node.get_parent()

    def words(self):
        return [n.get_name() for n in self.bench.all("label", within=self.node) if showing(n) and n.get_name()]

    def there(self, name, role="label"):
        return any(showing(n) for n in self.bench.all(role, name, within=self.node))


def took(card):
    """What C did: a look waits for its outcome, a measuring check for its value, a repair asks whether it cured."""
    def what():
        if card.there("Did it cure it?"):
            return "repair"
        if card.there("To the entry", "push button"):
            return "measure"
        return "look" if card.there("At the practice cabinet you find") else None

    return poll(what, f"something to do: {card.words()[:4]}")


def keep_settled(bench):
    count = len(events("reading"))

    def kept():
        bench.keys("space")
        return len(events("reading")) > count

    poll(kept, "a reading", 30, 0.3)


def step(bench, card):
    """C takes what is suggested; FALSE: nothing more is."""
    done = len(events("finding")) + len(events("reading")) + len(events("repair"))
    bench.keys("c")
    what = took(card)
    if what == "look":
        poll(lambda: "push button" == bench.focused().get_role_name(), "an outcome in focus")
        bench.keys("Return")
    elif what == "measure":
        keep_settled(bench)
    elif is_cured(bench):
        bench.keys("c")
    else:
        raise Failed("the first repair that is suggested is not the cure, although the fault is a plain one")
    poll(lambda: len(events("finding")) + len(events("reading")) + len(events("repair")) > done, f"a {what} in the file")
    return what != "repair"


def diagnose(bench):
    """Follows the suggestions from the complaint to the cure."""
    card = Card(bench)
    steps = 1
    while step(bench, card):
        steps += 1
        if steps > MOST_STEPS:
            raise Failed(f"no end after {MOST_STEPS} steps")
        poll(lambda: card.there("Take it", "push button") or card.there("Do it", "push button"), "the next step")
    poll(lambda: card.there("Fixed"), "the end of the diagnosis")
    repair = events("repair")[-1]["repair"]
    if repair != {"cause": "poor-crimp", "result": "fixed"}:
        raise Failed(f"repaired {repair}")
    if not events("finding") or len(events("reading")) < 2:
        raise Failed("the diagnosis looked at nothing, or measured nothing")


def prove_supply(side):
    bench = side.bench
    enter(side, "Look and isolate")
    switch(bench, "p", "power", "off")
    for question in ("Is the plug out", "Does the earth wire", "Are the mains screws", "Is it free of burnt"):
        answer(side, question, "y")
    enter(side, "Supply without the board")
    switch(bench, "f", "board", "out")
    switch(bench, "p", "power", "on")
    measure(side)
    answer(side, "Does a dummy load hang on the supply?", "y")
    switch(bench, "p", "power", "off")
    enter(side, "Fit the board")
    for question in ("Have the rails fallen", "Do key and row", "Is this the cabinet's own board"):
        answer(side, question, "y")
    switch(bench, "f", "board", "fitted")


def load(side):
    """Nothing of a cabinet that was mended stops the way from first power to the trim."""
    bench = side.bench
    enter(side, "First power")
    switch(bench, "p", "power", "on")
    measure(side)
    enter(side, "Under load")
    measure(side)
    enter(side, "Set the trim")
    side.stands("Set the trim", "now")
    bench.keys("bracketright", "bracketright")
    poll(lambda: events("trim"), "the turn in the file")
    side.find("label", "+5 V, board: ")
    poll(lambda: side.there("push button", "(C)"), "the reading after the turn to be asked for")
    if not measure(side):
        raise Failed("nothing was read after the turn")
    enter(side, "Read every rail again")
    measure(side)


def let_pass(bench, keys):
    """In the bench window time goes by at once; the value is kept there."""
    count = len(events("reading"))
    bench.keys(*keys)

    def kept():
        bench.keys("ctrl+Return")
        return len(events("reading")) > count

    poll(kept, "a reading", 30, 0.4)


def warm_up(side):
    bench = side.bench
    enter(side, "Warm-up")
    measure(side)
    bench.keys("ctrl+b")
    has_come(bench, "Practice bench")
    for keys in (["shift+F4"] * 5, ["F4"], ["F4", "F4"], ["F4", "F4", "F4"]):
        let_pass(bench, keys)
    bench.keys("Escape")
    has_come(bench, f"Drill {DRILL} ·")
    answer(side, "After 20 minutes, can the connector be held?", "y")
    side.find("push button", "Next stage: Volume, lamps, cold starts")
    enter(side, "Volume, lamps, cold starts")
    for question in ("volume up and down", "all lamps on", "three cold starts"):
        answer(side, question, "y")


def name_person(side, name):
    """Tab comes to the line for who did it."""
    entry = side.find("text", "Who did it")
    for _ in range(80):
        if "focused" in states(entry):
            side.bench.type(name)
            return
        side.bench.keys("Tab")
    raise Failed("Tab does not reach who did it")


def label_words(side):
    """The text of the label, as a screen reader is told it."""
    return poll(lambda: side.find("image", "The label").get_description(), "the label in words")


def close(side, path):
    """The label has what was read last, at the board and at the terminals."""
    bench = side.bench
    enter(side, "Close")
    switch(bench, "p", "power", "off")
    answer(side, "Are all covers and earth wires back on?", "y")
    name_person(side, "R. Harbour")
    poll(lambda: "R. Harbour" in label_words(side), "the name on the label")
    words = label_words(side)
    last = {}
    for event in events("reading"):
        reading = event["reading"]
        if reading["kind"] == "dc" and reading["place"] in ("board", "terminals"):
            last[reading["rail"], reading["place"]] = reading["value"]
    wanted = f"+5 V: {last['p5', 'board']:.3f} V at the board, {last['p5', 'terminals']:.3f} V at the terminals"
    plain = words.replace("\u202f", " ").replace("\u00a0", " ")
    if f"Drill {DRILL}" not in plain or wanted not in plain or not re.search(r"Set \d{4}-\d\d-\d\d, warm", plain):
        raise Failed(f"the label says {plain!r}, not {wanted!r}")
    save_label(bench, path)


def end(bench):
    bench.keys("F8")
    has_come(bench, "The end of this drill")
    bench.find("push button", "Show what it was")
    bench.keys("Tab", "Return")
    bench.find("label", "Which check decided", timeout=60)
    window = next(w for w in bench.windows() if "The end of this drill" in (w.get_name() or ""))
    words = [n.get_name() for n in bench.all("label", within=window) if n.get_name()]
    told = dict(zip(words[0::2], words[1::2]))
    if "Poor crimp" not in told["What was wrong"] or "That is it" not in told["Your verdict"]:
        raise Failed(f"it was {told}")
    if not re.match(r"\d+ minutes, as checks", told["You spent"]):
        raise Failed(f"spent {told['You spent']}")
    if not re.match(r"\d+ minutes$", told["The program's own order would have cost"]):
        raise Failed(f"the best order is {told}")
    if "× " in told["Which check decided"] or "×" not in told["Which check decided"]:
        raise Failed(f"what decided is {told['Which check decided']}")
    if not re.match(r"1\. .*fixed$", told["That order, on this very cabinet"], re.S):
        raise Failed(f"the order is {told['That order, on this very cabinet']}")


def test_drill():
    """from the complaint through diagnosis and repair, the stages and the warm-up to label and end, by keyboard alone"""
    with tempfile.TemporaryDirectory() as folder, Bench() as bench:
        begin(bench, DRILL, window=has_come)
        keep_by_hand(bench)
        bench.keys("Escape")
        has_come(bench, f"Drill {DRILL} ·")
        say(bench, complaint(bench))
        diagnose(bench)
        side = Side(bench)
        prove_supply(side)
        load(side)
        warm_up(side)
        path = os.path.join(folder, "label.pdf")
        close(side, path)
        end(bench)
        entered = [e["stage"]["id"] for e in events("stage") if "read" not in e["stage"]]
        if len(entered) != 10 or any("against" in e["stage"] for e in events("stage")):
            raise Failed(f"the file has the stages {entered}, or somebody went on against advice")


run(test_drill)
