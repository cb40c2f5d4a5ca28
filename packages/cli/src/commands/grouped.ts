// An option under a heading of the help.

import type { Option } from "../command.ts";

/** @param group - the heading  @param value - what stands behind it, by example */
export const grouped = (group: string, name: string, value: string, help: string): Option => ({
  group,
  name,
  value,
  help,
});
