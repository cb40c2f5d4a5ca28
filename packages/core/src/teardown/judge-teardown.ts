// One teardown of one engine, from its measurements to what follows.

import type { Engine, EngineRecord, Measurement, OfferedPart } from "../record/index.ts";
import { waitsFor, conflictsOf } from "./consistency/conflicts.ts";
import { partCounts } from "./consistency/part-counts.ts";
import { withoutCopies } from "./judging/entered-twice.ts";
import { type Face, facesOf } from "./judging/faces.ts";
import { currentFindings, findingsOf } from "./judging/findings.ts";
import { fitFigures } from "./judging/fits.ts";
import { groundBefore } from "./judging/ground-before.ts";
import { judgedItems } from "./judging/judged-items.ts";
import { partVerdictsOf } from "./judging/part-verdicts.ts";
import { currentReadings, readingsOf, standsBefore } from "./judging/readings.ts";
import { oversizeFor, undersizeFor } from "./judging/resizing.ts";
import { roundFigures } from "./judging/round-parts.ts";
import { sizesOf } from "./judging/sizes.ts";
import { lengthText } from "./length-text.ts";
import { placeOnly } from "./places.ts";
import { spoiltParts } from "./spoilt.ts";
import type { TeardownAssessment, TeardownItem } from "./teardown.ts";
import { spentBores } from "./works/bore-work.ts";
import { spentJournals } from "./works/crank-work.ts";
import type { Known } from "./works/known.ts";
import { workList } from "./works/work-list.ts";

const journals = ["main", "pin"] as const;

/** Undefined where nothing of that teardown was measured.
 *  @param teardown - its number; absent: the newest
 *  @source handbook/teardown.md */
export const judgeTeardown = (
  { engine, measurements }: Pick<EngineRecord, "engine" | "measurements">,
  teardown = Math.max(...measurements.map((one) => one.teardown)),
): TeardownAssessment | undefined => {
  const own = measurements.filter((one) => one.teardown === teardown);
  const dates = own.map(({ date }) => date).toSorted();
  const [from, to] = [dates.at(0), dates.at(-1)];
  if (from === undefined || to === undefined) return undefined;
  const { measurements: once, sets: twice } = withoutCopies(own);
  const readings = readingsOf(once);
  const current = currentReadings(readings);
  const counts = partCounts(own, engine);
  const found = {
    items: current.map(({ item }) => item),
    readings: readings.filter(({ item }) => item.superseded === undefined),
    before: readings.flatMap(({ item }) => (item.supersededBy?.by === "state" ? [item] : [])),
    counts,
    twice,
  };
  // one slip does not have a crank that was ground taken for a worn one
  const slips = conflictsOf({ ...found, derived: [], ground: [] }, engine);
  const sound = current.filter(({ item }) => !waitsFor(item, slips));
  const ground = journals.flatMap((part) => groundBefore(part, sound, engine) ?? []);
  const sizeOf = sizesOf(readings, engine, ground);
  // what cannot be is not reckoned with: a taper of it would be a figure that nobody has
  const faces = facesOf(sound);
  const made = [
    ...roundFigures(sound),
    ...fitFigures(sound, engine, sizeOf),
    ...faces.flatMap(({ figures }) => figures),
  ];
  const conflicts = conflictsOf({ ...found, derived: made, ground }, engine);
  const { items, derived, figures } = judgedItems({
    readings,
    current,
    made,
    faces,
    conflicts,
    engine,
    sizeOf,
  });
  const findings = findingsOf(own.filter((one) => !standsBefore(own, one)));
  const seenNow = currentFindings(findings, own);
  const resizes = resizesOf(
    { figures, findings: seenNow },
    {
      readings: current.filter(({ item }) => !waitsFor(item, conflicts)),
      engine,
    },
  );
  const known: Known = {
    engine,
    figures,
    findings: seenNow,
    counts,
    conflicts,
    ...resizes,
    skims: skimsOf(faces, derived),
  };
  const notJudged = notJudgedOf(own);
  return {
    teardown,
    from,
    to,
    items,
    derived,
    parts: partVerdictsOf(figures),
    findings,
    spoilt: spoiltParts({ items, findings }),
    counts,
    conflicts,
    ...resizes,
    work: workList(known),
    ...(notJudged.length === 0 ? {} : { notJudged }),
    withoutLimit: withoutLimit(figures),
    offeredFor: offeredFor(engine),
  };
};

/** The sizes to machine to, where a bore or a journal is spent. */
const resizesOf = (
  spent: Parameters<typeof spentBores>[0],
  resized: Parameters<typeof oversizeFor>[0],
): Pick<Known, "oversize" | "undersizes"> => {
  const { figures: worn, scores } = spentBores(spent);
  const oversize = worn.length + scores.length > 0 ? oversizeFor(resized) : undefined;
  const undersizes = journals.flatMap((part) => {
    const { figures: thin, marks } = spentJournals(spent, part);
    return thin.length + marks.length > 0 ? (undersizeFor(part, resized) ?? []) : [];
  });
  return { ...(oversize === undefined ? {} : { oversize }), undersizes };
};

const skimsOf = (faces: readonly Face[], derived: readonly TeardownItem[]): Known["skims"] =>
  faces.flatMap(({ part, label, flatness: { skim } }) => {
    const unit = derived.find((item) => item.part === part)?.unit ?? "mm";
    return skim === undefined ? [] : [{ part, label, text: lengthText(skim, unit) }];
  });

const withoutLimit = (figures: readonly TeardownItem[]): TeardownAssessment["withoutLimit"] => {
  const bare = figures.filter(({ verdicts }) => verdicts.length === 0);
  return [...new Map(bare.map(({ part, quantity }) => [`${part}|${quantity}`, { part, quantity }])).values()];
};

/** Volumes and forces. */
const notJudgedOf = (measurements: readonly Measurement[]): NonNullable<TeardownAssessment["notJudged"]> => [
  ...new Map(
    measurements
      .filter(({ value }) => value.kind === "volume" || value.kind === "force")
      .map((one) => [
        `${one.part}|${one.label ?? ""}|${one.quantity}`,
        {
          ...placeOnly({ part: one.part, ...(one.label === undefined ? {} : { label: one.label }) }),
          quantity: one.quantity,
        },
      ]),
  ).values(),
];

const offeredFor = ({ offered }: Engine): readonly OfferedPart[] =>
  (["bore", "main", "pin"] as const).filter((part) => offered[part] !== undefined);
