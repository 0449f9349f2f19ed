# caution_rules.py: no step beside mains, in a supply or in a monitor without its caution before it.
# SPDX-License-Identifier: GPL-3.0-or-later
import re

HAZARDS = ["none", "low-voltage", "near-mains", "mains", "tube"]
# Words that name a place where somebody can be hurt. DEEP ones name places that nobody enters at this bench.
NEAR = re.compile(r"\b(mains|outlet|transformer|at the bridge|bridge block|big capacitor|heat sink|interlock|"
                  r"line filter|selector plug|fuses?|cord)\b", re.I)
DEEP = re.compile(r"\b(primary|flyback|anode|line capacitor|tube's? neck|inside (the|a|an open) supply|"
                  r"in the supply or|switching transistor|monitor is opened|mains wires)\b", re.I)
CAUTION = re.compile(r"\b(mains|300 V|picture tube|transformer)\b", re.I)
# Where these lie nothing in the cabinet is worked on.
NO_WORK = ("none", "other", "meter")
UNPLUG = re.compile(r"\b(unplug|pull the plug)", re.I)
COVERED = re.compile(r"\b(cover the mains|covers on|cover those|covers? .* before)", re.I)
HAND_OVER = re.compile(r"\b(trained|licensed|electrician|hand (it|the|that)|handed|"
                       r"have .* (replaced|set|made good))", re.I)


def rank(deed):
    return HAZARDS.index(deed["hazard"])


def reserved(deed):
    return deed["who"] != "anyone"


def checks(knowledge):
    """Words of danger in a check: a caution before the steps, and a hazard unless the plug is out."""
    for check in knowledge.checks:
        words, caution = " ".join([check["title"], *check["how"]]), check.get("safety", "")
        if rank(check) >= HAZARDS.index("near-mains") and not CAUTION.search(caution):
            yield f"{check['id']}: hazard {check['hazard']}, but its caution names neither mains nor tube"
        if not NEAR.search(words) and not DEEP.search(words):
            continue
        if not CAUTION.search(caution):
            yield f"{check['id']}: names “{found(words)}” without a caution"
        dead = check["setup"]["power"] == "off" and UNPLUG.search(" ".join(check["how"][:2]))
        if rank(check) < HAZARDS.index("near-mains") and not dead:
            yield f"{check['id']}: names “{found(words)}”, hazard {check['hazard']}, plug in"
        if DEEP.search(words) and not (rank(check) >= HAZARDS.index("mains") and reserved(check)):
            yield f"{check['id']}: enters “{DEEP.search(words)[0]}” with hazard {check['hazard']}"


def found(words):
    return (NEAR.search(words) or DEEP.search(words))[0]


def live(knowledge):
    """Live and near mains: covers come first. Live mains or tube: for trained people, who are named."""
    for check in knowledge.checks:
        if check["setup"]["power"] == "on" and check.get("measure", {}).get("place") in ("terminals", "wire"):
            if not COVERED.search(check["how"][0]):
                yield f"{check['id']}: the mains is not covered in its first step"
        if rank(check) >= HAZARDS.index("mains"):
            said = f"{check.get('safety', '')} {' '.join(check['how'])}"
            if not reserved(check) or not HAND_OVER.search(said):
                yield f"{check['id']}: hazard {check['hazard']} is not left to trained people"


def repairs(knowledge):
    """A repair that names danger has a hazard, names it in its first step and hands over what is deep."""
    for cause in knowledge.causes:
        repair = cause["repair"]
        first, rest = repair["steps"][0], " ".join(repair["steps"][1:])
        dangerous = rank(repair) >= HAZARDS.index("near-mains")
        if (NEAR.search(rest) or DEEP.search(rest)) and not dangerous:
            yield f"{cause['id']}: names “{found(rest)}”, hazard {repair['hazard']}"
        if dangerous and not CAUTION.search(first):
            yield f"{cause['id']}: hazard {repair['hazard']} is not named in its first step"
        if dangerous and not UNPLUG.search(" ".join(repair["steps"])) and not COVERED.search(first):
            yield f"{cause['id']}: neither unplugged nor covered"
        if DEEP.search(rest) and rank(repair) < HAZARDS.index("mains"):
            yield f"{cause['id']}: enters “{DEEP.search(rest)[0]}” with hazard {repair['hazard']}"
        left = reserved(repair) and HAND_OVER.search(f"{first} {rest}")
        if rank(repair) >= HAZARDS.index("mains") and not left:
            yield f"{cause['id']}: hazard {repair['hazard']} is not handed to trained people"
        if repair["hazard"] == "none" and cause["area"] not in NO_WORK and not UNPLUG.search(f"{first} {rest}"):
            yield f"{cause['id']}: hazard none, but the plug stays in"
