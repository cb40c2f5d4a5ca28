"""What the findings on one cylinder say of each cause: ln likelihood on the grids of the unknowns.

handbook/diagnosis.md 3 and 4. The unknowns: level of the day M, oil factor c, tester scale k.
"""

from math import log, pi, sqrt

import numpy as np
from scipy.special import ndtr

BLUNDER = 1e-4  # added to every class density
LEAST_ALPHA, MOST_ALPHA = 0.15, 8.0
NOT_MEASURED = 0.8  # weight of an air path where the leak was not measured
FALL_DOUBT = 0.12
SEEN = ("lash", "borescope", "second-gauge", "warm", "conditions", "reseat", "reindex", "release")


def normal_density(x, middle, deviation):
    return np.exp(-0.5 * ((x - middle) / deviation) ** 2) / (deviation * sqrt(2 * pi)) + BLUNDER


def densities(x, u, shapes):
    """Density of `x`, read with normal error `u`, in each class: [..., class]."""
    found = []
    for kind, a, b in shapes:
        if kind == "around":
            found.append(normal_density(x, a, np.hypot(b, u)))
        else:
            found.append((ndtr((x - a) / u) - ndtr((x - b) / u)) / (b - a) + BLUNDER)
    return np.stack(found, -1)


def within(shapes, x):
    """A value beyond the outermost classes counts as on their bound (our choice; the chapter says so of gain and leak)."""
    bounds = [bound for kind, a, b in shapes if kind == "between" for bound in (a, b)]
    return np.clip(x, min(bounds), max(bounds))


class Cylinder:
    """`day`: levels, oils, scales (grids of M, c, ln k), reference (mean of the upper half of the dry readings), and
    the readings of all cylinders that first strokes and running readings are compared with."""

    def __init__(self, tables, found, day):
        self.t, self.s, self.found, self.day = tables, tables.settings, found, day
        self.causes = len(tables.causes)
        self.mean = mean_of(found)
        self.names = [name for name, taken in self.taken().items() if taken] + list(found.get("seen", {}))
        self.plain = np.zeros(self.causes)  # of what needs no grid
        self.level = None  # [M, cause]
        self.common = {}  # scatter of a common state -> [M]
        self.oil = np.zeros((1, self.causes))  # [c, cause]
        self.leak = np.zeros((1, self.causes))  # [k, cause]
        readers = {
            "level": self.read_level,
            "wet": self.read_wet,
            "first-stroke": lambda: self.read_share("first-stroke", self.day.shares, share_of(found), 0.03),
            "running": lambda: self.read_share("running", self.day.running, found["running"], 0.04),
            "repeats": self.read_repeats,
            "leak": self.read_leak,
            "path": self.read_path,
            "oiled": lambda: self.read_fall("oiled"),
            "lower": lambda: self.read_fall("lower"),
            "onset": self.read_onset,
        }
        for name in self.names:
            readers.get(name, lambda name=name: self.read_seen(name))()

    def taken(self):
        f = self.found
        compared = {"first-stroke": self.day.shares, "running": self.day.running}
        own = {"first-stroke": share_of(f), "running": f.get("running")}
        return {
            "level": self.mean is not None,
            "wet": self.mean is not None and "wet" in f,
            "repeats": len(f.get("dry", ())) > 1 and max(f["dry"]) > 0,
            "leak": "leak" in f,
            "path": "heard" in f,
            "oiled": "oiled" in f,
            "lower": "lower" in f,
            "onset": "onset" in f,
            **{
                name: own[name] is not None and len(others) > 1 and np.median(others) > 0
                for name, others in compared.items()
            },
        }

    def columns(self, name):
        return self.t.findings[name]["columns"]

    def weight(self, name, more=()):
        """1/(1 + (k - 1)/3) of k findings of one kind here, `more` among them."""
        kind = self.t.findings[name]["kind"]
        alike = [n for n in {*self.names, *more} if self.t.findings[n]["kind"] == kind]
        return 1.0 if kind is None else 1 / (1 + (len(alike) - 1) * self.s["shared weight"])

    # pressures

    def read_level(self):
        ratio = self.mean / self.day.levels
        u = np.hypot(self.s["repeatability"] * ratio / sqrt(len(self.found["dry"])), 0.004)
        weight = self.weight("level")
        of_classes = densities(ratio, u, self.t.findings["level"]["shapes"])
        self.level = weight * np.log(of_classes @ self.columns("level").T / self.day.levels[:, None])
        for scatter in {state["scatter"] for state in self.t.states} - {None}:
            even = normal_density(ratio, 1.0, np.hypot(scatter, u))
            self.common[scatter] = weight * np.log(even / self.day.levels)

    def read_wet(self):
        dry, wet, reference = self.mean, self.found["wet"] / self.day.oils, self.day.reference
        gain = within(self.t.findings["wet"]["shapes"], (wet - dry) / reference)
        u = self.s["repeatability"] * np.hypot(wet, dry) / reference + 0.001
        of_classes = densities(gain, u, self.t.findings["wet"]["shapes"])
        self.oil = self.weight("wet") * np.log(of_classes @ self.columns("wet").T)

    def read_share(self, name, all_, own, relative):
        shapes = self.t.findings[name]["shapes"]
        x = within(shapes, own / np.median(all_))
        of_classes = densities(x, relative * x, shapes)
        self.plain = self.plain + self.weight(name) * np.log(self.columns(name) @ of_classes)

    def read_repeats(self):
        y = np.log(np.maximum(self.found["dry"], 0.01 * max(self.found["dry"])))  # a take of nothing: unsteady for sure
        squares = np.sum((y - y.mean()) ** 2)
        spreads = np.array([self.s["spread of unsteady repeats"], self.s["spread of steady repeats"]])
        each = -(len(y) - 1) * np.log(spreads) - squares / (2 * spreads**2)
        self.plain = self.plain + np.log(self.columns("repeats") @ np.exp(each - each.max()))

    # leaks

    def ln_alpha(self):
        """By tester scale."""
        return np.log(np.clip(self.found["leak"]["alpha"] * np.exp(self.day.scales), LEAST_ALPHA, MOST_ALPHA))

    def doubt(self):
        return self.found["leak"].get("doubt", self.s["doubt of a leak"])

    def read_leak(self):
        shapes = [(kind, log(a), log(b)) for kind, a, b in self.t.findings["leak"]["shapes"]]
        of_classes = densities(self.ln_alpha(), self.doubt(), shapes)
        self.leak = self.leak + self.weight("leak") * np.log(of_classes @ self.columns("leak").T)

    def read_path(self):
        columns = self.columns("path")
        heard = columns[:, self.paths()].mean(1)
        sound = heard[self.t.at["no-fault"]]
        sure = np.array([NOT_MEASURED])
        if "leak" in self.found:
            sure = ndtr((self.ln_alpha() - log(0.8)) / self.doubt())
            sure = np.maximum(self.s["least weight of a place"], sure)
        self.leak = self.leak + np.log(np.outer(sure, heard) + np.outer(1 - sure, np.full(self.causes, sound)))

    def paths(self):
        """Classes of the loudest places; the crankcase beside another place is dropped."""
        heard = [h for h in self.found["heard"] if h["place"] != "none"]
        loud = [h for h in heard if not h["faint"]] or heard
        places = {"plug" if h["place"] == "outside" else h["place"] for h in loud}
        if len(places) > 1:
            places.discard("crankcase")
        return [self.t.findings["path"]["classes"].index(place) for place in sorted(places or {"none"})]

    def read_fall(self, name):
        falls = ndtr((log(self.s["edge of a fall"]) - log(self.found[name])) / FALL_DOUBT)
        of_classes = np.array([falls, 1 - falls])
        self.plain = self.plain + self.weight(name) * np.log(self.columns(name) @ of_classes)

    # words

    def read_onset(self):
        self.plain = self.plain + np.log(self.columns("onset") @ self.t.reports[self.found["onset"]])

    def read_seen(self, name):
        at = self.t.findings[name]["classes"].index(self.found["seen"][name])
        self.plain = self.plain + np.log(self.columns(name)[:, at])


def mean_of(found):
    return float(np.mean(found["dry"])) if found.get("dry") else None


def share_of(found):
    """First stroke over dry; None where there is none."""
    return found["firstStroke"] / mean_of(found) if "firstStroke" in found and mean_of(found) else None
