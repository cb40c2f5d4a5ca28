// The examples of the library's README: each block of code, and the lines it is shown to print.

import { readFileSync } from "node:fs";

export interface Example {
  readonly code: string;
  readonly output: string;
}

const readme = new URL("../../packages/core/README.md", import.meta.url);

/** In their order; each may use what those before it have made. */
export const examples = (): readonly Example[] =>
  [...readFileSync(readme, "utf8").matchAll(/```ts\n([\s\S]*?)```\n\n```text\n([\s\S]*?)```/g)].map(
    ([, code = "", output = ""]) => ({ code, output }),
  );

/** All of them as one module; `between` stands after each. */
export const asModule = (all: readonly Example[], between = ""): string =>
  all.map(({ code }) => `${code}${between}`).join("\n");
