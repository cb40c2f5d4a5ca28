// What oil did, in the numbers behind the screen of `show`.

import { type OilTest, type TestAssessment, writeQuantity } from "@sealtrend/core/parts";
import { joined, percent } from "../words.ts";

/** Paragraphs, not wrapped. */
export const oilWhy = ({ oil }: TestAssessment): string[] => {
  if (oil === undefined) return [];
  const nets = oil.cylinders.flatMap(({ label, net, netUncertainty = 0 }) =>
    net === undefined ? [] : [`${label}: ${percent(net, 1)} ± ${percent(netUncertainty, 1)}`],
  );
  const less =
    oil.against === "oil-volume" ? "less what the room of the oil explains" : "less that of the control";
  const rooms = roomTexts(oil);
  return [
    ...(nets.length === 0
      ? []
      : [
          `Rise with oil, ${less}, of ${nets.join(", ")}. From 5 % on we call it a weak sign of rings, from 10 % a sign, from 25 % a strong one: judgement, for published thresholds differ (10 psi; 10 %; 20 to 25 %).`,
        ]),
    ...(rooms.length === 0
      ? []
      : [
          `${rooms.join("; ")} (computed from bore, stroke and compression ratio; the most, for oil that runs away takes no room).`,
        ]),
  ];
};

/** `5 ml in 1 and 3 fill 4 % of the chamber, which alone raises a sound cylinder by 5 %`, a part for each amount. */
const roomTexts = ({ cylinders }: OilTest): string[] => {
  const known = cylinders.flatMap(({ label, oil, share, alone }) =>
    oil === undefined || share === undefined ? [] : [{ label, share, alone, oil: writeQuantity(oil, "ml") }],
  );
  return [...new Set(known.map(({ oil }) => oil))].flatMap((amount) => {
    const same = known.filter(({ oil }) => oil === amount);
    const [first] = same;
    if (first === undefined) return [];
    const raises =
      first.alone === undefined ? "" : `, which alone raises a sound cylinder by ${percent(first.alone)}`;
    const where = joined(same.map(({ label }) => label));
    return [`${amount} in ${where} fill ${percent(first.share)} of the chamber${raises}`];
  });
};
