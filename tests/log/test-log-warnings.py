# test-log-warnings.py: mistakes of measuring in sessions written by hand, as the summary tells them.
# SPDX-License-Identifier: GPL-3.0-or-later
import json

from log_runner import as_lines, header, main, succeed, write

ON = {"setup": {"power": "on", "board": "fitted"}}
OUT = {"setup": {"power": "on", "board": "out"}}
OFF = {"setup": {"power": "off"}}
TURN = {"trim": {"moved": True}}


def read(rail, place, value, kind="dc", step=0.001, meter="m1", **more):
    payload = {"rail": rail, "place": place, "kind": kind, "value": value, "step": step, "meter": meter}
    if value is None:
        payload["over"] = True
    return {"reading": {**payload, **more}}


def wait(seconds):
    return seconds


DROPS = [read("p5", "wire", 0.12), read("gnd", "wire", 0.05)]

# What the person did, the ids that must be told, in their order, and what would have been right.
CASES = {
    "mains-sized": ([ON, read("p5", "board", 230)], [ON, read("p5", "board", 5.03)]),
    "never-above": ([ON, read("p5", "board", 5.8)], [ON, read("p5", "board", 5.2)]),
    "leads-reversed": ([ON, read("p5", "board", -5.03)], [ON, read("m5", "board", -5.03)]),
    "wrong-terminal": ([ON, read("p12", "board", 5.03)], [ON, read("p12", "board", 8.4)]),
    "overload": ([ON, read("p5", "board", None)], [OFF, read("p5", "wire", None, kind="ohms")]),
    "ohms-power-on": ([ON, read("p5", "board", 47, kind="ohms", step=1)],
                      [OFF, read("p5", "board", 47, kind="ohms", step=1)]),
    "ac-mode": ([ON, read("p5", "board", 5.03), read("p5", "terminals", 0.02)],
                [ON, read("p5", "board", 5.03), read("m5", "board", 0.02)]),
    "dc-mode-for-ripple": ([ON, read("p5", "board", 5.03, kind="ripple")],
                           [ON, read("p5", "board", 0.03, kind="ripple")]),
    "unit-slip": ([ON, read("p5", "wire", 12, step=1)], [ON, read("p5", "wire", 0.012)]),
    "terminal-as-board": ([ON, *DROPS, read("p5", "terminals", 5.1), read("p5", "board", 5.1)],
                          [ON, *DROPS, read("p5", "terminals", 5.1), read("p5", "board", 4.93)]),
    "zero-drop": ([ON, read("p5", "terminals", 5.1), read("p5", "board", 4.95),
                   read("p5", "wire", 0.0001, step=0.0001)],
                  [ON, read("p5", "terminals", 5.1), read("p5", "board", 4.95),
                   read("p5", "wire", 0.09, step=0.0001)]),
    "chassis-ground": ([ON, *DROPS, read("p5", "terminals", 5.1), read("p5", "board", 4.6)],
                       [ON, *DROPS, read("p5", "terminals", 5.1), read("p5", "board", 4.94)]),
    "drop-skipped": ([ON, read("p5", "board", 5.03), read("p5", "chip", 4.85)],
                     [ON, read("p5", "board", 5.03), read("p5", "chip", 5.0)]),
    "chip-above-board": ([ON, read("p5", "board", 4.9), read("p5", "chip", 5.03)],
                         [ON, read("p5", "board", 5.03), read("p5", "chip", 5.02)]),
    "meters-disagree": ([ON, read("p5", "board", 5.1), wait(20), read("p5", "board", 4.98, meter="m2")],
                        [ON, read("p5", "board", 5.05), wait(20), read("p5", "board", 5.01, meter="m2")]),
    "reading-in-change": ([ON, read("p5", "board", 5.03), read("p5", "board", 5.09)],
                          [ON, read("p5", "board", 5.03), read("p5", "board", 5.032)]),
    "low-battery": ([ON, read("p5", "board", 5.03, low_battery=True)],
                    [ON, read("p5", "board", 5.03, low_battery=False)]),
    "trim-no-load": ([OUT, TURN, read("p5", "terminals", 5.02), ON, read("p5", "board", 4.75)],
                     [OUT, TURN, read("p5", "terminals", 5.02), ON, read("p5", "board", 4.95)]),
    "chasing-drop": ([ON, read("p5", "terminals", 5.05), read("p5", "board", 4.7), TURN,
                      read("p5", "board", 4.8)],
                     [ON, read("p5", "terminals", 4.8), read("p5", "board", 4.7), TURN,
                      read("p5", "board", 4.9)]),
    "chasing-minus": ([ON, read("p5", "board", 5.03), read("m5", "board", -4.1), TURN,
                       read("p5", "board", 5.35)],
                      [ON, read("p5", "board", 5.03), read("m5", "board", -4.1), TURN,
                       read("p5", "board", 5.1)]),
    "stale-after-trim": ([ON, read("p5", "board", 4.8), read("m5", "board", -4.7), TURN,
                          wait(20), read("p5", "board", 5.03), wait(90),
                          {"finding": {"check": "edge-connector-look", "outcome": "bright"}}],
                         [ON, read("p5", "board", 4.8), read("m5", "board", -4.7), TURN,
                          read("p5", "board", 5.03), read("m5", "board", -4.95), wait(90),
                          {"finding": {"check": "edge-connector-look", "outcome": "bright"}}]),
    "slope-odd": ([ON, read("p5", "board", 4.8), read("p12", "board", 11.9), TURN,
                   read("p5", "board", 4.95), read("p12", "board", 11.9), TURN,
                   read("p5", "board", 5.1), read("p12", "board", 11.901)],
                  [ON, read("p5", "board", 4.8), read("p12", "board", 11.5), TURN,
                   read("p5", "board", 4.95), read("p12", "board", 11.86), TURN,
                   read("p5", "board", 5.1), read("p12", "board", 12.22)]),
}


def session(deeds):
    """Lines of a session in which each of the deeds happens three seconds after the one before."""
    head = header()
    head["meters"].append({"id": "m2", "name": "other meter", "percent": 0.5, "counts": 2})
    events, t = [], 0
    for deed in deeds:
        t += 3
        if isinstance(deed, int):
            t += deed
        else:
            events.append({"n": len(events) + 1, "t": t, **deed})
    return head, events


def warnings_of(head, events):
    path = write("told.rwlog", as_lines(events, head))
    return json.loads(succeed("summary", path, "--json"))["warnings"]


def test_each_mistake_is_told_once_with_its_reading():
    for wanted, (deeds, _) in CASES.items():
        head, events = session(deeds)
        told = warnings_of(head, events)
        assert [one["id"] for one in told] == [wanted], (wanted, told)
        about = events[told[0]["n"] - 1]
        assert "reading" in about or (wanted == "stale-after-trim" and "trim" in about), about
        assert len(told[0]["text"]) > 40


def test_what_is_right_is_not_told():
    for wanted, (_, deeds) in CASES.items():
        assert warnings_of(*session(deeds)) == [], (wanted, warnings_of(*session(deeds)))


def test_a_mistake_taken_back_is_gone():
    for wanted, (deeds, _) in CASES.items():
        head, events = session(deeds)
        told = warnings_of(head, events)[0]
        events.append({"n": len(events) + 1, "t": events[-1]["t"] + 1, "retract": {"n": told["n"]}})
        assert warnings_of(head, events) == [], wanted


def test_a_mistake_is_moot_once_the_power_is_off():
    for wanted, (deeds, _) in CASES.items():
        if wanted != "low-battery":  # of the meter, whatever the cabinet does
            assert warnings_of(*session([*deeds, OFF])) == [], wanted


def test_a_danger_comes_before_what_was_touched():
    told = warnings_of(*session([ON, read("m5", "board", 4.9), read("p5", "board", 11.9)]))
    assert [one["id"] for one in told] == ["never-above", "wrong-terminal", "leads-reversed"], told
    assert "Power off" in told[0]["text"]


def test_text_summary_says_it_too():
    path = write("told.rwlog", as_lines(*reversed(session([ON, read("p12", "board", 5.03)]))))
    assert "wrong point" in succeed("summary", path).decode()


if __name__ == "__main__":
    main(globals())
