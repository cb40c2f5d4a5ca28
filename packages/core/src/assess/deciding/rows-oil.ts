// Rows A3 to A6: what oil did to the cranking readings, net of a sound cylinder or of the oil's own room.

import type { CylinderAssessment, TestAssessment } from "../assessment.ts";
import type { OilRise } from "../oil/oil-finding.ts";
import { listed } from "../labels.ts";
import { type Row, percent } from "./row.ts";

type Found = Omit<Row, "from" | "restsOn">;

/** Net rises. @source handbook/trade.md B3 (10 and 20 to 25 % published; 5 % judged) */
const rises = { none: 0.05, rings: 0.1, strong: 0.25 } as const;

/** Only low cylinders tell, only a rise that nothing spoils, and one beyond the scatter of its readings. */
export const oilRows = ({ oil, cylinders, record }: TestAssessment): readonly Found[] => {
  const telling = (oil?.cylinders ?? []).filter(
    ({ doubts, net, evidence }) => doubts.length === 0 && net !== undefined && evidence !== undefined,
  );
  const rows = telling.flatMap((rise): readonly Found[] => rowOf(rise));
  const flat = new Set(rows.flatMap(({ row, cylinder = "" }) => (row === "A5" ? [cylinder] : [])));
  const { banks, sharedGasket } = record.engine;
  const pairs = sharedGasket ? banks.flatMap(neighbours) : [];
  const low = new Set(cylinders.filter(isLow).map(({ label }) => label));
  return [
    ...rows,
    ...pairs
      .filter((pair) => pair.every((label) => low.has(label) && flat.has(label)))
      .map((pair): Found => ({
        row: "A6",
        text: `neighbours ${listed(pair)} are low and oil does not help`,
      })),
  ];
};

const isLow = ({ dryStanding }: CylinderAssessment): boolean => dryStanding === "lagging";

const rowOf = ({ label, net = 0, withinScatter }: OilRise): readonly Found[] => {
  const told = (row: "A3" | "A4" | "A5"): readonly Found[] => [
    { row, cylinder: label, text: `oil raised cylinder ${label} by ${percent(Math.max(0, net))} net` },
  ];
  if (net < rises.none)
    return [
      {
        row: "A5",
        cylinder: label,
        text: `oil did not help cylinder ${label} (${percent(Math.max(0, net))} net)`,
      },
    ];
  if (withinScatter === true || net < rises.rings) return [];
  return told(net > rises.strong ? "A4" : "A3");
};

const neighbours = (bank: readonly string[]): readonly (readonly string[])[] =>
  bank.slice(1).map((label, i) => [bank[i] ?? "", label]);
