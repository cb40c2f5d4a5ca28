// What is known of the engine, the day and its past that makes some causes likelier before any reading is looked at.

import type { Circumstance, Evidence } from "../../diagnosis/index.ts";
import { type Service, type Work, dayOf } from "../../record/index.ts";
import type { EngineFigures } from "../figures.ts";
import { linkBetween } from "../gauges/linked-gauge.ts";
import { speedOfTest } from "../speed/speeds.ts";
import { isCold } from "../trust/cold.ts";
import { counts, valuesOf } from "../values/values.ts";
import type { Assessed } from "./assessed.ts";
import { newestNote } from "./notes-around.ts";
import { workSince } from "./work-since.ts";

type Circumstances = Evidence["circumstances"];

/** @source handbook/diagnosis.md 2 names all of them; what was not recorded is absent and shifts nothing */
export const circumstancesOf = (
  assessed: Assessed,
  figures: EngineFigures,
  expected: Evidence["expected"],
): Circumstances => [
  ...held(engineFacts(assessed)),
  ...held(dayFacts(assessed, figures)),
  ...held(gaugeFacts(assessed, expected)),
  ...workSince(assessed, figures).flatMap((service) => ofWork(assessed, service)),
  ...knockOf(assessed),
];

type Fact = readonly [Circumstance, boolean];
const held = (facts: readonly Fact[]): Circumstances =>
  facts.flatMap(([when, holds]) => (holds ? [{ when }] : []));

const engineFacts = ({ record: { engine } }: Assessed): readonly Fact[] => [
  ["two-stroke, ports only", engine.porting === "ports"],
  ["two-stroke, exhaust valves", engine.porting === "ports-and-exhaust-valve"],
  ["diesel", engine.ignition === "compression"],
  ["individual barrels", !engine.sharedGasket],
  ["air-cooled", engine.cooling === "air"],
  ["one cylinder", engine.cylinders.length === 1],
];

const dayFacts = (assessed: Assessed, figures: EngineFigures): readonly Fact[] => {
  const { record, test, trust, speed } = assessed;
  const { compressionRelease, ignition, compressionLimits } = record.engine;
  const { release, throttle } = dayOf(test, valuesOf(test, "dry")?.gauge);
  const slow = trust.reasons.some(({ code }) => code === "slow");
  const isHeldAgainst =
    compressionLimits.speed !== undefined ||
    record.tests.some(
      (other) => other !== test && other.setAside === undefined && speedOfTest(other) !== undefined,
    );
  const enough = speed?.from !== undefined && figures.referenceSpeed !== undefined && isHeldAgainst;
  return [
    ["release active", release === "active"],
    // one worked by hand is shut unless somebody lifted it, and an open one lets a cylinder read next to nothing: judgement
    ["release possible", compressionRelease === "automatic" && release === undefined],
    ["cold", isCold(test)],
    ["throttle open", throttle === "open"],
    ["throttle closed", throttle === "closed" && ignition !== "compression"],
    ["speed recorded and enough", enough && !slow],
    ["speed low", slow],
  ];
};

/** An expectation that this very gauge gave is not moved by a change of gauge; one by tests whose gauge was never named may
 *  rest on another one. A proof lasts a year (judgement), and only for
 *  the gauge in use that day. */
const gaugeFacts = (assessed: Assessed, expected: Evidence["expected"]): readonly Fact[] => {
  const { record, test } = assessed;
  const gaugeOf = (other: typeof test): string | undefined => valuesOf(other, "dry")?.gauge;
  const gauge = gaugeOf(test);
  const before = record.tests.findLast((other) => other.date < test.date && counts(other, "dry"));
  const changed =
    gauge !== undefined &&
    before !== undefined &&
    gaugeOf(before) !== undefined &&
    linkBetween(record.gauges, gaugeOf(before), gauge) === undefined;
  const proof = newestNote(assessed, "gauge proved");
  const isSameSince = record.tests.every(
    (other) => other.date < (proof?.date ?? "") || other.date > test.date || gaugeOf(other) === gauge,
  );
  return [
    [
      "gauge changed since the last test",
      gauge === undefined ? expected?.from === "baseline" : changed && expected?.from !== "baseline",
    ],
    ["gauge proved", gauge !== undefined && proof?.value === "yes" && isSameSince],
  ];
};

const works: Readonly<Partial<Record<Work, readonly Circumstance[]>>> = {
  "valve lash": ["service: lash"],
  "head off": ["service: head off"],
  "head gasket": ["service: head off"],
  "valve job": ["service: head off"],
  "timing drive": ["service: timing drive"],
  "re-ring": ["service: rings or bores"],
  rebore: ["service: rings or bores"],
  rebuild: ["service: rings or bores", "service: head off"],
  plugs: ["service: plugs or injectors"],
  overheated: ["event: overheated"],
  "over-rev": ["event: timing drive or over-rev"],
  "water drawn in": ["event: water drawn in"],
  flooded: ["event: flooded"],
};

const ofWork = ({ record: { engine } }: Assessed, service: Service): Circumstances => {
  const touched = placesOf(engine.cylinders, service.cylinders);
  const long = service.what === "storage" && monthsOf(service) >= longStand;
  return [...(works[service.what] ?? []), ...(long ? (["stood 6 months or more"] as const) : [])].map(
    (when) => (touched === undefined ? { when } : { when, cylinders: touched }),
  );
};

/** Undefined for all of them, or none named. */
const placesOf = (all: readonly string[], labels: readonly string[]): readonly number[] | undefined =>
  labels.length === 0 || labels.length === all.length
    ? undefined
    : labels.map((label) => all.indexOf(label)).filter((place) => place !== -1);

/** From here on a stand counts as long. @source handbook/diagnosis.md 2 */
const longStand = 6;

/** As its note says: `7 months`, `1 year`; 0 where it says nothing. */
export const monthsOf = ({ note = "" }: Service): number => {
  const [, amount = "0", unit = ""] = /(\d+(?:[.,]\d+)?)\s*(month|year)/i.exec(note) ?? [];
  return Number(amount.replace(",", ".")) * (unit.toLowerCase() === "year" ? 12 : 1);
};

const knockOf = (assessed: Assessed): Circumstances => {
  const note = newestNote(assessed, "knock");
  if (note?.value !== "some" && note?.value !== "heavy") return [];
  const cylinders = placesOf(assessed.record.engine.cylinders, note.cylinders);
  const when = "event: knock or lean running";
  return [cylinders === undefined ? { when } : { when, cylinders }];
};
