// How many of each part were measured, of how many the engine has. What is missing is named, never taken for good.

import type { Engine, MeasuredPart, Measurement } from "../../record/index.ts";
import type { PartCount, TeardownConflict } from "../teardown.ts";
import { expectedJournals } from "./journal-counts.ts";

interface Expected {
  readonly labels: readonly string[];
  /** Of other engines with such banks. */
  readonly others: readonly number[];
  readonly from: PartCount["from"];
  /** Labels that are right besides: of a rod its pin. */
  readonly also: readonly string[];
  /** Labels that are right and count for nothing: the ends of a crank on its V-blocks. */
  readonly aside?: readonly string[];
  /** Where a slip is mended. */
  readonly field?: "layout.mains" | "layout.pins";
}

const cylinderParts: readonly MeasuredPart[] = ["bore", "piston", "ring", "chamber", "crown"];
const valveParts: readonly MeasuredPart[] = ["guide", "stem", "seat", "valve", "spring"];
const rodParts: readonly MeasuredPart[] = ["rod", "rod bearing"];

/** Undefined where the engine file cannot tell how many there are: heads, cracks, housings. */
const expectedOf = (part: MeasuredPart, quantity: string, engine: Engine): Expected | undefined => {
  const journals = expectedJournals(engine);
  const plain = { others: [], also: [] };
  if (cylinderParts.includes(part)) return { ...plain, labels: engine.cylinders, from: "cylinders" };
  if (part === "crank" && quantity === "runout") return runoutOf(engine);
  if (part === "main" || part === "main bearing")
    return {
      ...plain,
      labels: numbered(journals.mains),
      others: journals.otherMains,
      from: journals.mainsFrom,
      field: "layout.mains",
    };
  if (part === "pin")
    return {
      ...plain,
      labels: numbered(journals.pins),
      others: journals.otherPins,
      from: journals.pinsFrom,
      field: "layout.pins",
    };
  if (rodParts.includes(part)) return rodsOf(engine);
  if (valveParts.includes(part)) return valvesOf(engine);
  return part === "crank" ? { ...plain, labels: [""], from: "cylinders" } : undefined;
};

/** The ends rest on V-blocks: inner mains alone; of a crank with two mains nothing. */
const runoutOf = (engine: Engine): Expected | undefined => {
  const { mains, mainsFrom, otherMains } = expectedJournals(engine);
  const inner = numbered(mains).slice(1, -1);
  const others = otherMains.map((count) => count - 2).filter((count) => count > 0);
  return inner.length === 0
    ? undefined
    : {
        labels: inner,
        others,
        from: mainsFrom,
        also: [],
        aside: ["1", String(mains)],
        field: "layout.mains",
      };
};

/** A rod is named by its cylinder or by its pin. */
const rodsOf = (engine: Engine): Expected => {
  const { bigEnds, pins, pinsFrom } = expectedJournals(engine);
  const isEach = bigEnds === engine.cylinders.length;
  return {
    labels: isEach ? engine.cylinders : numbered(bigEnds),
    others: [],
    from: isEach ? "cylinders" : pinsFrom,
    ...(isEach ? {} : { field: "layout.pins" }),
    also: [...engine.cylinders, ...numbered(pins)],
  };
};

/** An intake and an exhaust valve a cylinder; of a two-stroke the exhaust alone, or none. More of them are no slip. */
const valvesOf = ({ porting, cylinders }: Engine): Expected | undefined => {
  if (porting === "ports") return undefined;
  const kinds = porting === "valves" ? ["in", "ex"] : ["ex"];
  return {
    labels: cylinders.flatMap((label) => kinds.map((kind) => `${label}${kind}`)),
    others: [],
    from: "cylinders",
    also: cylinders.flatMap((label) =>
      ["in", "ex"].flatMap((kind) => ["", "1", "2", "3", "4"].map((number) => `${label}${kind}${number}`)),
    ),
  };
};

const numbered = (count: number): readonly string[] => Array.from({ length: count }, (_, i) => String(i + 1));

/** Of what anything was measured, by part and quantity, in the order of measuring. */
export const partCounts = (measurements: readonly Measurement[], engine: Engine): readonly PartCount[] => {
  const sized = measurements.filter(({ value }) => value.kind !== "word");
  const kinds = [...new Map(sized.map((one) => [`${one.part}|${countedAs(one)}`, one])).values()];
  return kinds.flatMap((first): readonly PartCount[] => {
    const { part } = first;
    const quantity = countedAs(first);
    const own = sized.filter((one) => one.part === part && countedAs(one) === quantity);
    const labels = [...new Set(own.map(({ label = "" }) => label))];
    const count = countOf(part, quantity, { engine, labels });
    return count === undefined ? [] : [count];
  });
};

/** What to measure of any engine, before anything was: nothing of it is there yet. */
export const countsToMeasure = (engine: Engine): readonly PartCount[] =>
  (
    [
      ["bore", "diameter"],
      ["piston", "diameter"],
      ["ring", "end gap"],
      ["main", "diameter"],
      ["pin", "diameter"],
      ["crank", "end play"],
    ] as const
  ).flatMap(([part, quantity]) => countOf(part, quantity, { engine, labels: [] }) ?? []);

/** Two ways to one clearance are one: a bearing by thread or by its bore, a guide by its bore or rocked. */
const countedAs = ({ part, quantity }: Pick<Measurement, "part" | "quantity">): string =>
  part === "main bearing" || part === "rod bearing" || part === "guide" ? "clearance" : quantity;

const countOf = (
  part: MeasuredPart,
  quantity: string,
  { engine, labels }: { readonly engine: Engine; readonly labels: readonly string[] },
): PartCount | undefined => {
  const expected = expectedOf(part, quantity, engine);
  if (expected === undefined) return undefined;
  const { aside = [] } = expected;
  const right = new Set([...expected.labels, ...expected.also, ...aside]);
  const most = Math.max(expected.labels.length, ...expected.others) + aside.length;
  const beyond = labels.filter((label) => !right.has(label) && !(Number(label) <= most));
  const known = labels.filter((label) => !beyond.includes(label) && !aside.includes(label));
  const missing = expected.labels.filter((label) => !isMeasured(label, labels));
  return {
    part,
    quantity,
    expected: expected.labels.length,
    measured: known.length,
    missing: missing.length === 0 || known.length < expected.labels.length ? missing : [],
    beyond,
    ...(expected.others.length === 0 ? {} : { otherCounts: expected.others }),
    from: expected.from,
    ...(expected.field === undefined ? {} : { field: expected.field }),
  };
};

/** `3in` by `3in2` too: of four valves one tells that they were seen to. */
const isMeasured = (label: string, labels: readonly string[]): boolean =>
  labels.some((one) => one === label || (/(in|ex)$/.test(label) && one.startsWith(label)));

/** Whether each one was measured, whichever of the usual counts the engine has. */
export const isComplete = ({ expected, measured, missing, otherCounts = [] }: PartCount): boolean =>
  missing.length === 0 && measured >= Math.max(expected, ...otherCounts);

/** Labels beyond what the engine has. */
export const countConflicts = (counts: readonly PartCount[], engine: Engine): readonly TeardownConflict[] =>
  counts.flatMap(({ part, quantity = "", beyond, expected, from }) =>
    beyond.map((label): TeardownConflict => {
      const { field, aside = [] } = expectedOf(part, quantity, engine) ?? {};
      return {
        code: "beyond-the-count",
        part,
        label,
        quantity,
        text: `${part} ${label}: this engine has ${String(expected + aside.length)}${aside.length > 0 ? " mains" : ""}${from === "layout" ? " by engine.json" : from === "usual for the layout" ? ", as is usual" : ""}`,
        mend: `is it another one, under this label by a slip?${field === undefined ? "" : ` If the engine has more: sealtrend engine set ${engine.id} ${field} ${label}`}`,
        weight: "doubtful",
      };
    }),
  );
