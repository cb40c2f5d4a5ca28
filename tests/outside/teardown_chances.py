"""Chances, verdicts and instruments for teardown_cases.py; lengths in mm."""

import numpy as np
from scipy import integrate, optimize, stats

from teardown_numbers import IN, rng, rounded

def word(p):
    return "inside" if p >= 0.95 else "outside" if p <= 0.05 else "too-close-to-tell"


def chance(y, u, low, high):
    lower = -np.inf if low is None else (low - y) / u
    upper = np.inf if high is None else (high - y) / u
    return integrate.quad(stats.norm.pdf, max(lower, -12), min(upper, 12), epsabs=1e-13)[0] if upper > -12 and lower < 12 else 0.0


def needed_u(y, u, low, high):
    """Where the chance crosses 0.95 or 0.05 on the way down from u."""
    within = (low is None or y > low) and (high is None or y < high)
    goal = 0.95 if within else 0.05
    return optimize.brentq(lambda x: chance(y, x, low, high) - goal, u / 1e6, u, xtol=1e-14)


def judged(name, y, u, low=None, high=None):
    p = chance(y, u, low, high)
    verdict = word(p)
    return {
        "id": name,
        "given": {"value": y, "u": u, "low": low, "high": high},
        "expected": {
            "p": rounded(p, 10),
            "verdict": verdict,
            "neverInside": low is not None and high is not None and high - low < 3.92 * u,
            "needed": rounded(needed_u(y, u, low, high), 8) if verdict.startswith("too") and y not in (low, high) else None,
        },
    }


MIC_SCALE = 5 / np.sqrt(3)


def micrometer_read(resolution):
    return np.sqrt(2.5**2 + resolution**2 / 12)


def gauge_read(resolution):
    return np.sqrt(3**2 + resolution**2 / 12)


def judgements():
    """3.4, µm or in as printed."""
    same = lambda read: np.sqrt(2) * read
    yield judged("3.4-1", 0.080, same(gauge_read(10)) / 1000, -0.10, 0.10)
    yield judged("3.4-2", 0.045, same(gauge_read(10)) / 1000, -0.05, 0.05)
    yield judged("3.4-3", 0.0022 * IN, 0.00635, 0.0010 * IN, 0.0025 * IN)
    yield judged("3.4-4", 0.0030 * IN, 0.00635, 0.0010 * IN, 0.0025 * IN)
    yield judged("3.4-5", 2.7475 * IN, np.hypot(MIC_SCALE, micrometer_read(2.54)) / 1000, 2.7480 * IN)
    dial = np.hypot(3, 5) / 1000
    yield judged("3.4-7-new", 0.345, dial, 0.10, 0.35)
    yield judged("3.4-7-wear", 0.345, dial, None, 0.45)
    set_in = np.sqrt(gauge_read(2) ** 2 + 2 * micrometer_read(1) ** 2) / 1000
    yield judged("3.4-9", 0.0022 * IN, set_in, 0.0010 * IN, 0.0025 * IN)
    yield judged("3.4-9-lower", 0.0021 * IN, set_in, 0.0010 * IN, 0.0025 * IN)
    yield judged("3.4-10", 86.60, np.hypot(40 / np.sqrt(3), 10) / 1000, None, 86.62)
    for n in range(200):
        u = rng.uniform(0.001, 0.03)
        width = rng.uniform(0.5, 12) * u
        low = rng.choice([None, round(rng.uniform(-0.1, 0.1), 4)])
        high = None if low is not None and rng.random() < 0.3 else round((low if low is not None else 0.05) + width, 4)
        near = high if high is not None else low
        yield judged(f"judged-{n + 1}", round(near + rng.uniform(-4, 4) * u, 5), u, low, high)


def feeler(name, a, b, low, high, s=0.006):
    """The gap is uniform between the leaves, the leaves and the feel blur it."""
    below = lambda limit: integrate.quad(lambda gap: stats.norm.cdf((limit - gap) / s), a, b, epsabs=1e-14, limit=400)[0] / (b - a)
    p = (1 if high is None else below(high)) - (0 if low is None else below(low))
    return {
        "id": name,
        "given": {"goes": a, "stops": b, "blur": s, "low": low, "high": high},
        "expected": {"p": rounded(p, 9), "verdict": word(p), "u": rounded(np.sqrt((b - a) ** 2 / 12 + s**2))},
    }


def feelers():
    yield feeler("3.4-6", 0.35, 0.40, 0.15, 0.40)
    yield feeler("3.4-6-narrow", 0.35, 0.40, 0.15, 0.38)
    # the leaf of the limit itself, which goes or does not
    yield feeler("leaf-at-limit-stops", 0.35, 0.38, 0.15, 0.38)
    yield feeler("leaf-at-limit-goes", 0.38, 0.40, 0.15, 0.38)
    yield feeler("3.4-8", 0.05, 0.06, None, 0.05)
    yield feeler("3.4-8-thin", 0.0, 0.04, None, 0.05)
    for n in range(120):
        a = round(rng.uniform(0, 0.6), 2)
        b = round(a + rng.choice([0.01, 0.02, 0.05, 0.1]), 2)
        high = round(rng.uniform(a - 0.03, b + 0.03), 3)
        low = rng.choice([None, round(high - rng.uniform(0.02, 0.3), 3)])
        yield feeler(f"feeler-{n + 1}", a, b, low, high, rng.choice([0.006, 0.003, 0.01]))


def together(name, chances):
    least = 1 - sum(1 - p for p in chances)
    verdict = "outside" if min(chances) <= 0.05 else "inside" if least >= 0.95 else "too-close-to-tell"
    return {
        "id": name,
        "given": {"chances": chances},
        "expected": {"atLeast": rounded(max(0, least)), "atMost": min(chances), "verdict": verdict},
    }


def parts():
    six = [0.9996, 0.985, 0.99, 0.998, 0.999, 0.9999]
    yield together("Q12", six)
    yield together("Q12-two", [0.9996, 0.97, 0.96, 0.998, 0.999, 0.9999])
    yield together("outside", [0.99, 0.04, 0.99])
    yield together("many", [0.9] * 12)


def instruments():
    """Table 3.3: common, read and single uncertainty in µm of the size 75 mm."""
    mic, mic1 = micrometer_read(10), micrometer_read(1)
    rows = [
        ("micrometer", 1, MIC_SCALE, mic1),
        ("micrometer", 2.54, MIC_SCALE, micrometer_read(2.54)),
        ("micrometer", 10, MIC_SCALE, mic),
        ("micrometer", 12.7, MIC_SCALE, micrometer_read(12.7)),
        ("bore-gauge", 2, np.hypot(MIC_SCALE, mic1), gauge_read(2)),
        ("bore-gauge", 10, np.hypot(MIC_SCALE, mic), gauge_read(10)),
        ("bore-gauge", 12.7, np.hypot(MIC_SCALE, micrometer_read(12.7)), gauge_read(12.7)),
        ("telescopic", 10, MIC_SCALE, 10),
        ("inside micrometer", 10, 12.7 / np.sqrt(3), 5),
        ("caliper", 20, 40 / np.sqrt(3), 10),
        ("thread", 12.7, 0, 6.35),
        ("feeler", 50, 0, np.sqrt(50**2 / 12 + 36)),
        ("dial", 10, 3, 5),
    ]
    for name, resolution, common, read in rows:
        yield {
            "id": f"{name}-{resolution}",
            "given": {"instrument": name, "resolution_um": resolution},
            "expected": {"common_um": rounded(common), "read_um": rounded(read), "u_um": rounded(np.hypot(common, read))},
        }
