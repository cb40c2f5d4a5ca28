// Our own lint rule: what it stops, and what it lets pass.

import { Linter, type Rule } from "eslint";
import tseslint from "typescript-eslint";
import { expect, test } from "vitest";
import { programOf } from "../library/program-of.ts";

const rule = new URL("./mixed-quantities.mjs", import.meta.url).href;
const { mixedQuantities } = (await import(rule)) as { readonly mixedQuantities: Rule.RuleModule };

const file = "/quantities.ts";
const compilerOptions = { strict: true, types: [], lib: ["lib.es2023.d.ts"] };
const declared = `
declare const meaning: unique symbol;
type Quantity<U extends string> = number & { readonly [meaning]: U };
declare const gauge: Quantity<"Pa gauge">, other: Quantity<"Pa gauge">, air: Quantity<"Pa abs">;
declare const warm: Quantity<"K"> | undefined, bore: Quantity<"m">, plain: number;
`;

const faults = (expression: string): readonly string[] => {
  const text = `${declared}export const made = ${expression};\n`;
  return new Linter({ cwd: "/" })
    .verify(
      text,
      {
        files: ["**/*.ts"],
        languageOptions: {
          parser: tseslint.parser,
          parserOptions: {
            programs: [programOf({ [file]: text }, compilerOptions)],
            disallowAutomaticSingleRunInference: true,
          },
        },
        plugins: { sealtrend: { rules: { "mixed-quantities": mixedQuantities } } },
        rules: { "sealtrend/mixed-quantities": "error" },
      },
      { filename: file },
    )
    .map(({ message }) => message);
};

test.each(["gauge + air", "air - gauge", "gauge < air", "air >= gauge", "bore === air", "warm !== bore"])(
  "%s is stopped: quantities of different meaning do not meet",
  (expression) => {
    expect(faults(expression)).toEqual([
      expect.stringContaining("quantities of different meaning do not meet"),
    ]);
  },
);

test.each([
  "gauge + other",
  "gauge < other",
  "gauge + 1000",
  "plain < air",
  "Number(gauge) + air",
  "bore * bore",
  "gauge / air",
  "warm === undefined",
])("%s passes", (expression) => {
  expect(faults(expression)).toEqual([]);
});
