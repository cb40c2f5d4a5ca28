"""60 invented engines of which only a part is known: the expected reading and its band, with scipy's integrator.

    python3 -B tests/outside/expect_bands.py > data/reference/expect-bands.csv

What is not known is assumed as the table of assumptions says, and each unknown goes one standard deviation up and one
down: u^2 = sum (ln(P+/P-)/2)^2 + model^2, band = P e^(-2u) to P e^(+2u).
"""

import random
from math import exp, log, pi, sqrt

import scipy
from expect_cases import peak, typed

SEED = 20261126
ENGINES = 60
MODEL = {"spark": 0.05, "motorcycle": 0.05, "diesel": 0.10}
# rod/stroke, intake closing [deg], speed [rpm], hose [cm3]: usual and standard deviation
USUAL = {
    "spark": ((1.65, 0.12), (60, 10), (250, 40), (1, 0.6)),
    "motorcycle": ((1.75, 0.12), (60, 10), (350, 60), (1, 0.6)),
    "diesel": ((1.65, 0.12), (35, 8), (250, 40), (2, 1)),
}


def band(kind, known):
    """Expected gauge reading [Pa], low and high; `known` in SI by option name."""
    rod, closes, speed, hose = USUAL[kind]
    litres = pi * known["bore"] ** 2 / 4 * known["stroke"] * 1e3
    spread = {
        "rod": (rod[0] * known["stroke"], lambda v, s: v + s * rod[1] * known["stroke"]),
        "intake_closes": (closes[0], lambda v, s: v + s * (3 if "intake_closes" in known else closes[1])),
        "speed": (speed[0], lambda v, s: v * (1 + 0.03 * s) if "speed" in known else v + s * speed[1]),
        "hose": (hose[0] * 1e-6, lambda v, s: v + s * (0.2 if "hose" in known else hose[1]) * 1e-6),
        "leak_area": ((litres / 0.5) ** (2 / 3) * 1e-6, lambda v, s: v * 1.6**s),
        "wall": (355.0, lambda v, s: v + 15 * s),
        "share": (0.4, lambda v, s: v + 0.15 * s),
        "compression_ratio": (None, lambda v, s: v + 0.2 * s),
        "heat_factor": (1.0, lambda v, s: v * 1.4**s),
    }
    # A rod, a leak area or a wall temperature that was given is taken as exact.
    exact = {"rod", "leak_area", "wall"} & known.keys()

    def reading(moved=None, by=0):
        e = {name: known.get(name, usual) for name, (usual, _) in spread.items()}
        if moved is not None:
            e[moved] = spread[moved][1](e[moved], by)
        e |= {name: known[name] for name in ("bore", "stroke", "station_pressure")}
        air = known.get("air", 293.15)
        e |= {"start": air + e["share"] * (e["wall"] - air), "heat": "hohenberg", "gamma": "variable"}
        return peak(e)[0] - e["station_pressure"]

    effects = [log(reading(name, 1) / reading(name, -1)) / 2 for name in spread if name not in exact]
    u = sqrt(sum(x**2 for x in effects) + MODEL[kind] ** 2)
    expected = reading()
    return expected, expected * exp(-2 * u), expected * exp(2 * u)


def engine(draw):
    """One random engine: its kind, option texts, SI values by option name."""
    kind = draw.choice(["spark", "spark", "motorcycle", "diesel"])
    bore = draw.uniform(0.048, 0.078) if kind == "motorcycle" else draw.uniform(0.065, 0.125)
    stroke = bore * draw.uniform(0.8, 1.25)
    ratio = draw.uniform(15, 22) if kind == "diesel" else draw.uniform(7, 12)
    mm = ("mm", 1e-3, 1)
    values = {
        "bore": typed(draw, bore, mm),
        "stroke": typed(draw, stroke, mm),
        "compression_ratio": typed(draw, ratio, ("", 1, 1)),
        "station_pressure": typed(draw, draw.uniform(70e3, 104e3), ("hPa", 100, 0)),
    }
    perhaps = {
        "rod": typed(draw, stroke * draw.uniform(1.5, 2), mm),
        "intake_closes": typed(draw, draw.uniform(30, 45) if kind == "diesel" else draw.uniform(40, 70), ("deg", 1, 0)),
        "speed": typed(draw, draw.uniform(150, 400), ("rpm", 1, 0)),
        "hose": typed(draw, draw.uniform(0.5e-6, 4e-6), ("cm3", 1e-6, 1)),
        "leak_area": typed(draw, draw.uniform(0.3e-6, 2e-6), ("mm2", 1e-6, 2)),
        "wall": typed(draw, draw.uniform(320, 380), ("K", 1, 0)),
        "air": typed(draw, draw.uniform(265, 310), ("K", 1, 0)),
    }
    values |= {name: value for name, value in perhaps.items() if draw.random() < 0.35}
    return kind, {name: t for name, (t, _) in values.items()}, {name: si for name, (_, si) in values.items()}


INPUTS = """bore stroke compression_ratio station_pressure rod intake_closes speed hose leak_area wall air""".split()


def main():
    draw = random.Random(SEED)
    print("# invented engines of which a part is known: the reading to expect and its band")
    print("# columns that begin with -- are options of `sealtrend expect` as typed; empty = left out")
    print("# source: computed, nothing here is published: tests/outside/expect_bands.py")
    print(f"# with scipy {scipy.__version__} (solve_ivp, DOP853, rtol 1e-10) and the assumptions of the handbook")
    options = [f"--{name.replace('_', '-')}" for name in INPUTS]
    print(",".join(["--ignition", "--use", *options, "expected_kPa", "low_kPa", "high_kPa"]))
    for _ in range(ENGINES):
        kind, texts, known = engine(draw)
        named = ["compression" if kind == "diesel" else "spark", "motorcycle" if kind == "motorcycle" else ""]
        figures = [f"{x / 1e3:.8g}" for x in band(kind, known)]
        print(",".join(named + [texts.get(name, "") for name in INPUTS] + figures))


if __name__ == "__main__":
    main()
