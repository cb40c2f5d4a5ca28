// The first line after something was written: what, and how to take it back.

/** `set  pump geometry.bore: 86mm        (sealtrend undo takes it back)`. */
export const savedLine = (said: string, undo: "possible" | "not-possible", width: number): string => {
  const undone = undo === "possible" ? "(sealtrend undo takes it back)" : "";
  const columns = Math.max(said.length + 2, Math.min(width, 80) - undone.length);
  return `${said.padEnd(columns)}${undone}`.trimEnd();
};
