// What the hose of a compression gauge takes from the readings of this engine, where its check valve sits at the gauge.

import { hoseShare, knownChamber, trappedRatio } from "../../cranking/index.ts";
import { type Volume, volume } from "../../quantity/index.ts";
import type { Engine, EngineRecord } from "../../record/index.ts";

/** What the hose of a compression gauge takes from every reading where its check valve sits at the gauge: a share. */
export interface GaugeHose {
  readonly gauge: string;
  readonly hose: Volume;
  readonly chamber: Volume;
  /** `unknown`: what follows would hold if the valve sat at the gauge. */
  readonly valveEnd: "gauge" | "unknown";
  /** Share of the reading that is missing, alike in every cylinder. */
  readonly loss: number;
  /** Standard uncertainty of loss. */
  readonly uncertainty: number;
}

/** n of P ∝ V^−n. @source handbook/cranking.md D.3 */
const exponents: Readonly<Record<Engine["ignition"], number>> = {
  spark: 1.25,
  compression: 1.2,
  unknown: 1.25,
};
/** Trapped ratio over compression ratio, where the closing of the intake or the rod is not known. @source D.2, 0.83 to 0.90 */
const usualTrapped = 0.865;
/** One standard deviation of what goes into it; judgement but for the hose (handbook/cranking.md I.6). */
const doubts = { hose: 0.2e-6, exponent: 0.05, trapped: 0.03 };
/** Less than this is not worth a word. */
const least = 0.005;

/** Undefined where the valve sits at the plug, where hose or chamber are not known, and where it takes less than 0.5 %. */
export const gaugeHose = (
  { engine, gauges }: EngineRecord,
  name: string | undefined,
): GaugeHose | undefined => {
  const { hose, valveEnd = "unknown" } = gauges.find(({ id }) => id === name) ?? {};
  const chamber = knownChamber(engine.geometry);
  if (name === undefined || hose === undefined || chamber === undefined || valveEnd === "plug")
    return undefined;
  const ratio = trappedOf(engine);
  if (ratio === undefined) return undefined;
  const exponent = exponents[engine.ignition];
  const lossOf = (step: Partial<Record<keyof typeof doubts, number>>): number =>
    1 -
    hoseShare(
      {
        chamber,
        trappedRatio: ratio * (1 + (step.trapped ?? 0)),
        exponent: exponent + (step.exponent ?? 0),
      },
      volume(Math.max(0, hose + (step.hose ?? 0))),
    );
  const loss = lossOf({});
  const uncertainty = Math.hypot(
    ...(["hose", "exponent", "trapped"] as const).map(
      (key) => (lossOf({ [key]: doubts[key] }) - lossOf({ [key]: -doubts[key] })) / 2,
    ),
  );
  return loss < least ? undefined : { gauge: name, hose, chamber, valveEnd, loss, uncertainty };
};

const trappedOf = ({ geometry }: Engine): number | undefined => {
  const { bore, stroke, rod, compressionRatio, intakeCloses } = geometry;
  if (bore === undefined || stroke === undefined || compressionRatio === undefined) return undefined;
  return rod === undefined || intakeCloses === undefined
    ? usualTrapped * compressionRatio
    : trappedRatio({ bore, stroke, rod, compressionRatio }, intakeCloses);
};

/** Standard uncertainty that such a hose adds to ln of a reading held against a limit of the maker's, whose own hose is not
 *  known: anywhere from none to this one, loss/√3; 0 where there is no such hose. */
export const hoseDoubt = (record: EngineRecord, name: string | undefined): number => {
  const found = gaugeHose(record, name);
  return found?.valveEnd === "gauge" ? found.loss / Math.sqrt(3) : 0;
};
