# test-coherence.py: the tables, taken together, find the cause: a study by plain Bayes in another language.
# SPDX-License-Identifier: GPL-3.0-or-later
#
# A cabinet with a known fault is described in volts, millivolts and looks, as bench practice tells of it and
# not from the tables. Thresholds turn the volts into outcomes, the tables turn the outcomes into beliefs:
#     weight(cause) = prior(cause) × P(symptom | cause) × Π P(outcome | cause)
from bench_facts import C5, FREQUENCIES, PAIRS, SIGNATURES
from shipped import Knowledge, Report, profile, row, share_of

K = Knowledge.shipped()
# The listed causes leave little for the rest, which the tables must feed too: a group may be off by this much.
FREQUENCY_FACTOR = 1.75
# What settles a pair must speak at least this many to one, both ways; a single noisy look rarely speaks louder.
PAIR_ODDS = 4
# Among how many of the likeliest causes the true one must be.
FIRST = 3
# How much of what a cause outside the list shows is anybody's guess, as in rw-hypotheses.c.
EVEN_SHARE = 0.1
# What the whole study must reach, so that a table cannot slide to the edge of each single claim.
MEAN_BELIEF = 0.85


def outcome_index(check, shown):
    """Which outcome a value in volts falls in, or which one a word names."""
    outcomes = check["outcomes"]
    if isinstance(shown, str):
        return next(i for i, outcome in enumerate(outcomes) if outcome["id"] == shown)
    return next(i for i, outcome in enumerate(outcomes) if shown < outcome.get("to", float("inf")))


def broad_row(here, entry):
    """What a cause that is not listed shows: the mean of the listed by their weights, a tenth of it even."""
    listed = [cause for cause in here.causes if not cause.get("broad")]
    rows = [as_row(row(entry, cause["id"])) for cause in listed]
    total = sum(cause["prior"] for cause in listed)
    means = (sum(cause["prior"] * r[o] for cause, r in zip(listed, rows)) / total for o in range(len(rows[0])))
    return [(1 - EVEN_SHARE) * mean + EVEN_SHARE / len(rows[0]) for mean in means]


def as_row(chances):
    """A symptom's one chance stands for two outcomes: seen and not seen."""
    return chances if isinstance(chances, list) else [chances, 1 - chances]


def row_here(here, entry, cause):
    return broad_row(here, entry) if here.cause(cause).get("broad") else as_row(row(entry, cause))


def likelihood(here, evidence, cause):
    p = 1.0
    for identity, shown in evidence.items():
        check = here.check(identity)
        p *= row_here(here, check, cause)[outcome_index(check, shown)]
    return p


def symptom_row(identity):
    return next(symptom for symptom in K.symptoms if symptom["id"] == identity)


def beliefs(here, symptom, evidence):
    sign = symptom_row(symptom)
    weights = {cause["id"]: cause["prior"] * row_here(here, sign, cause["id"])[0]
               * likelihood(here, evidence, cause["id"]) for cause in here.causes}
    total = sum(weights.values())
    return {cause: weight / total for cause, weight in sorted(weights.items(), key=lambda item: -item[1])}


def signature_complaints():
    for missing in {cause["id"] for cause in K.causes} - set(SIGNATURES) - {"other"}:
        yield f"{missing} has no signature"
    for cause, (where, symptom, evidence) in SIGNATURES.items():
        ranking = beliefs(K.for_profile(profile(where)), symptom, evidence)
        rank = list(ranking).index(cause) + 1
        if rank > FIRST:
            yield f"{cause} comes out {rank}th, behind {list(ranking)[:rank - 1]}"


def mean_complaints():
    found = [beliefs(K.for_profile(profile(where)), symptom, evidence)[cause]
             for cause, (where, symptom, evidence) in SIGNATURES.items()]
    if sum(found) / len(found) < MEAN_BELIEF:
        yield f"the true cause gets {sum(found) / len(found):.2f} on average"


def half_way_complaints():
    """After the first three readings alone the cause must already be among the likelier half dozen."""
    for cause, (where, symptom, evidence) in SIGNATURES.items():
        ranking = list(beliefs(K.for_profile(profile(where)), symptom, dict(list(evidence.items())[:3])))
        if ranking.index(cause) >= 6:
            yield f"{cause} is only {ranking.index(cause) + 1}th after three readings"


def pair_complaints():
    for how, where, one, other, for_one, for_other in PAIRS:
        here = K.for_profile(profile(where))
        for true, false, evidence in ((one, other, for_one), (other, one, for_other)):
            odds = likelihood(here, evidence, true) / likelihood(here, evidence, false)
            if odds < PAIR_ODDS:
                yield f"{how}: {true} against {false} only {odds:.1f} to 1"


def frequency_complaints():
    for identity, groups in FREQUENCIES.items():
        symptom = symptom_row(identity)
        weights = {cause["id"]: cause["prior"] * share_of(cause) * row_here(K, symptom, cause["id"])[0]
                   for cause in K.causes}
        total = sum(weights.values())
        for causes, percent in groups:
            found = 100 * sum(weights[cause] for cause in causes.split()) / total
            if not percent / FREQUENCY_FACTOR <= found <= percent * FREQUENCY_FACTOR:
                yield f"{identity}: {causes}: {found:.0f} per cent instead of {percent}"


def silence_complaints():
    """A cabinet with nothing wrong wherever one measures: the board or the game, not the wiring."""
    here = K.for_profile(profile(C5))
    ranking = beliefs(here, "resets", {
        "p5-terminals-loaded": 5.1, "p5-board-loaded": 5.02, "p5-drop-wire": 0.05, "ground-drop-wire": 0.02,
        "p5-ripple-board": 0.01, "p5-minmax-reset": "none"})
    power = ("supply", "wiring", "mains")
    blamed = sum(p for cause, p in ranking.items() if here.cause(cause)["area"] in power)
    if blamed > 0.15:
        yield f"supply and wiring still hold {blamed:.2f}"


def main():
    report = Report()
    report.claim("the signs of a fault put it among the first three causes", signature_complaints())
    report.claim("the true cause is believed on average", mean_complaints())
    report.claim("three readings bring it near", half_way_complaints())
    report.claim("look-alikes are told apart by what tells them apart at the bench", pair_complaints())
    report.claim("symptoms point to causes as often as the trade says", frequency_complaints())
    report.claim("a well-fed board that resets is not blamed on the supply", silence_complaints())
    report.finish()


main()
