// Words for a reading that was not taken, where a map names none.

export const usualNotTaken: readonly string[] = [
  "x",
  "-",
  "–",
  "—",
  "--",
  "n.a.",
  "n/a",
  "na",
  "?",
  "none",
  "not taken",
];
