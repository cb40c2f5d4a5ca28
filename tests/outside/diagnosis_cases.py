"""200 invented engines with random findings, and what the reference program says of them.

    python3 -B tests/outside/diagnosis_cases.py > data/reference/diagnosis-random.json

One case a line: the evidence in the shape of packages/core/src/diagnosis/evidence.ts, and the answer. The findings are
drawn without any fault in mind, so many of them contradict each other: that is where a slip shows. The same seed makes
the same file.
"""

import json
import random

import numpy as np
import scipy
from diagnosis import Engine
from diagnosis_findings import SEEN
from diagnosis_next import groups, proposed, target
from diagnosis_tables import read_tables

SEED = 20261126
CASES = 200
PSI = 0.45359237 * 9.80665 / 0.0254**2
PLACES = ["crankcase", "exhaust", "intake", "neighbour", "coolant", "plug", "outside", "none"]
OF_CYLINDERS = ("service", "event")  # circumstances that may have touched some cylinders only
RELEASE = ("release possible", "release active")


def layout(draw, n):
    """Banks in physical order."""
    places = list(range(n))
    if n < 4 or draw.random() < 0.4:
        return [places]
    half = (n + 1) // 2
    return draw.choice([[places[:half], places[half:]], [places[::2], places[1::2]]])


def some(draw, places, chance):
    return [place for place in places if draw.random() < chance]


def pascals(psi):
    return round(psi * PSI)


def takes(draw, level):
    """Dry takes of one cylinder: sound, low, nearly dead, dead or high."""
    share = draw.choice([1, 1, 1, draw.uniform(0.5, 0.97), draw.uniform(0.02, 0.5), draw.uniform(1.05, 1.4), 0])
    scatter = draw.choice([0.015, 0.015, 0.15])
    count = draw.choice([1, 1, 1, 2, 3])
    found = [max(0.0, level * share * (1 + draw.gauss(0, scatter))) for _ in range(count)]
    if count > 1 and draw.random() < 0.1:
        found[0] = 0.0  # one take of nothing
    return [pascals(x) for x in found]


def leak(draw):
    alpha = round(draw.choice([draw.uniform(0.1, 0.9), draw.lognormvariate(0, 0.8), 8]), 4)
    doubt = {"doubt": round(draw.uniform(0.05, 0.2), 3)} if draw.random() < 0.6 else {}
    return {"alpha": alpha} | doubt


def heard(draw):
    named = draw.sample(PLACES, draw.choice([0, 1, 1, 1, 2, 3]))
    return [{"place": place, "faint": draw.random() < 0.3} for place in named]


def cylinders(draw, tables, n):
    """Every finding is looked for in some tests only, and there on some cylinders only."""
    found = [{} for _ in range(n)]
    level = draw.uniform(60, 200)

    def put(name, chance, value, share=0.7):
        if draw.random() < chance:
            for place in some(draw, range(n), share):
                found[place][name] = value(found[place])

    put("dry", 0.85, lambda _: takes(draw, level), 0.9)
    if all(not any(c.get("dry", [])) for c in found) and any("dry" in c for c in found):
        next(c for c in found if "dry" in c)["dry"] = [pascals(level)]

    def near(c):
        return float(np.mean(c["dry"])) / PSI if c.get("dry") else level

    put("wet", 0.45, lambda c: pascals(near(c) * draw.uniform(0.95, 1.2) + draw.choice([0, 0.2, 0.5]) * level))
    put("firstStroke", 0.3, lambda c: pascals(near(c) * draw.uniform(0.25, 0.9)))
    put("running", 0.25, lambda _: pascals(draw.choice([1, 1, draw.uniform(0.1, 2), 0]) * draw.uniform(55, 65)))
    put("leak", 0.5, lambda _: leak(draw))
    put("heard", 0.45, lambda _: heard(draw))
    put("oiled", 0.2, lambda _: round(draw.uniform(0.3, 1.1), 3))
    put("lower", 0.2, lambda _: round(draw.uniform(0.3, 1.1), 3))
    put("onset", 0.3, lambda _: draw.choice(["sudden", "gradual", "cannot tell", "steady"]))
    for name in SEEN:
        if draw.random() < 0.1:
            for place in some(draw, range(n), 0.5):
                found[place].setdefault("seen", {})[name] = draw.choice(tables.findings[name]["classes"])
    return found


def circumstances(draw, tables, n):
    known = sorted({when for when, *_ in tables.shifts} - {"one cylinder"})
    named = draw.sample(known, draw.choice([0, 1, 1, 2, 3, 4]))
    if set(RELEASE) <= set(named):
        named.remove(RELEASE[0])
    found = []
    for when in sorted(named) + (["one cylinder"] if n == 1 else []):
        part = when.startswith(OF_CYLINDERS) and draw.random() < 0.5
        found.append({"when": when} | ({"cylinders": some(draw, range(n), 0.5)} if part else {}))
    return found


def evidence(draw, tables):
    n = draw.choice([1, 2, 2, 3, 4, 4, 4, 5, 6, 8])
    found = {
        "cylinders": cylinders(draw, tables, n),
        "banks": layout(draw, n),
        "sharedGasket": draw.random() < 0.75,
        "circumstances": circumstances(draw, tables, n),
        "restrictor": draw.choice(["known", "known", "unknown"]),
        "signs": {name: draw.choice(["present", "absent"]) for name in tables.signs if draw.random() < 0.25},
        "tools": some(draw, sorted({test["tool"] for test in tables.tests} - {""}), 0.4),
        "obstacles": some(draw, sorted({word for test in tables.tests for word in test["blocked"]}), 0.1),
    }
    if draw.random() < 0.5:
        found["expected"] = {
            "level": pascals(draw.uniform(60, 200)),
            "from": draw.choice(["baseline", "maker", "estimate"]),
        }
    if draw.random() < 0.6:
        found["oilRise"] = round(draw.uniform(0.01, 0.3), 4)
    if draw.random() < 0.15:
        found["gas"] = draw.choice(["positive", "negative"])
    return found


def short(x):
    """Nine digits after the point; nothing below them."""
    rounded = round(float(x), 9)
    return int(rounded) if rounded in (0, 1) else rounded


def answer(engine):
    place = target(engine)
    found = {
        "target": place,
        "cylinders": [[short(x) for x in row] for row in engine.chances],
        "states": [[name, short(x)] for name, x in engine.of_states.items() if short(x)],
        "pairs": [[*pair, short(x)] for pair, x in engine.of_pairs.items() if short(x)],
        "groups": {name: short(x) for name, x in groups(engine, engine.chances[place]).items()},
        "tests": [[code, short(bits), effort] for code, bits, effort in proposed(engine, place)],
    }
    level = {} if engine.level is None else {"level": round(engine.level, 4)}
    oil = {} if engine.oil is None else {"oilFactor": short(engine.oil)}
    return found | level | oil


def main():
    draw, tables = random.Random(SEED), read_tables()
    lines = []
    for _ in range(CASES):
        drawn = evidence(draw, tables)
        case = {"evidence": drawn, "answer": answer(Engine(tables, drawn).posterior())}
        lines.append("    " + json.dumps(case, separators=(",", ":")))
    head = {
        "what": "invented findings on invented engines, and what they say by handbook/diagnosis.md",
        "source": f"computed, nothing here is published: tests/outside/diagnosis.py, numpy, scipy {scipy.__version__}",
        "causes": [code for code, _, _ in tables.causes],
    }
    text = ",\n".join(f"  {json.dumps(key)}: {json.dumps(value)}" for key, value in head.items())
    print("{\n" + text + ',\n  "cases": [\n' + ",\n".join(lines) + "\n  ]\n}")


if __name__ == "__main__":
    main()
