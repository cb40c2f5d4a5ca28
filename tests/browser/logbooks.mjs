// Invented logbooks for the pages: one test of one cylinder, sixty tests of 28, names and notes that mean harm, and an engine
// apart. Plain text, as a person's files are; the same every time.

import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";

const put = (folder, files) => {
  mkdirSync(folder, { recursive: true });
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
};

const json = (value) => `${JSON.stringify(value, undefined, 2)}\n`;
const quoted = (text) => (/[",\n\r]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text);
const csv = (rows) => rows.map((row) => `${row.map((cell) => quoted(String(cell))).join(",")}\n`).join("");

const serviceColumns = "date,meter,what,cylinders,new_baseline,by,note".split(",");
const noteColumns = "date,meter,what,value,unit,cylinders,by,note".split(",");

/** A reading that wanders by its place alone: no chance, so that a page is the same every time. */
const wander = (cylinder, test) =>
  Math.round(150 + 4 * Math.sin(cylinder * 2.3 + test * 1.7) + 2 * Math.sin(test * 0.9));

/** @param labels - of the cylinders  @param tests - how many, half a year apart  @param gauges - used in turn */
const testRows = (labels, tests, gauges) => [
  [
    "test",
    "date",
    "meter",
    "what",
    "take",
    "gauge",
    "unit",
    ...labels.map((label) => `c${label}`),
    "altitude_m",
    "air_temp_C",
    "engine_temp",
    "by",
    "set_aside",
    "note",
  ],
  ...Array.from({ length: tests }, (_, i) => {
    const date = `${1990 + Math.floor(i / 2)}-${i % 2 === 0 ? "04" : "10"}-12`;
    const cells = labels.map((_, c) => wander(c, i) - (c === 2 ? Math.round(i / 3) : 0));
    return [
      `${date}a`,
      date,
      100 + 40 * i,
      "dry",
      1,
      gauges[i % gauges.length],
      "psi",
      ...cells,
      350,
      12 + (i % 9),
      "warm",
      "me",
      "",
      "",
    ];
  }),
];

const engine = (id, cylinders, more = {}) => ({
  schema: "sealtrend/engine@1",
  name: id,
  use: "stationary",
  cylinders,
  ignition: "spark",
  meter: "h",
  limits: { compression: { minimum: "100psi", source: "invented" } },
  ...more,
});

const numbered = (n) => Array.from({ length: n }, (_, i) => String(i + 1));

/** Everything that has ever broken out of a page, and what a spreadsheet or a terminal would run. */
export const hostile = [
  `<img src=x onerror="document.title='broken'">`,
  `</style><script>document.title="broken"</script>`,
  `</title></svg></desc><svg onload=alert(1)>`,
  `"><a href="javascript:alert(1)">x</a>`,
  `' onmouseover='alert(1)`,
  `=HYPERLINK("http://example.invalid","x")`,
  `@SUM(1+1)*cmd|' /C calc'!A0`,
  `\u202egnorw si siht\u202c`,
  `bell\u0007 escape\u001b[31mred`,
  `{{7*7}} \${7*7} &lt;b&gt; &#60;b&#62;`,
  `<!-- --> ]]> <?php ?> -->`,
  `url(http://example.invalid/x) ;} body{display:none}`,
];

/** Writes the logbook into `folder`. */
export const writeLogbooks = (folder) => {
  put(folder, {
    "logbook.json": json({ schema: "sealtrend/logbook@1", name: "invented", demo: false }),
    "gauges.csv": csv([
      ["gauge", "kind", "unit", "full_scale", "class_percent", "note"],
      ["red", "compression", "psi", "300", "2.5", hostile[0]],
      ["blue", "compression", "psi", "250", "1.6", ""],
    ]),
  });
  const plain = (id, labels, tests, more) =>
    put(join(folder, id), {
      "engine.json": json(engine(id, labels, more)),
      "tests.csv": csv(testRows(labels, tests, ["red", "blue", "third"])),
    });
  plain("single", ["1"], 1);
  plain("single-years", ["1"], 60);
  plain("large", numbered(28), 60);
  plain("large-once", numbered(28), 1);
  put(join(folder, "empty"), { "engine.json": json(engine("empty", numbered(4))) });
  hostileEngine(join(folder, "hostile"));
};

const hostileEngine = (folder) => {
  const labels = numbered(4);
  const [head, ...rows] = testRows(labels, 12, ["red", hostile[3]]);
  const dressed = rows.map((row, i) => [
    ...row.slice(0, -3),
    hostile[i % hostile.length],
    i === 3 ? hostile[1] : "",
    hostile[(i + 5) % hostile.length],
  ]);
  const texts = hostile.map((text, i) => [`2001-01-${String(i + 1).padStart(2, "0")}`, 100 + i, text]);
  put(folder, {
    "engine.json": json(
      engine("hostile", labels, {
        name: hostile.slice(0, 3).join(" "),
        limits: { compression: { minimum: "100psi", source: hostile[2] } },
        prices: { currency: "<b>" },
      }),
    ),
    "tests.csv": csv([head, ...dressed]),
    "services.csv": csv([
      serviceColumns,
      ...texts.map(([date, meter, text]) => [date, meter, "other", "", "", text, text]),
    ]),
    "notes.csv": csv([
      noteColumns,
      ...texts.map(([date, meter, text]) => [date, meter, "other", "", "", "", text, text]),
    ]),
    "amendments.csv": csv([
      "when,file,row,column,old,new,because".split(","),
      ...texts.map(([date, , text]) => [`${date}T10:00:00`, "tests.csv", text, text, text, text, text]),
    ]),
    "measurements.csv": csv([
      "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note".split(","),
      [
        1,
        "2020-01-05",
        "bore",
        "1",
        "top/thrust",
        "diameter",
        "86.62",
        "mm",
        "bore-gauge",
        "0.01",
        hostile[4],
        "cleaned",
        hostile[1],
      ],
      [
        1,
        "2020-01-05",
        "bore",
        "1",
        "",
        "score",
        "nail catches",
        "",
        "eye",
        "",
        hostile[0],
        "cleaned",
        hostile[1],
      ],
    ]),
  });
};
