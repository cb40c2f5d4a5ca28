// Readings that look mistyped while they are asked: each is questioned once, as soon as its fellows tell, and taken when it is typed
// again. A zero never is.

import {
  type Engine,
  type Test,
  cylinderColumn,
  gaugeUnits,
  readNumber,
  unitSlip,
} from "@sealtrend/core/parts";
import { clean } from "../../render/clean.ts";
import type { Typed } from "./cell-fault.ts";
import { type Slipped, slipsIn } from "./entry-slips.ts";
import { slipDoubt, unitDoubt } from "./slip-words.ts";

export interface Asked {
  readonly known: { readonly engine: Engine; readonly earlier: readonly Test[] };
  readonly typed: Typed;
  /** What was questioned already. */
  readonly doubted: Set<string>;
}

/** The doubt about a reading that was just typed, in one sentence. With one fellow alone nothing tells which of the two is off. */
export const slipAmong = (label: string, cell: string, asked: Asked): string | undefined => {
  const { typed, known } = asked;
  const cells = new Map([...typed.cells, [label, cell]]);
  const fellows = [...typed.cells].filter(([other, text]) => other !== label && numberOf(text) > 0).length;
  if (fellows === 1) return undefined;
  const slip = slips({ ...typed, cells }, known).find((one) => one.label === label);
  if (slip !== undefined) return isOld(slip, asked) ? undefined : slipDoubt(slip);
  const meant = unitsBeyond(cell, typed);
  if (meant === undefined || isOld({ label: undefined, text: typed.unit ?? "" }, asked)) return undefined;
  const other = meant[0] === undefined ? "" : `, is it ${meant[0]}`;
  return `${clean(cell)} ${typed.unit ?? ""} is more than any engine cranks: is the unit right${other}? b goes back; ${clean(cell)} again is taken`;
};

export interface LeftDoubt {
  /** The cylinder, or undefined where the unit is in doubt. */
  readonly label: string | undefined;
  readonly text: string;
}

/** The first doubt about a whole row that was not told yet. */
export const slipLeft = (asked: Asked): LeftDoubt | undefined => {
  const slip = slips(asked.typed, asked.known).find((one) => !isOld(one, asked));
  if (slip === undefined) return undefined;
  return { label: slip.label, text: slip.label === undefined ? unitDoubt(slip) : slipDoubt(slip) };
};

/** Whether it was told before; from now on it was. */
const isOld = ({ label, text }: Pick<Slipped, "label" | "text">, { doubted }: Asked): boolean => {
  if (label === undefined) return isKnown(unitKey(text), doubted);
  const key = `c ${label} `;
  // who was asked and types much the same means it
  const before = [...doubted]
    .filter((name) => name.startsWith(key))
    .map((name) => Number(name.slice(key.length)));
  const value = numberOf(text);
  if (before.some((other) => Math.abs(other - value) <= muchTheSame * value)) return true;
  return isKnown(`${key}${String(value)}`, doubted);
};

/** Judgement. */
const muchTheSame = 0.3;

const isKnown = (name: string, doubted: Set<string>): boolean => {
  if (doubted.has(name)) return true;
  doubted.add(name);
  return false;
};

export const unitKey = (unit: string): string => `unit ${unit}`;

const numberOf = (text: string): number => {
  const reading = readNumber(text.replace(/\?$/, ""));
  return reading.ok ? reading.value : 0;
};

const slips = ({ unit = "", cells }: Typed, { engine, earlier }: Asked["known"]): readonly Slipped[] => {
  const row = Object.fromEntries([...cells].map(([label, text]) => [cylinderColumn(label), text]));
  return slipsIn([{ what: "dry", unit, ...row }], engine, earlier);
};

/** Units that a reading would be usual in which no engine cranks in its own; undefined where it can be. */
const unitsBeyond = (cell: string, { unit }: Typed): readonly string[] | undefined => {
  const own = gaugeUnits.find((name) => name === unit);
  const slip = own === undefined ? undefined : unitSlip([{ value: numberOf(cell), last: undefined }], own);
  return slip?.kind === "impossible" ? slip.meant : undefined;
};
