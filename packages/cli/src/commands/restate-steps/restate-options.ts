// The options of `restate`: one tester, the other one, the dials, the day.

import type { Option } from "../../command.ts";

const profiles = ["coned", "square", "thin-plate", "unknown"];
const here = "The reading, and the tester it was read on";
const there = "The other tester; what is left out is as on the first";
const dials = "The dials";
const day = "The day";

const option = (group: string, name: string, value: string, help: string): Option => ({
  group,
  name,
  value,
  help,
});

export const restateOptions: readonly Option[] = [
  option(here, "gauge", "NAME", "a tester of the logbook: what it says of itself need not be typed"),
  option(here, "read", "60psi", "the cylinder side"),
  option(here, "lost", "18", "the part lost in percent, in place of --read"),
  option(here, "regulated", "80psi", "the supply side"),
  option(here, "restrictor", "0.040in", "bore of its restrictor, or unknown"),
  option(here, "restrictor-tolerance", "0.02mm", "how far that may be off (default 0.001 in)"),
  option(here, "restrictor-length", "6.35mm", "how long the bore is"),
  { ...option(here, "profile", "coned", "how the restrictor is made"), choices: profiles },
  option(here, "cd", "0.82", "its discharge coefficient, where it was measured"),
  option(there, "to-gauge", "NAME", "a tester of the logbook"),
  option(there, "to-regulated", "100psi", "its supply"),
  option(there, "to-restrictor", "0.060in", "bore of its restrictor"),
  option(there, "to-restrictor-tolerance", "0.02mm", "how far that may be off"),
  option(there, "to-restrictor-length", "6.35mm", "how long that bore is"),
  { ...option(there, "to-profile", "coned", "how that restrictor is made"), choices: profiles },
  option(there, "to-cd", "0.82", "its discharge coefficient"),
  option(there, "to-altitude", "1500m", "height of its place"),
  option(dials, "class", "1.6", "accuracy in percent of full scale (default: 2 psi either way)"),
  option(dials, "full-scale", "700kPa", "with --class (default 100 psi, or the supply if more)"),
  option(dials, "division", "10kPa", "smallest division (default 1 psi)"),
  {
    ...option(dials, "matched", "yes", "yes: both dials agree with the valve shut"),
    choices: ["yes", "no"],
  },
  option(day, "altitude", "350m", "height of the place (default sea level)"),
  option(day, "cylinder-temp", "80C", "temperature of the cylinder (default that of the supply air)"),
  option(day, "air", "22C", "temperature of the supply air (default 20 C)"),
  {
    group: "The law of flow",
    name: "model",
    value: "isentropic",
    help: "isentropic (default) or the form of ISO 6358",
    choices: ["isentropic", "iso6358"],
  },
  option("The law of flow", "critical-ratio", "0.5", "b of ISO 6358 (default 0.5)"),
];
