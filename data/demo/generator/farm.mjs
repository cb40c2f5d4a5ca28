// What the invented engines share: the place, the logbook, the gauges, and the two ways a cylinder can lose.
// Levels are sea-level readings in the engine's own unit; offsets and losses are in ln of the pressure.

export const farm = 420;
export const lake = 380;

/** Loss of cylinder `label` that grows by `perYear` from the date `since`. */
export const wearing = (label, perYear, since) => ({
  label,
  at: (years) => -perYear * Math.max(0, years),
  since,
});

/** Loss of `size` in cylinder `label` on and after `since`, until the day before `until`. */
export const broken = (label, size, since, until) => ({ label, at: () => -size, since, until });

export const logbook = {
  schema: "sealtrend/logbook@1",
  name: "A hill farm and its workshop (invented)",
  demo: true,
  homeAltitude_m: farm,
  units: "psi",
};

/** `true` scale of each gauge in ln: one reads a little high, one a little low, as gauges do. */
export const gauges = [
  {
    gauge: "red",
    kind: "compression",
    unit: "psi",
    full_scale: 300,
    class_percent: 2.5,
    division: 5,
    hose_cm3: 4,
    scale: 0.012,
    note: "screw-in hose",
  },
  {
    gauge: "blue",
    kind: "compression",
    unit: "psi",
    full_scale: 250,
    class_percent: 1.6,
    division: 2,
    hose_cm3: 3,
    scale: -0.016,
    note: "second scale in bar and kPa",
  },
  {
    gauge: "long",
    kind: "compression",
    unit: "bar",
    full_scale: 60,
    class_percent: 1.6,
    division: 0.5,
    hose_cm3: 1,
    scale: 0.004,
    note: "for diesels, with the dummy injector",
  },
  {
    gauge: "tester",
    kind: "leak-down",
    unit: "psi",
    full_scale: 100,
    class_percent: 1.6,
    division: 1,
    restrictor_mm: 1.0,
    restrictor_length_mm: 6.35,
    profile: "coned",
    regulated: "80psi",
    dial: "pressure",
    matched: "yes",
    scale: 0,
    note: "two dials",
  },
];
