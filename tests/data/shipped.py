# shipped.py: what the data tests share: finding and reading the shipped files, and reporting in TAP.
# SPDX-License-Identifier: GPL-3.0-or-later
import json
import os
import pathlib
import sys

ROOT = pathlib.Path(os.environ.get("RAILWRIGHT_SRC_ROOT", pathlib.Path(__file__).resolve().parents[2]))
DATA = ROOT / "data"
DEMOS = ROOT / "demo-sessions"
STAGES = DATA / "stages" / "stages.json"

# Share of the cabinets in the trade that have the part a cause needs (estimates). A cause that only these
# cabinets can have is given its weight divided by the share, so that it counts in full where it can occur.
SHARES = {"switcher": 0.65, "linear": 0.35, "m5": 0.5, "m12": 0.3, "p24": 0.25, "p12": 0.65}


def load(path):
    with open(path, encoding="utf-8") as file:
        return json.load(file, object_pairs_hook=refuse_double_keys)


def refuse_double_keys(pairs):
    keys = [key for key, _ in pairs]
    doubled = {key for key in keys if keys.count(key) > 1}
    if doubled:
        raise ValueError(f"key written twice: {sorted(doubled)}")
    return dict(pairs)


def profile_paths():
    return sorted((DATA / "profiles").glob("*.json"))


def knowledge_paths():
    return sorted((DATA / "knowledge").glob("*.json"))


def profiles():
    return [load(path) for path in profile_paths()]


def profile(identity):
    return next(p for p in profiles() if p["id"] == identity)


class Knowledge:
    """All entries of all knowledge files, in file order, ids not yet proved unique."""

    def __init__(self, symptoms=(), causes=(), checks=(), computed=()):
        self.symptoms, self.causes, self.checks = list(symptoms), list(causes), list(checks)
        self.computed = list(computed)

    @classmethod
    def shipped(cls):
        whole = cls()
        for path in knowledge_paths():
            part = load(path)
            for kind in ("symptoms", "causes", "checks", "computed"):
                getattr(whole, kind).extend(part.get(kind, []))
        return whole

    def for_profile(self, profile):
        """What applies to one cabinet, by the rules of the format."""
        return Knowledge(self.symptoms, [c for c in self.causes if meets(c, profile)],
                         [c for c in self.checks if meets(c, profile) and has_rail(c, profile)],
                         [c for c in self.computed if c.get("rail", "gnd") in rails_of(profile) + ["gnd"]])

    def cause(self, identity):
        return next(c for c in self.causes if c["id"] == identity)

    def check(self, identity):
        return next(c for c in self.checks if c["id"] == identity)


def rails_of(profile):
    return [rail["id"] for rail in profile["rails"]]


def meets(entry, profile):
    needs = entry.get("needs", {})
    return (all(rail in rails_of(profile) for rail in needs.get("rails", []))
            and needs.get("supply", profile.get("supply")) == profile.get("supply"))


def has_rail(check, profile):
    return check.get("measure", {}).get("rail", "gnd") in rails_of(profile) + ["gnd"]


def row(entry, cause):
    return entry["chance"].get(cause, entry["chance"]["default"])


def share_of(cause):
    """Share of all cabinets that can have this cause."""
    needs = cause.get("needs", {})
    share = SHARES[needs["supply"]] if "supply" in needs else 1.0
    for rail in needs.get("rails", []):
        share *= SHARES[rail]
    return share


class Report:
    """Collects complaints under claims and prints them as TAP."""

    def __init__(self):
        self.claims = []

    def claim(self, name, complaints):
        self.claims.append((name, list(complaints)))

    def finish(self):
        print("TAP version 13")
        print(f"1..{len(self.claims)}")
        for number, (name, complaints) in enumerate(self.claims, 1):
            for complaint in complaints:
                print(f"# {complaint}")
            print(f"{'not ok' if complaints else 'ok'} {number} - {name}")
        sys.exit(any(complaints for _, complaints in self.claims))
