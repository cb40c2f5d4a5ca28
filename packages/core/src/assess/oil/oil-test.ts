// What oil did to the readings: the rise of a low cylinder less that of a sound one, for oil takes up room and raises any
// reading. Where no sound one was oiled, less what the oil's room can explain, as far as the chamber is known.

import type { Engine, EngineRecord, Test } from "../../record/index.ts";
import { readingUncertainty } from "../../spread/index.ts";
import { mean, median } from "../../statistics/index.ts";
import type { CylinderAssessment } from "../assessment.ts";
import type { EngineFigures } from "../figures.ts";
import type { OilDoubt, OilEvidence, OilRise, OilTest } from "./oil-finding.ts";
import { oilShares } from "./oil-share.ts";
import { type GaugeDoubt, gaugeDoubt } from "../values/pressure-values.ts";
import { valuesOf } from "../values/values.ts";

/** Net rise from which on: judgement, between published thresholds that differ: 10 psi, 10 %, 20 to 25 %.
 *  @source handbook/trade.md B3 */
const bands: readonly { readonly from: number; readonly evidence: OilEvidence }[] = [
  { from: 0.25, evidence: "strong" },
  { from: 0.1, evidence: "rings" },
  { from: 0.05, evidence: "weak" },
];

/** Above this share of the chamber a computed rise is no substitute for a control. @source handbook/trade.md B3, judgement */
const muchWithoutControl = 0.08;
/** Amounts of oil further apart than this do not compare; judgement. */
const sameAmount = 0.2;
/** Below this share of the others a rise in percent says little. @source handbook/diagnosis.md, wet test */
const veryLow = 0.5;
const beyondChance = 1.959963984540054;

interface Oiled extends OilRise {
  readonly cylinder: CylinderAssessment;
}

/** Undefined where no cylinder was read both dry and with oil. */
export const oilTest = (
  record: EngineRecord,
  test: Test,
  {
    cylinders,
    figures,
  }: { readonly cylinders: readonly CylinderAssessment[]; readonly figures: EngineFigures },
): OilTest | undefined => {
  const dry = valuesOf(test, "dry");
  if (dry === undefined) return undefined;
  const doubt = gaugeDoubt(record, dry, figures);
  const shares = oilShares(record, test);
  const oiled = cylinders.flatMap((cylinder, i): Oiled[] => {
    const moved = riseOf(cylinder, doubt);
    const { label } = cylinder;
    return moved === undefined ? [] : [{ cylinder, label, ...moved, ...shares[i], doubts: [] }];
  });
  if (oiled.length === 0) return undefined;
  const controls = oiled.filter((one) => isControl(one, record));
  const control = controls.length === 0 ? undefined : controlOf(controls);
  const wetGauge = valuesOf(test, "wet")?.gauge;
  const otherGauge = wetGauge !== dry.gauge;
  const middle = median(cylinders.flatMap(({ pressures }) => pressures.dry?.value ?? []));
  const judged = oiled.map(({ cylinder, ...rise }): OilRise => {
    if (cylinder.dryStanding === undefined || controls.some(({ label }) => label === rise.label)) return rise;
    return judge(rise, control, {
      otherGauge,
      forbidden: isForbidden(record.engine),
      veryLow: (cylinder.pressures.dry?.value ?? 0) < veryLow * middle,
    });
  });
  const against =
    control !== undefined
      ? "control"
      : judged.some(({ net }) => net !== undefined)
        ? "oil-volume"
        : undefined;
  return {
    cylinders: judged,
    controls: controls.map(({ label }) => label),
    ...(control === undefined ? {} : { controlRise: control.rise, controlUncertainty: control.uncertainty }),
    ...(control?.roseToo === true && !otherGauge ? { controlsRoseToo: true } : {}),
    ...(otherGauge
      ? {
          byTwo: {
            ...(dry.gauge === undefined ? {} : { dry: dry.gauge }),
            ...(wetGauge === undefined ? {} : { wet: wetGauge }),
          },
        }
      : {}),
    ...(against === undefined ? {} : { against }),
  };
};

/** A sound cylinder of several, whose oil left it room to move. */
const isControl = ({ cylinder, amount }: Oiled, { engine }: EngineRecord): boolean =>
  cylinder.dryStanding === "even" && engine.cylinders.length > 1 && amount !== "too-much";

interface Control {
  readonly rise: number;
  readonly uncertainty: number;
  readonly oils: readonly (number | undefined)[];
  readonly roseToo: boolean;
}

const controlOf = (controls: readonly OilRise[]): Control => {
  const rise = mean(controls.map((one) => one.rise));
  const uncertainty = Math.hypot(...controls.map((one) => one.uncertainty)) / controls.length;
  const alone = controls.flatMap((one) => one.alone ?? []);
  const beyond = alone.length === controls.length ? rise - mean(alone) : 0;
  return {
    rise,
    uncertainty,
    oils: controls.map(({ oil }) => oil),
    roseToo: beyond > 0.05 && beyond > beyondChance * uncertainty,
  };
};

const judge = (
  rise: OilRise,
  control: Control | undefined,
  facts: { readonly otherGauge: boolean; readonly veryLow: boolean; readonly forbidden: boolean },
): OilRise => {
  const { oil, share, alone, amount } = rise;
  if (amount === "too-much") return { ...rise, doubts: ["too-much-oil"] };
  if (isFall(rise) || (control !== undefined && isFall(control))) return { ...rise, doubts: ["fell"] };
  const less = control?.rise ?? alone;
  const unequal =
    oil !== undefined && (control?.oils ?? []).some((own) => own !== undefined && isApart(own, oil));
  const doubts: readonly OilDoubt[] = [
    ...(less === undefined ? (["no-control"] as const) : []),
    ...(control === undefined && share !== undefined && share > muchWithoutControl
      ? (["much-oil"] as const)
      : []),
    ...(unequal ? (["unequal-oil"] as const) : []),
    ...(control === undefined && facts.otherGauge ? (["other-gauge"] as const) : []),
    ...(facts.veryLow ? (["very-low"] as const) : []),
    ...(facts.forbidden ? (["diesel"] as const) : []),
  ];
  const net = less === undefined ? undefined : rise.rise - less;
  const netUncertainty = Math.hypot(rise.uncertainty, control?.uncertainty ?? 0);
  const reach = beyondChance * netUncertainty;
  const gain = net ?? rise.rise;
  const found = bands.find(({ from }) => gain >= from)?.evidence ?? "none";
  return {
    ...rise,
    ...(net === undefined ? {} : { net, netUncertainty, netRange: [net - reach, net + reach] as const }),
    evidence: doubts.length > 0 && found !== "none" ? "weak" : found,
    ...(found !== "none" && gain < reach ? { withinScatter: true } : {}),
    doubts,
  };
};

/** Oil lowers no reading, so a fall beyond the scatter is the battery, the gauge or its seal. */
const isFall = ({ rise, uncertainty }: Pick<OilRise, "rise" | "uncertainty">): boolean =>
  rise < -beyondChance * uncertainty;

/** A diesel that gets no oil unless its maker allows it. */
const isForbidden = ({ ignition, wetTest }: Engine): boolean =>
  ignition === "compression" && wetTest?.allowed !== true;

const isApart = (one: number, other: number): boolean =>
  Math.abs(one - other) > sameAmount * Math.max(one, other);

/** The gauge's own error is common to both readings; where two gauges were used, that is a doubt of its own. */
const riseOf = (
  { pressures: { dry, wet } }: CylinderAssessment,
  doubt: GaugeDoubt,
): Pick<OilRise, "rise" | "uncertainty"> | undefined => {
  if (dry === undefined || wet === undefined || dry.value <= 0 || dry.pegged || wet.pegged) return undefined;
  const ratio = wet.value / dry.value;
  const scatter = [dry, wet].map(({ value, readings }) =>
    value <= 0 ? 0 : readingUncertainty({ pressure: value, repeats: readings.length }, doubt, 0).reading,
  );
  return { rise: ratio - 1, uncertainty: ratio * Math.hypot(...scatter) };
};
