"""500 invented leak-down readings and what another tester would show, found by scipy's root finder.

    python3 -B tests/outside/restate_cases.py > data/reference/restate-cases.csv

Written from the equations alone, not from the project's code: steady flow through restrictor and leak, solved with
brentq. More than half of the cases cannot be restated honestly (too tight for the dials, hardly any seal, a small supply,
a leak law that matters too much); the orifice model has a number for them all the same. The same seed makes the same
file.
"""

import random
from math import expm1, hypot, log, log1p, pi, sqrt

import scipy
from scipy.optimize import brentq

SEED = 20261125
CASES = 500
GAMMA, R = 1.4, 287.05
CRITICAL = (2 / (GAMMA + 1)) ** (GAMMA / (GAMMA - 1))
CHOKED = sqrt(GAMMA) * (2 / (GAMMA + 1)) ** ((GAMMA + 1) / (2 * (GAMMA - 1)))
COEFFICIENTS = {"coned": 0.87, "square": 0.80, "unknown": 0.82}
THIN_PLATE = (0.8414, -0.1002, 0.8415, -3.9, 4.6001, -1.6827)  # Cd in powers of p_down/p_up
REFERENCE_DENSITY = 1.185  # kg/m3, air in which the flow is told
PSI = 0.45359237 * 9.80665 / 0.0254**2
DIAL = PSI * sqrt(2**2 / 3 + 1 / 12)  # standard uncertainty of a dial: 2 psi either way, divided in 1 psi


# --- equations ---------------------------------------------------------------------------------------------------


def isentropic(r):
    """psi of mdot = Cd A p_up psi / sqrt(R T_up), by the pressure ratio down/up."""
    if r <= CRITICAL:
        return CHOKED
    k = (GAMMA - 1) / GAMMA
    return sqrt(2 / k * r ** (2 / GAMMA) * -expm1(k * log1p(r - 1)))


def iso6358(r, b):
    """The same by the standard's ellipse."""
    return CHOKED * (1.0 if r <= b else sqrt(1 - ((r - b) / (1 - b)) ** 2))


def discharge(cd, profile, r):
    """Cd at the pressure ratio r: measured, or by the make of the restrictor."""
    if cd:
        return cd
    return sum(c * r**i for i, c in enumerate(THIN_PLATE)) if profile == "thin-plate" else COEFFICIENTS[profile]


def air_at(altitude):
    """Pressure of the standard atmosphere [Pa]."""
    return 101325 * (1 - 0.0065 * altitude / 288.15) ** (9.80665 * 0.0289644 / (8.31432 * 0.0065))


def area(diameter):
    return pi * diameter**2 / 4


def restate(c):
    """Everything about one case: `c` in SI, pressures by the gauge."""
    iso = c["model"] == "iso6358"
    critical = c["critical_ratio"] if iso else CRITICAL
    pa, pb = air_at(c["altitude"]), air_at(c["to_altitude"])
    p1, p2, q1 = c["regulated"] + pa, c["read"] + pa, c["to_regulated"] + pb

    def psi(r):
        return iso6358(r, critical) if iso else isentropic(r)

    def through(p, supply, bore, cd, profile):
        """Mass flow of the restrictor, times sqrt(R T)."""
        return discharge(cd, profile, p / supply) * area(bore) * supply * psi(p / supply)

    flow = through(p2, p1, c["restrictor"], c["cd"], c["profile"])
    hole = discharge(c["cd"], c["profile"], p2 / p1) * area(c["restrictor"])
    leak = flow / (p2 * psi(pa / p2))  # effective area if the cylinder is as warm as the supply air
    alpha = leak / hole * sqrt(c["cylinder_temp"] / c["air"])

    def cylinder(out):
        """Gauge reading where what the other restrictor passes equals `out(p)`."""

        def surplus(p):
            return through(p, q1, c["to_restrictor"], c["to_cd"], c["to_profile"]) - out(p)

        return brentq(surplus, pb, q1 * (1 - 1e-15), xtol=1e-9, rtol=1e-14) - pb

    read = cylinder(lambda p: leak * p * psi(min(1.0, pb / p)))
    viscous = flow / (p2**2 - pa**2)  # mdot ~ p2^2 - pa^2, the same flow at the first reading
    laminar = cylinder(lambda p: viscous * (p**2 - pb**2))
    lost, band = 1 - read / c["to_regulated"], 1 - laminar / c["to_regulated"]
    return {
        "alpha": alpha,
        "equalHole_mm": c["restrictor"] * sqrt(alpha) * 1e3,
        "area_mm2": alpha * hole * 1e6,
        "cd": hole / area(c["restrictor"]),
        "flow_Lmin": 6e4 * flow / sqrt(R * c["air"]) / REFERENCE_DENSITY,
        "read_kPa": read / 1e3,
        "lost": lost,
        "lowLost": min(lost, band),
        "highLost": max(lost, band),
        "chokedRestrictor": "yes" if p2 / p1 <= critical else "no",
        "chokedLeak": "yes" if pa / p2 <= critical else "no",
    }


def refusal(c, out):
    """Why the case cannot be restated, or nothing; the first reason counts."""
    if c["regulated"] - c["read"] < 2 * sqrt(2) * DIAL:
        return "too-tight"
    if c["read"] < 2 * DIAL:
        return "no-seal"
    if (c["cd"] is None) != (c["to_cd"] is None) or (c["cd"] is None and c["profile"] != c["to_profile"]):
        return "makes-differ"
    if out["highLost"] >= 2 * out["lowLost"] or out["highLost"] - out["lowLost"] >= 0.1:
        return "band-wide"

    def slope(name, step=100.0):
        up, down = (restate(c | {name: c[name] + way * step})["alpha"] for way in (1, -1))
        return log(up / down) / (2 * step)

    return "dials-coarse" if hypot(slope("regulated"), slope("read")) * DIAL > 0.25 else ""


# --- cases -------------------------------------------------------------------------------------------------------

PRESSURES = (("psi", PSI, 1), ("psi", PSI, 1), ("kPa", 1e3, 0), ("bar", 1e5, 2))
BORES = (("in", 0.0254, 3), ("mm", 1e-3, 2))


def typed(draw, value, ways):
    unit, factor, digits = draw.choice(ways)
    text = f"{value / factor:.{digits}f}"
    return f"{text}{unit}", float(text) * factor


def reading(draw, regulated):
    """--read or --lost; a fifth of the cylinders nearly tight, a fifth nearly open."""
    share = draw.choice([draw.uniform(0.3, 0.95)] * 3 + [draw.uniform(0.95, 0.995), draw.uniform(0.03, 0.3)])
    if draw.random() < 0.3:
        text = f"{100 * (1 - share):.1f}"
        return "", text, regulated * (1 - float(text) / 100)
    text = f"{regulated * share / PSI:.2f}"
    return f"{text}psi", "", float(text) * PSI


def case(draw):
    """One random case: option texts and SI values by option name."""
    texts, si = {}, {}

    def mostly(usual, others):
        return usual if draw.random() < 0.6 else draw.choice(others)

    def put(name, pair):
        texts[name], si[name] = pair

    put("regulated", typed(draw, mostly(80, [draw.uniform(8, 30), draw.uniform(30, 150)]) * PSI, PRESSURES))
    texts["read"], texts["lost"], si["read"] = reading(draw, si["regulated"])
    put("to_regulated", typed(draw, mostly(100, [draw.uniform(5, 30), draw.uniform(30, 150), 80]) * PSI, PRESSURES))
    put("restrictor", typed(draw, mostly(1.016e-3, [draw.uniform(0.4e-3, 2e-3), 1.524e-3]), BORES))
    left_out = ("", None)
    other = typed(draw, mostly(1.524e-3, [draw.uniform(0.4e-3, 2e-3), 1.016e-3]), BORES)
    same = draw.random() < 0.2
    put("to_restrictor", left_out if same else other)

    def ratio(low, high):
        text = f"{draw.uniform(low, high):.2f}"
        return text, float(text)

    def make():
        return (draw.choice(["coned", "square", "thin-plate", "unknown"]),) * 2

    told = draw.choice(["nothing", "nothing", "cd", "profile"])
    put("cd", ratio(0.6, 0.98) if told == "cd" else left_out)
    put("to_cd", ratio(0.6, 0.98) if told == "cd" and not same and draw.random() < 0.7 else left_out)
    put("profile", make() if told == "profile" else left_out)
    put("to_profile", make() if told == "profile" and not same and draw.random() < 0.7 else left_out)
    for name in ("altitude", "to_altitude"):
        metres = draw.choice([None, None, round(draw.uniform(-200, 4500))])
        put(name, left_out if metres is None else (f"{metres}m", float(metres)))
    warm = draw.random() < 0.3
    for name, told, low, high in (("cylinder_temp", warm, 25, 110), ("air", warm and draw.random() < 0.5, -10, 40)):
        celsius = round(draw.uniform(low, high))
        put(name, (f"{celsius}C", celsius + 273.15) if told else left_out)
    texts["model"] = si["model"] = draw.choice(["isentropic"] * 4 + ["iso6358"])
    ellipse = si["model"] == "iso6358" and draw.random() < 0.5
    put("critical_ratio", ratio(0.2, 0.55) if ellipse else left_out)
    return texts, completed(si)


def completed(si):
    """What was left out: as the command says, and the other tester as the first."""
    usual = {"profile": "unknown", "altitude": 0.0, "air": 293.15, "critical_ratio": 0.5}
    c = {name: usual.get(name) if value is None else value for name, value in si.items()}
    c["cylinder_temp"] = c["cylinder_temp"] or c["air"]
    for name in ("restrictor", "cd", "profile", "altitude"):
        if si[f"to_{name}"] is None:
            c[f"to_{name}"] = c[name]
    return c


INPUTS = """read lost regulated restrictor cd profile altitude cylinder_temp air to_regulated to_restrictor to_cd
    to_profile to_altitude model critical_ratio""".split()


def main():
    draw = random.Random(SEED)
    results = []
    for _ in range(CASES):
        texts, si = case(draw)
        out = restate(si)
        results.append((texts, out | {"refused": refusal(si, out)}))
    outputs = list(results[0][1])
    print("# invented leak-down readings and what another tester would show")
    print("# columns that begin with -- are options of `sealtrend restate` as typed; empty = left out, which means sea level,")
    print("# supply air of 20 C, a cylinder as warm as it, a restrictor of unknown make; on the other tester: as on the first")
    print(f"# source: computed, nothing here is published: tests/outside/restate_cases.py, scipy {scipy.__version__} (brentq)")
    print("# lowLost, highLost: the leak as an orifice and as a laminar gap; chokedRestrictor, chokedLeak: on the first tester")
    print("# refused: the first reason not to restate with dials of 2 psi either way, divided in 1 psi; empty = none")
    print(",".join([f"--{name.replace('_', '-')}" for name in INPUTS] + outputs))
    for texts, out in results:
        numbers = [x if isinstance(x, str) else f"{x:.10g}" for x in out.values()]
        print(",".join([texts[name] for name in INPUTS] + numbers))


if __name__ == "__main__":
    main()
