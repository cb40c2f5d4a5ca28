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
  readonly alone?: number;
}

const filled = (record: EngineRecord, test: Test, amount: "much" | "too-much"): readonly Filled[] =>
  oilShares(record, test).flatMap(({ oil, share, amount: own, alone }, i) =>
    oil === undefined || share === undefined || own !== amount
      ? []
      : [
          {
            label: record.engine.cylinders[i] ?? "",
            oil: writeQuantity(oil, "ml"),
            share,
            ...(alone === undefined ? {} : { alone }),
          },
        ],
  );

const listed = (some: readonly Filled[]): string =>
  some
    .map(({ label, oil, share }) => `${oil} in ${label} (${(100 * share).toFixed(0)} % of its chamber)`)
    .join(", ");

/** What the maker says, or what is known of the engine at all, against the oil that was put in. */
const againstMaker = ({ engine }: EngineRecord, test: Test): readonly string[] => {
  const { ignition, wetTest, cylinders } = engine;
  if (!test.rows.some(({ what }) => what === "wet") && test.perCylinder.oil === undefined) return [];
  const turn = "plugs out, turn it by hand until the oil is out before you crank or start it";
  const why = "liquid in its small chamber locks it and bends rods, and it may run on the oil";
  const most = wetTest?.oil;
  const over = cylinders.flatMap((label, i) => {
    const oil = test.perCylinder.oil?.[i];
    return most === undefined || oil === undefined || oil <= most * (1 + 1e-9)
      ? []
      : [`${writeQuantity(oil, "ml")} in ${label}`];
  });
  return [
    ...(wetTest?.allowed === false
      ? [`oil: this engine is to get none (${wetTest.source ?? "engine.json"}): ${turn}`]
      : ignition === "compression" && wetTest === undefined
        ? [`oil: a diesel gets none unless its maker allows it: ${why}; ${turn}`]
        : ignition === "unknown"
          ? [`oil: it is not recorded whether this is a diesel; a diesel gets none: ${why}`]
          : []),
    ...(most === undefined || over.length === 0
      ? []
      : [`oil: ${over.join(", ")} is more than the maker's ${writeQuantity(most, "ml")}: ${turn}`]),
  ];
};

/** Above a quarter of the chamber a warning, above a half what to do before the starter is touched.
 *  @source handbook/trade.md A5 (judgement); liquid does not give way: common practice. A diesel: GM Duramax against makers
 *  that allow a small amount (as in the procedure) */
export const oilCautions = (record: EngineRecord, test: Test): readonly string[] => {
  const [much, tooMuch] = [filled(record, test, "much"), filled(record, test, "too-much")];
  const alone = Math.max(...much.map((one) => one.alone ?? 0));
  return [
    ...(tooMuch.length === 0
      ? []
      : [
          `oil: ${listed(tooMuch)}; liquid does not give way and bends rods: plugs out, turn it by hand until it is out, before you crank again`,
        ]),
    ...againstMaker(record, test),
    ...(much.length === 0
      ? []
      : [
          `oil: ${listed(much)} is much: it alone may raise a sound cylinder by ${(100 * alone).toFixed(0)} %, and more would lock it`,
        ]),
  ];
};

/** Oil that filled more than half of a chamber makes the test doubtful: its readings with oil tell nothing of rings. */
export const tooMuchOil: TrustRule = ({ record, test }) => {
  const [first, ...rest] = filled(record, test, "too-much");
  if (first === undefined) return undefined;
  const facts = { ...first, labels: [first, ...rest].map(({ label }) => label) };
  return trustReason("doubtful", "too-much-oil", trustWords["too-much-oil"](facts));
};
