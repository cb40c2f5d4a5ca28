// The commands whose examples only read, and answer on the demo as it is laid out.

export const readOnDemo: readonly string[] = [
  "show",
  "history",
  "decide",
  "page",
  "how",
  "expect",
  "engine list",
  "engine show",
  "gauge list",
  "proofread",
  "rules",
];
