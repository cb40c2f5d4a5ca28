// Which work at the top end: valves or the gasket, by what was seen and heard, else by the likely causes.

import type { EvidenceId } from "../../decision/index.ts";
import type { TestAssessment } from "../assessment.ts";
import type { Row } from "./row.ts";

/** Which work at the top end is meant, valves or the gasket, and what says so. */
export interface TopWork {
  /** As a service is recorded. */
  readonly service: "valve job" | "head gasket";
  /** Chance of gasket, crack or head among the causes at the top, 0 to 1; absent without a diagnosis of a fault there. */
  readonly gasketShare?: number;
  readonly from: "evidence" | "diagnosis" | "usual";
  /** As told to a mechanic. */
  readonly text: string;
}

const ofGasket: readonly EvidenceId[] = ["A6", "B3", "H2"];
const ofValves: readonly EvidenceId[] = ["B2", "I1"];
/** Of the shipped tables; whatever else lies at the top is valves and what moves them. */
const gasketCauses: readonly string[] = ["gasket-to-neighbour", "gasket-to-coolant", "crack"];

const texts: Readonly<Record<TopWork["service"], string>> = {
  "valve job": "valves and seats; check the head for flatness and cracks while it is off",
  "head gasket": "head gasket; check both faces for flatness and cracks before a new one goes on",
};

/** Valves where neither says. @source handbook/trade.md C4 (a valve is behind one low cylinder most often; judgement) */
export const topWorkOf = (rows: readonly Row[], main: TestAssessment | undefined): TopWork => {
  const [gasket, valves] = [ofGasket, ofValves].map((ids) => rows.some(({ row }) => ids.includes(row)));
  const share = gasketShareOf(main);
  const told = share === undefined ? {} : { gasketShare: share };
  if (gasket === true && valves === true)
    return {
      service: "head gasket",
      ...told,
      from: "evidence",
      text: `${texts["head gasket"]}; and the valves`,
    };
  if (gasket === true || valves === true) {
    const service = gasket === true ? "head gasket" : "valve job";
    return { service, ...told, from: "evidence", text: texts[service] };
  }
  const service = (share ?? 0) > 0.5 ? "head gasket" : "valve job";
  return { service, ...told, from: share === undefined ? "usual" : "diagnosis", text: texts[service] };
};

const gasketShareOf = (main: TestAssessment | undefined): number | undefined => {
  const top = (main?.diagnosis?.causes ?? []).filter(({ group }) => group === "top");
  const all = top.reduce((sum, { probability }) => sum + probability, 0);
  const gasket = top
    .filter(({ code }) => gasketCauses.includes(code))
    .reduce((sum, { probability }) => sum + probability, 0);
  return all === 0 ? undefined : gasket / all;
};
