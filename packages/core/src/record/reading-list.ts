// A line of readings as a person types it, in the order of the cylinder numbers.
// What can be read two ways is refused, with both readings shown.

export type ListReading =
  | { readonly ok: true; readonly cells: readonly string[] }
  | { readonly ok: false; readonly found: string; readonly mend: string };

const token = /^>?[+]?\d{1,5}(?:[.,]\d{1,3})?\??$|^[xX?-]$/;
const pair = /^>?\d{1,5}(?:[.,]\d{1,3})?\??\/\d{1,5}(?:[.,]\d{1,3})?$|^[xX?-]$/;

/** Splits `150 148 147 120`, `150/148/147/120`, `10,5 10,4`, `150,148,147,120`, `10.5;10.4`.
 *  @param count - how many cylinders there are */
export const splitReadings = (line: string, count: number): ListReading => {
  const ways = [...new Set(waysToSplit(line.trim()).map((cells) => JSON.stringify(cells)))].map((text) => JSON.parse(text) as string[]);
  const whole = ways.filter((cells) => cells.length === count && cells.every((cell) => token.test(cell)));
  const [one, two] = whole;
  if (one !== undefined && two === undefined) return { ok: true, cells: one };
  if (one !== undefined && two !== undefined)
    return { ok: false, found: `"${line}" can be read as ${one.join(" ")} or as ${two.join(" ")}`, mend: `write "${one.join(" ")}" or "${two.map((cell) => cell.replace(",", ".")).join(" ")}"` };
  return refusal(line, ways, count);
};

const waysToSplit = (line: string): string[][] => {
  if (/[\s;]/.test(line)) return [line.split(/\s*;\s*|\s*,\s+|\s+/).filter((cell) => cell !== "")];
  if (line.includes("/")) return [line.split("/")];
  const commas = line.split(",");
  if (commas.length === 1) return [[line]];
  const integers = commas.every((cell) => /^>?\d{2,5}\??$|^[xX-]$/.test(cell));
  return commas.length === 2 ? [[line], ...(integers ? [commas] : [])] : integers ? [commas] : [[line]];
};

const refusal = (line: string, ways: readonly string[][], count: number): ListReading => {
  const cells = ways[0] ?? [];
  const wrong = cells.find((cell) => !token.test(cell));
  const blanks = "put a blank between the readings, x for one that was not taken";
  if (wrong !== undefined) return { ok: false, found: `"${wrong}" is no reading`, mend: `${/[Oo]/.test(wrong) ? `write ${wrong.replace(/[Oo]/g, "0")}; ` : ""}${blanks}` };
  const many = cells.length > count ? "more" : "fewer";
  return {
    ok: false,
    found: `${String(cells.length)} reading${cells.length === 1 ? "" : "s"} in "${line}", ${many} than the ${String(count)} cylinder${count === 1 ? "" : "s"}`,
    mend: `give ${String(count)}, in the order of the cylinder numbers; ${blanks}`,
  };
};

export interface LeakPair {
  /** What is stored: the cylinder side, as typed. */
  readonly held: string;
  readonly supply?: string;
}

/** Splits a leak-down line: `74/80 72/80`, or plain readings; the supply must be one for all. */
export const splitLeakReadings = (line: string, count: number): { readonly ok: true; readonly cells: readonly LeakPair[] } | Extract<ListReading, { ok: false }> => {
  const cells = line.trim().split(/\s*;\s*|\s+/).filter((cell) => cell !== "");
  if (!cells.some((cell) => cell.includes("/"))) {
    const plain = splitReadings(line, count);
    return plain.ok ? { ok: true, cells: plain.cells.map((held) => ({ held })) } : plain;
  }
  const wrong = cells.find((cell) => !pair.test(cell));
  if (wrong !== undefined)
    return { ok: false, found: `"${wrong}" is no pair of readings`, mend: "write cylinder side and supply with a stroke between: 74/80" };
  if (cells.length !== count)
    return { ok: false, found: `${String(cells.length)} readings for ${String(count)} cylinders`, mend: "give one pair a cylinder, x for one that was not taken" };
  return { ok: true, cells: cells.map((cell) => { const [held = "x", supply] = cell.split("/"); return supply === undefined ? { held } : { held, supply }; }) };
};
