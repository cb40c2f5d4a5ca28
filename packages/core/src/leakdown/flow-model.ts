// How much air passes a hole at a given drop, by one of two published forms that agree where the flow is choked.

import { airGamma, chokedFlow, criticalRatio, flowFunctionOfDrop } from "../air/index.ts";

/** The flow function of a hole. A drop is (p_up - p_down)/p_up in absolute pressures, 0 … 1. */
export interface FlowModel {
  readonly name: "isentropic" | "iso6358";
  /** p_down/p_up at and below which the flow is choked. */
  readonly criticalRatio: number;
  /** psi: mass flow = Cd·A·p_up·psi/√(R·T_up). */
  readonly flow: (drop: number) => number;
  /** E = −d ln psi / d ln(p_down/p_up): 0 where choked, without bound as the drop goes to 0. */
  readonly steepness: (drop: number) => number;
}

const exponent = (airGamma - 1) / airGamma;

/** Isentropic nozzle flow of air, the usual model.
 *  E = ½·[((γ+1)/γ)·t − 2/γ]/(1−t), t = r^((γ−1)/γ) @source isentropic flow, any textbook of gas dynamics */
export const isentropicFlow: FlowModel = {
  name: "isentropic",
  criticalRatio: criticalRatio(),
  flow: (drop) => flowFunctionOfDrop(drop),
  steepness: (drop) => {
    if (1 - drop <= criticalRatio()) return 0;
    const oneLessT = -Math.expm1(exponent * Math.log1p(-drop));
    return (0.5 * (((airGamma + 1) / airGamma) * (1 - oneLessT) - 2 / airGamma)) / oneLessT;
  },
};

/** The form of ISO 6358: an ellipse from the critical ratio b up. psi = psi*·√(1 − z²), z = (r − b)/(1 − b).
 *  @param b - critical pressure ratio, 0 up to below 1; short-tube orifices 0.5 (published, within 3 %)
 *  @throws RangeError outside @source ISO 6358 as two modelling manuals print it */
export const isoFlow = (b = 0.5): FlowModel => {
  if (!(b >= 0 && b < 1)) throw new RangeError(`isoFlow: b must be within 0 … 1, got ${String(b)}`);
  return {
    name: "iso6358",
    criticalRatio: b,
    flow: (drop) => {
      const below = Math.min(1, Math.max(0, drop / (1 - b)));
      return chokedFlow() * Math.sqrt(below * (2 - below));
    },
    steepness: (drop) => {
      const below = drop / (1 - b);
      return below >= 1 ? 0 : ((1 - drop) * (1 - below)) / ((1 - b) * below * (2 - below));
    },
  };
};
