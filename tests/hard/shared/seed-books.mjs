// Twenty logbooks of one engine each: the six of the demo, and fourteen invented ones for what the demo has not: one
// cylinder and twelve, two strokes, other dialects, encodings and line ends, two gauges, every kind of reading, teardowns.

import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { root } from "./program.mjs";

const fileNames = [
  "logbook.json",
  "gauges.csv",
  "engine.json",
  "tests.csv",
  "services.csv",
  "notes.csv",
  "measurements.csv",
];

const gaugeHeader =
  "gauge,kind,unit,full_scale,class_percent,division,reads_high,valve_end,hose_cm3,restrictor_mm,restrictor_length_mm," +
  "profile,restrictor_cd,regulated,dial,matched,known_holes,restrictor_tol_mm,link_to,link_factor,link_u,link_date,note";
const gauges = `${gaugeHeader}
red,compression,psi,300,2.5,5,2.5,plug,4,,,,,,,,,,,,,,screw-in hose
2.5,compression,bar,25,1.6,0.5,-0.2,,,,,,,,,,,,red,1.02,0.01,2025-04-01,a name like a number
tester,leak-down,psi,100,1.6,1,,,,1.016,6.35,thin-plate,0.7,80psi,pressure,yes,0.80mm:74psi 1.00mm:66psi,0.02,,,,,
held,leak-down,,,,,,,,,,,,6bar,percent-held,,,,,,,,"two dials, one broken"
`;
const logbook =
  '{ "schema": "sealtrend/logbook@1", "demo": false, "homeAltitude_m": 210, "tools": ["borescope"] }\n';

const labels = (count) => Array.from({ length: count }, (_, i) => String(i + 1));
const engine = (cylinders, more = {}) =>
  `${JSON.stringify({ schema: "sealtrend/engine@1", name: "invented", cylinders, ignition: "spark", ...more }, undefined, 1)}\n`;

/** A table from rows of words parted by blanks; `_` is an empty cell. */
const table = (header, ...rows) =>
  `${[header, ...rows.map((row) => row.trim().replace(/ +/g, ",").replace(/_/g, ""))].join("\n")}\n`;
const tests = (cylinders, more, ...rows) =>
  table(`test,date,meter,what,take,gauge,unit,${cylinders.map((one) => `c${one}`).join()}${more}`, ...rows);

/** A reading a year of some cylinders, the last of them falling. */
const years = (cylinders, first, unit, level) =>
  Array.from({ length: 6 }, (_, i) => {
    const cells = cylinders.map((_, c) => level * (c === 0 ? 1 - 0.03 * i : 1 + 0.01 * ((c + i) % 3)));
    const day = `${String(first + i)}-05-0${String(i + 1)}`;
    return `${day}a ${day} ${String(100 * i + 50)} dry 1 red ${unit} ${cells.map((n) => n.toFixed(1)).join(" ")}`;
  });

const four = labels(4);
const vee = ["1L", "2L", "3L", "4L", "1R", "2R", "3R", "4R"];
const comma = (text) => text.replaceAll(",", ";").replace(/(\d)\.(\d)/g, "$1,$2");
const tabs = (text) => text.replaceAll(",", "\t");
const latin = (text) => Buffer.from(text, "latin1");
const wide = (text) => Buffer.from(`\uFEFF${text}`, "utf16le");
const windows = (text) => `\uFEFF${text.replaceAll("\n", "\r\n")}`;

const limits = {
  compression: { new: "11bar", minimum: "9bar", difference: "1.5bar", lowestToHighest: 0.8, speed: "250rpm", source: "invented" },
  leakDown: { lost: 0.2, source: "invented" },
  clearances: [
    { part: "bore", quantity: "diameter", new: [86, 86.03], wear: [null, 86.2], unit: "mm", source: "invented" },
    { part: "main", quantity: "diameter", wear: [2.498, null], unit: "in", source: "invented" },
  ],
  offered: { bore: { unit: "mm", sizes: [0.25, 0.5] } },
}; // prettier-ignore
const prices = {
  currency: "EUR",
  jobs: { headOff: 350 },
  work: { topEnd: 400, reRing: 620, rebuild: 2600 },
  day: 10,
};
const measured = `teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note
1,2026-03-02,bore,3,top/thrust,diameter,86.12,mm,bore-gauge,0.01,me,cleaned,set at 86.50 in the micrometer
1,2026-03-02,bore,3,bottom/axial,diameter,86.03,mm,bore-gauge,0.01,me,cleaned,
1,2026-03-02,ring,3,1/bottom,end gap,0.35..0.40,mm,feeler,0.05,me,cleaned,used ring; 0.35 goes
1,2026-03-02,rod bearing,2,middle,thread clearance,0.0022,in,thread,0.0005,me,as found,
1,2026-03-02,main,4,front/90,diameter,2.4986,in,micrometer,0.0001,me,cleaned,
1,2026-03-02,head,,diagonal1/240,gap,<0.04,mm,feeler,0.01,me,cleaned,"leaf ""thin"" does not enter"
1,2026-03-02,main bearing,4,lower,appearance,one-sided,,eye,,me,as found,photo 0412
`;
const services = `date,meter,what,cylinders,new_baseline,by,note
2021-06-01,140,head gasket,all,all,me,
2022-01-01,200,meter replaced,,,me,reads 12 now
2023-02-01,260,re-ring,2 3,2 3,shop,"rings, honed"
2024-10-01,350,storage,,,me,7 months
`;
const notes = `date,meter,what,value,unit,cylinders,by,note
2023-05-04,300,oil use,0.4,L/1000km,,me,
2024-05-05,420,smoke,blue,,,me,on the overrun
2024-05-05,420,valve seen,burnt,,2,shop,exhaust
2025-05-06,550,filter debris,bearing metal,,,me,
2025-05-06,550,lash,tight,,1,me,
2025-05-06,550,other,,,,me,"smells, a bit"
`;
const kinds = ` 2024-05-01a 2024-05-01 400 dry 1 red psi 150 149 >300 131? 220 warm
2024-05-01a 2024-05-01 400 dry 2 red psi 151 148 x 130 _ _
2024-05-01a 2024-05-01 400 dry 1 2.5 bar 10.3 10.2 10.4 9.0 _ _
2024-05-01a 2024-05-01 400 wet 1 red psi 160 158 161 150 _ _
2024-05-01a 2024-05-01 400 oil _ _ _ 5 5 5 5 _ _
2024-05-01a 2024-05-01 400 first-stroke 1 red psi 80 82 79 55 _ _
2024-05-01a 2024-05-01 400 running 1 red psi 75 74 73 60 _ _
2024-05-01a 2024-05-01 400 snap-throttle 1 red psi 110 112 109 95 _ _
2024-05-01a 2024-05-01 400 leak-down 1 tester psi 74 73 75 50 _ _
2024-05-01a 2024-05-01 400 leak-down-oiled 1 tester psi 75 74 76 62 _ _
2024-05-01a 2024-05-01 400 regulated _ tester psi 80 80 79 80 _ _
2024-05-01a 2024-05-01 400 speed _ _ _ 220 219 222 221 _ _
2024-05-01a 2024-05-01 400 heard 1 _ _ exhaust:faint+intake none crankcase neighbour:3 _ _`.split("\n");
const everyKind = tests(four, ",crank_rpm,engine_temp", ...kinds);
const plain = tests(four, "", ...years(four, 2019, "psi", 150));

const invented = {
  "one cylinder, two strokes": { "engine.json": engine(["1"], { cycle: "two-stroke", porting: "ports", meter: "h" }), "tests.csv": tests(["1"], "", ...years(["1"], 2018, "kPa", 900)) },
  "every kind of reading": { "engine.json": engine(four, { limits }), "tests.csv": everyKind, "notes.csv": notes },
  "services and notes": { "engine.json": engine(four, { meter: "km", prices, ownership: "for-good" }), "tests.csv": plain, "services.csv": services, "notes.csv": notes },
  "a teardown": { "engine.json": engine(four, { limits, layout: { mains: 5, pins: 4, numberedFrom: "front" }, geometry: { bore: "86mm", stroke: "86mm" } }), "tests.csv": plain, "measurements.csv": measured },
  "semicolons and decimal commas": { "engine.json": engine(four), "tests.csv": comma(everyKind), "services.csv": comma(services), "notes.csv": comma(notes) },
  "tabs, carriage returns": { "engine.json": engine(four), "tests.csv": tabs(plain).replaceAll("\n", "\r") },
  "marked, with carriage returns": { "engine.json": windows(engine(four)), "tests.csv": windows(everyKind), "gauges.csv": windows(gauges) },
  "sixteen bits a letter": { "engine.json": engine(four), "tests.csv": wide(plain), "notes.csv": wide(notes) },
  "an old code page": { "engine.json": engine(four), "tests.csv": plain, "notes.csv": latin("date,what,note\n2024-05-05,other,gerät für öl, \n".replace(", \n", "\n")) },
  "two banks": { "engine.json": engine(vee, { banks: [vee.slice(0, 4), vee.slice(4)], firingOrder: ["1L", "1R", "4L", "4R", "2L", "2R", "3L", "3R"], homeAltitude_m: 900 }), "tests.csv": tests(vee, "", ...years(vee, 2020, "bar", 10)) },
  "an aircraft, differential only": { "engine.json": engine(four, { use: "aircraft", cooling: "air", sharedGasket: false }), "tests.csv": tests(four, ",master_psi", "2024-05-01a 2024-05-01 400 leak-down 1 tester psi 74 73 75 50 43", "2025-05-01a 2025-05-01 500 leak-down 1 tester psi 72 73 71 49 43") },
  "a dial in percent": { "engine.json": engine(["A", "B", "C"], { ignition: "compression", wetTest: { allowed: false, source: "invented" } }), "tests.csv": tests(["A", "B", "C"], "", "2024-05-01a 2024-05-01 400 leak-down 1 held % 95 93 71") },
  "columns of its own, mixed up": { "engine.json": engine(["1", "2"]), "tests.csv": "note,c2,colour,what,c1,date,unit,test\n\"said \"\"fine\"\", twice\",149.5,red,dry,150,2024-05-01,psi,first\n,148,,dry,151,2025-05-01,psi,second\n" },
  "twelve, nothing else known": { "engine.json": engine(labels(12), { ignition: "unknown" }), "tests.csv": tests(labels(12), "", ...years(labels(12), 2021, "kgf/cm2", 9)) },
}; // prettier-ignore

const ofDemo = (id) => {
  const folder = join(root, "data", "demo");
  const files = fileNames.map((name) => {
    const path = join(folder, /^(logbook|gauges)\./.test(name) ? name : join(id, name));
    return existsSync(path) ? [name, readFileSync(path)] : undefined;
  });
  return { name: `demo: ${id}`, files: Object.fromEntries(files.filter((file) => file !== undefined)) };
};

/** Name and files of each, the files as bytes. */
export const seedBooks = () => [
  ...["pump", "boat", "mill", "tractor", "van", "ultralight"].map(ofDemo),
  ...Object.entries(invented).map(([name, own]) => ({
    name,
    files: Object.fromEntries(
      Object.entries({ "logbook.json": logbook, "gauges.csv": gauges, ...own }).map(([file, content]) => [
        file,
        Buffer.from(content),
      ]),
    ),
  })),
];
