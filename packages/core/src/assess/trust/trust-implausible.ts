// Readings that no engine gives: a slip of a digit, or the wrong unit. They make a test doubtful until somebody has looked.

import { type Test, leastOfBest } from "../../record/index.ts";
import { trustReason } from "./trust-reason.ts";
import type { TrustRule } from "./trust-view.ts";
import { trustWords } from "./trust-words.ts";
import { mostOfEngine } from "../values/most-of-engine.ts";
import { crankingKinds, valuesOf } from "../values/values.ts";

/** Far above the others, or a tenth of them (slips.ts). */
export const slipped: TrustRule = ({ record, test, dry }) => {
  const cells = dry?.cells ?? [];
  const found = record.engine.cylinders.flatMap((label, i) => {
    const slip = cells[i]?.slip;
    return slip === undefined ? [] : [{ ...slip, label, typed: typedText(test, i, slip.reading) }];
  });
  const [first] = found;
  if (first === undefined) return undefined;
  const times = Math.max(...found.map((slip) => slip.times));
  const others = cells.filter((cell) => cell !== undefined).length - found.length;
  return trustReason(
    "doubtful",
    "slip",
    trustWords.slip({ readings: found, kind: first.kind, times, others }),
  );
};

/** Above what such an engine makes; a reading that is already named as a slip is not named twice. */
export const beyondEngine: TrustRule = ({ record: { engine }, test }) => {
  const found = crankingKinds.flatMap((what) =>
    (valuesOf(test, what)?.cells ?? []).flatMap((cell, i) =>
      cell === undefined || cell.slip?.kind === "high"
        ? []
        : cell.readings.map((reading) => ({ reading, place: i })),
    ),
  );
  const [worst] = found
    .filter(({ reading }) => reading > mostOfEngine[engine.ignition])
    .toSorted((a, b) => b.reading - a.reading);
  if (worst === undefined) return undefined;
  const { ignition, cylinders } = engine;
  const typed = typedText(test, worst.place, worst.reading);
  const facts = { typed, label: cylinders[worst.place] ?? "", ignition };
  return trustReason("doubtful", "beyond-engine", trustWords["beyond-engine"](facts));
};

/** The best of two or more that hold something reads less than an engine starts with. One alone may be dead. */
export const belowEngine: TrustRule = ({ record: { engine }, test, dry }) => {
  const held = (dry?.cells ?? []).flatMap((cell, place) =>
    cell === undefined || cell.value <= 0 ? [] : cell.readings.map((reading) => ({ reading, place })),
  );
  const [best] = held.toSorted((a, b) => b.reading - a.reading);
  if (best === undefined || best.reading >= leastOfBest) return undefined;
  if (new Set(held.map(({ place }) => place)).size < 2) return undefined;
  const facts = {
    typed: typedText(test, best.place, best.reading),
    label: engine.cylinders[best.place] ?? "",
  };
  return trustReason("doubtful", "below-engine", trustWords["below-engine"](facts));
};

/** The reading as it was typed, with its unit. */
const typedText = (test: Test, place: number, reading: number): string => {
  for (const { cells, unit } of test.rows) {
    const cell = cells[place];
    if (cell?.kind === "reading" && cell.value === reading)
      return `${cell.text.replace(/[>?]/g, "")} ${unit}`;
  }
  return "a reading";
};
