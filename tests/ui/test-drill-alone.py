#!/usr/bin/python3
"""A drill without suggestions: nothing is advised, nothing is empty, and every repair can be done by keyboard alone.

SPDX-License-Identifier: GPL-3.0-or-later
"""

from bench_ui import Bench, Failed, poll, run, states
from drill_ui import begin, complaint, has_come, is_cured, say
from stage_ui import events

DRILL = "1-12"  # a poor crimp


def test_unadvised():
    """without suggestions there are symptoms to be said, words in every pane, and every repair to be done"""
    with Bench() as bench:
        begin(bench, DRILL, suggestions=False, window=has_come)
        bench.keys("Escape")
        has_come(bench, f"Drill {DRILL} ·")
        for words in ("This drill is worked without suggestions: measure, look", "None are named in this drill",
                      "nothing is planned ahead"):
            bench.find("label", words)
        say(bench, complaint(bench)[:1])
        bench.keys("ctrl+r")
        poll(lambda: "focused" in states(bench.find(None, "Search the repairs")), "the search of the repairs")
        bench.type("ground wire heavy")
        poll(lambda: bench.there("push button", "Add a heavy ground wire, for: Ground wire"), "the repair")
        if bench.there("push button", ", for: Poor crimp"):
            raise Failed("the search leaves what it does not look for")
        bench.keys("ctrl+a")
        bench.type("crimp")
        bench.keys("Return")
        bench.find("label", "Repair: Poor crimp")
        if bench.there("label", "likely: "):
            raise Failed("a chance is told where no advice is given")
        poll(lambda: bench.focused().get_name() == "Do it", "the repair to have the keyboard")
        bench.keys("c")
        bench.find("label", "Did it cure it?")
        if not is_cured(bench):
            raise Failed("the repair did not mend the cabinet")
        bench.keys("c")
        bench.find("label", "Fixed")
        if events("repair")[-1]["repair"] != {"cause": "poor-crimp", "result": "fixed"}:
            raise Failed(f"repaired {events('repair')}")


run(test_unadvised)
