// What can be measured in the next twenty minutes while the engine is open: what no reading of sealing can see, the line to
// type for it, and the limits it will be held against.

import { fromSi } from "../../quantity/index.ts";
import type { Engine, MeasuredPart } from "../../record/index.ts";
import { type WorkLine, placeNamed } from "../../teardown/index.ts";
import type { Opening } from "./choices.ts";
import { type MeasureLimit, limitsOf } from "./measure-limits.ts";
import { leftToMeasure, measureAgainLines, scoresToMeasure } from "./measured-already.ts";
import type { MeasuredNow } from "./measured-now.ts";

type Possible = Exclude<MeasureNow["code"], "again">;

/** What can be measured in minutes while the engine is open, and the line that records it. */
export interface MeasureNow {
  /** `again`: measured already, and too close to tell or read once past a limit. */
  readonly code:
    | "again"
    | "bores"
    | "ring-gaps"
    | "ring-grooves"
    | "rod-side"
    | "bearing-clearance"
    | "journals"
    | "valves"
    | "leak-down";
  /** What to do, as told to a mechanic. */
  readonly text: string;
  readonly minutes: number;
  /** What records it, ready to type. */
  readonly command: string;
  /** Lines that the command then takes, with invented figures in their order; none where a note or a test records it. */
  readonly typed: readonly string[];
  /** What the figures of a line are, where there are several. */
  readonly order?: string;
  /** Limits of engine.json that it will be held against; empty: none is there. */
  readonly limits: readonly MeasureLimit[];
}

interface Measuring {
  /** `#` is the cylinder to begin with: the minutes are for one. */
  readonly text: string;
  readonly minutes: number;
  /** Which limits speak of it. */
  readonly parts: readonly MeasuredPart[];
  readonly quantities: readonly string[];
  readonly order?: string;
}

/** Minutes are common practice for one cylinder or one bearing, no source. @source handbook/teardown.md 1 (how) */
const measurings: Readonly<Record<Possible, Measuring>> = {
  bores: {
    text: "bore # at three heights, along and across the crank",
    minutes: 10,
    parts: ["bore", "piston"],
    quantities: ["diameter", "taper", "out-of-round", "cylindricity", "wear", "clearance"],
    order: "top thrust, top axial, middle thrust, middle axial, bottom thrust, bottom axial",
  },
  "ring-gaps": {
    text: "one top ring square in the lowest part of its bore: the gap",
    minutes: 5,
    parts: ["ring"],
    quantities: ["end gap"],
    order: "the leaf that goes, the leaf that does not",
  },
  "ring-grooves": {
    text: "a new ring in the top groove: the side clearance",
    minutes: 5,
    parts: ["ring"],
    quantities: ["side clearance"],
    order: "the leaf that goes, the leaf that does not",
  },
  "rod-side": {
    text: "side clearance of rod #, with feelers",
    minutes: 3,
    parts: ["rod"],
    quantities: ["side clearance"],
    order: "the leaf that goes, the leaf that does not",
  },
  "bearing-clearance": {
    text: "one rod and one main bearing: clearance by plastic gauge",
    minutes: 12,
    parts: ["rod bearing", "main bearing"],
    quantities: ["clearance"],
  },
  journals: {
    text: "a rod and a main journal, two directions",
    minutes: 6,
    parts: ["pin", "main"],
    quantities: ["diameter", "taper", "out-of-round"],
    order: "front 0, front 90, rear 0, rear 90 degrees",
  },
  valves: {
    text: "fuel in each port with the valves shut: does it weep?",
    minutes: 10,
    parts: [],
    quantities: [],
  },
  "leak-down": { text: "a leak-down, if it can be turned", minutes: 15, parts: [], quantities: [] },
};

const possible: Readonly<Record<Opening, readonly Possible[]>> = {
  "head-off": ["bores", "valves"],
  "bottom-open": ["rod-side", "bearing-clearance", "leak-down"],
  "pistons-in": ["bores", "rod-side", "bearing-clearance"],
  "pistons-out": ["bores", "ring-gaps", "ring-grooves"],
  "crank-out": ["bores", "ring-gaps", "journals"],
};

interface Known {
  readonly engine: Engine;
  /** The one to begin with: the lowest, where one is. */
  readonly cylinder: string | undefined;
  /** The engine as it was measured so far. */
  readonly measured: MeasuredNow | undefined;
}

/** What was measured and does not tell yet first; then what nobody measured. Nothing in place; ports have no valves to see to. */
export const measureNow = (opened: Opening | undefined, known: Known): readonly MeasureNow[] => {
  if (opened === undefined) return [];
  const { engine, cylinder, measured } = known;
  return [
    ...measureAgainLines(opened, measured).map((line) => again(asJob(line, measured), engine)),
    ...scoresToMeasure(opened, measured).map((line) => again(line, engine)),
    ...possible[opened]
      .filter((code) => !(code === "valves" && engine.porting === "ports"))
      .flatMap((code): readonly MeasureNow[] => {
        const left =
          code === "valves" || code === "leak-down" ? undefined : leftToMeasure(code, engine, measured);
        if (left?.length === 0) return [];
        const first = left === undefined || left.includes(cylinder ?? "") ? cylinder : left[0];
        return [beginning(code, engine, first ?? engine.cylinders[0] ?? "1")];
      }),
  ];
};

const beginning = (code: Possible, engine: Engine, label: string): MeasureNow => {
  const { text, minutes, order, ...of } = measurings[code];
  return {
    code,
    text: text.replace("#", label),
    minutes,
    command: commandOf(code, engine, label),
    typed: lines(engine, label)[code] ?? [],
    ...(order === undefined ? {} : { order }),
    limits: engine.clearances.flatMap((limit) => limitsOf(limit, of)),
  };
};

/** Common practice for one of them, no source. */
const minutesOf: Readonly<Partial<Record<MeasuredPart, number>>> = {
  bore: 10,
  main: 6,
  pin: 6,
  "main bearing": 12,
  "rod bearing": 12,
};

/** What contradicts itself is told with its mend; what is to be done about it is to take the place once more. Which of two
 *  printed limits is right no measuring tells. */
const asJob = (line: WorkLine, measured: MeasuredNow | undefined): WorkLine => {
  const conflict = measured?.assessment.conflicts.find(
    ({ code, part, text }) => code !== "limit-misprint" && part === line.part && text === line.why,
  );
  return conflict === undefined ? line : { ...line, text: `${placeNamed(conflict)} once more` };
};

const again = (
  { part, text, labels }: Pick<WorkLine, "part" | "text" | "labels">,
  engine: Engine,
): MeasureNow => ({
  code: "again",
  text: text.replace(/^measure /, "").replace(/, before you order$/, ""),
  minutes: (part === undefined ? 5 : (minutesOf[part] ?? 5)) * Math.max(1, labels.length),
  command: `sealtrend teardown ${engine.id}`,
  typed: [],
  limits: engine.clearances.flatMap((limit) =>
    limit.part === part ? limitsOf(limit, { parts: [part], quantities: [limit.quantity] }) : [],
  ),
});

const commandOf = (code: Possible, { id, cylinders }: Engine, label: string): string => {
  if (code === "valves")
    return `sealtrend note ${id} --what other --value "weeps at a valve" --cylinders ${label}`;
  if (code !== "leak-down") return `sealtrend teardown ${id}`;
  return `sealtrend enter ${id} --leak-down "${cylinders.map(() => "74/80").join(" ")}" --unit psi`;
};

/** Lines of the quick typing. A bore is shown near the nominal one where that is known.
 *  @source handbook/teardown.md 1.3 */
const lines = (
  { geometry, clearances }: Engine,
  label: string,
): Readonly<Partial<Record<Possible, readonly string[]>>> => {
  const isInch = clearances.some(({ unit }) => unit === "in" || unit === "thou");
  const unit = isInch ? "in" : "mm";
  const figures = (from: number, steps: readonly number[], places: number): string =>
    steps.map((step) => `${(from + step).toFixed(places)}${unit}`).join(" ");
  const nominal = fromSi(geometry.bore ?? 0.0865, unit);
  const worn = isInch ? [5, 3, 2, 2, 1, 1] : [12, 8, 6, 5, 3, 2];
  const bore = figures(
    nominal,
    worn.map((hundredths) => hundredths / (isInch ? 1000 : 100)),
    isInch ? 4 : 2,
  );
  const leaves = (low: string, high: string): string => `${low}..${high}${unit}`;
  const gap = isInch ? leaves("0.014", "0.016") : leaves("0.35", "0.40");
  const side = isInch ? leaves("0.002", "0.003") : leaves("0.05", "0.06");
  const rod = isInch ? leaves("0.008", "0.010") : leaves("0.20", "0.25");
  const thread = isInch ? "0.0022in" : "0.051mm";
  const journal = isInch
    ? figures(2.498, [6e-4, 4e-4, 5e-4, 3e-4], 4)
    : figures(63.46, [0.005, 0, 0.002, -0.003], 3);
  return {
    bores: [`bore ${label}: ${bore}`],
    "ring-gaps": [`ring ${label} 1/bottom: ${gap}`],
    "ring-grooves": [`ring ${label} side clearance 1: ${side}`],
    "rod-side": [`rod ${label}: ${rod}`],
    "bearing-clearance": [`rod bearing ${label}: ${thread}`, `main bearing 1: ${thread}`],
    journals: [`pin 1: ${journal}`, `main 1: ${journal}`],
  };
};
