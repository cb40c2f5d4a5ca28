// The pump taken apart in June 2026, invented: while its compression is still even, one top ring gap and one exhaust guide
// are past their limit, and the clearance of rod bearing 2 lies too near its limit for a measuring thread to tell.

const source = "workshop book, invented";
const limit = (part, quantity, fresh, wear, more) => ({
  part,
  quantity,
  ...(fresh === undefined ? {} : { new: fresh }),
  ...(wear === undefined ? {} : { wear }),
  unit: "mm",
  ...more,
  source,
});
const none = undefined;

export const limits = [
  limit("bore", "diameter", [86, 86.03], [null, 86.2]),
  limit("bore", "taper", none, [null, 0.1]),
  limit("bore", "out-of-round", none, [null, 0.05]),
  limit("piston", "clearance", [0.07, 0.1], [null, 0.25]),
  limit("ring", "end gap", [0.3, 0.45], [null, 0.9]),
  limit("ring", "side clearance", [0.05, 0.09], [null, 0.2], { at: "1" }),
  limit("ring", "side clearance", [0.03, 0.07], [null, 0.15], { at: "2" }),
  limit("main", "diameter", [51.97, 51.98], [51.9, null]),
  limit("main", "taper", none, [null, 0.02]),
  limit("main", "out-of-round", none, [null, 0.02]),
  limit("pin", "diameter", [45.97, 45.98], [45.9, null]),
  limit("pin", "taper", none, [null, 0.02]),
  limit("pin", "out-of-round", none, [null, 0.02]),
  limit("main bearing", "clearance", [0.03, 0.08], [null, 0.12]),
  limit("rod bearing", "clearance", [0.03, 0.07], [null, 0.11]),
  limit("rod", "side clearance", [0.15, 0.35], [null, 0.5]),
  limit("crank", "end play", [0.1, 0.3], [null, 0.4]),
  limit("crank", "runout", none, [null, 0.05]),
  limit("head", "flatness", none, [null, 0.1]),
  limit("guide", "clearance", [0.03, 0.06], [null, 0.15], { label: "in" }),
  limit("guide", "clearance", [0.04, 0.07], [null, 0.18], { label: "ex" }),
  limit("valve", "margin", [1.2, 1.6], [0.8, null]),
];

export const offered = {
  bore: { unit: "mm", sizes: [0.25, 0.5] },
  main: { unit: "mm", sizes: [0.25, 0.5] },
  pin: { unit: "mm", sizes: [0.25, 0.5] },
};

/** Part, quantity, instrument, its resolution, the places in order, and the figures of each label in that order. */
const sheet = [
  [
    ...["bore", "diameter", "bore-gauge", 0.01],
    "unworn/thrust top/thrust top/axial middle/thrust middle/axial bottom/thrust bottom/axial",
    {
      1: "86.02 86.09 86.07 86.06 86.05 86.04 86.03",
      2: "86.02 86.10 86.07 86.07 86.05 86.04 86.03",
    },
  ],
  ["piston", "diameter", "micrometer", 0.001, "15", { 1: "85.931", 2: "85.926" }],
  [
    ...["ring", "end gap", "feeler", 0.05, "1/bottom 2/bottom oil/bottom"],
    { 1: "0.65..0.70 0.55..0.60 0.50..0.55", 2: "0.95..1.00 0.60..0.65 0.50..0.55" },
  ],
  [
    ...["ring", "side clearance", "feeler", 0.01, "1 2"],
    { 1: "0.11..0.12 0.08..0.09", 2: "0.13..0.14 0.08..0.09" },
  ],
  [
    ...["main", "diameter", "micrometer", 0.001, "front/0 front/90 rear/0 rear/90"],
    {
      1: "51.968 51.966 51.967 51.965",
      2: "51.962 51.958 51.961 51.958",
      3: "51.967 51.966 51.967 51.965",
    },
  ],
  [
    ...["pin", "diameter", "micrometer", 0.001, "front/0 front/90 rear/0 rear/90"],
    { 1: "45.962 45.966 45.961 45.965", 2: "45.951 45.957 45.950 45.956" },
  ],
  ["main bearing", "thread clearance", "thread", 0.025, "middle", { 1: "0.063", 2: "0.076", 3: "0.063" }],
  ["rod bearing", "thread clearance", "thread", 0.025, "middle", { 1: "0.076", 2: "0.102" }],
  ["rod", "side clearance", "feeler", 0.05, "", { 1: "0.30..0.35", 2: "0.30..0.35" }],
  ["crank", "end play", "dial", 0.01, "", { "": "0.21" }],
  ["crank", "runout", "dial", 0.01, "", { 2: "0.02" }],
  [
    ...["head", "gap", "straightedge", 0.01],
    "long1/100 long1/200 long2/100 long2/200 centre/100 centre/200 diagonal1/150 diagonal2/150 end1 end2",
    { "": "<0.04 <0.04 <0.04 0.04..0.05 0.04..0.05 0.04..0.05 0.04..0.05 <0.04 <0.04 <0.04" },
  ],
  [
    ...["guide", "bore", "small-hole gauge", 0.01, "top middle bottom"],
    {
      "1in": "8.03 8.02 8.04",
      "1ex": "8.05 8.03 8.06",
      "2in": "8.03 8.02 8.04",
      "2ex": "8.08 8.04 8.13",
    },
  ],
  [
    ...["stem", "diameter", "micrometer", 0.001, "top middle bottom"],
    {
      "1in": "7.962 7.965 7.960",
      "1ex": "7.948 7.952 7.944",
      "2in": "7.961 7.964 7.958",
      "2ex": "7.936 7.950 7.921",
    },
  ],
  ["valve", "margin", "caliper", 0.02, "", { "1in": "1.30", "1ex": "1.20", "2in": "1.28", "2ex": "1.10" }],
];

const seen = [
  ["bore", "1", "", "crosshatch", "part"],
  ["bore", "2", "", "crosshatch", "part"],
  ["bore", "1", "", "score", "none"],
  ["bore", "2", "top/thrust", "score", "light"],
  ["main bearing", "1", "lower", "appearance", "normal"],
  ["main bearing", "2", "lower", "appearance", "normal"],
  ["main bearing", "3", "lower", "appearance", "normal"],
  ["rod bearing", "1", "upper", "appearance", "normal"],
  ["rod bearing", "2", "upper", "appearance", "one-sided"],
];

const row = (part, label, at, quantity, value, unit, instrument, resolution) => [
  ...[1, "2026-06-06", part, label, at, quantity, value, unit, instrument, resolution],
  ...["me", "cleaned", ""],
];

/** The rows of measurements.csv. */
export const measurements = [
  ...sheet.flatMap(([part, quantity, instrument, resolution, places, figures]) =>
    Object.entries(figures).flatMap(([label, line]) =>
      line
        .split(" ")
        .map((value, i) => row(part, label, places.split(" ")[i], quantity, value, "mm", instrument, resolution)),
    ),
  ),
  ...seen.map(([part, label, at, quantity, word]) => row(part, label, at, quantity, word, "", "eye", "")),
];
