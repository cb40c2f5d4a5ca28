// What a calibration says of a gauge.

import {
  type CalibratedLossFree,
  type Gauge,
  type HoleCalibration,
  type KnownHole,
  type PressureCorrection,
  type PressureUnit,
  fromSi,
  writeNumber,
} from "@sealtrend/core";
import { holeText } from "./gauges.ts";
import { savedLine } from "../saved-line.ts";
import { wrapText } from "../table.ts";
import { fixed, percent } from "../words.ts";

interface Calibrated {
  readonly gauge: Gauge;
  readonly typed: readonly KnownHole[];
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
  { gauge, typed, found, undo }: Calibrated,
  { unit, width, detail }: Screen,
): readonly string[] => {
  const inUnit = { ...gauge, unit };
  const kept = `kept  ${gauge.id}: ${typed.map((hole) => holeText(hole, inUnit)).join(", ")}`;
  const lines = [meaning(found, inUnit), ...(detail === "why" ? details(found) : [])];
  return [savedLine(kept, undo, width), "", ...lines.flatMap((line) => wrapText(line, Math.min(width, 80)))];
};

const mm = (metres: number, places = 2): string => fixed(fromSi(metres, "mm"), places);

const meaning = (found: HoleCalibration, gauge: Gauge & { readonly unit: PressureUnit }): string => {
  const { id, unit, regulated } = gauge;
  switch (found.kind) {
    case "restrictor": {
      const fed = regulated === undefined ? "" : `Fed with ${writeNumber(regulated, unit)} ${unit}, `;
      const acts = `${fed}the restrictor of ${id} acts as a hole of ${mm(found.actsAs)} mm (± ${mm(found.uActsAs)}), made like the one read.`;
      return `${acts} ${beside(found, gauge)}`.trim();
    }
    case "span": {
      const [first, last] = [found.least, found.most].map((hole) => holeText(hole, gauge));
      return `A reading between these has an equal hole now (${first ?? ""}; ${last ?? ""}); beyond them nothing can be said.`;
    }
    case "one-hole":
      return `One hole marks one point. Say the supply it was set to (--regulated 80psi) and it tells what the restrictor acts as; or read a second hole, larger or smaller: a reading between two holes has an equal hole.`;
    case "contradictory":
      return `These do not go together: a larger hole must lose more, and no hole all or nothing. Look at the hose and the holes, and read them again.`;
  }
};

/** The bore that was typed beside the one that the holes tell. */
const beside = (
  { used, holes }: Extract<HoleCalibration, { readonly kind: "restrictor" }>,
  gauge: Gauge & { readonly unit: PressureUnit },
): string => {
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
    ({ hole, actsAs, alpha }) =>
      `${String(Number(mm(hole.hole, 3)))} mm hole / restrictor ${fixed(alpha, 3)} by effective area: acts as ${mm(actsAs, 3)} mm`,
  );
  const { used } = found;
  const cd =
    used === undefined
      ? []
      : [
          `If the hole has a discharge coefficient of ${fixed(used.ofHoles, 2)} (make not known: ± 0.08), the restrictor has ${fixed(used.cd, 2)}; only their ratio was measured.`,
        ];
  return ["", ...each, ...cd];
};

/** The lines of `gauge calibrate` at two speeds. */
export const speedLines = (
  {
    engine,
    gauge,
    P0,
    uncertainty,
    from,
    undo,
  }: CalibratedLossFree & {
    readonly engine: string;
    readonly gauge: string;
    readonly from: PressureCorrection["from"];
    readonly undo: "possible" | "not-possible";
  },
  { unit, width }: { readonly unit: PressureUnit; readonly width: number },
): readonly string[] => {
  const said = [
    `Without any loss ${engine} would read ${writeNumber(P0, unit)} ${unit} on ${gauge} at sea level (± ${percent(uncertainty)}).`,
    `From now on readings of ${engine} by ${gauge} are brought to another cranking speed by that; a planed head or another gauge needs a calibration of its own.`,
    ...(from === "assumed"
      ? ["The height of the place is not known, which most of the doubt comes from: --altitude."]
      : []),
  ];
  return [
    savedLine(`kept  ${engine} on ${gauge}, by two speeds`, undo, width),
    "",
    ...said.flatMap((line) => wrapText(line, Math.min(width, 80))),
  ];
};
