// A fault of the command line, made where a command finds it.

import { type Exit, type Fault, Stop } from "../command.ts";
import type { FaultCode } from "../fault-codes.ts";

/** The fault as a value, to gather several. */
export const usageFault = (code: FaultCode, found: string, expected: string, mend: string): Fault => ({
  code,
  severity: "error",
  found,
  expected,
  mend,
});

/** Stops with one fault of the command line (exit 2, or as said). */
export const usage = (code: FaultCode, found: string, expected: string, mend: string, exit: Exit = 2): Stop =>
  new Stop(exit, [usageFault(code, found, expected, mend)]);
