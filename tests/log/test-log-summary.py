# test-log-summary.py: the summary as JSON and as text, of good files and of damaged ones.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import math

import log_runner
from log_runner import (as_lines, comma_locale, reading, run, succeed, usual_events, usual_session,
                        write)

KEYS = ["cabinet", "events", "readings", "samples", "seconds", "skipped_lines", "torn_tail",
        "rails", "trim", "symptoms", "causes", "next", "warnings"]


def summary_of(path, **more):
    return json.loads(succeed("summary", path, "--json", **more), parse_constant=refuse)


def refuse(word):
    raise ValueError(f"{word} is no JSON")


def test_keys_are_exactly_those_of_the_format():
    text = succeed("summary", usual_session(), "--json").decode()
    assert text.endswith("}\n") and text.count("\n") == 1
    whole = json.loads(text, parse_constant=refuse)
    assert list(whole) == KEYS, list(whole)
    for rail in whole["rails"]:
        assert list(rail) == ["rail", "place", "value", "u", "verdict", "margin", "stale", "t"]
    for name, keys in {"symptoms": ["id", "state"], "causes": ["cause", "p"],
                       "next": ["check", "minutes", "saves"],
                       "warnings": ["n", "id", "text"]}.items():
        for one in whole[name]:
            assert list(one) == keys, (name, one)
    assert [(one["place"], one["board"], one["positions"]) for one in whole["trim"]] == [
        ("board", "fitted", 1), ("terminals", "fitted", 1)], whole["trim"]


def test_numbers_are_those_of_the_session():
    whole = summary_of(usual_session())
    assert whole["cabinet"] == "Tidepool Racer"
    assert (whole["events"], whole["readings"], whole["samples"]) == (15, 6, 1)
    assert whole["seconds"] == 17.123456
    assert (whole["skipped_lines"], whole["torn_tail"]) == ([], False)
    spots = [(one["rail"], one["place"]) for one in whole["rails"]]
    assert spots == [("p5", "terminals"), ("p5", "board"), ("p12", "board"), ("m5", "board"),
                     ("gnd", "wire")], spots
    board = whole["rails"][1]
    assert board["value"] == 4.712 and board["t"] == 4.21 and board["verdict"] == "outside"
    # ±(0.5 % of 4.712 + 2 counts of 0.001) is a rectangle: over √3.
    assert abs(board["u"] - (0.005 * 4.712 + 0.002) / math.sqrt(3)) < 1e-12
    over = whole["rails"][2]
    assert (over["value"], over["u"], over["margin"], over["verdict"]) == (None, None, None, "none")
    assert whole["symptoms"] == [{"id": "resets", "state": "present"}]


def test_causes_are_ordered_and_overlap_by_two_faults():
    causes = summary_of(usual_session())["causes"]
    chances = [one["p"] for one in causes]
    assert len(causes) >= 20 and len({one["cause"] for one in causes}) == len(causes)
    assert chances == sorted(chances, reverse=True)
    # Each is the chance that the cause is there, alone or with a second one: of two faults both count.
    assert all(0 <= one <= 1 for one in chances)
    assert 1 - 1e-9 <= sum(chances) < 1.5, sum(chances)


def test_next_begins_with_a_check_that_saves():
    following = summary_of(usual_session())["next"]
    with_ids = {one["id"] for path in (log_runner.DATA / "knowledge").glob("checks-*.json")
                for one in json.loads(path.read_text(encoding="utf-8"))["checks"]}
    assert following and all(one["check"] in with_ids for one in following)
    assert all(one["minutes"] > 0 and one["saves"] > 0 for one in following)
    assert len({one["check"] for one in following}) == len(following)
    # Of what is equal to within 0.5 % of the expected minutes, the safer and then the shorter stands first.
    savings = [one["saves"] for one in following]
    expected = json.loads(succeed("plan", usual_session(), "--depth", "1", "--json"))["expected_minutes"]
    assert max(savings) - savings[0] <= 0.005 * expected, (savings, expected)


def chances(*readings):
    setup = {"n": 1, "t": 0, "setup": {"power": "on", "board": "fitted"}}
    events = [setup, *(reading(2 + i, 2.0 + i, "p5", place, value)
                       for i, (place, value) in enumerate(readings))]
    whole = summary_of(write("told.rwlog", as_lines(events)))
    return {one["cause"]: one["p"] for one in whole["causes"]}


def test_where_a_rail_is_low_tells_supply_from_wiring():
    wiring = chances(("board", 4.712), ("terminals", 5.05))
    supply = chances(("board", 4.712), ("terminals", 4.73))
    assert wiring["edge-oxidised"] > 5 * wiring["trim-low"], wiring
    assert supply["trim-low"] > 5 * supply["edge-oxidised"], supply


def test_same_file_gives_same_bytes():
    path = usual_session()
    for args in [["--json"], []]:
        assert len({succeed("summary", path, *args) for _ in range(3)}) == 1


def test_a_comma_locale_shows_in_text_and_never_in_json():
    surroundings = comma_locale()
    if surroundings is None:
        return "no comma locale can be made"
    hot = usual_events() + [reading(16, 20, "p5", "board", 5.625)]  # a warning has it in its words
    path = write("hot.rwlog", as_lines(hot))
    text = succeed("summary", path, env=surroundings).decode()
    assert "5,625" in text, text
    plain = succeed("summary", path, "--json")
    assert summary_of(path)["warnings"], "no warning to look at"
    assert succeed("summary", path, "--json", env=surroundings) == plain
    return None


def test_damaged_lines_are_said_and_the_rest_is_told():
    lines = as_lines(usual_events())
    lines[3] = lines[3][:20] + b"\n"  # line 4
    lines[7] = b"\xff\xfe rubbish\n"  # line 8
    path = write("damaged.rwlog", lines)
    done = run("summary", path, "--json")
    whole = json.loads(done.stdout)
    assert done.returncode == 1
    assert whole["skipped_lines"] == [4, 8] and whole["events"] == 13 and not whole["torn_tail"]
    said = done.stderr.decode().splitlines()
    assert len(said) == 2 and "line 4 " in said[0] and "line 8 " in said[1], said
    assert str(path) in said[0]
    done = run("summary", path)
    assert done.returncode == 1 and b"4, 8" in done.stdout


def test_many_damaged_lines_do_not_flood():
    path = write("flood.rwlog", as_lines(usual_events()) + [b"rubbish\n"] * 500)
    done = run("summary", path, "--json")
    assert done.returncode == 1 and len(json.loads(done.stdout)["skipped_lines"]) == 500
    assert len(done.stderr.splitlines()) < 30 and b"480" in done.stderr, done.stderr


def test_a_torn_tail_is_said():
    path = write("torn.rwlog", b"".join(as_lines(usual_events()))[:-9])
    done = run("summary", path, "--json")
    whole = json.loads(done.stdout)
    assert done.returncode == 1 and whole["torn_tail"]
    assert whole["events"] == 14 and whole["skipped_lines"] == []
    assert b"line 16 " in done.stderr, done.stderr


def test_a_file_cut_anywhere_is_told_up_to_the_cut():
    content = b"".join(as_lines(usual_events()))
    first = content.index(b"\n") + 1
    for cut in range(first, len(content), 41):
        done = run("summary", write("cut.rwlog", content[:cut]), "--json")
        whole = json.loads(done.stdout)
        lines = content[:cut].split(b"\n")
        complete = sum(1 for line in lines[1:] if line and is_whole(line))
        assert whole["events"] == complete, (cut, whole["events"], complete)
        assert whole["torn_tail"] == (lines[-1] != b"" and not is_whole(lines[-1]))
        assert done.returncode == (1 if whole["torn_tail"] else 0)


def is_whole(line):
    try:
        json.loads(line)
        return True
    except ValueError:
        return False


def test_what_is_no_session_is_refused():
    for name, content in {"empty": b"", "text": b"hello\nworld\n", "list": b"[]\n",
                          "other": b"{\"a\":1}\n", "future": b"{\"railwright\":2}\n",
                          "binary": bytes(range(256)) * 8}.items():
        done = run("summary", write(name, content), "--json")
        assert done.returncode == 1 and done.stdout == b"", (name, done)
        assert b"line 1" in done.stderr and len(done.stderr.splitlines()) == 1, done.stderr
    done = run("summary", log_runner.FOLDER / "not-there", "--json")
    assert done.returncode == 1 and b"not-there" in done.stderr, done


def test_hostile_lines_are_damage_not_death():
    deep = b"{\"n\":16,\"t\":20,\"note\":" + b"[" * 100000 + b"]" * 100000 + b"}\n"
    lines = [b"{\"n\":1e99,\"t\":1,\"trim\":{}}\n", b"{\"n\":-1,\"t\":1,\"trim\":{}}\n",
             b"{\"n\":16,\"t\":\"x\",\"trim\":{}}\n",
             b"{\"n\":16,\"t\":1e400,\"trim\":{}}\n", deep, b"\0\0\0\n"]
    done = run("summary", write("hostile.rwlog", as_lines(usual_events()) + lines), "--json")
    whole = json.loads(done.stdout, parse_constant=refuse)
    assert done.returncode == 1 and whole["events"] == 15, whole["events"]
    assert whole["skipped_lines"] == list(range(17, 23)), whole["skipped_lines"]


if __name__ == "__main__":
    log_runner.main(globals())
