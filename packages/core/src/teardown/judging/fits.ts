// What is left between two parts that run in each other, and what a bore has lost.

import { type Length, length } from "../../quantity/index.ts";
import type { Engine, MeasuredPart } from "../../record/index.ts";
import { clearanceUncertainty, differenceUncertainty } from "../conformity/index.ts";
import { bendOfRunout, clearance, clearanceOfRocking } from "../figures/index.ts";
import { pinOf } from "../consistency/journal-counts.ts";
import { lengthNumber, lengthText } from "../length-text.ts";
import { isFresh } from "./limits.ts";
import { type Made, byLabel, madeOf, sourceText, takenBy } from "./made.ts";
import { originalBore } from "./original-bore.ts";
import type { Reading } from "./reading.ts";
import { isUnworn } from "./round-parts.ts";
import type { SizeOf } from "./sizes.ts";

/** Wear, and the clearances of pistons, bearings and guides: the smallest, and the largest where it differs. */
export const fitFigures = (
  readings: readonly Reading[],
  engine: Engine,
  sizeOf: SizeOf = () => undefined,
): readonly Made[] => [
  ...wearFigures(readings, engine, sizeOf),
  ...pistonClearances(readings),
  ...bearingClearances(readings, engine),
  ...guideClearances(readings),
  ...bends(readings),
];

const wearFigures = (readings: readonly Reading[], engine: Engine, sizeOf: SizeOf): readonly Made[] =>
  [...byLabel(readings, "bore", "diameter")].flatMap(([label, own]) => {
    const largest = extreme(
      own.filter((reading) => !isUnworn(reading)),
      "largest",
    );
    if (largest === undefined) return [];
    // another bore, not machined yet, tells nothing of what this one was bored to
    const alike = readings.filter(({ item }) => isFresh(item) === isFresh(largest.item));
    const size = isFresh(largest.item) ? sizeOf(largest.item) : undefined;
    const original = originalBore(alike, engine, { label, ...(size === undefined ? {} : { size }) });
    if (original === undefined) return [];
    const [unworn] = original.readings;
    const { unit, uncertainty } = largest.item;
    return [
      madeOf([largest, ...original.readings], {
        quantity: "wear",
        value: length(largest.item.value - original.value),
        // a printed size is exact; an unworn spot was read by the same gauge
        uncertainty:
          unworn === undefined ? uncertainty : differenceUncertainty(takenBy(largest), takenBy(unworn)),
        from: `${sourceText(largest)} less ${lengthNumber(original.value, unit)}, the ${original.from}${
          size === undefined ? "" : ` and ${lengthText(size, unit)}`
        }`,
        kind: unworn === undefined ? "reading" : "difference",
      }),
    ];
  });

const extreme = (readings: readonly Reading[], which: "largest" | "smallest"): Reading | undefined =>
  readings.toSorted((a, b) => (which === "largest" ? -1 : 1) * (a.item.value - b.item.value))[0];

interface Fit {
  readonly part: MeasuredPart;
  readonly label: string;
  readonly holes: readonly Reading[];
  readonly shafts: readonly Reading[];
}

/** Smallest: where it seizes. Largest: where it knocks and oil gets by. */
const clearancesOf = ({ part, label, holes, shafts }: Fit): readonly Made[] => {
  const tight = fitOf(part, label, { hole: extreme(holes, "smallest"), shaft: extreme(shafts, "largest") });
  const loose = fitOf(part, label, { hole: extreme(holes, "largest"), shaft: extreme(shafts, "smallest") });
  if (tight === undefined || loose === undefined) return [];
  return tight.item.value === loose.item.value ? [tight] : [at(tight, "smallest"), at(loose, "largest")];
};

const at = (made: Made, place: string): Made => ({ ...made, item: { ...made.item, at: place } });

const fitOf = (
  part: MeasuredPart,
  label: string,
  { hole, shaft }: { readonly hole: Reading | undefined; readonly shaft: Reading | undefined },
): Made | undefined => {
  if (hole === undefined || shaft === undefined) return undefined;
  const made = madeOf([hole, shaft], {
    quantity: "clearance",
    value: clearance(hole.item.value, shaft.item.value),
    uncertainty: clearanceUncertainty({ hole: takenBy(hole), shaft: takenBy(shaft) }),
    from: `${named(hole)} less ${named(shaft, hole.item.unit)}`,
    kind: "clearance",
  });
  // the clearance of a piston is told of the piston, by the state of the later of the two
  const { state } = shaft.item.part === "piston" ? shaft.item : hole.item;
  return { ...made, item: { ...made.item, part, label, state } };
};

const named = (reading: Reading, unit = reading.item.unit): string => {
  const { part, label } = reading.item;
  return [part, label, sourceText(reading, unit)].filter(Boolean).join(" ");
};

const pistonClearances = (readings: readonly Reading[]): readonly Made[] => {
  const bores = byLabel(readings, "bore", "diameter");
  return [...byLabel(readings, "piston", "diameter")].flatMap(([label, shafts]) =>
    clearancesOf({
      part: "piston",
      label,
      holes: (bores.get(label) ?? []).filter((reading) => !isUnworn(reading)),
      shafts,
    }),
  );
};

const bearingClearances = (readings: readonly Reading[], engine: Engine): readonly Made[] => {
  const of = (part: "main bearing" | "rod bearing", journals: "main" | "pin"): readonly Made[] => {
    const shafts = byLabel(readings, journals, "diameter");
    return [...byLabel(readings, part, "bore")].flatMap(([label, holes]) =>
      clearancesOf({ part, label, holes, shafts: shafts.get(journalOf(part, label, engine)) ?? [] }),
    );
  };
  return [...of("main bearing", "main"), ...of("rod bearing", "pin")];
};

const journalOf = (part: "main bearing" | "rod bearing", label: string, engine: Engine): string => {
  if (part === "main bearing") return label;
  return engine.cylinders.includes(label) ? (pinOf(engine, label) ?? "") : label;
};

const guideClearances = (readings: readonly Reading[]): readonly Made[] => {
  const stems = byLabel(readings, "stem", "diameter");
  const bySize = [...byLabel(readings, "guide", "bore")].flatMap(([label, holes]) =>
    clearancesOf({ part: "guide", label, holes, shafts: stems.get(label) ?? [] }),
  );
  const rocked = [...byLabel(readings, "guide", "rocking").values()]
    .flat()
    .map((reading) => half(reading, "clearance", clearanceOfRocking(reading.item.value)));
  return [...bySize, ...rocked];
};

const bends = (readings: readonly Reading[]): readonly Made[] =>
  [...byLabel(readings, "crank", "runout").values()]
    .flat()
    .map((reading) => half(reading, "bend", bendOfRunout(reading.item.value)));

/** A dial that shows double. */
const half = (reading: Reading, quantity: string, value: Length): Made =>
  madeOf([reading], {
    quantity,
    value,
    uncertainty: length(reading.item.uncertainty / 2),
    ...(reading.item.at === undefined ? {} : { at: reading.item.at }),
    from: `half of ${reading.item.quantity} ${lengthNumber(reading.item.value, reading.item.unit)}`,
    kind: "reading",
  });
