import { toSi, gaugePressure, type PressureUnit } from "../../../packages/core/src/quantity/index.ts";
import {
  evaluateFormula,
  parseFormula,
  shippedRules,
  type EngineFacts,
  type Formula,
  type Rule,
  type RuleReading,
} from "../../../packages/core/src/rules/index.ts";

/** Readings of cylinders 1, 2, 3 … as a source prints them, with the relative standard uncertainties given. */
export const readings = (
  values: readonly number[],
  unit: PressureUnit,
  { own = 0, common = 0 }: { own?: number; common?: number } = {},
): readonly RuleReading[] =>
  values.map((value, i) => {
    const pressure = gaugePressure(toSi(value, unit));
    return {
      label: String(i + 1),
      state: "taken",
      pressureCorrected: pressure,
      fullyCorrected: pressure,
      ownUncertainty: own,
      commonUncertainty: common,
    };
  });

export const shipped = (id: string): Rule => {
  const rule = shippedRules.find((candidate) => candidate.id === id);
  if (rule === undefined) throw new Error(`no shipped rule ${id}`);
  return rule;
};

export const parsed = async (text: string): Promise<Formula> => {
  const reading = await parseFormula(text);
  if (!reading.ok) throw new Error(`${text}: ${JSON.stringify(reading.fault)}`);
  return reading.formula;
};

export const valueOf = async (text: string, variables: Parameters<typeof evaluateFormula>[1] = {}) =>
  evaluateFormula(await parsed(text), variables);

export const engine = (facts: Partial<EngineFacts> = {}): EngineFacts => ({
  use: "road",
  ignition: "spark",
  cycle: "four-stroke",
  cylinders: ["1", "2", "3", "4"],
  compressionLimits: {},
  leakDownLimits: {},
  geometry: {},
  ...facts,
});
