# meter_frames.py: for tests: what meters of each format send for a reading, from the tables of their byte layouts.
# SPDX-License-Identifier: GPL-3.0-or-later
"""A reading is (digits, unit, options). Written without a look at the decoders: from the layouts alone."""

# segments that are lit for each sign, named as usual: a top, b and c right, d bottom, e and f left, g middle
LIT = {"0": "abcdef", "1": "bc", "2": "abdeg", "3": "abcdg", "4": "bcfg", "5": "acdfg", "6": "acdefg", "7": "abc",
       "8": "abcdefg", "9": "abcdfg", "L": "def", " ": ""}


def odd_parity(frame):
    """7 data bits and odd parity, as a port that was opened with 8 bits delivers them."""
    return bytes(b | (0x80 if bin(b).count("1") % 2 == 0 else 0) for b in frame)


def segments_14(text, unit="V", prefix="", mode="dc", hold=False, low_battery=False):
    """@text is what the display shows: "-4.982", " 0.L "; the point stands behind digit 1, 2 or 3."""
    minus = text.startswith("-")
    shown = text.lstrip("-")
    point = shown.find(".")
    digits = shown.replace(".", "")
    assert len(digits) == 4
    low = [0] * 15
    low[1] = {"dc": 4, "ac": 8, "": 0}[mode] | 2 | 1
    for i, digit in enumerate(digits):
        lit = LIT[digit]
        mark = minus if i == 0 else point == i
        low[2 + 2 * i] = (mark << 3) | (("e" in lit) << 2) | (("f" in lit) << 1) | ("a" in lit)
        low[3 + 2 * i] = (("d" in lit) << 3) | (("c" in lit) << 2) | (("g" in lit) << 1) | ("b" in lit)
    low[10] = {"u": 8, "n": 4, "k": 2}.get(prefix, 0)
    low[11] = {"m": 8, "M": 2}.get(prefix, 0)
    low[12] = {"F": 8, "ohm": 4}.get(unit, 0) | hold
    low[13] = {"A": 8, "V": 4, "Hz": 2}.get(unit, 0) | low_battery
    return bytes(i << 4 | low[i] for i in range(1, 15))


def digits_14(reach, counts, function=0x3B, mode="dc", over=False, low_battery=False, hold=False):
    status = 0x30 | (4 if counts < 0 else 0) | (2 if low_battery else 0) | (1 if over else 0)
    option3 = 0x30 | {"dc": 8, "ac": 4, "": 0}[mode] | 2
    option4 = 0x30 | (2 if hold else 0)
    return bytes([0x30 + reach, *b"%05d" % abs(counts), function, status, 0x30, 0x30, option3, option4, 13, 10])


def digits_11(reach, counts, variant, function=0x3B, mode="dc", over=False, low_battery=False):
    """Variant "a" has judge, sign, battery, overload in its status, "b" sign, battery, another, overload."""
    minus, battery = (4, 2) if variant == "a" else (8, 4)
    status = 0x30 | (minus if counts < 0 else 0) | (battery if low_battery else 0) | (1 if over else 0)
    if variant == "a":
        option2 = 0x30 | {"dc": 8, "ac": 4}[mode] | 2
    else:
        option2 = 0x30 | {"dc": 8, "ac": 0}[mode] | 4
    return bytes([0x30 + reach, *b"%04d" % abs(counts), function, status, 0x30, option2, 13, 10])


def text_14(mode, value, unit):
    frame = f"{mode:2}{value:>7}{unit:>4}\r".encode()
    assert len(frame) == 14
    return frame


def text_16(code, counts, places, display="1"):
    sign = "1" if counts < 0 else "0"
    return f"\x024{display}{code}{sign}{places}{abs(counts):08d}\r".encode()


# format: a stream of readings that differ in size, sign, unit and flags, each with what it means:
# value in the base unit (None when over), unit, mode, step
EXAMPLES = {
    "segments-14": [
        (segments_14("4.812"), 4.812, "V", "dc", 0.001),
        (segments_14("-4.982"), -4.982, "V", "dc", 0.001),
        (segments_14("12.06"), 12.06, "V", "dc", 0.01),
        (segments_14("000.4", prefix="m"), 0.0004, "V", "dc", 0.0001),
        (segments_14("10.03", unit="ohm", prefix="k", mode=""), 10030, "ohm", None, 10),
        (segments_14(" 0.L ", unit="ohm", prefix="M", mode=""), None, "ohm", None, None),
        (segments_14("7.890", mode="ac"), 7.890, "V", "ac", 0.001),
    ],
    "digits-14": [
        (digits_14(1, 12058), 12.058, "V", "dc", 0.001),
        (digits_14(1, -4982), -4.982, "V", "dc", 0.001),
        (digits_14(0, 6789), 0.6789, "V", "dc", 0.0001),
        (digits_14(4, 123), 0.00123, "V", "dc", 0.00001),
        (digits_14(2, 23012, mode="ac"), 230.12, "V", "ac", 0.01),
        (digits_14(1, 5120, function=0x3F), 0.0512, "A", "dc", 0.00001),
        (digits_14(2, 4700, function=0x33, mode=""), 4700, "ohm", None, 1),
        (digits_14(1, 22000, over=True), None, "V", "dc", None),
    ],
    "digits-11a": [
        (digits_11(1, 1206, "a"), 12.06, "V", "dc", 0.01),
        (digits_11(0, 5012, "a"), 5.012, "V", "dc", 0.001),
        (digits_11(0, -4982, "a"), -4.982, "V", "dc", 0.001),
        (digits_11(2, 2304, "a", mode="ac"), 230.4, "V", "ac", 0.1),
        (digits_11(0, 6000, "a", over=True), None, "V", "dc", None),
    ],
    "digits-11b": [
        (digits_11(1, 1206, "b"), 12.06, "V", "dc", 0.01),
        (digits_11(0, 5012, "b"), 5.012, "V", "dc", 0.001),
        (digits_11(0, -4982, "b"), -4.982, "V", "dc", 0.001),
        (digits_11(2, 2304, "b", mode="ac"), 230.4, "V", "ac", 0.1),
        (digits_11(0, 6000, "b", over=True), None, "V", "dc", None),
    ],
    "text-14": [
        (text_14("DC", "-1.999", "V"), -1.999, "V", "dc", 0.001),
        (text_14("DC", "3.302", "V"), 3.302, "V", "dc", 0.001),
        (text_14("AC", "230.4", "V"), 230.4, "V", "ac", 0.1),
        (text_14("DC", "12.06", "mV"), 0.01206, "V", "dc", 0.00001),
        (text_14("OH", "O.L", "Mohm"), None, "ohm", None, None),
        (text_14("OH", "4.70", "kohm"), 4700, "ohm", None, 10),
        (text_14("DI", "0512", "mV"), 0.512, "V", "diode", 0.001),
        (text_14("DC", "51.20", "mA"), 0.0512, "A", "dc", 0.00001),
    ],
    "text-16": [
        (text_16("34", 1206, 2), 12.06, "V", "dc", 0.01),
        (text_16("34", -4982, 3), -4.982, "V", "dc", 0.001),
        (text_16("50", 2304, 1), 230.4, "V", "ac", 0.1),
        (text_16("18", 123, 2), 0.00123, "V", "dc", 0.00001),
        (text_16("37", 512, 1), 0.0512, "A", "dc", 0.0001),
        (text_16("39", 1003, 2), 10030, "ohm", None, 10),
    ],
    "lines": [
        (b"5.012 V DC\r\n", 5.012, "V", "dc", 0.001),
        (b"-4.982 V DC\r\n", -4.982, "V", "dc", 0.001),
        (b"35.2 mV DC\r\n", 0.0352, "V", "dc", 0.0001),
        (b"4.70 kohm\r\n", 4700, "ohm", None, 10),
        (b"OL V DC\r\n", None, "V", "dc", None),
    ],
    "scpi": [
        (b"+5.01200000E+00\n", 5.012, "V", "dc", 1e-8),
        (b"-4.98200000E+00\n", -4.982, "V", "dc", 1e-8),
        (b"+9.90000000E+37\n", None, "V", "dc", None),
    ],
}
