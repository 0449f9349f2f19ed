#!/usr/bin/python3
"""What the demo sessions are made of, and what the program concludes from each when it is replayed.

SPDX-License-Identifier: GPL-3.0-or-later

usage: test-demos.py RAILWRIGHT-LOG MAKE-SESSION DEMO-FOLDER
"""

import json
import subprocess
import sys
import tempfile
from pathlib import Path

LOG, MAKE, FOLDER = sys.argv[1], sys.argv[2], Path(sys.argv[3])

# demo: the cause that must lead, and the event before which it must: a trim, and a board that is plugged again,
# outdate what was read before; with "finding" it is the first such event after the last finding
DEMOS = {
    "tidepool-racer-trim": ("trim-low", "trim"),
    "lantern-drift-wiring": ("edge-oxidised", "setup", "finding"),
    "foghorn-alley-hum": ("audio-filter-tired", "repair"),
    "kelp-gardens-minus-five": ("minus5-lost-supply", "repair"),
    "marble-orchard-wiggle": ("cracked-joint", "setup", "finding"),
    "paper-lighthouse-class": ("trim-low", "trim"),
    "copper-comet-bring-up": ("trim-low", "trim"),
}

# ends with the cause found and not mended
UNMENDED = {"tidepool-racer-a-year-later": "edge-oxidised"}


def summary(path):
    done = subprocess.run([LOG, "summary", "--json", path], capture_output=True, text=True)
    if done.returncode != 0:
        raise AssertionError(f"summary of {path}: {done.stderr}")
    return json.loads(done.stdout)


def lines_of(name):
    return (FOLDER / f"{name}.rwlog").read_text(encoding="utf-8").splitlines(keepends=True)


def until(lines, key, folder, after=0):
    """The session up to just before the event with this payload."""
    for i, line in enumerate(lines):
        if i > after and key in json.loads(line):
            cut = Path(folder) / "cut.rwlog"
            cut.write_text("".join(lines[:i]), encoding="utf-8")
            return str(cut)
    raise AssertionError(f"there is no {key}")


def spot(found, rail, place):
    return next(r for r in found["rails"] if r["rail"] == rail and r["place"] == place)


def test_made(name):
    """was made by the practice cabinet from its script, number for number"""
    with tempfile.TemporaryDirectory() as folder:
        made = Path(folder) / "made.rwlog"
        subprocess.run([MAKE, str(FOLDER / f"{name}.steps"), str(made)], check=True)
        assert made.read_bytes() == (FOLDER / f"{name}.rwlog").read_bytes(), "differs from what its script gives"


def test_cause(name):
    """before the repair the planted cause leads, and afterwards nothing is left outside"""
    cause, event, *past = DEMOS[name]
    lines = lines_of(name)
    after = max((i for i, line in enumerate(lines) if any(key in json.loads(line) for key in past)), default=0)
    with tempfile.TemporaryDirectory() as folder:
        before = summary(until(lines, event, folder, after))
        assert before["causes"][0]["cause"] == cause, f"leads: {before['causes'][:3]}"
        assert before["causes"][0]["p"] > 0.6, f"leads weakly: {before['causes'][:3]}"
    after = summary(str(FOLDER / f"{name}.rwlog"))
    outside = [r for r in after["rails"] if r["verdict"] == "outside" and not r["stale"]]
    assert not outside, f"still outside: {outside}"
    assert not after["warnings"], after["warnings"]
    assert after["causes"][0]["cause"] == cause
    assert {s["state"] for s in after["symptoms"]} == {"cured"}, after["symptoms"]


def test_story(name):
    """has notes and marks that tell it"""
    kinds = [next(k for k in json.loads(line) if k not in ("n", "t")) for line in lines_of(name)[1:]]
    assert kinds.count("note") >= 2 and kinds.count("mark") >= 3


def test_trim():
    """tidepool-racer-trim: low before, inside after, and every rail read again after the last turn"""
    with tempfile.TemporaryDirectory() as folder:
        before = summary(until(lines_of("tidepool-racer-trim"), "trim", folder))
        assert spot(before, "p5", "board")["verdict"] == "outside"
        assert spot(before, "gnd", "wire")["verdict"] == "inside"
    after = summary(str(FOLDER / "tidepool-racer-trim.rwlog"))
    for rail in ("p5", "p12", "m5"):
        state = spot(after, rail, "board")
        assert state["verdict"] == "inside" and not state["stale"], state


def test_wiring():
    """lantern-drift-wiring: right at the terminals, low at the board, and the drops say where it went"""
    with tempfile.TemporaryDirectory() as folder:
        before = summary(until(lines_of("lantern-drift-wiring"), "repair", folder))
        cut = summary(until(lines_of("lantern-drift-wiring"), "finding", folder))
    board, terminals = spot(cut, "p5", "board"), spot(cut, "p5", "terminals")
    assert board["verdict"] == "outside" and terminals["verdict"] == "inside"
    drop = spot(cut, "p5", "wire")["value"] + spot(cut, "gnd", "wire")["value"]
    assert abs(terminals["value"] - board["value"] - drop) < 0.03, "the drops do not add up"
    assert spot(cut, "p5", "wire")["verdict"] == "outside"
    assert before["causes"][0]["p"] > 0.5


def test_minus_five():
    """kelp-gardens-minus-five: while it is tried, no place of the screw has both +5 and −5 inside"""
    lines = lines_of("kelp-gardens-minus-five")
    both_inside = 0
    with tempfile.TemporaryDirectory() as folder:
        for i, line in enumerate(lines[1:], 1):
            event = json.loads(line)
            if "repair" in event:
                break
            if event.get("reading", {}).get("rail") != "m5" or event["reading"]["place"] != "board":
                continue
            cut = Path(folder) / "cut.rwlog"
            cut.write_text("".join(lines[:i + 1]), encoding="utf-8")
            found = summary(str(cut))
            both_inside += all(spot(found, rail, "board")["verdict"] == "inside" for rail in ("p5", "m5"))
    assert both_inside == 0


def test_found(name):
    """at the end the planted cause leads, and nobody claims to have mended it"""
    found = summary(str(FOLDER / f"{name}.rwlog"))
    assert found["causes"][0]["cause"] == UNMENDED[name], found["causes"][:3]
    assert found["causes"][0]["p"] > 0.6, found["causes"][:3]
    assert {s["state"] for s in found["symptoms"]} == {"present"}, found["symptoms"]
    assert not any("repair" in json.loads(line) for line in lines_of(name)[1:])


def compared():
    """What the two visits to Tidepool Racer say of each other: {(what, rail, place): item}, warm readings only."""
    paths = [str(FOLDER / f"{name}.rwlog") for name in ("tidepool-racer-trim", "tidepool-racer-a-year-later")]
    done = subprocess.run([LOG, "compare", "--json", *paths], capture_output=True, text=True, check=True)
    return {(i["what"], i["rail"], i["place"]): i for i in json.loads(done.stdout)["items"]}


def test_compare():
    """tidepool-racer, a year apart: the drops and +5 V at the board changed most surely, the trim's slopes did not"""
    items = compared()
    for key in (("reading", "p5", "wire"), ("reading", "gnd", "wire"), ("reading", "p5", "board")):
        assert items[key]["result"] == "changed", items[key]
        assert (items[key]["then"]["verdict"], items[key]["now"]["verdict"]) == ("inside", "outside"), items[key]
    for rail in ("p12", "m5"):
        assert items["slope", rail, "board"]["result"] == "not-changed", items["slope", rail, "board"]
    for rail in ("p5", "p12", "m5"):  # at the terminals nothing that matters
        difference, then = items["reading", rail, "terminals"]["difference"], items["reading", rail, "terminals"]["then"]
        assert abs(difference / then["value"]) < 0.01, items["reading", rail, "terminals"]


def test_bring_up():
    """copper-comet-bring-up: every stage in order, its hazards read, a warm-up of five readings, nothing left unproven"""
    events = [json.loads(line) for line in lines_of("copper-comet-bring-up")[1:]]
    entered = [e["stage"]["id"] for e in events if "stage" in e and len(e["stage"]) == 1]
    read = [e["stage"]["id"] for e in events if e.get("stage", {}).get("read")]
    stages = json.loads((FOLDER.parent / "data" / "stages" / "stages.json").read_text(encoding="utf-8"))["stages"]
    assert entered == read == [stage["id"] for stage in stages], entered
    begins = next(e["t"] for e in events if e.get("stage", {}).get("id") == "warm-up")
    on = next(e["t"] for e in events if e["t"] >= begins and e.get("setup", {}).get("power") == "on")
    taken = [(e["t"] - on) / 60 for e in events if e["t"] >= on and e.get("reading", {}).get("rail") == "p5"][:5]
    assert all(abs(t - minute) < 1.5 for t, minute in zip(taken, (0, 5, 15, 30, 60))), taken
    text = subprocess.run([LOG, "summary", FOLDER / "copper-comet-bring-up.rwlog"], capture_output=True, text=True,
                          check=True).stdout
    assert "Close the job" in text and "Not proven" not in text and "left open" not in text, text


def test_class():
    """paper-lighthouse-class: five rounds, each called before its reading and answered by it"""
    events = [json.loads(line) for line in lines_of("paper-lighthouse-class")[1:]]
    rounds, asked = 0, None
    for event in events:
        call = event.get("call", {})
        if "ask" in call:
            assert asked is None, "a round is still open"
            asked, calls = event, 0
        calls = calls + ("by" in call) if asked else 0
        if "reveal" not in call:
            continue
        answer = events[call["reveal"] - 1]
        assert answer["n"] > asked["n"] and calls == 3, event
        assert all(answer["reading"][key] == value for key, value in (("rail", asked["call"]["ask"]),
                                                                      ("place", asked["call"]["place"])))
        rounds, asked = rounds + 1, None
    assert rounds == 5 and asked is None


def test_wiggle():
    """marble-orchard-wiggle: of what is moved only the harness makes it dip, and after the repair nothing does"""
    lowest, mended, chapter = {}, False, None
    for line in lines_of("marble-orchard-wiggle")[1:]:
        event = json.loads(line)
        mended = mended or "repair" in event
        if "mark" in event and event["mark"]["what"] != "reset seen":
            chapter = event["mark"]["what"]
        if "sample" in event and (chapter or "").startswith("Wiggle"):
            lowest[chapter] = min(lowest.get(chapter, 9), event["sample"]["value"])
        assert not mended or "sample" not in event or event["sample"]["value"] > 5.0
    dips = [name for name, value in lowest.items() if value < 4.75]
    assert len(lowest) == 4 and len(dips) == 1 and "harness" in dips[0], lowest


def test_shipped():
    """every shipped demo is tested here, at least seven of them, and README tells of each"""
    names = {path.stem for path in FOLDER.glob("*.rwlog")}
    assert names == set(DEMOS) | set(UNMENDED) and len(names) >= 7
    readme = (FOLDER.parent / "README.md").read_text(encoding="utf-8")
    assert all(f"`{name}`" in readme for name in names), [name for name in names if f"`{name}`" not in readme]


def main():
    tests = [(f"{name}: {test.__doc__}", test, (name,)) for name in DEMOS for test in (test_made, test_cause, test_story)]
    tests += [(f"{name}: {test.__doc__}", test, (name,)) for name in UNMENDED for test in (test_made, test_found, test_story)]
    tests += [(test.__doc__, test, ()) for test in (test_trim, test_wiring, test_minus_five, test_compare, test_bring_up,
                                                    test_class, test_wiggle)]
    tests.append((test_shipped.__doc__, test_shipped, ()))
    print(f"1..{len(tests)}")
    failed = 0
    for number, (claim, test, arguments) in enumerate(tests, 1):
        try:
            test(*arguments)
            print(f"ok {number} - {claim}", flush=True)
        except Exception as error:
            failed += 1
            print(f"not ok {number} - {claim}\n# {type(error).__name__}: {error}", flush=True)
    return 1 if failed else 0


sys.exit(main())
