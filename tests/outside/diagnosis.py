"""The diagnosis once more, from its description alone: what every cylinder suffers, given what was found.

Written from handbook/diagnosis.md and the tables of data/faults, not from the project's code: one dense sum over engine
states, gasket pairs, tester scales, levels of the day and oil factors, with numpy. Evidence comes in the shape of
packages/core/src/diagnosis/evidence.ts (pressures in Pa by the gauge, places from 0).
"""

from itertools import combinations

import numpy as np
from diagnosis_findings import Cylinder, densities, mean_of, share_of

STEP, BELOW, ABOVE, ABOVE_KNOWING = 0.0125, 0.48, 0.5, 1.2  # grid of ln level, round the highest reading
OIL_STEPS = 13
LOCAL_MOST, STATES_MOST, NO_PAIR_LEAST = 0.6, 0.9, 0.05
DOUBTS = {"baseline": "doubt of own baseline", "maker": "doubt of maker's figure", "estimate": "doubt of an estimate"}


class Day:
    """Grids of what all cylinders share, and what they are compared with."""

    def __init__(self, tables, evidence):
        s, found = tables.settings, evidence["cylinders"]
        means = sorted((m for m in map(mean_of, found) if m is not None), reverse=True)
        self.dry = bool(means)
        self.wetted = any("wet" in c and mean_of(c) is not None for c in found)
        steps = int((BELOW + (ABOVE_KNOWING if "expected" in evidence else ABOVE)) / STEP + 1e-9)
        self.levels = means[0] * np.exp(np.arange(steps + 1) * STEP - BELOW) if means else np.ones(1)
        most = 1.1 * evidence["oilRise"] if "oilRise" in evidence else s["most rise by oil"]
        self.oils = np.linspace(1, 1 + most, OIL_STEPS) if self.wetted else np.ones(1)
        steps = np.arange(-2.0, 3.0) if evidence["restrictor"] == "unknown" else np.zeros(1)
        self.scales = steps * s["doubt of an unknown tester"]
        self.scale_chances = np.exp(-0.5 * steps**2) / np.sum(np.exp(-0.5 * steps**2))
        self.reference = float(np.mean(means[: (len(means) + 1) // 2])) if means else None
        self.shares = [x for x in map(share_of, found) if x is not None]
        self.running = [c["running"] for c in found if "running" in c]


class Engine:
    def __init__(self, tables, evidence):
        self.t, self.s, self.e = tables, tables.settings, evidence
        self.n = len(evidence["cylinders"])
        self.day = Day(tables, evidence)
        self.cylinders = [Cylinder(tables, found, self.day) for found in evidence["cylinders"]]

    # --- priors: handbook/diagnosis.md 1 and 2 ---

    def shifted(self, entry, prior, places):
        """`prior` of `entry` under the circumstances that touched one of the `places` it can meet."""
        for c in self.e["circumstances"]:
            if not set(places) & set(c.get("cylinders", places)):
                continue
            for when, of, factor, odds in self.t.shifts:
                if when == c["when"] and of == entry:
                    prior = prior * factor if odds is None else odds / (1 + odds)
        return prior

    def local(self, place):
        p = np.array([0.0 if v is None else self.shifted(code, v, [place]) for code, _, v in self.t.causes])
        p *= min(1.0, LOCAL_MOST / p.sum())
        p[self.t.at["no-fault"]] = 1 - p.sum()
        return p

    def states(self):
        """(reach and cause, or bank and cause), prior, cause, scatter of a common one, share by cylinder."""
        found = []
        for state in self.t.states:
            entry = f"{state['reach']} {state['cause']}"
            if self.n == 1 and (state["reach"] == "some" or state["cause"] == "worn-rings-or-bore"):
                continue
            share = np.full(self.n, state["share"] or 0.0)
            prior = self.shifted(entry, state["prior"], range(self.n))
            found.append((entry, prior, state["cause"], state["scatter"], share))
        banks = [
            ("all", "cam-retarded", "bank with late cam", "share met by late cam"),
            ("some", "bent-valve", "bank with bent valves", "share met by bent valves"),
        ]
        for at, bank in enumerate(self.e["banks"] if len(self.e["banks"]) > 1 else [], start=1):
            for like, cause, prior, share in banks:
                met = np.array([self.s[share] if i in bank else 0.0 for i in range(self.n)])
                shifted = self.shifted(f"{like} {cause}", self.s[prior], bank)
                found.append((f"bank {at} {cause}", shifted, cause, None, met))
        scale = min(1.0, STATES_MOST / sum(prior for _, prior, *_ in found))
        found = [(name, prior * scale, *rest) for name, prior, *rest in found]
        none = 1 - sum(prior for _, prior, *_ in found)
        return [("none", none, "no-fault", None, np.zeros(self.n)), *found]

    def pairs(self):
        found = []
        if self.e["sharedGasket"]:
            for bank in self.e["banks"]:
                for pair in zip(bank, bank[1:]):
                    found.append((pair, self.shifted("gasket-to-neighbour", self.s["gasket pair"], pair)))
        return [((), max(NO_PAIR_LEAST, 1 - sum(prior for _, prior in found))), *found]

    def level_prior(self, cause):
        """P(M | state) by the level that is expected; flat without one."""
        if not self.day.dry or "expected" not in self.e:
            return np.ones(len(self.day.levels))
        share = self.day.levels / self.e["expected"]["level"]
        doubt = share * self.s[DOUBTS[self.e["expected"]["from"]]]
        level = self.t.findings["level"]
        return share * STEP * (densities(share, doubt, level["shapes"]) @ level["columns"][self.t.at[cause]])

    # --- signs of the whole engine: noisy-OR, present ones by inclusion and exclusion ---

    def sign_terms(self):
        """(coefficient, factor by cause of every cylinder)."""
        signs = [(*self.t.signs[name], seen == "present") for name, seen in self.e["signs"].items()]
        if "gas" in self.e:
            positive = self.t.findings["gas"]["columns"][:, 0]
            sound = positive[self.t.at["no-fault"]]
            signs.append((sound, 1 - (1 - positive) / (1 - sound), self.e["gas"] == "positive"))
        absent = [(background, brings) for background, brings, seen in signs if not seen]
        present = [(background, brings) for background, brings, seen in signs if seen]
        for size in range(len(present) + 1):
            for chosen in combinations(present, size):
                factor, coefficient = np.ones(len(self.t.causes)), (-1.0) ** size
                for background, brings in [*absent, *chosen]:
                    factor, coefficient = factor * (1 - brings), coefficient * (1 - background)
                yield coefficient, factor

    # --- the sum ---

    def likelihoods(self, cylinder):
        """[k, M, c, cause], and the same of the common level by scatter [M] over the scale that is left out."""
        flat = (cylinder.plain + cylinder.leak)[:, None, None, :] + cylinder.oil[None, None, :, :]
        flat = np.exp(flat - flat.max())
        if cylinder.level is None:
            return flat, flat, {}
        top = cylinder.level.max()
        common = {scatter: np.exp(ln - top)[None, :, None] for scatter, ln in cylinder.common.items()}
        return flat * np.exp(cylinder.level - top)[None, :, None, :], flat, common

    def weighed(self, place, likelihoods, state):
        """P(cause | state) times the likelihood, [k, M, c, cause]."""
        full, flat, common = likelihoods
        _, _, cause, scatter, share = state
        at, p = self.t.at[cause], self.local(place)
        if scatter is None:
            p *= 1 - share[place]
            p[at] += share[place]
            return full * p
        p[at] += p[self.t.at["no-fault"]]
        p[self.t.at["no-fault"]] = 0
        weighed = full * p
        if common:
            weighed[..., at] = p[at] * flat[..., at] * common[scatter]
        return weighed

    def posterior(self):
        day, n, gasket = self.day, self.n, self.t.at["gasket-to-neighbour"]
        shape = (len(day.scales), len(day.levels), len(day.oils))
        likelihoods = [self.likelihoods(c) for c in self.cylinders]
        chances, total = np.zeros((n, len(self.t.causes))), 0.0
        of_states, of_pairs, ln_level, oil = {}, {}, 0.0, 0.0
        for state in self.states():
            name, prior, cause, scatter, _ = state
            if prior == 0:
                continue
            of_level = self.level_prior("no-fault" if scatter is None else cause)
            grid = prior * np.broadcast_to(day.scale_chances[:, None, None] * of_level[None, :, None], shape)
            weighed = [self.weighed(i, likelihoods[i], state) for i in range(n)]
            for coefficient, factor in self.sign_terms():
                by_cause = [w * factor for w in weighed]
                alone = [w.sum(-1) for w in by_cause]
                paired = [full[..., gasket] * factor[gasket] for full, _, _ in likelihoods]
                for pair, chance in self.pairs():
                    parts = [paired[i] if i in pair else alone[i] for i in range(n)]
                    front = coefficient * chance * grid
                    whole = front * np.prod([np.broadcast_to(p, shape) for p in parts], axis=0)
                    mass = whole.sum()
                    total += mass
                    of_states[name] = of_states.get(name, 0.0) + mass
                    of_pairs[pair] = of_pairs.get(pair, 0.0) + mass
                    ln_level += (whole * np.log(day.levels)[None, :, None]).sum()
                    oil += (whole * day.oils[None, None, :]).sum()
                    for i in range(n):
                        if i in pair:
                            chances[i, gasket] += mass
                            continue
                        others = [np.broadcast_to(p, shape) for j, p in enumerate(parts) if j != i]
                        rest = front * np.prod(others, axis=0) if others else front
                        full = np.broadcast_to(by_cause[i], (*shape, chances.shape[1]))
                        chances[i] += np.einsum("kmc,kmch->h", rest, full)
        self.chances = chances / total
        self.of_states = {name: float(mass / total) for name, mass in of_states.items()}
        self.of_pairs = {pair: float(mass / total) for pair, mass in of_pairs.items() if pair}
        self.level = float(np.exp(ln_level / total)) if day.dry else None
        self.oil = float(oil / total) if day.wetted else None
        return self
