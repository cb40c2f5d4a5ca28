// One line of the work that follows, with the parts it is about named.

import type { MeasuredPart, TeardownAssessment, WorkCode, WorkLine } from "@sealtrend/core/parts";
import { kept } from "./page-words.ts";
import { partNamed } from "../teardown/teardown-words.ts";
import { sentence } from "../words.ts";

/** Whose labels the labels of a work are, where its words do not say so. */
const ofParts: Readonly<Partial<Record<WorkCode, readonly MeasuredPart[]>>> = {
  "grind-crank": ["main", "pin"],
  "new-bearings": ["main bearing", "rod bearing"],
  "fine-step-shells": ["main bearing", "rod bearing"],
  rods: ["rod"],
  "straighten-crank": ["crank"],
  "guides-and-seats": ["guide", "seat"],
  valves: ["valve", "stem"],
  springs: ["spring"],
};

export const workText = (line: WorkLine, teardown: TeardownAssessment): string => {
  const text = kept(line.text);
  const words = text.split(/[\s,;:]+/);
  const unnamed = line.labels.filter((label) => label !== "" && !words.includes(label));
  if (line.part !== undefined && !text.includes(line.part))
    return sentence(`${partNamed(line.part, line.labels.map(kept))}: ${text}`);
  if (unnamed.length === 0) return sentence(text);
  return `${sentence(text)} (${namesOf(line, teardown)})`;
};

/** `main 2; pins 1, 2`: of each part the labels at which something asks for it. */
const namesOf = ({ code, labels }: WorkLine, { items, derived, findings }: TeardownAssessment): string => {
  const parts = ofParts[code];
  const shown = labels.map(kept);
  if (parts === undefined) return `cylinder${labels.length === 1 ? "" : "s"} ${shown.join(", ")}`;
  const asking = [
    ...[...items, ...derived].filter(
      ({ superseded, standing }) =>
        superseded === undefined && (standing === "outside" || standing === "too-close"),
    ),
    ...findings.filter(({ word }) => word !== "normal" && word !== "none"),
  ];
  const named = parts.flatMap((part) => {
    const own = labels.filter((label) => asking.some((one) => one.part === part && one.label === label));
    return own.length === 0 ? [] : [partNamed(part, own.toSorted().map(kept))];
  });
  return named.length === 0 ? shown.join(", ") : named.join("; ");
};
