// What would turn "too close to tell" into a verdict: the cheapest instrument, or more readings, or the shop.

import { type Length, length, toSi } from "../../quantity/index.ts";
import type { LengthUnit, LimitPair, MeasuredPart } from "../../record/index.ts";
import { lengthText } from "../length-text.ts";
import type { Settlement } from "../teardown.ts";
import { type Figure, type Leaves, blurOf, probabilityOf, verdictOf } from "./conforming.ts";
import { type Instrument, instrumentOf, usualKind } from "./instrument-for.ts";
import { type InstrumentCode, inSystem, kindOf } from "./instruments.ts";
import { notByCaliper } from "./not-by-caliper.ts";
import { leafStep, settlingLeaves } from "./settling-leaves.ts";
import { clearanceUncertainty, differenceUncertainty, readingUncertainty } from "./uncertainty.ts";

/** What a figure was made of: one reading, two of one instrument, or a hole and its shaft. */
export type FigureKind = "reading" | "difference" | "clearance";

export interface FigureOf {
  readonly part: MeasuredPart;
  readonly quantity: string;
  readonly kind: FigureKind;
  readonly unit: LengthUnit;
  /** Of what was measured. [m] */
  readonly size?: Length;
  /** The instrument that took it, of a clearance that of the hole: more readings with it are the first thing to try. */
  readonly instrument?: Instrument;
}

/** More repeats than this are not asked for: they agree to the digit, and the digit is what is uncertain. Judgement. */
const mostReadings = 3;

type Candidate = readonly [InstrumentCode, { readonly mm: number; readonly in: number }];
const coarse = { mm: 0.01, in: 0.0005 } as const;
const fineGauge = { mm: 0.002, in: 0.0001 } as const;
const fineMicrometer = { mm: 0.001, in: 0.0001 } as const;

const holes: readonly Candidate[] = [
  ["telescopic", coarse],
  ["bore-gauge", coarse],
  ["bore-gauge", fineGauge],
];
const shafts: readonly Candidate[] = [
  ["micrometer", coarse],
  ["micrometer", fineMicrometer],
];
const small: readonly Candidate[] = [["small-hole gauge", coarse]];
const travels: readonly Candidate[] = [["dial", coarse]];
const outsides: readonly Candidate[] = [["caliper", coarse], ...shafts];
/** Of a straightedge and of a feeler without its leaves the next step is to write down both leaves. */
const gaps: readonly Candidate[] = [["feeler", { mm: 0.01, in: 0.0005 }]];
const edges: readonly Candidate[] = [["straightedge", { mm: 0.01, in: 0.0005 }]];

/** By rising price, by the coarsest instrument that the part is measured with. Thread is no candidate: more of it shares
 *  the packet and the card. */
const candidatesFor: Readonly<Record<InstrumentCode, readonly Candidate[]>> = {
  telescopic: holes,
  "bore-gauge": holes,
  "inside micrometer": holes,
  thread: holes,
  micrometer: shafts,
  "small-hole gauge": small,
  dial: travels,
  caliper: outsides,
  feeler: gaps,
  straightedge: edges,
};

/** Of a clearance the hole decides: the shaft is measured with a micrometer anyway. */
const candidatesOf = ({ part, quantity, kind }: FigureOf): readonly Candidate[] => {
  const { code } = usualKind(part, quantity);
  return candidatesFor[kind === "clearance" && code === "micrometer" ? "telescopic" : code];
};

const uncertaintyBy = (instrument: Instrument, readings: number, of: FigureOf): Length => {
  const taken = { instrument, readings };
  switch (of.kind) {
    case "reading":
      return readingUncertainty(taken);
    case "difference":
      return differenceUncertainty(taken, taken);
    case "clearance":
      return clearanceUncertainty({ hole: taken, shaft: { instrument: shaftFor(instrument, of), readings } });
  }
};

/** A fine gauge is set in a fine micrometer. */
const shaftFor = ({ resolution }: Instrument, { unit, size }: FigureOf): Instrument =>
  instrumentOf(
    kindOf("micrometer"),
    resolution < toSi(0.003, "mm") ? inSystem(fineMicrometer, unit) : resolution,
    size,
  );

/** What settles a figure that reads the same when it is measured again. u_needed is where the chance reaches 0.95 or 0.05,
 *  of one limit the distance to it / 1.645.
 *  @checked data/reference/teardown-cases.json (computed) */
export const settlementOf = (figure: Figure, limits: LimitPair, of: FigureOf): Settlement => {
  const needed = neededUncertainty(figure, limits);
  if (figure.between !== undefined)
    return { needed, ...byLeaves({ ...figure, between: figure.between }, limits, of) };
  const found = triesFor(of).find(({ instrument, readings }) =>
    settles(figure, uncertaintyBy(instrument, readings, of), limits),
  );
  const wrong = notByCaliper(of, of.instrument?.kind.code);
  if (found === undefined)
    return {
      needed,
      text: wrong === undefined ? shopText(figure, limits, of) : `${wrong.never}: ${wrong.use}`,
    };
  const { instrument, readings } = found;
  return {
    needed,
    by: { instrument: instrument.kind.name, resolution: instrument.resolution, readings },
    text: `${wrong === undefined ? "" : `${wrong.never}: `}${toldTry(instrument, readings, of)}`,
  };
};

const settles = (figure: Figure, uncertainty: Length, limits: LimitPair): boolean =>
  verdictOf(probabilityOf({ value: figure.value, uncertainty }, limits)) !== "too-close-to-tell";

/** The largest uncertainty that settles it, by halving; 0 where the figure is the limit itself. */
const neededUncertainty = ({ value }: Figure, limits: LimitPair): Length => {
  const distances = [limits.low, limits.high].flatMap((limit) =>
    limit === undefined ? [] : [Math.abs(value - limit)],
  );
  const nearest = Math.min(...distances);
  if (!(nearest > 0)) return length(0);
  const decided = (u: number): boolean =>
    verdictOf(probabilityOf({ value, uncertainty: length(u) }, limits)) !== "too-close-to-tell";
  let [low, high] = [nearest / 3, nearest];
  for (let round = 0; round < 50; round += 1) {
    const half = (low + high) / 2;
    if (decided(half)) low = half;
    else high = half;
  }
  return length(low);
};

interface Try {
  readonly instrument: Instrument;
  readonly readings: number;
}

/** What is in hand first, with more readings; then by rising price. */
const triesFor = (of: FigureOf): readonly Try[] => {
  const { unit, size, instrument: own } = of;
  const bought = candidatesOf(of).map(([code, sizes]) =>
    instrumentOf(kindOf(code), inSystem(sizes, unit), size),
  );
  const isHelped =
    own?.stated !== true && own?.kind.repeatsHelp === true && notByCaliper(of, own.kind.code) === undefined;
  const inHand = own === undefined || !isHelped ? [] : [own];
  return [...inHand, ...bought].flatMap((instrument) =>
    Array.from({ length: instrument.kind.repeatsHelp ? mostReadings : 1 }, (_, i) => ({
      instrument,
      readings: i + 1,
    })),
  );
};

const toldTry = (
  { kind, resolution }: Instrument,
  readings: number,
  { kind: figure, part, unit }: FigureOf,
): string => {
  const repeats = readings === 1 ? "" : `, ${String(readings)} readings at each place`;
  if (kind.code === "feeler" || kind.code === "straightedge")
    return `find the leaf that goes and the next, ${lengthText(leafStep(unit), unit)} thicker, that does not`;
  const division = kind.byResolution ? ` ${lengthText(resolution, unit)}` : "";
  const set =
    figure === "clearance" && kind.carries !== undefined
      ? ` ${kind.carries} the micrometer that measures the ${shaftNames[part] ?? "shaft"}`
      : "";
  return `${kind.name.replace(set === "" ? "" : " and micrometer", "")}${division}${set}${repeats}`;
};

const shaftNames: Readonly<Partial<Record<MeasuredPart, string>>> = {
  bore: "piston",
  piston: "piston",
  main: "journal",
  "main bearing": "journal",
  pin: "pin",
  "rod bearing": "pin",
  guide: "stem",
  stem: "stem",
};

const shopText = ({ value }: Figure, limits: LimitPair, { unit }: FigureOf): string => {
  const onLimit = [limits.low, limits.high].some(
    (limit) => limit !== undefined && Math.abs(limit - value) < toSi(1, "um"),
  );
  return onLimit
    ? `it reads ${lengthText(value, unit)}, the limit itself: ask the shop to measure`
    : "no instrument of a home workshop settles it: ask the shop to measure";
};

const byLeaves = (
  figure: Figure & { readonly between: Leaves },
  limits: LimitPair,
  of: FigureOf,
): Omit<Settlement, "needed"> => {
  const step = leafStep(of.unit);
  const { stops, goes } = settlingLeaves(figure.between, limits, {
    step,
    blur: blurOf(figure.uncertainty, figure.between),
  });
  const isOne = stops !== undefined && goes !== undefined && Math.abs(stops.leaf - goes.leaf) < step / 2;
  const told = [
    ...(stops === undefined
      ? []
      : [`${lengthText(stops.leaf, of.unit)} leaf: ${stops.verdict} if it does not go`]),
    ...(goes === undefined
      ? []
      : [`${isOne ? "" : `${lengthText(goes.leaf, of.unit)} leaf: `}${goes.verdict} if it goes`]),
  ];
  return told.length === 0
    ? { text: shopText(figure, limits, of) }
    : {
        by: { instrument: "feeler", resolution: step, readings: 1 },
        text: `try a ${told.join(isOne ? ", " : "; a ")}`,
      };
};
