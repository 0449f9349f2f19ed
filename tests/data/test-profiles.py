# test-profiles.py: what a schema cannot say of the shipped profiles: numbers that agree with each other.
# SPDX-License-Identifier: GPL-3.0-or-later
from shipped import Report, profile_paths, profiles, rails_of, load

NEEDED = {"classic-5-12-m5", "switcher-5-12", "switcher-5-12-m12", "linear-5-audio", "switcher-5-12-24",
          "dram-5-12-m5"}
RAIL_KEYS = {"id", "label", "nominal", "limits", "bare_limits", "never_above", "priority", "follows_trim",
             "feeds", "ripple_limit"}
RAIL_IDS = {"p5", "p12", "m5", "m12", "p24", "raw12"}


def magnitude(rail, pair):
    """(weak, strong) ends of a pair as magnitudes."""
    return (abs(rail[pair][1]), abs(rail[pair][0])) if rail["nominal"] < 0 else tuple(rail[pair])


def every_rail():
    for profile in profiles():
        for rail in profile["rails"]:
            yield f"{profile['id']}: {rail['id']}", rail


def files():
    for path in profile_paths():
        if load(path)["id"] != path.stem:
            yield f"{path.name}: id {load(path)['id']} is not the file's name"
    for missing in NEEDED - {profile["id"] for profile in profiles()}:
        yield f"{missing} is missing"


def heads():
    for profile in profiles():
        if profile.get("reference") not in rails_of(profile):
            yield f"{profile['id']}: its reference is no rail of it"
        if "supply" not in profile:
            yield f"{profile['id']}: does not say what supply it has"
        if len(set(rails_of(profile))) != len(rails_of(profile)):
            yield f"{profile['id']}: a rail comes twice"
        if len(profile["title"]) > 42:
            yield f"{profile['id']}: its title is long"
        priorities = sorted(rail["priority"] for rail in profile["rails"])
        if priorities != list(range(1, len(priorities) + 1)):
            yield f"{profile['id']}: priorities {priorities}"


def whole():
    for where, rail in every_rail():
        if RAIL_KEYS - set(rail):
            yield f"{where}: lacks {sorted(RAIL_KEYS - set(rail))}"
        if rail["id"] not in RAIL_IDS:
            yield f"{where}: a new rail id, which knowledge does not speak of"


def limits():
    for where, rail in every_rail():
        for pair in ("limits", "bare_limits"):
            low, high = rail[pair]
            if not low < rail["nominal"] < high:
                yield f"{where}: {pair} {rail[pair]} do not enclose {rail['nominal']}"
        strongest = max(magnitude(rail, "limits")[1], magnitude(rail, "bare_limits")[1])
        if rail["never_above"] < strongest:
            yield f"{where}: never_above {rail['never_above']} lies inside its limits"
        if magnitude(rail, "bare_limits")[1] < magnitude(rail, "limits")[1]:
            yield f"{where}: the terminals may not reach what the board may have"
        if not 0.001 <= rail["ripple_limit"] <= 0.1 * abs(rail["nominal"]):
            yield f"{where}: ripple limit {rail['ripple_limit']}"


def data_sheets():
    """Chips' own limits: 5 V logic 4.75 to 5.25 V, 7 V at most; three-rail memory within 5 per cent here."""
    for where, rail in every_rail():
        low, high = rail["limits"]
        if rail["id"] == "p5" and not (4.75 <= low < high <= 5.25 and rail["never_above"] <= 5.5):
            yield f"{where}: wider than logic allows"
        if where.startswith("dram") and rail["id"] != "p5" and high - low > 0.1001 * abs(rail["nominal"]):
            yield f"{where}: wider than 5 per cent either way"
    bias = next(rail for where, rail in every_rail() if where == "dram-5-12-m5: m5")
    drain = next(rail for where, rail in every_rail() if where == "dram-5-12-m5: p12")
    if bias["never_above"] + drain["never_above"] > 20:
        yield "dram-5-12-m5: +12 V and −5 V together may pass the memory's 20 V"


def labels():
    for where, rail in every_rail():
        sign = "−" if rail["nominal"] < 0 else "+"
        if not rail["label"].startswith(f"{sign}{abs(rail['nominal']):g} V"):
            yield f"{where}: label {rail['label']}"


def main():
    report = Report()
    report.claim("the six shipped profiles are there, each named after its file", files())
    report.claim("reference, supply, priorities and titles are in order", heads())
    report.claim("every rail says all it can, under an id that knowledge knows", whole())
    report.claim("limits enclose the nominal and stay below never_above", limits())
    report.claim("limits stay within what the chips allow", data_sheets())
    report.claim("labels carry sign and volts", labels())
    report.finish()


main()
