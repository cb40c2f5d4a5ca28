// What is known of the engine, and the maker's limits for its parts.

import type { PageInput } from "./page-input.ts";
import type { PageSection } from "./page-model.ts";
import { kept } from "./page-words.ts";
import { clearanceTexts, offeredTexts } from "../engine-limits.ts";

/** Told in words of their own. */
const apart = /^(schema|name|limits\.(clearances|offered)\b.*)$/;

export const engineSection = ({ record: { engine }, fields = [] }: PageInput): PageSection => {
  const limits = [...clearanceTexts(engine), ...offeredTexts(engine).map((text) => `offered: ${text}`)];
  return {
    code: "engine",
    heading: "The engine",
    blocks: [
      {
        kind: "facts",
        items: fields
          .filter(({ name }) => !apart.test(name))
          .map(({ name, value }) => ({ name, value: kept(value) })),
      },
      ...(limits.length === 0
        ? []
        : [
            { kind: "text", text: "Limits of its parts:" } as const,
            { kind: "list", items: limits } as const,
          ]),
    ],
  };
};
