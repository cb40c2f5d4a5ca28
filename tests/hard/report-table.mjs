// The table of the report: a row for each kind of harm, whatever part counts it, and where it stands in tests/README.md.

const number = (value) => (value === undefined ? "–" : value.toLocaleString("en").replaceAll(",", " "));
const seconds = ({ cpu_s }) => (cpu_s === undefined ? "–" : `${String(Math.round(cpu_s))} s`);

/** What each row counts, and of which part. */
export const rows = [
  ["faults injected into calls of the disk, and survived", "every-call", ({ faults }) => number(faults)],
  ["kills at a call of the disk", "every-call", ({ kills }) => number(kills)],
  ["faults and kills at the calls of every command that writes", "disk", ({ faults, kills }) => (faults === undefined ? "–" : `${number(faults)}, ${number(kills)}`)],
  ["logbooks on disks that are full, read-only, linked or strangely named", "real-disk", ({ places }) => number(places)],
  ["locks of the dead, the living and the unknown; litter of every stage", "locks", ({ locks, litter }) => (locks === undefined ? "–" : `${number(locks)}, ${number(litter)}`)],
  ["answers that could not be written: closed, full, given up", "streams", ({ streams }) => number(streams)],
  ["kills at random moments, writers at once", "kills", ({ kills, writers }) => (kills === undefined ? "–" : `${number(kills)}, ${number(writers)}`)],
  ["truncations: a file cut at every byte, in four dialects", "truncation", ({ truncations }) => number(truncations)],
  ["mutations: damaged logbooks read", "mutation", ({ mutations, books }) => (mutations === undefined ? "–" : `${number(mutations)} of ${number(books)}`)],
  ["reading a logbook of the twenty, median and slowest (below 50 ms)", "mutation", ({ read_ms, slowest_ms }) => (read_ms === undefined ? "–" : `${String(read_ms)} ms, ${String(slowest_ms)} ms`)],
  ["number grammar: texts tried, as number, cell and list", "numbers", ({ numbers }) => number(numbers)],
  ["round trips: rows written, read, written again", "round-trip", ({ roundTrips }) => number(roundTrips)],
  ["hostile texts, and commands that had to show them", "hostile-text", ({ texts, commands }) => (texts === undefined ? "–" : `${number(texts)}, ${number(commands)}`)],
  ["crafted files: huge, deep, wide, no text, names of every object, formulas", "crafted", ({ crafted }) => number(crafted)],
  ["files of 200 000 readings or faults, and the most memory that one took", "large", ({ large, largest_MB }) => (large === undefined ? "–" : `${number(large)}, ${number(largest_MB)} MB`)],
  ["rule expressions: escapes, foreign names, by lot", "formulas", ({ escapes, names, expressions }) => (escapes === undefined ? "–" : `${number(escapes)}, ${number(names)}, ${number(expressions)}`)],
  ["names for an engine that lead elsewhere", "engine-names", ({ names }) => number(names)],
  ["patterns in the sources, of them linear in the length of a text", "patterns", ({ patterns, linear }) => (patterns === undefined ? "–" : `${number(patterns)}, ${number(linear)}`)],
]; // prettier-ignore

const titles = ["what", "how many", "passed", "failed", "memory", "processor"];

/** The cells of each row that these results tell of.
 *  @param results - name, counts, passed and failed of each part */
export const rowsOf = (results) =>
  rows.flatMap(([what, part, count]) => {
    const result = results.find(({ name }) => name === part);
    if (result === undefined) return [];
    const { counts, passed, failed } = result;
    const memory = counts.peak_MB === undefined ? "–" : `${String(counts.peak_MB)} MB`;
    return [[what, count(counts), number(passed), number(failed), memory, seconds(counts)]];
  });

export const tableOf = (cells) =>
  [titles, titles.map((_, i) => (i === 0 ? "---" : "---:")), ...cells]
    .map((row) => `| ${row.join(" | ")} |`)
    .join("\n");

const begin = "<!-- the table of tests/hard/report.mjs --write -->";
const end = "<!-- its end -->";

/** The rows that stand in the table of a text, by what they count. */
export const rowsIn = (markdown) => {
  const table = markdown.slice(markdown.indexOf(begin), markdown.indexOf(end));
  return new Map(
    [...table.matchAll(/^\| (.*) \|$/gm)].map(([, row]) => row.split(" | ")).map((row) => [row[0], row]),
  );
};

/** The text with these rows in its table; a row that was not counted now stays as it was.
 *  @throws Error where the text has no table */
export const withTable = (markdown, cells) => {
  if (!markdown.includes(begin) || !markdown.includes(end))
    throw new Error(`no table between ${begin} and ${end}`);
  const old = rowsIn(markdown);
  const now = new Map(cells.map((row) => [row[0], row]));
  const all = rows.map(([what]) => now.get(what) ?? old.get(what) ?? [what, "–", "–", "–", "–", "–"]);
  const [before] = markdown.split(begin);
  const [, after] = markdown.split(end);
  return `${before}${begin}\n\n${tableOf(all)}\n\n${end}${after}`;
};
