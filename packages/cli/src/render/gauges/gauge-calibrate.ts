// What a calibration says of a gauge.

import {
  type Gauge,
  type HoleCalibration,
  type KnownHole,
  type PressureUnit,
  fromSi,
  writeNumber,
} from "@sealtrend/core/parts";
import { holeText } from "./gauges.ts";
import { savedLine } from "../saved-line.ts";
import { wrapText } from "../table.ts";
import { fixed, percent } from "../words.ts";

interface Calibrated {
  readonly gauge: Gauge;
  readonly typed: readonly KnownHole[];
  /** Kept before the supply was known, which now counts for them too. */
  readonly older: readonly KnownHole[];
  readonly found: HoleCalibration;
  readonly undo: "possible" | "not-possible";
}

interface Screen {
  readonly unit: PressureUnit;
  readonly width: number;
  readonly detail: "short" | "why";
}

/** The lines of `gauge calibrate` with known holes. */
export const calibrationLines = (
  { gauge, typed, older, found, undo }: Calibrated,
  { unit, width, detail }: Screen,
): readonly string[] => {
  const inUnit = { ...gauge, unit };
  const kept = `kept  ${gauge.id}: ${typed.map((hole) => holeText(hole, gauge)).join(", ")}`;
  const fedAlike =
    older.length === 0
      ? []
      : [
          `The holes kept before (${older.map((hole) => holeText(hole, gauge)).join(", ")}) are taken as read at that supply too.`,
        ];
  const lines = [meaning(found, inUnit), ...fedAlike, ...(detail === "why" ? details(found) : [])];
  return [savedLine(kept, undo, width), "", ...lines.flatMap((line) => wrapText(line, Math.min(width, 80)))];
};

type Restrictor = Extract<HoleCalibration, { readonly kind: "restrictor" }>;

const mm = (metres: number, places = 2): string => fixed(fromSi(metres, "mm"), places);

const meaning = (found: HoleCalibration, gauge: Gauge & { readonly unit: PressureUnit }): string => {
  const { id, unit, regulated } = gauge;
  switch (found.kind) {
    case "restrictor": {
      const fed = regulated === undefined ? "" : `Fed with ${writeNumber(regulated, unit)} ${unit}, `;
      const acts = `${fed}the restrictor of ${id} acts as a hole of ${mm(found.actsAs)} mm ± ${mm(found.uActsAs)} mm (one standard uncertainty), made like ${found.holesAre === "one" ? "the one" : "those"} read.`;
      return [acts, ...apart(found), beside(found, gauge)].filter((text) => text !== "").join(" ");
    }
    case "span": {
      const [first, last] = [found.least, found.most].map((hole) => holeText(hole, gauge));
      return `A reading between these has an equal hole now (${first ?? ""}; ${last ?? ""}); beyond them nothing can be said.`;
    }
    case "one-hole":
      return `One hole marks one point. Say the supply it was set to (--regulated 80psi) and it tells what the restrictor acts as; or read a second hole, larger or smaller: a reading between two holes has an equal hole.`;
  }
};

const apart = ({ holesAre, holes }: Restrictor): readonly string[] => {
  if (holesAre !== "apart") return [];
  const each = holes.map(({ hole, actsAs }) => `${mm(hole.hole)} mm tells ${mm(actsAs)} mm`);
  return [
    `The holes do not agree (${each.join(", ")}): look at their sizes and the supply, and read them again.`,
  ];
};

/** The bore that was typed beside the one that the holes tell. */
const beside = ({ used, holes }: Restrictor, gauge: Gauge & { readonly unit: PressureUnit }): string => {
  const { restrictor } = gauge;
  if (used === undefined || restrictor === undefined) return equalHoles(holes, gauge);
  const bore = `Its bore is ${String(Number(mm(restrictor, 3)))} mm`;
  return used.share > 1.3 || used.share < 0.5
    ? `${bore}, which does not go with that: look at the bore, the supply and the hole again.`
    : `${bore}: it passes ${percent(used.share)} of what such a hole of its bore would.`;
};

/** Which readings have an equal hole now, where the bore is not known. */
const equalHoles = (
  holes: readonly { readonly hole: KnownHole }[],
  gauge: Gauge & { readonly unit: PressureUnit },
): string => {
  const [first] = holes;
  const last = holes.at(-1);
  if (first === undefined || last === undefined || first === last)
    return "Its bore is not recorded: with this hole a reading has an equal hole all the same.";
  return `Its bore is not recorded: a reading between these has an equal hole now (${holeText(first.hole, gauge)}; ${holeText(last.hole, gauge)}).`;
};

const details = (found: HoleCalibration): readonly string[] => {
  if (found.kind !== "restrictor") return [];
  const each = found.holes.map(
    ({ hole, actsAs, uActsAs, alpha, weight }) =>
      `${String(Number(mm(hole.hole, 3)))} mm hole / restrictor ${fixed(alpha, 3)} by effective area: acts as ${mm(actsAs, 3)} ± ${mm(uActsAs, 3)} mm${found.holes.length > 1 ? `, counts ${percent(weight)}` : ""}`,
  );
  const { used } = found;
  const cd =
    used === undefined
      ? []
      : [
          `If the hole has a discharge coefficient of ${fixed(used.ofHoles, 2)} (make not known: ± 0.08), the restrictor has ${fixed(used.cd, 2)}; only their ratio was measured.`,
        ];
  const together =
    each.length > 1
      ? ["What the dials may be wrong by is one for all holes, so that more of them take little of it away."]
      : [];
  return ["", ...each, ...together, ...cd];
};
