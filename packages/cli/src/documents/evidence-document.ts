// What stands beside the readings in the JSON of `show`: oil, first strokes, the hose of the gauge.

import type { BuildUp, GaugeHose, OilRise, OilTest } from "@sealtrend/core/parts";

const cm3 = (cubicMetres: number | undefined): number | undefined =>
  cubicMetres === undefined ? undefined : cubicMetres * 1e6;

export const oilDocument = (oil: OilTest | undefined) =>
  oil === undefined
    ? undefined
    : {
        cylinders: oil.cylinders.map(riseDocument),
        controls: oil.controls,
        controlRise: oil.controlRise,
        u_controlRise: oil.controlUncertainty,
        controlsRoseToo: oil.controlsRoseToo,
        byTwo: oil.byTwo,
        against: oil.against,
      };

const riseDocument = (rise: OilRise) => ({
  label: rise.label,
  rise: rise.rise,
  u_rise: rise.uncertainty,
  net: rise.net,
  u_net: rise.netUncertainty,
  netLow: rise.netRange?.[0],
  netHigh: rise.netRange?.[1],
  evidence: rise.evidence,
  withinScatter: rise.withinScatter,
  doubts: rise.doubts,
  oil_cm3: cm3(rise.oil),
  ofChamber: rise.share,
  amount: rise.amount,
  oilAlone: rise.alone,
});

export const buildUpDocument = (buildUp: BuildUp | undefined) =>
  buildUp === undefined
    ? undefined
    : {
        gauge: buildUp.gauge,
        middle: buildUp.middle,
        bounds: buildUp.bounds,
        cylinders: buildUp.cylinders.map(({ label, share, relative, uncertainty, pattern, odd }) => ({
          label,
          share,
          u_share: share * uncertainty,
          relative,
          pattern,
          odd,
        })),
        reached: buildUp.reached,
      };

export const hoseDocument = (hose: GaugeHose | undefined) =>
  hose === undefined
    ? undefined
    : {
        gauge: hose.gauge,
        valveEnd: hose.valveEnd,
        hose_cm3: cm3(hose.hose),
        chamber_cm3: cm3(hose.chamber),
        loss: hose.loss,
        u_loss: hose.uncertainty,
      };
