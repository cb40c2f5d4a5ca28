"""Over- and undersizes for teardown_cases.py; lengths in mm."""

import numpy as np

from teardown_numbers import IN, rng, rounded


def needed(largest, original, offset, hone, guard, score):
    """Diameter about the bar's axis that holds the worn wall and the bottom of a score at its worst place."""
    angle = np.linspace(0, 2 * np.pi, 3601)
    e = {"none": 0.0, "worst": (largest - original) / 2}.get(offset, offset)
    wall = e + (largest / 2 + score) * np.exp(1j * angle)
    return 2 * np.abs(wall).max() + hone + guard


def oversize(name, cylinders, original, offered, offset, hone, guard=0.0, nominal=None):
    """cylinders: (largest, depth of a score)."""
    base = original if nominal is None else nominal
    needs = [needed(d, original, offset, hone, guard, s) for d, s in cylinders]
    fits = [[o for o in sorted(offered) if base + o >= need - 1e-6] for need in needs]
    own = [sizes[0] if sizes else None for sizes in fits]
    all_sizes = None if None in own else max(own)
    return {
        "id": name,
        "given": {
            "largest": [d for d, _ in cylinders],
            "scores": [s for _, s in cylinders],
            "original": original,
            "nominal": base,
            "offered": offered,
            "offset": offset,
            "hone": hone,
            "guard": guard,
        },
        "expected": {
            "needed": [rounded(n) for n in needs],
            "own": own,
            "size": all_sizes,
            "finished": None if all_sizes is None else rounded(base + all_sizes),
            "boreTo": None if all_sizes is None else rounded(base + all_sizes - hone),
        },
    }


def oversizes():
    four = [(86.62, 0), (86.60, 0), (86.71, 0), (86.58, 0)]
    metric = [0.25, 0.5, 0.75, 1.0]
    yield oversize("Q2-worst", four, 86.5, metric, "worst", 0.02, 0.01)
    yield oversize("Q2-none", four, 86.5, metric, "none", 0.02, 0.01)
    yield oversize("Q3", [(2.922 * IN, 0)], 2.913 * IN, [0.020 * IN, 0.040 * IN], "worst", 0.003 * IN)
    for n in range(120):
        base = round(rng.uniform(45, 140), 2)
        original = base + rng.choice([0, 0, 0.25, 0.5])
        wear = rng.choice([0.05, 0.15, 0.4, 0.8])
        cylinders = [
            (round(original + rng.uniform(0, wear), 3), rng.choice([0, 0, 0.03, 0.1])) for _ in range(rng.randint(1, 6))
        ]
        offset = rng.choice(["worst", "none", 0.02, 0.05])
        offered = rng.sample(metric, rng.randint(1, 4))
        yield oversize(
            f"oversize-{n + 1}", cylinders, original, offered, offset, rng.choice([0.02, 0.04, 0]), rng.choice([0, 0.007]), base
        )


def undersize(name, smallest, low, high, offered, stock, bend=0.0):
    # walk down from the top of the range until the smallest journal, less its stock, stands above the size
    need = max(high - (d - stock - bend) for d in smallest)
    fits = [u for u in sorted(offered) if u >= need - 1e-6]
    size = fits[0] if fits else None
    return {
        "id": name,
        "given": {"smallest": smallest, "low": low, "high": high, "offered": offered, "stock": stock, "bend": bend},
        "expected": {
            "needed": rounded(need),
            "decidedBy": int(np.argmin(smallest)),
            "size": size,
            "low": None if size is None else rounded(low - size),
            "high": None if size is None else rounded(high - size),
        },
    }


def undersizes():
    yield undersize("Q5", [57.96, 57.93, 57.97, 57.95], 57.982, 58.0, [0.25, 0.5], 0.05)
    inch = [0.010 * IN, 0.020 * IN, 0.030 * IN]
    yield undersize("Q6-least", [2.7445 * IN], 2.748 * IN, 2.749 * IN, inch, 0.002 * IN)
    yield undersize("Q6", [2.7445 * IN, 2.7350 * IN], 2.748 * IN, 2.749 * IN, inch, 0.002 * IN)
    for n in range(40):
        high = round(rng.uniform(30, 90), 3)
        smallest = [round(high - rng.uniform(0, 0.9), 3) for _ in range(rng.randint(1, 7))]
        yield undersize(
            f"undersize-{n + 1}", smallest, high - 0.018, high, [0.25, 0.5, 0.75, 1.0], 0.05, rng.choice([0, 0.02])
        )
