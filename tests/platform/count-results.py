#!/usr/bin/python3
"""Counts what "meson test" wrote to its testlog.json files, names what failed or was skipped, and ends in one line.

SPDX-License-Identifier: GPL-3.0-or-later

usage: count-results.py TESTLOG...

A test that speaks TAP counts with each of its sub-tests, any other as one. A test that ends badly although every
sub-test passed (a crash, a leak, a timeout) is one failure more. A whole test that skips itself lacks a tool that
tests/run.sh has to install, so it counts as failed; a skipped sub-test is named and counted as neither.
"""

import json
import re
import sys
from pathlib import Path

TAP_LINE = re.compile(r"^(not )?ok\b[ \d]*-? *([^#]*?) *(?:# *(SKIP|TODO)\b.*)?$", re.IGNORECASE)
GOOD = ("OK", "EXPECTEDFAIL")


def sub_tests(output):
    """Yields (name, state) for each line of a TAP stream; state is passed, failed or skipped."""
    if not re.search(r"^(TAP version|1\.\.)\d*", output, re.MULTILINE):
        return
    for line in output.splitlines():
        match = TAP_LINE.match(line)
        if match:
            broken, name, directive = match.groups()
            state = "skipped" if directive and directive.upper() == "SKIP" else "failed" if broken else "passed"
            yield name, state


def results(test):
    """Yields (name, state) for everything one meson test stands for."""
    parts = [(f"{test['name']}: {name}", state) for name, state in sub_tests(test.get("stdout") or "")]
    yield from parts
    if test["result"] not in GOOD and not any(state == "failed" for _, state in parts):
        if test["result"] != "SKIP" or not parts:
            yield f"{test['name']} ({test['result'].lower()})", "failed"
    elif not parts:
        yield test["name"], "passed"


def read(path):
    """The tests of one run; a log that is absent or empty is one failure, never nothing."""
    lines = Path(path).read_text("utf-8").splitlines() if Path(path).exists() else []
    if not lines:
        return [(f"{path}: no test has run", "failed")]
    return [result for line in lines for result in results(json.loads(line))]


def main(paths):
    if not paths:
        sys.exit(__doc__)
    found = [result for path in paths for result in read(path)]
    for wanted in ("skipped", "failed"):
        for name, state in found:
            if state == wanted:
                print(f"{wanted}: {name}")
    passed, failed = (sum(1 for _, state in found if state == wanted) for wanted in ("passed", "failed"))
    print(f"{passed} passed, {failed} failed")
    sys.exit(1 if failed or not passed else 0)


main(sys.argv[1:])
