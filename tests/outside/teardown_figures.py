"""Bores, volumes, thread, rings and flatness for teardown_cases.py; lengths in mm."""

import numpy as np
from scipy import integrate

from teardown_numbers import rng, rounded

LEVELS, DIRECTIONS = ("top", "middle", "bottom"), ("thrust", "axial")


def bore(name, grid, original):
    """grid: 3 levels by 2 directions."""
    d = np.array(grid)
    taper = d[0] - d[2]
    oval = d[:, 0] - d[:, 1]
    sized = lambda xs: xs[np.argmax(np.round(np.abs(xs), 9))]
    return {
        "id": name,
        "given": {"levels": LEVELS, "directions": DIRECTIONS, "diameters": grid, "original": original},
        "expected": {
            "taper": rounded(sized(taper)),
            "outOfRound": rounded(sized(oval)),
            "cylindricity": rounded(np.ptp(d, axis=0).max()),
            "range": rounded(np.ptp(d)),
            "wear": rounded(d.max() - original),
        },
    }


def bores():
    yield bore("Q1", [[86.62, 86.58], [86.56, 86.55], [86.53, 86.52]], 86.50)
    for n in range(60):
        size = rng.uniform(40, 160)
        grid = [[round(size + rng.uniform(-0.05, 0.3), 3) for _ in DIRECTIONS] for _ in LEVELS]
        yield bore(f"bore-{n + 1}", grid, round(size, 2))


def oval_seen(name, ovality, degrees, size=90.0):
    """Width of an ellipse between parallel planes, in two directions at right angles."""
    a, b = (size + ovality) / 2, size / 2
    width = lambda t: 2 * np.hypot(a * np.cos(t), b * np.sin(t))
    t = np.radians(degrees)
    seen = abs(width(t) - width(t + np.pi / 2))
    return {"id": name, "given": {"ovality": ovality, "degrees": degrees}, "expected": {"seen": rounded(seen)}}


def ovals():
    yield oval_seen("Q10", 0.06, 30)
    for degrees in (0, 10, 22.5, 45, 60, 90, 135):
        yield oval_seen(f"oval-{degrees}", 0.05, degrees)


def cylinder(diameter, height):
    """Volume in ml by integrating the section over the height."""
    return np.sign(height) * integrate.quad(lambda _: np.pi * (diameter / 2) ** 2, 0, abs(height))[0] / 1000


def work(name, given):
    g = given
    swept = cylinder(g["bore"], g["stroke"])
    clearance = swept / (g["ratio"] - 1)
    after_swept = cylinder(g["newBore"], g["stroke"])
    after = (
        clearance
        - g["opening"] * g["skim"] / 1000
        - cylinder(g["newBore"], g["deckSkim"])
        + cylinder(g["newBore"], g["deck"])
        - cylinder(g["bore"], g["deck"])
        + cylinder(g["gasketBore"], g["newGasket"])
        - cylinder(g["gasketBore"], g["gasket"])
        + g["crown"]
    )
    ratio = (after_swept + after) / after
    warnings = (["ratio-up"] if ratio - g["ratio"] > 0.3 else []) + (
        ["piston-to-head"] if g["deck"] - g["deckSkim"] + g["newGasket"] < 1.0 else []
    )
    return {
        "id": name,
        "given": given,
        "expected": {
            "swept_ml": rounded(swept),
            "clearance_ml": rounded(clearance),
            "afterSwept_ml": rounded(after_swept),
            "after_ml": rounded(after),
            "ratio": rounded(ratio),
            "warnings": warnings,
        },
    }


def works():
    names = "bore stroke ratio deck gasketBore gasket newBore opening skim deckSkim newGasket crown".split()
    yield work("Q4", dict(zip(names, [86.5, 86, 9.0, 0.3, 88, 1.2, 87, 4800, 0.2, 0.1, 1.4, 0])))
    for n in range(40):
        size = round(rng.uniform(50, 130), 2)
        values = [
            size,
            round(size * rng.uniform(0.8, 1.2), 2),
            round(rng.uniform(5, 11), 2),
            round(rng.uniform(-0.3, 1), 2),
            size + 2,
            round(rng.uniform(0.8, 1.6), 2),
            size + rng.choice([0, 0.25, 1]),
            round(rng.uniform(0.5, 1) * np.pi / 4 * size**2),
            rng.choice([0, 0.1, 0.3]),
            rng.choice([0, 0.1, 0.2]),
            round(rng.uniform(0.8, 1.6), 2),
            rng.choice([0, 1.5, -1.5]),
        ]
        yield work(f"work-{n + 1}", dict(zip(names, values)))


def thread(name, diameter, width, u_diameter=0.0, u_width=0.0):
    c = lambda d, w: np.pi * d * d / 4 / w
    slope = lambda f, x, h: (f(x + h) - f(x - h)) / (2 * h)
    u = np.hypot(
        slope(lambda d: c(d, width), diameter, 1e-5) * u_diameter, slope(lambda w: c(diameter, w), width, 1e-5) * u_width
    )
    return {
        "id": name,
        "given": {"diameter": diameter, "width": width, "uDiameter": u_diameter, "uWidth": u_width},
        "expected": {"clearance": rounded(c(diameter, width)), "u": rounded(u)},
    }


def threads():
    for width in (0.65, 1.0, 1.5, 1.96):
        yield thread(f"Q7-{width}", 0.25, width)
    yield thread("Q7-u", 0.25, 0.982, 0.005, 0.05)
    for n in range(20):
        yield thread(f"thread-{n + 1}", rng.uniform(0.1, 0.5), rng.uniform(0.5, 4), rng.uniform(0, 0.01), rng.uniform(0.01, 0.1))


def singles():
    # a ring laid out as a circle with a piece missing
    grown = 0.35 + (np.pi * 86.60 - np.pi * 86.50)
    yield {"id": "Q8-gap", "given": {"gap": 0.35, "from": 86.50, "to": 86.60}, "expected": {"gap": rounded(grown)}}
    yield {"id": "Q8-taper", "given": {"gapChange": 0.25}, "expected": {"diameterChange": rounded(0.25 / np.pi)}}
    theta = 2 * 6.35 / 60
    low = (1 - np.cos(theta)) / 2
    yield {"id": "crown", "given": {"diameter": 60, "off": 6.35}, "expected": {"low": rounded(low)}}
    grows = lambda alpha: 90 * (1 + alpha * 10)
    yield {"id": "warm", "given": {"diameter": 90, "above": 10}, "expected": {"error": rounded(grows(23e-6) - grows(11.5e-6))}}


def face(name, lines):
    """lines: name -> (places, gaps)."""
    local, overall = None, None
    for places, gaps in lines.values():
        x, g = np.array(places), np.array(gaps)
        overall = max(g.max(), -1 if overall is None else overall)
        for i in range(len(x)):
            for j in range(i + 2, len(x)):
                if x[j] - x[i] <= 150 + 1e-9:
                    off = np.abs(g[i : j + 1] - np.interp(x[i : j + 1], x[[i, j]], g[[i, j]]))
                    local = max(off.max(), 0 if local is None else local)
    return {
        "id": name,
        "given": {"lines": [{"name": key, "at": list(at), "gaps": list(gaps)} for key, (at, gaps) in lines.items()]},
        "expected": {"overall": rounded(overall), "local": None if local is None else rounded(local), "skim": rounded(overall + 0.02)},
    }


def faces():
    steps = [0, 75, 150, 225, 300, 375, 450]
    yield face("Q9", {"long1": (steps, [0, 0.02, 0.04, 0.06, 0.05, 0.02, 0])})
    yield face("coarse", {"long1": ([0, 100, 200, 300], [0, 0.03, 0.02, 0])})
    for n in range(30):
        lines = {}
        for line in rng.sample(["long1", "long2", "centre", "diagonal1", "diagonal2"], rng.randint(1, 5)):
            count = rng.randint(2, 9)
            places = sorted(rng.sample(range(0, 500, 10), count))
            lines[line] = (places, [rng.choice([0, 0.01, 0.02, 0.03, 0.05, 0.08]) for _ in places])
        yield face(f"face-{n + 1}", lines)
