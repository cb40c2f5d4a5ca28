// The rules in force for one engine: the maker's own figures first, then the general ones they leave open.

import { type EngineFacts, appliesTo } from "./applies.ts";
import { makerRules } from "./maker-rules.ts";
import type { Rule } from "./rule.ts";

/** The maker's rules of engine.json, then those of the sheet that apply and whose family the maker left open. */
export const rulesFor = (engine: EngineFacts, sheet: readonly Rule[]): readonly Rule[] => {
  const maker = makerRules(engine);
  const settled = new Set(maker.map(({ family }) => family));
  return [...maker, ...sheet.filter((rule) => appliesTo(rule.applies, engine) && !settled.has(rule.family))];
};
