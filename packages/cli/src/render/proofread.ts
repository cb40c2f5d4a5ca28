// The screen of `proofread`: every fault with its place and mend, then how many there are.

import type { Examined } from "../logbook/examine.ts";
import { faultText } from "./faults.ts";
import { wrapText } from "./table.ts";

export interface ProofreadOptions {
  readonly width: number;
  /** `folded`: a fault that repeats in one file is counted after a few. */
  readonly detail: "folded" | "all";
  /** `put in order`: a command that was interrupted has been taken back first. */
  readonly logbook: "as it was" | "put in order";
}

const counted = (n: number, one: string): string => `${n === 0 ? "no" : String(n)} ${one}${n > 1 ? "s" : ""}`;

/** The whole screen, ends with a newline. */
export const proofreadText = (
  { files, faults }: Examined,
  { width, detail, logbook }: ProofreadOptions,
): string => {
  const errors = faults.filter(({ severity }) => severity === "error").length;
  const cautions = faults.length - errors;
  const list = faultText(faults, width, detail);
  const both = [counted(errors, "fault"), ...(cautions === 0 ? [] : [counted(cautions, "caution")])].join(
    " and ",
  );
  const said = `${both} in ${counted(files.length, "file")}; nothing ${logbook === "as it was" ? "" : "else "}was changed.`;
  return `${list}${wrapText(said, width).join("\n")}\n`;
};
