// What a dial can be trusted to: its class, its graduation, and whether both dials were seen to agree.

import { type GaugePressure, gaugePressure, toSi } from "../quantity/index.ts";

/** What is known of the dials of a tester. */
export interface Dial {
  /** Largest error by its class [Pa]. */
  readonly limit?: GaugePressure;
  /** Smallest division [Pa]. */
  readonly division?: GaugePressure;
  /** Both dials of the tester agree with the valve shut. */
  readonly matched?: boolean;
}

/** A dial of which nothing is known: ±2 psi, as the middle half of a 100 psi dial of the common grade; judgement. */
export const usualLimit: GaugePressure = gaugePressure(toSi(2, "psi"));
/** Its graduation: 1 psi. */
export const usualDivision: GaugePressure = gaugePressure(toSi(1, "psi"));

/** A supply that testers are often set to, for what hardly depends on it: 80 psi. */
export const usualSupply: GaugePressure = gaugePressure(toSi(80, "psi"));

/** Standard uncertainty of one reading [Pa]. u² = a²/3 + s²/12; with the offset removed a quarter of a is left. */
export const dialUncertainty = ({ limit = usualLimit, division = usualDivision, matched }: Dial): number => {
  const a = matched === true ? limit / 4 : limit;
  return Math.sqrt(a ** 2 / 3 + division ** 2 / 12);
};

/** The largest error of a dial by its class. @param percent - of full scale */
export const classLimit = (percent: number, fullScale: GaugePressure): GaugePressure =>
  gaugePressure((percent / 100) * fullScale);

/** Full scale of a tester's dial where nothing is said: 100 psi, or the supply where that is more; judgement. */
export const usualFullScale = (supply: GaugePressure): GaugePressure =>
  gaugePressure(Math.max(supply, toSi(100, "psi")));
