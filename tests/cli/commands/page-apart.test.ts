// page of an engine that was apart: as found and as finished for the shop, and plainly said to a buyer. The engine is invented.

import { describe, expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";

const header = "teardown,date,part,label,at,quantity,value,unit,instrument,resolution,by,state,note";

const engine = {
  schema: "sealtrend/engine@1",
  name: "test stand engine",
  use: "stationary",
  cylinders: ["1", "2"],
  ignition: "spark",
  meter: "h",
  layout: { mains: 3, pins: 2 },
  limits: {
    clearances: [
      {
        part: "bore",
        quantity: "diameter",
        new: [80.0, 80.02],
        wear: [null, 80.1],
        unit: "mm",
        source: "workshop book, invented",
      },
      {
        part: "bore",
        quantity: "taper",
        wear: [null, 0.1],
        unit: "mm",
        source: "workshop book, invented",
      },
      {
        part: "main",
        quantity: "diameter",
        new: [50.0, 50.02],
        wear: [49.95, null],
        unit: "mm",
        source: "workshop book, invented",
      },
      {
        part: "pin",
        quantity: "diameter",
        new: [40.0, 40.02],
        wear: [39.95, null],
        unit: "mm",
        source: "workshop book, invented",
      },
    ],
    offered: {
      bore: { unit: "mm", sizes: [0.5] },
      main: { unit: "mm", sizes: [0.25] },
      pin: { unit: "mm", sizes: [0.25] },
    },
  },
};

const bore = (label: string, sizes: readonly number[], more = "cleaned", by = "me", teardown = 1): string[] =>
  ["top/thrust", "top/axial", "bottom/thrust", "bottom/axial"].flatMap((at, i) => {
    const size = sizes[i];
    return size === undefined
      ? []
      : [
          `${String(teardown)},2026-03-02,bore,${label},${at},diameter,${size.toFixed(2)},mm,bore-gauge,0.01,${by},${more},`,
        ];
  });
const journal = (part: string, label: string, size: number): string[] =>
  ["front/0", "front/90", "rear/0", "rear/90"].map(
    (at) => `1,2026-03-02,${part},${label},${at},diameter,${size.toFixed(3)},mm,micrometer,0.001,me,cleaned,`,
  );

const worn: readonly string[] = [
  ...bore("1", [80.05, 80.04, 80.03, 80.02]),
  ...bore("2", [80.3, 80.22, 80.05, 80.03]),
  ...journal("main", "1", 50.01),
  ...journal("main", "2", 49.9),
  ...journal("main", "3", 50.01),
  ...journal("pin", "1", 39.9),
  ...journal("pin", "2", 39.89),
];

/** A logbook in which that engine is apart. */
const apart = (rows: readonly string[], more: Record<string, string> = {}): Desk => {
  const desk = newDesk();
  desk.put("logbook/logbook.json", '{ "schema": "sealtrend/logbook@1", "demo": false }\n');
  desk.put("logbook/stand/engine.json", JSON.stringify(engine));
  desk.put("logbook/stand/measurements.csv", [header, ...rows, ""].join("\n"));
  for (const [name, text] of Object.entries(more)) desk.put(`logbook/stand/${name}`, text);
  return desk;
};

/** The page as text, its lines joined. */
const said = async (desk: Desk, purpose: string, ...more: readonly string[]): Promise<string> => {
  const { out, err, exit } = await desk.type([
    "page",
    "stand",
    "--for",
    purpose,
    "--text",
    "-o",
    "-",
    ...more,
  ]);
  expect([exit, exit === 0 ? "" : err]).toEqual([0, ""]);
  return out.replace(/\s+/g, " ");
};
const paper = async (desk: Desk, purpose: string): Promise<string> =>
  (await desk.type(["page", "stand", "--for", purpose, "-o", "-"])).out;

describe("for the shop", () => {
  test("beneath each reading of a bore and a journal there is room to measure again and to finish", async () => {
    const html = await paper(apart(worn), "shop");
    // four places of two bores, three mains and two pins, again and finished
    expect(html.match(/<td class=blank>/g)?.length).toBeGreaterThanOrEqual(2 * 4 * (2 + 3 + 2));
    for (const row of ["found", "again", "finished"]) expect(html).toContain(`>${row}<`);
    expect(html).toContain("FRONT");
  });

  test("each work stands there once, with its sizes in both units, and says whose it is", async () => {
    const text = await said(apart(worn), "shop");
    expect(text.match(/\[ \] .{0,12}ores \+0\.500 mm \[0\.0197 in\]/g)).toHaveLength(1);
    expect(text).not.toContain("bore all to");
    expect(text.match(/All mains -0\.250 mm \[0\.0098 in\]/g)).toHaveLength(1);
    expect(text).toContain("Look for cracks in the crank before any grinding");
    expect(text).not.toMatch(/\(2 1\)|\(1 2\)/);
  });

  test("what was found stays, and what was machined stands beneath it, without a wear of its own", async () => {
    const done = bore("2", [80.51, 80.51, 80.51, 80.51], "after machining", "shop");
    const text = await said(apart([...worn, ...done]), "shop");
    expect(text).toMatch(/Bore 2, Size found, top thrust 80\.30 .* wear 0\.\d/);
    const finished = /Bore 2, Size finished, .*?(?=Mains)/.exec(text)?.[0] ?? "";
    expect(finished).toContain("80.51 [3.1697]");
    expect(finished).toContain("wear -");
    expect(await said(apart([...worn, ...done]), "file")).toContain("Bore 2, Size finished");
  });

  test("what was noted of the setting stands with the table", async () => {
    const [first = "", ...rest] = worn;
    const text = await said(apart([`${first}set at 80.00 in the micrometer 20 C`, ...rest]), "shop");
    expect(text).toContain("Noted: bore 1 top thrust: set at 80.00 in the micrometer 20 C.");
  });

  test("everything that was not measured is named", async () => {
    const text = await said(apart(worn), "shop");
    const gap = /Not measured: [^.]*\./.exec(text)?.[0] ?? "";
    for (const name of [
      "pistons",
      "ring gaps",
      "main bearings",
      "end play",
      "runout",
      "deck",
      "head",
      "guides",
      "springs",
    ])
      expect(gap).toContain(name);
    expect(gap).not.toMatch(/bores|mains|pins/);
  });

  test("loose parts have a line and a count each", async () => {
    const text = await said(apart(worn), "shop");
    for (const part of ["core plugs", "gallery plugs", "shims", "keys", "clips", "main caps 1 to 3"])
      expect(text).toMatch(new RegExp(`${part} _____ \\[ \\] \\[ \\]`));
  });

  test("private notes have no place on it", async () => {
    const { exit, err } = await apart(worn).type([
      "page",
      "stand",
      "--for",
      "shop",
      "--with-notes",
      "-o",
      "-",
    ]);
    expect([exit, err.includes("leave --with-notes out")]).toEqual([2, true]);
  });
});

describe("another time", () => {
  const twice = [
    ...worn,
    ...bore("1", [80.51, 80.51, 80.51, 80.51], "as found", "me", 2).map((row) =>
      row.replace("2026-03", "2026-08"),
    ),
  ];

  test("the newest is told, and that there are others", async () => {
    const desk = apart(twice);
    const { out, err } = await desk.type(["page", "stand", "--for", "shop", "--text", "-o", "-"]);
    expect(out.replace(/\s+/g, " ")).toContain(
      "This is teardown 2 of 2; also apart: teardown 1, 2026-03-02.",
    );
    expect(err).toContain("--teardown 1");
    expect(await said(desk, "shop", "--teardown", "1")).toContain("Measured as found, 2026-03-02");
  });

  test("one that is not recorded is refused", async () => {
    expect((await apart(twice).type(["page", "stand", "--for", "shop", "--teardown", "7"])).exit).toBe(2);
  });
});

describe("for a buyer", () => {
  const crack = "1,2026-03-02,crack,,between valves 2,found by,pressure,,seen,,me,as found,";

  test("a crack is the first thing that is said", async () => {
    const desk = apart([...worn, crack]);
    const text = (await desk.type(["page", "stand", "--for", "buyer", "--text", "-o", "-"])).out;
    expect(text.split("\n").slice(0, 10).join(" ")).toContain("CRACK found 2026-03-02 (between valves 2)");
  });

  test("what is outside stands with its limit, what is not measured is named; no work, no price", async () => {
    const text = await said(apart(worn), "buyer");
    expect(text).toContain("Taken apart on 2026-03-02, measured by the owner");
    expect(text).toMatch(
      /Part bore 2, Figure diameter, top thrust, Measured 80\.30 mm, Limits new 80\.00 to 80\.02, wear up to 80\.10, Verdict outside/,
    );
    expect(text).toContain("Not measured:");
    expect(text).not.toMatch(/bore all|grind|oversize|\[ \]/i);
  });

  test("where all is inside it says so", async () => {
    const text = await said(
      apart([...bore("1", [80.03, 80.03, 80.03, 80.03]), ...bore("2", [80.04, 80.04, 80.03, 80.03])]),
      "buyer",
    );
    expect(text).toMatch(/Inside: bores|worn past new, inside the wear limit: bores 1 and 2/);
  });
});
