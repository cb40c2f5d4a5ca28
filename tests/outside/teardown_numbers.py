"""What the makers of teardown cases share."""

import random

# the same every time
rng = random.Random(20261126)
IN = 25.4


def rounded(value, digits=12):
    return float(f"{value:.{digits}g}")
