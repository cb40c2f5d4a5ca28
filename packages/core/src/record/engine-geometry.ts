// `geometry` of engine.json: sizes of one cylinder, each possible by itself and together.

import { type CylinderFault, cylinderFault } from "../cranking/index.ts";
import { type Problem, problem } from "../problem/index.ts";
import { type Dimension, angle, length, readQuantity } from "../quantity/index.ts";
import { type JsonObject, type JsonView, fieldAt } from "./json-view.ts";
import type { Geometry } from "./engine-types.ts";

/** What is stated of the sizes of a cylinder; each field was found sound before. */
export const geometryOf = (root: JsonObject): Geometry => {
  const quantity = (name: string, dimension: Dimension): number | undefined => {
    const written = fieldAt(root, `geometry.${name}`);
    const reading = typeof written === "string" ? readQuantity(written, dimension) : undefined;
    return reading?.ok === true ? reading.si : undefined;
  };
  const size = (name: "bore" | "stroke" | "rod"): Geometry => {
    const metres = quantity(name, "length");
    return metres === undefined ? {} : { [name]: length(metres) };
  };
  const ratio = fieldAt(root, "geometry.compressionRatio");
  const closes = quantity("intakeCloses", "angle");
  return {
    ...size("bore"),
    ...size("stroke"),
    ...size("rod"),
    ...(typeof ratio === "number" ? { compressionRatio: ratio } : {}),
    ...(closes === undefined ? {} : { intakeCloses: angle(closes) }),
  };
};

const names: Readonly<Record<CylinderFault["field"], string>> = {
  bore: "a bore",
  stroke: "a stroke",
  rod: "a rod, centre to centre,",
  compressionRatio: "a compression ratio",
  intakeCloses: "an intake closing after bottom dead centre",
};
const musts: Readonly<Record<CylinderFault["must"], string>> = {
  "be-above": "above",
  "be-below": "below",
  "be-at-least": "of at least",
  "be-at-most": "of at most",
};

/** Sizes that no cylinder has, such as a rod shorter than half the stroke. */
export const checkGeometry = (view: JsonView, problems: Problem[]): void => {
  const fault = cylinderFault(geometryOf(view.root));
  if (fault === undefined) return;
  const field = `geometry.${fault.field}`;
  const limit =
    fault.field === "compressionRatio"
      ? String(fault.limit)
      : fault.field === "intakeCloses"
        ? `${String(fault.limit)} deg`
        : `${String(Number((fault.limit * 1000).toFixed(1)))} mm`;
  const half =
    fault.field === "rod" && fault.must === "be-above" && fault.limit > 0 ? " (half the stroke)" : "";
  const facts = {
    field,
    text: JSON.stringify(fieldAt(view.root, field)),
    expected: `${names[fault.field]} ${musts[fault.must]} ${limit}${half}`,
  };
  problems.push(problem("field-bad", facts, view.place(field)));
};
