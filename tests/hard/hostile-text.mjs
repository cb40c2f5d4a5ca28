// Texts made to harm whoever shows them, in every text of every file, in the names of folders, on the command line and in
// faults: none is ever printed raw, as text or JSON, on a page or in a sheet, and none makes a command fail.
//   node tests/hard/hostile-text.mjs

import { existsSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { faultOfRun, type } from "./shared/command.mjs";
import { markupTexts, steeringTexts } from "./shared/hostile-texts.mjs";
import { faultOfPrototypes, faultOfText } from "./shared/judge.mjs";
import { begin, newScratch } from "./shared/part.mjs";
import { faultOfMarkup } from "./shared/page-markup.mjs";
import { loadProgram } from "./shared/program.mjs";

const program = await loadProgram();
const part = begin();
const scratch = newScratch("hostile");
const home = join(scratch, "home");
let commands = 0;

/** A cell in quotes, on one line where a line end would only part the row. */
const cell = (text) => `"${text.replaceAll('"', '""')}"`;

/** Every text that a reader takes as it stands. */
const freely = (text) => ({
  "logbook.json": JSON.stringify({ schema: text, name: text, tools: ["borescope"] }),
  "gauges.csv": `gauge,kind,unit,full_scale,note,${cell(text)}\n${cell(text)},compression,psi,300,${cell(text)},${cell(text)}\n`,
  "pump/engine.json": JSON.stringify({
    name: text,
    cylinders: ["1", "2", "3", "4"],
    ignition: "spark",
    [text]: text,
    wetTest: { allowed: true, source: text },
    limits: {
      compression: { minimum: "9bar", lowestToHighest: 0.8, source: text },
      leakDown: { lost: 0.2, source: text },
      clearances: [{ part: "bore", quantity: "taper", wear: [null, 0.1], unit: "mm", source: text }],
    },
    prices: { currency: text, work: { topEnd: 400, reRing: 620, rebuild: 2600 } },
  }),
  "pump/tests.csv": `test,date,meter,what,take,gauge,unit,c1,c2,c3,c4,by,set_aside,note,${cell(text)}\n${[
    `${cell(text)},2024-05-01,100,dry,1,${cell(text)},psi,150,149,151,120,${cell(text)},,${cell(text)},${cell(text)}`,
    `2025-05-01a,2025-05-01,200,dry,1,${cell(text)},psi,150,149,151,118,${cell(text)},,${cell(text)},`,
    `2026-05-01a,2026-05-01,300,dry,1,${cell(text)},psi,150,148,151,115,${cell(text)},,${cell(text)},`,
    `2026-06-01a,2026-06-01,300,dry,1,${cell(text)},psi,150,148,151,115,${cell(text)},${cell(text)},${cell(text)},`,
  ].join("\n")}\n`,
  "pump/services.csv": `date,meter,what,cylinders,new_baseline,by,note\n2024-06-01,110,other,4,,${cell(text)},${cell(text)}\n`,
  "pump/notes.csv": `date,meter,what,value,unit,cylinders,by,note\n2025-06-01,210,other,${cell(text)},${cell(text)},4,${cell(text)},${cell(text)}\n2025-06-01,210,other fault,${cell(text)},,,${cell(text)},${cell(text)}\n`,
  "pump/measurements.csv": `teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note\n1,2026-06-06,bore,1,top/thrust,diameter,86.09,mm,bore-gauge,0.01,${cell(text)},cleaned,${cell(text)}\n`,
  "pump/amendments.csv": `when,file,row,column,old,new,because\n2026-06-01T10:00:00,tests.csv,3,c4,${cell(text)},${cell(text)},${cell(text)}\n`,
}); // prettier-ignore

/** The same where a word of a list, a number, a date or a name of the program belongs: the text comes back in a fault. */
const wrongly = (text) => ({
  "logbook.json": JSON.stringify({ demo: text, units: text, homeAltitude_m: text, tools: [text] }),
  "gauges.csv": `gauge,kind,unit,full_scale,dial,${cell(text)}\nred,${cell(text)},${cell(text)},${cell(text)},${cell(text)},\n`,
  "pump/engine.json": JSON.stringify({ cylinders: [text, "1"], ignition: text, use: text, geometry: { bore: text }, [text]: { [text]: 1 } }),
  "pump/tests.csv": `test,date,what,take,gauge,unit,c1,c${text.replace(/[",\r\n]/g, "")},altitude_m,throttle\na,${cell(text)},${cell(text)},${cell(text)},g,${cell(text)},${cell(text)},1,${cell(text)},${cell(text)}\n`,
  "pump/services.csv": `date,what,cylinders,new_baseline\n${cell(text)},${cell(text)},${cell(text)},${cell(text)}\n`,
  "pump/notes.csv": `date,what,value,unit\n2025-06-01,smoke,${cell(text)},${cell(text)}\n${cell(text)},oil use,${cell(text)},${cell(text)}\n`,
  "pump/measurements.csv": `teardown,date,part,label,at,quantity,value,unit,instrument\n${[text, text, text, text, text, text, text, text, text].map(cell).join()}\n`,
}); // prettier-ignore

const put = (logbook, files) => {
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(join(logbook, name.includes("/") ? "pump" : ""), { recursive: true });
    writeFileSync(join(logbook, name), text);
  }
};

const shows = [
  ["show", "--why"], ["history", "--long"], ["decide", "--why"], ["teardown", "--no-input"], ["proofread"],
  ["engine", "list"], ["engine", "show"], ["gauge", "list"], ["how"], ["page", "--for", "file", "-o", "page.html"],
  ["page", "--for", "shop", "-o", "page.txt"], ["yard"], ["yard", "--format", "csv"], ["yard", "--format", "jsonl"],
  ["import", "logbook/pump/tests.csv"], ["import", "logbook/pump/services.csv"],
]; // prettier-ignore
/** Markup and words of a program do no harm to a terminal: they are shown where they may. */
const bearsMarkup = ([first, second]) =>
  ["page", "proofread", "import"].includes(first) || second === "--why";
const faulty = [
  ["yard"],
  ["import", "logbook/pump/tests.csv"],
  ["show"],
  ["proofread"],
  ["gauge", "list"],
  ["engine", "show"],
  ["history", "pump"],
];

/** What a person may type with a text in it; nothing of it may be stored raw either. */
const typed = (text) => [
  [
    "enter",
    "pump",
    "--dry",
    "150 149 151 120",
    "--unit",
    "psi",
    "--by",
    text,
    "--note",
    text,
    "--gauge",
    text,
  ],
  ["enter", "pump", "--dry", text, "--unit", text, "--date", text, "--altitude", text],
  ["engine", "add", text, "--cylinders", "4", "--ignition", "spark"],
  ["engine", "add", "second", "--cylinders", text, "--ignition", text, "--name", text],
  ["engine", "set", "pump", "name", text],
  ["engine", "set", "pump", text, text],
  ["gauge", "add", text, "--kind", "compression", "--unit", "psi", "--note", text],
  ["service", "pump", "--what", "other", "--by", text, "--note", text],
  ["note", "pump", "--what", "other", "--value", text, "--note", text],
  ["amend", "pump", "--test", text, "--cylinder", "4", "--to", text, "--because", text],
  ["amend", "pump", "--test", "latest", "--cylinder", "4", "--to", "117", "--because", text],
  ["show", text],
  ["show", "pump", "--test", text, "--units", text],
  [text, `--${text}`],
  ["expect", "--bore", text],
  ["rules", "--rules", text],
  ["undo"],
];

const run = async (cwd, words, given = {}) => {
  commands += 1;
  const ended = await type(program, words, { cwd, home, ...given });
  return { ended, fault: faultOfRun(ended, words) ?? faultOfPrototypes() };
};

/** A written page is judged like what is printed, and holds no markup but its own. */
const faultOfPage = (cwd, name) => {
  const path = join(cwd, name);
  if (!existsSync(path)) return "no page was written";
  const text = readFileSync(path, "utf8");
  rmSync(path);
  return faultOfText(text) ?? (name.endsWith(".html") ? faultOfMarkup(text) : undefined);
};

const tryShows = async (name, cwd, lines) => {
  for (const [n, line] of lines.entries()) {
    const words = n % 3 === 2 && line[0] !== "page" ? [...line, "--json"] : line;
    const { ended, fault } = await run(cwd, words, { width: n % 2 === 0 ? 80 : 40 });
    part.tried(`${name}: ${words.join(" ")}`, fault);
    if (line[0] === "page") part.tried(`${name}: ${line.at(-1)}`, ended.exit === 0 ? faultOfPage(cwd, line.at(-1)) : ended.err);
  }
}; // prettier-ignore

for (const [name, text] of Object.entries({ ...steeringTexts, ...markupTexts })) {
  const cwd = mkdtempSync(join(scratch, "desk-"));
  put(join(cwd, "logbook"), freely(text));
  await tryShows(name, cwd, name in steeringTexts ? shows : shows.filter(bearsMarkup));
  for (const line of typed(text)) {
    const words = commands % 2 === 0 ? line : [...line, "--json"];
    part.tried(`${name}: typed ${words.slice(0, 3).join(" ")}`, (await run(cwd, words)).fault);
  }
  part.tried(`${name}: answered`, (await run(cwd, ["enter", "pump"], { answers: [text, text, text, text, text, text] })).fault);
  part.tried(`${name}: teardown`, (await run(cwd, ["teardown", "pump"], { input: `bore 1 top ${text}\n${text}\n` })).fault);
  await tryShows(`${name}, after it was typed`, cwd, [["proofread"], ["history", "pump"]]);
  rmSync(join(cwd, "logbook"), { recursive: true });
  put(join(cwd, "logbook"), wrongly(text));
  await tryShows(`${name}, in a fault`, cwd, faulty);
  const folder = text.replace(/[\0/]/g, "_").slice(0, 60);
  put(join(cwd, folder), freely("plain"));
  put(join(cwd, folder, folder), { "engine.json": "{}" });
  part.tried(`${name}: a folder`, (await run(cwd, ["proofread", "--logbook", folder])).fault);
  part.tried(`${name}: a missing folder`, (await run(cwd, ["show", "--logbook", `${folder}x`])).fault);
} // prettier-ignore

rmSync(scratch, { recursive: true, force: true });
part.end({ texts: Object.keys({ ...steeringTexts, ...markupTexts }).length, commands });
