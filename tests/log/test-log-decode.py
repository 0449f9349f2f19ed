# test-log-decode.py: captured meter bytes come out as readings.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import re
import select
import subprocess
import time

import log_runner
from log_runner import PROGRAM, comma_locale, run, succeed
from meter_frames import EXAMPLES, digits_11, digits_14, odd_parity, text_14

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


# --- every format ---

def known_formats():
    """As the program itself names them to somebody who asked for another one."""
    done = run("decode", "--format", "semaphore")
    assert done.returncode == 2
    return re.search(r"one of ([^.]*)\.", done.stderr.decode()).group(1).split(", ")


def check(values, wanted):
    assert len(values) == len(wanted), (len(values), len(wanted), values)
    for got, (_, value, unit, mode, step) in zip(values, wanted):
        assert list(got) == KEYS
        assert got["over"] == (value is None) == (got["value"] is None), got
        if value is not None:
            assert abs(got["value"] - value) <= 1e-12 * abs(value), (got, value)
            assert abs(got["step"] - step) <= 1e-9 * step, (got, step)
        assert got["unit"] == unit and got["mode"] == mode, (got, unit, mode)


def test_every_format_has_examples_here():
    assert sorted(known_formats()) == sorted(EXAMPLES)


def test_one_frame_alone_is_one_reading():
    for form, examples in EXAMPLES.items():
        for example in examples:
            check(values_of(example[0], form), [example])


def test_readings_of_all_ranges_come_out_in_order():
    """No frame twice the same: single readings, captured one by one."""
    for form, examples in EXAMPLES.items():
        check(values_of(b"".join(one[0] for one in examples), form), examples)


def test_repeated_frames_are_as_many_readings():
    for form, examples in EXAMPLES.items():
        for times in (2, 3, 7):
            sent = b"".join(one[0] * times for one in examples)
            check(values_of(sent, form), [one for one in examples for _ in range(times)])


def read_around(form, garbage):
    frame = EXAMPLES[form][0][0]
    done = run("decode", "--format", form, "--json", input=frame * 3 + garbage + frame * 3)
    assert done.returncode == (1 if b"not understood" in done.stderr else 0), (form, done.stderr)
    return done.returncode, [json.loads(line) for line in done.stdout.splitlines()]


def test_garbage_that_ends_as_a_frame_does_takes_no_reading_away():
    for form, examples in EXAMPLES.items():
        end = re.search(rb"[\r\n]*\Z", examples[0][0]).group()
        status, got = read_around(form, b"\x00\xff~~" + end)
        check(got, [examples[0]] * 6)
        assert status == 1, form


def test_other_garbage_takes_one_reading_away_at_most():
    """Where nothing marks a frame's beginning, the one that garbage runs into is lost with it."""
    for form, examples in EXAMPLES.items():
        torn = [] if form in ("lines", "scpi") else [examples[0][0][3:] + b"#"]  # half a line is a line too
        for garbage in [b"~", b"\x00\xff", bytes(range(0x80, 0xff)), b"\r\n\x01\r\n#", *torn]:
            _, got = read_around(form, garbage)
            check(got, [examples[0]] * len(got))
            assert 5 <= len(got) <= 6, (form, garbage, len(got))


def test_an_example_with_parity_reads_the_same():
    for form in ("digits-14", "digits-11a", "digits-11b"):
        for example in EXAMPLES[form]:
            check(values_of(odd_parity(example[0]), form), [example])


def test_the_minus_bit_is_that_of_the_variant():
    """One status byte, two meanings: the format has to be said, and is obeyed."""
    frame = digits_11(0, -4982, "a")
    (a,) = values_of(frame, "digits-11a")
    (b,) = values_of(frame.replace(b"0:\r", b"0<\r"), "digits-11b")
    assert a["value"] == -4.982 and not a["low_battery"]
    assert b["value"] == 4.982 and b["low_battery"]


def test_flags_come_through():
    (one,) = values_of(digits_14(1, 5012, low_battery=True, hold=True), "digits-14")
    assert one["low_battery"] is True and one["hold"] is True and one["value"] == 5.012


def test_any_chunking_reads_the_same():
    for form, examples in EXAMPLES.items():
        sent = b"".join(one[0] * 2 for one in examples)
        wanted = succeed("decode", "--format", form, "--json", input=sent)
        for size in (1, 3, 64):
            child = subprocess.Popen([PROGRAM, "decode", "--format", form, "--json"],
                                     stdin=subprocess.PIPE, stdout=subprocess.PIPE)
            for at in range(0, len(sent), size):
                os.write(child.stdin.fileno(), sent[at:at + size])
            child.stdin.close()
            assert child.stdout.read() == wanted and child.wait() == 0, (form, size)


def test_values_come_out_while_the_input_goes_on():
    for form, examples in EXAMPLES.items():
        child = subprocess.Popen([PROGRAM, "decode", "--format", form, "--json"],
                                 stdin=subprocess.PIPE, stdout=subprocess.PIPE)
        try:
            os.write(child.stdin.fileno(), examples[0][0] * 3)
            wanted, got, end = 3, b"", time.monotonic() + 20
            while got.count(b"\n") < wanted and time.monotonic() < end:
                if select.select([child.stdout], [], [], 0.2)[0]:
                    got += os.read(child.stdout.fileno(), 65536)
            assert got.count(b"\n") == wanted, (form, got)
        finally:
            child.stdin.close()
            child.stdout.close()
            child.wait()


# --- what was not understood, and what was not believed ---

def test_the_place_of_a_bad_frame_is_its_byte():
    frame = EXAMPLES["digits-14"][0][0]
    done = run("decode", "--format", "digits-14", input=frame * 2 + b"1:2058;000:0\r\n" + frame * 2)
    assert done.returncode == 1 and len(done.stdout.splitlines()) == 4
    assert done.stderr.decode().startswith("byte 28: not understood: 31 3A 32"), done.stderr


def test_the_place_of_bad_text_is_its_line():
    good = text_14("DC", "12.06", "V")
    done = run("decode", "--format", "text-14", input=good * 2 + text_14("XX", "12.06", "V") + good * 2)
    assert done.returncode == 1 and len(done.stdout.splitlines()) == 4
    assert done.stderr.decode().startswith("line 3: not understood: XX"), done.stderr


def test_lines_are_counted_whatever_ends_them():
    done = run("decode", "--format", "lines", input=b"5 V\r6 V\r\n7 V\n\nwhat?\r\n5 V\n")
    assert done.stderr.startswith(b"line 5: not understood: what?"), done.stderr


def test_a_line_without_end_is_told_of_itself():
    done = run("decode", "--format", "lines", input=b"x\n" + b"9" * 5000 + b"\n5 V\n")
    assert done.returncode == 1
    assert b"line 1: not understood: x\n" in done.stderr, done.stderr
    assert b"line 2: not understood: longer than any reading\n" in done.stderr, done.stderr


def test_a_frame_that_is_not_believed_is_told_and_no_error():
    steady, odd = digits_14(1, 5012), digits_14(1, 5812)
    done = run("decode", "--format", "digits-14", "--json", input=steady * 5 + odd + steady * 5)
    assert done.returncode == 0, done.stderr
    assert {json.loads(line)["value"] for line in done.stdout.splitlines()} == {5.012}
    assert len(done.stdout.splitlines()) == 10
    assert done.stderr == b"1 frame was left out: no other one agreed with it\n", done.stderr


# --- the options ---

def test_a_pattern_describes_the_lines():
    sent = b"17;-;5.012;V\n18;+;OVER;V\n"
    out = succeed("decode", "--format", "lines", "--json", "--pattern",
                  "{any};{sign};{number|OVER};{unit}", input=sent)
    first, second = (json.loads(line) for line in out.splitlines())
    assert first["value"] == -5.012 and second["over"] is True


def test_a_pattern_that_means_nothing_is_wrong_usage():
    for form, pattern, word in (("lines", "{nomber}", b"{nomber}"), ("lines", "{unit}", b"{number}"),
                                ("scpi", "{number} V", b"lines")):
        done = run("decode", "--format", form, "--pattern", pattern)
        assert done.returncode == 2 and word in done.stderr and done.stdout == b"", (form, done.stderr)


def test_the_decimal_mark_can_be_said():
    args = ["decode", "--format", "lines", "--json"]
    assert run(*args, input=b"5,012 V\n").returncode == 1
    one = json.loads(succeed(*args, "--decimal-mark", ",", input=b"5,012 V\n"))
    assert one["value"] == 5.012 and one["step"] == 0.001
    assert run(*args, "--decimal-mark", ",", input=b"5.012 V\n").returncode == 1
    done = run(*args, "--decimal-mark", "x", input=b"5,012 V\n")
    assert done.returncode == 2 and b"--decimal-mark" in done.stderr


def test_help_names_every_format():
    told = succeed("decode", "--help").decode()
    for form in known_formats():
        assert re.search(rf"^  {re.escape(form)} +\S", told, re.MULTILINE), form


if __name__ == "__main__":
    log_runner.main(globals())
