// Oil that was put in and fills much of the chamber: said aloud, whatever it did to the readings.

import { writeQuantity } from "../../quantity/index.ts";
import type { EngineRecord, Test } from "../../record/index.ts";
import { oilShares } from "./oil-share.ts";
import { trustReason } from "../trust/trust-reason.ts";
import type { TrustRule } from "../trust/trust-view.ts";
import { trustWords } from "../trust/trust-words.ts";

interface Filled {
  readonly label: string;
  readonly oil: string;
  readonly share: number;
}

const filled = (record: EngineRecord, test: Test, amount: "much" | "too-much"): readonly Filled[] =>
  oilShares(record, test).flatMap(({ oil, share, amount: own }, i) =>
    oil === undefined || share === undefined || own !== amount
      ? []
      : [{ label: record.engine.cylinders[i] ?? "", oil: writeQuantity(oil, "ml"), share }],
  );

const listed = (some: readonly Filled[]): string =>
  some
    .map(({ label, oil, share }) => `${oil} in ${label} (${(100 * share).toFixed(0)} % of its chamber)`)
    .join(", ");

/** Above a quarter of the chamber a warning, above a half what to do before the starter is touched.
 *  @source handbook/trade.md A5 (judgement); liquid does not give way: common practice */
export const oilCautions = (record: EngineRecord, test: Test): readonly string[] => {
  const [much, tooMuch] = [filled(record, test, "much"), filled(record, test, "too-much")];
  return [
    ...(tooMuch.length === 0
      ? []
      : [
          `oil: ${listed(tooMuch)}; liquid does not give way and bends rods: plugs out, turn it by hand until it is out, before you crank again`,
        ]),
    ...(much.length === 0
      ? []
      : [`oil: ${listed(much)} is much: it raises a sound cylinder too, and more would lock it`]),
  ];
};

/** Oil that filled more than half of a chamber makes the test doubtful: its readings with oil tell nothing of rings. */
export const tooMuchOil: TrustRule = ({ record, test }) => {
  const [first, ...rest] = filled(record, test, "too-much");
  if (first === undefined) return undefined;
  const facts = { ...first, labels: [first, ...rest].map(({ label }) => label) };
  return trustReason("doubtful", "too-much-oil", trustWords["too-much-oil"](facts));
};
