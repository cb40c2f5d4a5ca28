// What tests of `enter` share: its line, and the rows it left behind.

import type { Desk, Said } from "./desk.ts";

export const file = "logbook/pump/tests.csv";

/** Rows of tests.csv as objects, blanks left out. */
export const rowsOf = (desk: Desk): Record<string, string>[] => {
  const [head = "", ...lines] = desk.text(file).trimEnd().split("\n");
  const names = head.split(",");
  return lines.map((line) =>
    Object.fromEntries(
      line
        .split(",")
        .map((cell, i) => [names[i] ?? "", cell] as const)
        .filter(([, cell]) => cell !== ""),
    ),
  );
};

export const enter = (desk: Desk, ...words: string[]): Promise<Said> =>
  desk.type(["enter", "pump", ...words]);
export const dry: readonly string[] = ["--dry", "150 148 152 149", "--unit", "psi"];
export const answers = (...lines: string[]) => ({ answers: lines });
