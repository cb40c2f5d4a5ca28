"""200 invented engines and the cranking pressure that scipy's integrator finds for them.

    python3 -B tests/outside/expect_cases.py > data/reference/expect-cases.csv

Written from the equations alone, not from the project's code, and with another method: an adaptive 8th-order
integrator whose event dp/dangle = 0 is the peak. The same seed makes the same file.
"""

import random
from math import cos, degrees, pi, radians, sin, sqrt

import scipy
from scipy.integrate import solve_ivp

SEED = 20261125
ENGINES = 200
R = 287.05  # J/(kg K), dry air
POLYNOMIAL = (3.653, -1.337e-3, 3.294e-6, -1.913e-9, 0.2763e-12)  # cp/R of air in powers of T
AIR = (("kPa", 1e3, 1), ("hPa", 100, 0), ("inHg", 13595.1 * 9.80665 * 0.0254, 2))


# --- air ---------------------------------------------------------------------------------------------------------


def heat_capacity(T, gamma):
    """cp [J/(kg K)]: constant for gamma 1.4, else the polynomial."""
    return 3.5 * R if gamma == "1.4" else R * sum(c * T**i for i, c in enumerate(POLYNOMIAL))


def enthalpy(T, gamma):
    """h [J/kg], the integral of cp from 0 K."""
    if gamma == "1.4":
        return 3.5 * R * T
    return R * sum(c * T ** (i + 1) / (i + 1) for i, c in enumerate(POLYNOMIAL))


def flow(p_up, p_down, T_up, gamma):
    """Mass flow [kg/s] through 1 m2 of effective hole, choked or not."""
    cp = heat_capacity(T_up, gamma)
    g = cp / (cp - R)
    r = max(p_down / p_up, (2 / (g + 1)) ** (g / (g - 1)))
    return p_up / sqrt(R * T_up) * sqrt(max(0.0, 2 * g / (g - 1) * (r ** (2 / g) - r ** ((g + 1) / g))))


def wall_heat(model, bore, speed, volume, p, T):
    """Coefficient [W/(m2 K)]; speed is the mean piston speed [m/s]."""
    if model == "hohenberg":
        return 130 * volume**-0.06 * (p / 1e5) ** 0.8 * T**-0.4 * (speed + 1.4) ** 0.8
    if model == "woschni":
        return 3.26 * bore**-0.2 * (p / 1e3) ** 0.8 * T**-0.53 * (2.28 * speed) ** 0.8
    if model == "annand":  # a = 0.5
        viscosity = 1.458e-6 * T**1.5 / (T + 110.4)
        conductivity = 2.64638e-3 * T**1.5 / (T + 245.4 * 10 ** (-12 / T))
        return 0.5 * conductivity / bore * (p / (R * T) * speed * bore / viscosity) ** 0.7
    return 0.0


# --- engine ------------------------------------------------------------------------------------------------------


def peak(e):
    """Peak of the motored compression stroke of engine `e` (SI, angles in degrees)."""
    bore, crank, rod = e["bore"], e["stroke"] / 2, e["rod"]
    piston = pi * bore**2 / 4
    clearance = piston * e["stroke"] / (e["compression_ratio"] - 1)
    omega = 2 * pi * e["speed"] / 60
    piston_speed = 2 * e["stroke"] * e["speed"] / 60
    ambient, gamma = e["station_pressure"], e["gamma"]

    def travel(a):
        return crank * (1 - cos(a)) + rod - sqrt(rod**2 - (crank * sin(a)) ** 2)

    def volume(a):
        return clearance + e["hose"] + piston * travel(a)

    def volume_rate(a):
        return piston * crank * sin(a) * (1 + crank * cos(a) / sqrt(rod**2 - (crank * sin(a)) ** 2))

    def rates(a, y):
        m, T = y
        V = volume(a)
        p = m * R * T / V
        cv = heat_capacity(T, gamma) - R
        h = e.get("heat_factor", 1.0) * wall_heat(e["heat"], bore, piston_speed, V, p, T)
        power = h * (2 * piston + pi * bore * travel(a)) * (e["wall"] - T) - p * volume_rate(a) * omega
        if p >= ambient:
            out = e["leak_area"] * flow(p, ambient, T, gamma)
            power -= out * R * T
        else:  # air of the starting temperature is drawn in
            out = -e["leak_area"] * flow(ambient, p, e["start"], gamma)
            power -= out * (enthalpy(e["start"], gamma) - (enthalpy(T, gamma) - R * T))
        return [-out / omega, power / (m * cv * omega)]

    def slope(a, y):
        dm, dT = rates(a, y)
        return dm / y[0] + dT / y[1] - volume_rate(a) / volume(a)

    slope.direction = -1
    shut = -radians(180 - e["intake_closes"])
    m0 = ambient * volume(shut) / (R * e["start"])
    run = solve_ivp(
        rates,
        (shut, radians(20)),
        [m0, e["start"]],
        method="DOP853",
        rtol=1e-10,
        atol=[m0 * 1e-13, 1e-9],
        max_step=radians(2),
        events=slope,
    )
    tops = [(m * R * T / volume(a), a, m / m0) for a, (m, T) in zip(run.t_events[0], run.y_events[0])]
    p, a, left = max(tops)
    return p, degrees(a), left, volume(shut) - e["hose"], clearance


# --- cases -------------------------------------------------------------------------------------------------------


def typed(draw, value, *ways):
    """`value` (SI) as somebody would type it in one of `ways` (unit, factor, digits), and what was typed in SI."""
    unit, factor, digits = draw.choice(ways)
    text = f"{value / factor:.{digits}f}"
    return f"{text}{unit}", float(text) * factor


def typed_temperature(draw, kelvin):
    unit = draw.choice("KKCF")
    if unit == "K":
        return f"{kelvin:.0f}K", float(f"{kelvin:.0f}")
    if unit == "C":
        text = f"{kelvin - 273.15:.0f}"
        return f"{text}C", float(text) + 273.15
    text = f"{kelvin * 1.8 - 459.67:.0f}"
    return f"{text}F", (float(text) + 459.67) / 1.8


def engine(draw):
    """One random engine: option texts and SI values by option name."""
    bore = 0.040 * 3.2 ** draw.random()
    stroke = bore * draw.uniform(0.7, 1.35)
    ratio = draw.uniform(6.5, 12) if draw.random() < 0.65 else draw.uniform(14, 23)
    litres = pi * bore**2 / 4 * stroke * 1e3
    leak = draw.choice([0, 1, 1, 1, 1]) * draw.uniform(0, 2.5e-6)
    mm, inches = ("mm", 1e-3, 1), ("in", 0.0254, 3)
    values = {
        "bore": typed(draw, bore, mm, mm, inches),
        "stroke": typed(draw, stroke, mm, mm, inches),
        "rod": typed(draw, stroke * draw.uniform(1.45, 2.2), mm, mm, inches),
        "compression_ratio": typed(draw, ratio, ("", 1, 2)),
        "intake_closes": typed(draw, draw.uniform(25, 85 if ratio < 13 else 50), ("deg", 1, 0)),
        "speed": typed(draw, draw.uniform(120, 450), ("rpm", 1, 0)),
        "leak_area": typed(draw, leak * (litres / 0.5) ** (2 / 3), ("mm2", 1e-6, 2)),
        "wall": typed_temperature(draw, draw.uniform(265, 400)),
        "start": typed_temperature(draw, draw.uniform(265, 365)),
        "station_pressure": typed(draw, draw.uniform(65e3, 105e3), *AIR),
        "hose": typed(draw, draw.uniform(0, 3e-6), ("cm3", 1e-6, 1)),
    }
    heat = draw.choice(["none", "hohenberg", "annand", "woschni"])
    gamma = draw.choice(["1.4", "variable"])
    texts = {name: text for name, (text, _) in values.items()} | {"heat": heat, "gamma": gamma}
    return texts, {name: si for name, (_, si) in values.items()} | {"heat": heat, "gamma": gamma}


INPUTS = """bore stroke rod compression_ratio intake_closes speed leak_area wall start heat gamma
    station_pressure hose""".split()
OUTPUTS = "peak_kPaAbs peakAngle_deg massLeft gauge_kPa sweptRatio clearance_cm3".split()


def main():
    draw = random.Random(SEED)
    print("# invented engines and their peak cranking pressure")
    print("# columns that begin with -- are options of `sealtrend expect` as typed")
    print("# source: computed, nothing here is published: tests/outside/expect_cases.py")
    print(f"# with scipy {scipy.__version__} (solve_ivp, DOP853, rtol 1e-10); Annand's factor is 0.5")
    print("# massLeft: gas in the cylinder at the peak over gas when the intake closes; sweptRatio without the hose")
    print(",".join([f"--{name.replace('_', '-')}" for name in INPUTS] + OUTPUTS))
    for _ in range(ENGINES):
        texts, e = engine(draw)
        p, angle, left, trapped, clearance = peak(e)
        gauge = p - e["station_pressure"]
        results = [p / 1e3, angle, left, gauge / 1e3, trapped / clearance, clearance * 1e6]
        print(",".join([texts[name] for name in INPUTS] + [f"{x:.8g}" for x in results]))


if __name__ == "__main__":
    main()
