# test-log-compare.py: what changed between two sessions of one cabinet.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import re

import log_runner
from log_runner import as_lines, comma_locale, header, reading, run, succeed, write

SPOTS = [("p5", "board", 5.009), ("p12", "board", 11.86), ("m5", "board", -4.913), ("gnd", "wire", 0.036)]


def visit(name, started, spots=SPOTS, meter="bench meter", cabinet="Tidepool Racer"):
    head = header()
    head.update({"started": started, "id": name, "cabinet": {"name": cabinet, "tag": "B-07"}})
    head["meters"][0]["name"] = meter
    events = [{"n": 1, "t": 0.0, "setup": {"power": "on", "board": "fitted", "warm": True}}]
    events += [reading(n, n, rail, place, value) for n, (rail, place, value) in enumerate(spots, 2)]
    return write(f"{name}.rwlog", as_lines(events, head))


def last_year(**more):
    return visit("last", "2026-03-14T09:30:00Z", **more)


def this_year(p5=5.009, gnd=0.036, **more):
    return visit("this", "2027-03-20T10:00:00Z", [("p5", "board", p5), *SPOTS[1:3], ("gnd", "wire", gnd)], **more)


def compared(*args, **more):
    return json.loads(succeed("compare", *args, "--json", **more))


def results(found):
    return {(i["rail"], i["place"]): i["result"] for i in found["items"]}


def test_what_changed_is_told_and_the_surest_first():
    found = compared(last_year(), this_year(p5=4.839, gnd=0.094))
    assert found["changed"] == 2 and found["tests"] == 4 and found["correction"] == "holm", found
    assert results(found) == {("p5", "board"): "changed", ("gnd", "wire"): "changed", ("p12", "board"): "not-changed",
                              ("m5", "board"): "not-changed"}
    z = [abs(i["difference"]) / i["u"] for i in found["items"][:2]]
    assert z[0] > z[1], z
    first = next(i for i in found["items"] if i["rail"] == "p5")
    assert abs(first["difference"] + 0.170) < 1e-9 and first["then"]["verdict"] == "inside", first
    assert first["now"]["verdict"] == "outside" and first["p_adjusted"] < 1e-6, first
    text = succeed("compare", last_year(), this_year(p5=4.839, gnd=0.094)).decode()
    assert "2 of 4 values changed" in text and "weaker by" in text and "Holm" not in text, text


def test_nothing_changed_is_said_plainly():
    text = succeed("compare", last_year(), this_year(p5=5.010)).decode()
    assert "Nothing changed beyond the meters' errors: 4 values were compared." in text, text


def test_the_earlier_one_is_then_whichever_is_named_first():
    one, other = last_year(), this_year(p5=4.839)
    assert compared(one, other) == compared(other, one)
    assert compared(other, one)["then"]["started"] == "2026-03-14T09:30:00Z"


def test_two_meters_tell_less_than_one():
    """25 mV: far beyond the counts of one meter, within the per cent of two."""
    one, other = last_year(), this_year(p5=4.984)
    assert results(compared(one, other))["p5", "board"] == "changed"
    assert results(compared(one, other, "--meters", "other"))["p5", "board"] == "not-changed"
    other = this_year(p5=4.984, meter="club meter")
    assert results(compared(one, other))["p5", "board"] == "not-changed"
    assert results(compared(one, other, "--meters", "same"))["p5", "board"] == "changed"


def test_another_cabinet_is_said():
    remarks = compared(last_year(), this_year(cabinet="Kelp Gardens"))["remarks"]
    assert len(remarks) == 1 and "Kelp Gardens" in remarks[0] and "Tidepool Racer" in remarks[0], remarks


def test_a_file_with_itself():
    path = last_year()
    found = compared(path, path)
    assert found["changed"] == 0 and "same session" in found["remarks"][0], found["remarks"]


def test_pictures_are_made():
    for kind, begins in [("png", b"\x89PNG"), ("svg", b"<?xml"), ("pdf", b"%PDF")]:
        for chart in ["time", "trim"]:
            out = succeed("compare", last_year(), this_year(p5=4.839), "--as", kind, "--chart", chart, "-o", "-")
            assert out.startswith(begins), out[:20]


def test_numbers_of_json_never_obey_the_locale():
    env = comma_locale()
    if env is None:
        return "no localedef"
    args = (last_year(), this_year(p5=4.839))
    assert compared(*args, env=env)["items"] != [] and "5,009" in succeed("compare", *args, env=env).decode()
    for item in compared(*args, env=env)["items"]:
        assert not re.search(r"\d,\d", item["text"]), item["text"]


def test_a_damaged_file_is_compared_and_told():
    path = this_year(p5=4.839)
    path.write_bytes(path.read_bytes() + b"{not json}\n")
    done = run("compare", last_year(), path)
    assert done.returncode == 1 and b"line 7" in done.stderr and b"weaker by" in done.stdout, done


def test_wrong_usage():
    path, other = last_year(), this_year()
    for args in [[path], [path, other, path], [path, other, "--meters", "mine"], [path, other, "--as", "csv", "-o", "-"],
                 [path, other, "--as", "png"], [path, other, "-o", "x"], [path, other, "--json", "--as", "png", "-o", "x"],
                 [path, other, "--as", "png", "--chart", "pie", "-o", "x"], [path, other, "--as", "png", "-o", path]]:
        done = run("compare", *args)
        assert done.returncode == 2 and done.stderr.count(b"\n") == 1, (args, done)


if __name__ == "__main__":
    log_runner.main(globals())
