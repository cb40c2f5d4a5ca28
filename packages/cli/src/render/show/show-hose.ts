// What the hose of the gauge takes from the readings of this engine, for `--why`.

import type { TestAssessment } from "@sealtrend/core";
import { percent } from "../words.ts";

/** Nothing where the valve sits at the plug, or where hose or chamber are not known. */
export const hoseWhy = ({ gaugeHose }: TestAssessment): string[] => {
  if (gaugeHose === undefined) return [];
  const { gauge, hose, chamber, valveEnd, loss, uncertainty } = gaugeHose;
  const size = `hose ${cm3(hose)} cm3, chamber ${cm3(chamber)} cm3`;
  const low = `about ${percent(loss)} low on this engine, alike in every cylinder (${size}; computed, ± ${percent(uncertainty, 1)})`;
  return valveEnd === "gauge"
    ? [
        `The check valve of ${gauge} sits at the gauge, so its hose belongs to the chamber: it reads ${low}. The comparison of the cylinders stands; a limit of the maker's is held with that doubt, for his hose is not known.`,
      ]
    : [
        `Where the check valve of ${gauge} sits is not recorded (valve_end in gauges.csv). At the plug the hose costs nothing; at the gauge it would read ${low}.`,
      ];
};

const cm3 = (volume: number): string => String(Number((volume * 1e6).toPrecision(3)));
