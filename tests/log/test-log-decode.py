# test-log-decode.py: captured meter bytes come out as readings.
# SPDX-License-Identifier: GPL-3.0-or-later
import json

import log_runner
from log_runner import comma_locale, run, succeed

KEYS = ["value", "unit", "mode", "step", "over", "low_battery", "hold"]


def values_of(text, form="lines"):
    out = succeed("decode", "--format", form, "--json", input=text)
    return [json.loads(line) for line in out.splitlines()]


def test_keys_are_exactly_those_of_the_format():
    (one,) = values_of(b"5.012 V DC\r\n")
    assert list(one) == KEYS
    assert one == {"value": 5.012, "unit": "V", "mode": "dc", "step": 0.001, "over": False,
                   "low_battery": False, "hold": False}


def test_values_come_in_base_units():
    millivolts, kiloohms = values_of(b"35.2 mV DC\n4.7 kohm\n")
    assert abs(millivolts["value"] - 0.0352) < 1e-15 and abs(millivolts["step"] - 0.0001) < 1e-15
    assert (kiloohms["value"], kiloohms["unit"]) == (4700, "ohm")


def test_an_overload_has_no_value():
    (one,) = values_of(b"OL V DC\n")
    assert one["value"] is None and one["over"] is True


def test_a_last_line_without_its_end_counts():
    assert [one["value"] for one in values_of(b"5.0 V\n5.1 V")] == [5.0, 5.1]


def test_scpi_answers_are_read():
    first, over = values_of(b"+5.01200000E+00\n+9.90000000E+37\n", "scpi")
    assert first["value"] == 5.012 and first["unit"] == "V" and first["mode"] == "dc"
    assert over["value"] is None and over["over"] is True


def test_what_is_not_understood_is_said_with_its_line():
    done = run("decode", "--format", "lines", "--json", input=b"5.0 V\nwhat?\n5.1 V\n")
    assert done.returncode == 1
    assert [json.loads(line)["value"] for line in done.stdout.splitlines()] == [5.0, 5.1]
    assert b"line 2: " in done.stderr and b"what?" in done.stderr


def test_garbage_is_survived():
    done = run("decode", "--format", "lines", input=bytes(range(256)) * 5000)
    assert done.returncode == 1 and len(done.stderr.splitlines()) < 30


def test_nothing_in_is_nothing_out():
    assert succeed("decode", "--format", "lines", "--json") == b""


def test_text_is_for_people():
    sent = b"5.012 V DC\n35.2 mV DC\nOL V\n4.70 kohm\n"
    text = succeed("decode", "--format", "lines", input=sent).decode()
    assert text.splitlines() == ["5.012 V dc", "35.2 mV dc", "OL V", "4.70 kΩ"], text


def test_the_locale_reaches_text_alone():
    surroundings = comma_locale()
    if surroundings is None:
        return "no comma locale can be made"
    args = ["decode", "--format", "lines"]
    sent = b"5.012 V\n"
    assert succeed(*args, input=sent, env=surroundings) == b"5,012 V\n"
    args.append("--json")
    assert succeed(*args, input=sent, env=surroundings) == succeed(*args, input=sent)
    return None


if __name__ == "__main__":
    log_runner.main(globals())
