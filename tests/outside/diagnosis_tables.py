"""The fault tables of data/faults, read for the reference programs of this folder."""

import csv
from dataclasses import dataclass
from pathlib import Path

import numpy as np

FOLDER = Path(__file__).parents[2] / "data" / "faults"


@dataclass
class Tables:
    settings: dict  # name -> number
    causes: list  # (code, group, prior or None)
    states: list  # {"reach", "cause", "prior", "scatter" or "share"}
    findings: dict  # name -> {"kind", "classes", "shapes", "columns": array [cause, class]}
    signs: dict  # name -> (background, array of what each cause brings)
    shifts: list  # (when, entry, factor or None, odds or None)
    reports: dict  # report -> array over the classes of the finding `onset`
    tests: list  # {"code", "finds", "blocked", "minutes", "risk", "tool"}

    def __post_init__(self):
        self.at = {code: i for i, (code, _, _) in enumerate(self.causes)}


def rows(name):
    text = (FOLDER / f"{name}.csv").read_text("utf8")
    return list(csv.DictReader(line for line in text.splitlines() if not line.startswith("#")))


def number(cell):
    return float(cell) if cell else None


def words(cell):
    return [word.strip() for word in cell.split("+") if word]


def shape_of(row):
    low, high, middle, deviation = (number(row[name]) for name in ("low", "high", "middle", "deviation"))
    return ("between", low, high) if middle is None else ("around", middle, deviation)


def finding(row, codes):
    name = row["finding"]
    sheet = {line["cause"]: line for line in rows(f"finding-{name}")}
    classes = [c for c in next(iter(sheet.values())) if c not in ("cause", "status", "link", "source")]
    bounds = {line["class"]: shape_of(line) for line in rows("bounds") if line["finding"] == name}
    return {
        "kind": row["kind"] or None,
        "classes": classes,
        "shapes": [bounds[c] for c in classes if c in bounds],
        "columns": np.array([[float(sheet[code][c]) for c in classes] for code in codes]),
    }


def read_tables():
    causes = [(row["code"], row["group"], number(row["prior"])) for row in rows("causes")]
    codes = [code for code, _, _ in causes]
    brings = {row["cause"]: row for row in rows("signs-by-cause")}
    reports = rows("onset-reports")
    return Tables(
        settings={row["name"]: float(row["value"]) for row in rows("settings")},
        causes=causes,
        states=[
            {key: row[key] for key in ("reach", "cause")}
            | {key: number(row[key]) for key in ("prior", "scatter", "share")}
            for row in rows("states")
        ],
        findings={row["finding"]: finding(row, codes) for row in rows("findings")},
        signs={
            row["sign"]: (float(row["background"]), np.array([float(brings[code][row["sign"]]) for code in codes]))
            for row in rows("signs")
        },
        shifts=[(row["when"], row["entry"], number(row["factor"]), number(row["odds"])) for row in rows("shifts")],
        reports={
            report: np.array([float(row[report]) for row in reports])
            for report in reports[0]
            if report not in ("truth", "status", "source")
        },
        tests=[
            {
                **{key: row[key] for key in ("code", "tool")},
                **{key: float(row[key]) for key in ("minutes", "risk")},
                **{key: words(row[key]) for key in ("finds", "blocked")},
            }
            for row in rows("tests")
        ],
    )
