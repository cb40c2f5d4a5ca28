// The inputs of the worked examples as they are written there: psi by cylinder, leak-down as held of supplied.

import { type Evidence, alphaOf, gaugePressure, seaLevelPressure } from "@sealtrend/core/parts";

export const psi = 6894.757293168;

type CylinderEvidence = Evidence["cylinders"][number];
type OnsetReport = NonNullable<CylinderEvidence["onset"]>;
type Place = NonNullable<CylinderEvidence["heard"]>[number]["place"];

export interface Written {
  /** Of each cylinder, one reading or several; a gap: not taken. Pressures in psi. */
  readonly dry?: readonly (number | readonly number[] | undefined)[];
  readonly wet?: readonly (number | undefined)[];
  /** Held of the supply [psi]. */
  readonly held?: readonly (number | undefined)[];
  readonly supply?: number;
  readonly heard?: readonly (Place | `${Place} faint` | undefined)[];
  readonly onset?: readonly (OnsetReport | undefined)[];
  readonly cylinders?: number;
  readonly banks?: Evidence["banks"];
  readonly sharedGasket?: boolean;
  readonly circumstances?: readonly Evidence["circumstances"][number]["when"][];
  /** [psi], and where it is from. */
  readonly expected?: readonly [number, "baseline" | "maker" | "estimate"];
  /** Oil over chamber, and compression ratio. */
  readonly oil?: readonly [number, number];
  readonly restrictor?: Evidence["restrictor"];
  readonly signs?: Evidence["signs"];
  readonly tools?: readonly string[];
  readonly obstacles?: Evidence["obstacles"];
}

/** Rise of a sound reading by the room of the oil: ((CR−v)/(1−v))^1.25 − 1 over CR^1.25 − 1 (handbook/trade.md A5). */
const oilRise = (v: number, ratio: number): number =>
  (((ratio - v) / (1 - v)) ** 1.25 - 1) / (ratio ** 1.25 - 1) - 1;

/** u(ln α) = max(.05, half of what 1 psi up and down moves α, over α); nothing left in the cylinder: α = 8. */
const leakOf = (held: number, supply: number): NonNullable<CylinderEvidence["leak"]> => {
  if (held <= 0.2) return { alpha: 8 };
  const at = (pressure: number): number =>
    alphaOf({
      supply: gaugePressure(supply * psi),
      cylinder: gaugePressure(Math.min(pressure, supply) * psi),
      ambient: seaLevelPressure,
    });
  const alpha = at(held);
  return { alpha, doubt: Math.max(0.05, (0.5 * (at(held - 1) - at(held + 1))) / alpha) };
};

const readings = (dry: number | readonly number[]): readonly number[] =>
  typeof dry === "number" ? [dry] : dry;

const noise = (heard: Place | `${Place} faint`): { readonly place: Place; readonly faint: boolean } => {
  const place = places.find((one) => heard.startsWith(one)) ?? "none";
  return { place, faint: heard !== place };
};
const places: readonly Place[] = [
  "intake",
  "exhaust",
  "crankcase",
  "coolant",
  "neighbour",
  "plug",
  "outside",
  "none",
];

const cylinderOf = (
  place: number,
  { dry, wet, held, supply = 80, heard, onset }: Written,
): CylinderEvidence => {
  const [dryHere, wetHere, heldHere] = [dry?.[place], wet?.[place], held?.[place]];
  const [heardHere, onsetHere] = [heard?.[place], onset?.[place]];
  return {
    ...(dryHere === undefined ? {} : { dry: readings(dryHere).map((value) => value * psi) }),
    ...(wetHere === undefined ? {} : { wet: wetHere * psi }),
    ...(heldHere === undefined ? {} : { leak: leakOf(heldHere, supply) }),
    ...(heardHere === undefined ? {} : { heard: [noise(heardHere)] }),
    ...(onsetHere === undefined ? {} : { onset: onsetHere }),
  };
};

export const evidenceOf = (written: Written): Evidence => {
  const { expected, oil, cylinders = written.dry?.length ?? written.held?.length ?? 0 } = written;
  const all = Array.from({ length: cylinders }, (_, place) => place);
  return {
    cylinders: all.map((place) => cylinderOf(place, written)),
    banks: written.banks ?? [all],
    sharedGasket: written.sharedGasket ?? true,
    circumstances: (written.circumstances ?? []).map((when) => ({ when })),
    ...(expected === undefined ? {} : { expected: { level: expected[0] * psi, from: expected[1] } }),
    ...(oil === undefined ? {} : { oilRise: oilRise(...oil) }),
    restrictor: written.restrictor ?? "known",
    signs: written.signs ?? {},
    tools: written.tools ?? [],
    obstacles: written.obstacles ?? ["no release"],
  };
};
