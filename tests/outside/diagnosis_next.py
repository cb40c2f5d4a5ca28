"""What is said of a posterior: the cylinder to explain, its groups of causes, the tests that are left.

handbook/diagnosis.md 5.1 and 6; `engine` is an Engine of diagnosis.py with its posterior.
"""

from math import inf, log2

import numpy as np

AFTER_DRY = {"wet", "first-stroke", "repeats", "second-gauge", "conditions", "release"}  # held against a dry reading
TIE = 0.9
GROUPS = ("top", "bottom", "test", "nothing", "unlisted")


def target(engine):
    """Most in need of an explanation; ties: the lowest reading, the largest leak, the first."""

    def order(i):
        fault = round(1 - float(engine.chances[i, engine.t.at["no-fault"]]), 3)
        cylinder = engine.cylinders[i]
        leak = cylinder.found.get("leak", {"alpha": 0})["alpha"]
        return -fault, inf if cylinder.mean is None else cylinder.mean, -leak, i

    return min(range(engine.n), key=order)


def groups(engine, p):
    sums = dict.fromkeys(GROUPS, 0.0)
    for (_, group, _), chance in zip(engine.t.causes, p):
        sums[group] += float(chance)
    return sums


def entropy(engine, p):
    return -sum(x * log2(x) for x in groups(engine, p).values() if x > 0)


def bits(engine, place, finds):
    """Expected information about the group from findings not yet taken there."""
    cylinder, p = engine.cylinders[place], engine.chances[place]
    outcomes = np.ones((len(p), 1))
    for name in finds:
        columns = engine.t.findings[name]["columns"] ** cylinder.weight(name, finds)
        columns = columns / columns.sum(1, keepdims=True)
        outcomes = (outcomes[:, :, None] * columns[:, None, :]).reshape(len(p), -1)
    after = [q * entropy(engine, p * o / q) for q, o in zip(p @ outcomes, outcomes.T) if q > 0]
    return entropy(engine, p) - float(sum(after))


def looked_for(evidence, place):
    """Findings that were taken on this cylinder, whether or not they could be used."""
    found = evidence["cylinders"][place]
    dry = len(found.get("dry", ()))
    same = ("wet", "running", "leak", "oiled", "lower", "onset")
    names = {name: name for name in same} | {"firstStroke": "first-stroke", "heard": "path"}
    counted = {"level": dry > 0, "repeats": dry > 1, "gas": "gas" in evidence}
    return {
        *found.get("seen", {}),
        *(name for key, name in names.items() if key in found),
        *(name for name, holds in counted.items() if holds),
    }


def obstacles(engine, place, taken):
    heard = {h["place"] for h in engine.cylinders[place].found.get("heard", [])}
    held = {
        "one cylinder": engine.n == 1,
        "no leak-down yet": "leak" not in taken,
        "no air at a neighbour": "neighbour" not in heard,
    }
    return {*engine.e["obstacles"], *(word for word, holds in held.items() if holds)}


def proposed(engine, place):
    """(code, bits, effort) of the tests left, the quickest first; within a tenth of it risk, minutes, table decide."""
    taken = looked_for(engine.e, place)
    blocked = obstacles(engine, place, taken)
    left = []
    for test in engine.t.tests:
        fresh = [name for name in test["finds"] if name not in taken]
        dry_first = "level" not in taken and set(fresh) <= AFTER_DRY
        if not fresh or dry_first or set(test["blocked"]) & blocked:
            continue
        told = bits(engine, place, fresh)
        missing = test["tool"] and test["tool"] not in engine.e["tools"]
        effort = test["minutes"] + 10 * test["risk"] + (20 if missing else 0)
        left.append((test, told, effort, 60 * told / effort))
    best = max((rate for *_, rate in left), default=0)
    ties = sorted((x for x in left if x[3] >= TIE * best), key=lambda x: (x[0]["risk"], x[0]["minutes"]))
    others = sorted((x for x in left if x[3] < TIE * best), key=lambda x: -x[3])
    return [(test["code"], told, effort) for test, told, effort, _ in ties + others]
