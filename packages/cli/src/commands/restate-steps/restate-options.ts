// The options of `restate`: one tester, the other one, the dials, the day.

import type { Option } from "../../command.ts";
import { grouped } from "../grouped.ts";

const profiles = ["coned", "square", "thin-plate", "unknown"];
const here = "The reading, and the tester it was read on";
const there = "The other tester; what is left out is as on the first";
const dials = "The dials";
const day = "The day";

export const restateOptions: readonly Option[] = [
  grouped(here, "gauge", "NAME", "a tester of the logbook: what it says of itself need not be typed"),
  grouped(here, "read", "60psi", "the cylinder side"),
  grouped(here, "lost", "18", "the part lost in percent, in place of --read"),
  grouped(here, "regulated", "80psi", "the supply side"),
  {
    ...grouped(here, "restrictor", "0.040in", "bore of its restrictor"),
    words: ["unknown"],
    orElse: "its size",
  },
  grouped(here, "restrictor-tolerance", "0.02mm", "how far that may be off (default 0.001 in)"),
  grouped(here, "restrictor-length", "6.35mm", "how long the bore is"),
  { ...grouped(here, "profile", "coned", "how the restrictor is made"), choices: profiles },
  grouped(here, "cd", "0.82", "its discharge coefficient, where it was measured"),
  grouped(there, "to-gauge", "NAME", "a tester of the logbook"),
  grouped(there, "to-regulated", "100psi", "its supply"),
  grouped(there, "to-restrictor", "0.060in", "bore of its restrictor"),
  grouped(there, "to-restrictor-tolerance", "0.02mm", "how far that may be off"),
  grouped(there, "to-restrictor-length", "6.35mm", "how long that bore is"),
  { ...grouped(there, "to-profile", "coned", "how that restrictor is made"), choices: profiles },
  grouped(there, "to-cd", "0.82", "its discharge coefficient"),
  grouped(there, "to-altitude", "1500m", "height of its place"),
  grouped(dials, "class", "1.6", "accuracy in percent of full scale (default: 2 psi either way)"),
  grouped(dials, "full-scale", "700kPa", "with --class (default 100 psi, or the supply if more)"),
  grouped(dials, "division", "10kPa", "smallest division (default 1 psi)"),
  {
    ...grouped(dials, "matched", "yes", "whether both dials agree with the valve shut"),
    choices: ["yes", "no"],
  },
  grouped(day, "altitude", "350m", "height of the place (default sea level)"),
  grouped(day, "cylinder-temp", "80C", "temperature of the cylinder (default that of the supply air)"),
  grouped(day, "air", "22C", "temperature of the supply air (default 20 C)"),
  {
    group: "The law of flow",
    name: "model",
    value: "isentropic",
    help: "how the flow is worked out (default isentropic)",
    choices: ["isentropic", "iso6358"],
    means: { iso6358: "the form of ISO 6358" },
  },
  grouped("The law of flow", "critical-ratio", "0.5", "b of ISO 6358 (default 0.5)"),
];
