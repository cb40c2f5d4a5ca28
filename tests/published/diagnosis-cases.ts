// Readings that were published with a verdict of their source's own (handbook/trade.md J), as evidence; what a diagnosis
// and a rule say of them; and when that counts as agreement.

import { type Diagnosis, diagnose } from "@sealtrend/core/parts";
import { assessed, cylinder } from "../core/assess/records.ts";
import { type Written, evidenceOf } from "../core/diagnosis/worked-evidence.ts";

type Agreement = "yes" | "partly" | "no";
interface Verdict {
  readonly says: string;
  readonly agrees: Agreement;
}

/** Six or four single barrels, cooled by air. */
const barrels = (cylinders: 4 | 6): Written => ({
  cylinders,
  banks:
    cylinders === 4
      ? [
          [0, 2],
          [1, 3],
        ]
      : [
          [0, 2, 4],
          [1, 3, 5],
        ],
  sharedGasket: false,
  circumstances: ["individual barrels", "air-cooled"],
  obstacles: ["no release", "air-cooled"],
});
const v8: Written = {
  cylinders: 8,
  banks: [
    [0, 1, 2, 3],
    [4, 5, 6, 7],
  ],
};
const outboard: Written = {
  dry: [75, 80],
  wet: [88, 92],
  circumstances: ["two-stroke, ports only"],
  obstacles: ["no release", "no valves"],
};
const all = <T>(count: number, value: T): readonly T[] => Array.from({ length: count }, () => value);

const rings = ["worn-rings-or-bore", "broken-ring-or-piston", "stuck-rings"] as const;
const valves = ["exhaust-valve", "intake-valve", "bent-valve", "sticking-valve", "tight-lash"] as const;

/** By the key of the row: readings, and the causes that the source's verdict amounts to; none: it left the cause open. */
export const diagnosed: Readonly<
  Record<string, { readonly written: Written; readonly accepted: readonly string[] }>
> = {
  "2 diagnosis": { written: { ...v8, dry: [196, 155] }, accepted: ["no-fault"] },
  "3 diagnosis": {
    written: { ...barrels(4), held: [undefined, 36] },
    accepted: ["exhaust-valve"],
  },
  "4 diagnosis": { written: outboard, accepted: rings },
  "4 diagnosis with 120 psi estimated": {
    written: { ...outboard, expected: [120, "estimate"] },
    accepted: rings,
  },
  "5 diagnosis": {
    written: { ...v8, dry: [undefined, undefined, 140, undefined, undefined, undefined, 100] },
    accepted: [...valves, ...rings],
  },
  "6 diagnosis": {
    written: {
      ...v8,
      held: all(8, 60),
      supply: 100,
      heard: all(8, "crankcase"),
      circumstances: ["cold"],
      restrictor: "unknown",
    },
    accepted: ["no-fault", "washed-or-dry-bores"],
  },
  "7 diagnosis": { written: { ...barrels(6), held: [68, 20, 0, 40, 0, 20] }, accepted: rings },
  "9 diagnosis": {
    written: {
      ...barrels(4),
      held: [78, 79, 78, 79],
      heard: all(4, "crankcase faint"),
      circumstances: ["individual barrels", "air-cooled", "service: rings or bores"],
    },
    accepted: ["no-fault"],
  },
  "10 diagnosis": {
    written: {
      dry: [52],
      held: [84],
      supply: 100,
      expected: [110, "estimate"],
      circumstances: ["release possible", "air-cooled", "one cylinder"],
      restrictor: "unknown",
      obstacles: ["air-cooled"],
    },
    accepted: ["compression-release"],
  },
  "11 diagnosis": {
    written: {
      ...barrels(6),
      held: [73, 72, 60, 74, 71, 73],
      heard: [undefined, undefined, "exhaust"],
      tools: ["leak-down tester", "borescope"],
    },
    accepted: ["no-fault", "sticking-valve"],
  },
  "12 diagnosis": {
    written: {
      held: [85, 85, 70, 85],
      supply: 100,
      heard: [undefined, undefined, "neighbour"],
      restrictor: "unknown",
    },
    accepted: [],
  },
};

/** Half or more of the chances on what the source says: yes; a quarter: partly. Where the source left the cause open: yes
 *  while no cause is even probable. Judgement. */
const agreement = ({ causes }: Diagnosis, accepted: readonly string[]): Agreement => {
  if (accepted.length === 0) return (causes[0]?.probability ?? 0) < 0.65 ? "yes" : "no";
  const chance = causes.reduce(
    (sum, { code, probability }) => sum + (accepted.includes(code) ? probability : 0),
    0,
  );
  if (chance >= 0.5) return "yes";
  return chance >= 0.25 ? "partly" : "no";
};

const verdictOf = (found: Diagnosis, accepted: readonly string[]): Verdict => {
  const causes = found.causes.slice(0, 3).map(({ code, probability }) => `${code} ${probability.toFixed(2)}`);
  const tests = found.tests.slice(0, 2).map(({ test }) => test.code);
  return {
    says: `cylinder ${found.target + 1}: ${causes.join("; ")}; next ${tests.join(" or ")}`,
    agrees: agreement(found, accepted),
  };
};

// Rules: arithmetic of the source, through the same door as a user's test.

const dry = (cells: string) => ({ test: "2020-01-01a", cells });

/** The lowest whole pressure beside 150 psi that a limit of 70 % lets pass. */
const lowestBeside150 = (): Verdict => {
  const engine = { limits: { compression: { lowestToHighest: 0.7, source: "GM 1990-2009" } } };
  const passes = (low: number): boolean =>
    !cylinder(assessed({ cylinders: 2, engine, tests: [dry(`150 ${low}`)] }), "2").belowLimit;
  const lowest = [102, 103, 104, 105, 106, 107].find(passes) ?? 0;
  return { says: `${lowest} psi is the lowest that passes`, agrees: lowest === 105 ? "yes" : "no" };
};

const rule75 = (): Verdict => {
  const { rules } = assessed({ cylinders: 2, tests: [dry("196 155")] });
  const rule = rules.find(({ id }) => id === "ratio75");
  return {
    says: `lowest/highest ${rule?.value?.toFixed(2) ?? ""} of at least 0.75: ${rule?.verdict ?? ""}`,
    agrees: rule?.verdict === "met" ? "yes" : "no",
  };
};

const lost15 = (): Verdict => {
  const reading = { ...dry("85"), what: "leak-down", regulated_psi: "100" };
  const lost = cylinder(assessed({ cylinders: 1, tests: [reading] }), "1").leakDown?.lost ?? 0;
  const says = `${(100 * lost).toFixed(0)} % lost`;
  return { says, agrees: says === "15 % lost" ? "yes" : "no" };
};

/** Our verdict on every row, by its key. */
export const verdicts = (): Readonly<Record<string, Verdict>> => ({
  "1 rule": lowestBeside150(),
  "2 rule": rule75(),
  "8 rule": lost15(),
  ...Object.fromEntries(
    Object.entries(diagnosed).map(([key, { written, accepted }]) => [
      key,
      verdictOf(diagnose(evidenceOf(written)), accepted),
    ]),
  ),
});
