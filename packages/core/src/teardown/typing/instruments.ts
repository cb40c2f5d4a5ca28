// Which instrument a figure was read with: the one chosen last, where it can measure such a thing.

import type { MeasuredPart, MeasuredQuantity, MeasuredValue } from "../../record/index.ts";
import { type InstrumentCode, instrumentNamed, instrumentWords } from "../conformity/instruments.ts";

/** What measures no length of the table. */
const others = ["burette", "spring tester", "eye"];
/** What may be named without quotes, alone or among the owner's own words. */
export const knownInstruments: readonly string[] = [...instrumentWords, ...others];
export const isKnownInstrument = (text: string): boolean =>
  instrumentNamed(text) !== undefined || others.includes(text.toLowerCase());

/** The name of an instrument as measurements.csv holds it: the table's word for it, else as it was typed, for a thread has a
 *  colour and an owner's gauge a name. */
export const storedInstrument = (typed: string): string => {
  const text = typed.trim().replace(/\s+/g, " ");
  const kind = instrumentNamed(text);
  return kind?.words.includes(text.toLowerCase().replaceAll("-", " ")) === true ? kind.code : text;
};

/** What can be measured: a hole, an outside size, a gap that leaves go into, a travel, a thread pressed flat. */
type Sort = "hole" | "outside" | "gap" | "travel" | "thread";

const sorts: Readonly<Record<string, readonly Sort[]>> = {
  "thread clearance": ["thread"],
  "end gap": ["gap"],
  gap: ["gap"],
  squareness: ["gap"],
  "side clearance": ["gap", "travel"],
  "end play": ["gap", "travel"],
  runout: ["travel"],
  rocking: ["travel"],
  ridge: ["hole", "travel"],
  "score depth": ["travel"],
  bore: ["hole"],
};

const can: Readonly<Record<InstrumentCode, readonly Sort[]>> = {
  micrometer: ["outside"],
  "bore-gauge": ["hole"],
  telescopic: ["hole"],
  "small-hole gauge": ["hole"],
  "inside micrometer": ["hole"],
  caliper: ["hole", "outside", "travel"],
  thread: ["thread"],
  feeler: ["gap"],
  straightedge: ["gap"],
  dial: ["travel"],
};

/** Whether an instrument can measure this; of one of the owner's own nobody knows. */
const suits = (instrument: string, part: MeasuredPart, { kind, name }: MeasuredQuantity): boolean => {
  if (kind !== "length" || part === "crack") return false;
  const code = instrumentNamed(instrument)?.code;
  const needed = part === "bore" && name === "diameter" ? ["hole"] : (sorts[name] ?? ["outside"]);
  return code === undefined || can[code].some((sort) => needed.includes(sort));
};

interface Read {
  readonly part: MeasuredPart;
  readonly quantity: MeasuredQuantity;
  readonly value: MeasuredValue;
  /** The one last chosen. */
  readonly chosen: string | undefined;
}

interface ReadWith {
  readonly instrument?: string;
  /** It is the one chosen, whose resolution then holds. */
  readonly isChosen: boolean;
}

/** The instrument of a figure; without one that suits, the only one that measures such a thing, or none. */
export const readWith = ({ part, quantity, value, chosen }: Read): ReadWith => {
  const { name } = quantity;
  const leaves = value.kind === "between";
  const isLeaf =
    chosen !== undefined && ["feeler", "straightedge"].includes(instrumentNamed(chosen)?.code ?? "");
  if (chosen !== undefined && (isLeaf || !leaves) && suits(chosen, part, quantity))
    return { instrument: chosen, isChosen: true };
  if (value.kind === "word") return { ...(part === "crack" ? {} : { instrument: "eye" }), isChosen: false };
  if (name === "thread clearance" && !leaves) return { instrument: "thread", isChosen: false };
  if (leaves || name === "end gap" || name === "gap") return { instrument: "feeler", isChosen: false };
  return { isChosen: false };
};
