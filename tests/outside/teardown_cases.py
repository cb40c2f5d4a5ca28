"""Figures, oversizes, flatness and chances of a teardown, worked by other means than the project's.

    python3 -B tests/outside/teardown_cases.py > data/reference/teardown-cases.json

Q1 to Q12 and the rows of 3.4 are the handbook's own worked cases (computed there as well, not published); the rest are
invented parts. Written from the definitions: an oversize is the circle about the bar's axis that holds every point of the
worn wall and of the score, found by sampling; a chance by feeler is the uniform interval integrated against the normal
distribution; a local gap is a search over all chords; an oval is an ellipse that is measured across two parallel planes.
Lengths in mm unless the name says otherwise.
"""

import json

from teardown_chances import feelers, instruments, judgements, parts
from teardown_figures import bores, faces, ovals, singles, threads, works
from teardown_sizes import oversizes, undersizes

groups = {
    "bores": bores(),
    "ovals": ovals(),
    "oversizes": oversizes(),
    "undersizes": undersizes(),
    "works": works(),
    "threads": threads(),
    "singles": singles(),
    "faces": faces(),
    "judgements": judgements(),
    "feelers": feelers(),
    "parts": parts(),
    "instruments": instruments(),
}
lines = []
for group, cases in groups.items():
    inside = ",\n".join("    " + json.dumps(case, default=lambda x: x.item()) for case in cases)
    lines.append(f'  "{group}": [\n{inside}\n  ]')
print("{\n" + ",\n".join(lines) + "\n}")
