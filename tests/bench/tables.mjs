// Tables of measurements: on a terminal, and as the marked block of DEVELOPERS.md.

import { cpus } from "node:os";

/** A table as a part gives it: `head` and `rows` of texts, the first of each row a name; `notes` below it. */
export const asText = ({ title, head, rows, notes = [] }) => {
  const widths = head.map((_, i) => Math.max(...[head, ...rows].map((row) => row[i].length)));
  const line = (row) =>
    row
      .map((cell, i) => (i === 0 ? cell.padEnd(widths[i]) : cell.padStart(widths[i] + 2)))
      .join("")
      .trimEnd();
  return [title, line(head), ...rows.map(line), ...notes, ""].join("\n");
};

const asMarkdown = ({ title, head, rows, notes = [] }) =>
  [
    `**${title}**`,
    "",
    `| ${head.join(" | ")} |`,
    `|${head.map((_, i) => (i === 0 ? "---" : "---:")).join("|")}|`,
    ...rows.map((row) => `| ${row.join(" | ")} |`),
    "",
    ...notes.flatMap((note) => [note, ""]),
  ].join("\n");

/** What it was measured on. */
export const machine = () => {
  const all = cpus();
  const model = (all[0]?.model ?? "unknown processor").trim();
  return `${model}, ${String(all.length)} ${all.length === 1 ? "core" : "cores"}, Node ${process.versions.node}`;
};

const marks = { begin: "<!-- bench: begin -->", end: "<!-- bench: end -->" };

/** The text with what stands between the marks replaced. @throws where it holds no marks */
export const withTables = (text, tables) => {
  const [from, to] = [text.indexOf(marks.begin), text.indexOf(marks.end)];
  if (from === -1 || to < from) throw new Error(`needs the lines ${marks.begin} and ${marks.end}`);
  const block = [
    `Measured on ${machine()}. Times drift with the machine; judge by the ratios.`,
    "",
    ...tables.map(asMarkdown),
  ];
  return `${text.slice(0, from + marks.begin.length)}\n${block.join("\n")}${text.slice(to)}`;
};
