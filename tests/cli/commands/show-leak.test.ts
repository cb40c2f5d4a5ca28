// Leak-down in `show` and `history`, from the command line to screen and JSON. Sizes: handbook/leakdown.md H.3, computed
// there; readings of the radial and of the small engines invented.

import { expect, test } from "vitest";
import { type Desk, newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const testers = [
  "gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,restrictor_tol_mm,dial",
  "small,leak-down,psi,100,2,1,1.016,0.0254,pressure",
  "large,leak-down,psi,100,2,1,1.524,0.0254,pressure",
  "percent,leak-down,%,,,,unknown,,percent-lost",
  "",
].join("\n");

const deskOf = async (cylinders: number, engine: object = {}): Promise<Desk> => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type(["engine", "add", "pump", "--cylinders", String(cylinders), "--ignition", "spark"]);
  const written = JSON.parse(desk.text("logbook/pump/engine.json")) as object;
  desk.put("logbook/pump/engine.json", JSON.stringify({ ...written, ...engine }));
  desk.put("logbook/gauges.csv", testers);
  return desk;
};

const enter = async (desk: Desk, ...words: readonly string[]): Promise<string> => {
  const { exit, out, err } = await desk.type(["enter", "pump", "--altitude", "0m", ...words]);
  if (exit !== 0) throw new Error(err);
  return out;
};

interface Shown {
  readonly cylinders: readonly { readonly leakDown?: Readonly<Record<string, unknown>> }[];
  readonly [key: string]: unknown;
}
const shown = async (desk: Desk): Promise<Shown> => (await desk.json("show", "pump")) as unknown as Shown;
const close = (value: number, digits: number): unknown => expect.closeTo(value, digits);

test("pairs of a tester of known bore give hole, area and coefficient, each with its doubt (H.3 #1)", async () => {
  const desk = await deskOf(2);
  const out = await enter(desk, "--leak-down", "60/80 74/80", "--gauge", "small");
  expect(out).toContain(
    "\nleak-down lost   %        25        8\nequal hole       mm     1.05     0.74   (± 0.05)\n",
  );
  const document = await shown(desk);
  expect(document.cylinders[0]?.leakDown).toMatchObject({
    regulated_kPa: close(551.581, 3),
    read_kPa: close(413.685, 3),
    lost: 0.25,
    u_lost: close(0.0186, 4),
    state: "measured",
    alpha: close(1.0586, 4),
    u_alpha: close(0.0499, 4),
    equalHole_mm: close(1.045, 3),
    u_equalHole_mm: close(0.029, 3),
    equalHoleFrom: "restrictor",
    area_mm2: close(0.704, 3),
    u_area_mm2: close(0.056, 3),
    cd: 0.82,
    cdHalfWidth: 0.08,
  });
  expect(misfits(document, schemaOf("show"))).toEqual([]);
});

test("a tester with only a percent dial gives no area anywhere, and no hole and no alpha", async () => {
  const desk = await deskOf(4);
  const out = await enter(desk, "--leak-down", "8 9 18 7", "--gauge", "percent");
  expect(out).toContain("restrictor of the tester");
  expect(out).not.toMatch(/equal hole|mm/);
  const text = (await desk.type(["show", "pump", "--json"])).out;
  expect(text).not.toMatch(/area_mm2|[hH]ole_mm|"alpha|"cd"|restrictor_mm/);
  expect((await desk.type(["show", "pump", "--why"])).out).not.toMatch(/mm2|times the restrictor/);
  expect((await desk.type(["history", "pump", "--json"])).out).not.toMatch(/[hH]ole_mm/);
});

test("a 14-cylinder radial beside its master orifice fits 80 columns, every cylinder with its share", async () => {
  const desk = await deskOf(14, { use: "aircraft", cooling: "air", geometry: { bore: "5.5in" } });
  const heard = "none none none none none none exhaust none none none none oil filler none none";
  const readings = "72 70 68 74 66 71 0 70 69 72 73 63 70 71";
  const out = await enter(
    desk,
    ...[
      "--leak-down",
      readings,
      "--regulated",
      "80psi",
      "--master",
      "44psi",
      "--gauge",
      "small",
      "--heard",
      heard,
    ],
  );
  expect(out.split("\n").filter((line) => line.length > 80)).toEqual([]);
  expect(out).toContain("Cylinder 7: no seal measurable in the leak-down.");
  expect(out).toContain("\nof the master    %     39    45    49    34    54    42  >100\n");
  expect(out).toContain("\n7 leaks more than the master allows: not met\n");
  expect(out).toContain("exhaust in 7; crankcase in 12; nowhere in the other twelve");
  expect(out).toMatch(/Airworthiness is a licensed person's call .*not the\naircraft's log\./);
  const document = await shown(desk);
  expect(document.cylinders[11]?.leakDown).toMatchObject({
    masterMargin: close(0.605, 3), // H.3 #5
    u_masterMargin: close(0.032, 3),
  });
  expect(document.cylinders[6]?.leakDown).toMatchObject({ lost: 1, state: "no-seal", beyondMaster: true });
  expect(document.cautions).toEqual([
    expect.stringContaining("air swings the propeller: a second person holds it") as string,
    expect.stringContaining("air past valves, plug or barrel joint was heard in 7") as string,
    "airworthiness is a licensed person's call; this is not the aircraft's log",
  ]);
  expect(misfits(document, schemaOf("show"))).toEqual([]);
});

test("more than the supply is no negative leak: the gauges disagree, and that is said", async () => {
  const desk = await deskOf(4);
  const out = await enter(desk, "--leak-down", "82/80 79/80 74/80 75/80", "--gauge", "small");
  expect(out).toContain("1 and 2 are tighter than these dials can show: no order among them.");
  expect(out.replaceAll("\n", " ")).toContain(
    "Doubtful: the gauges disagree: in cylinder 1 the cylinder side reads above its supply",
  );
  const { cylinders } = await shown(desk);
  expect(cylinders[0]?.leakDown).toMatchObject({ lost: 0, state: "tighter-than-dials-show" });
  expect(cylinders[0]?.leakDown).not.toHaveProperty("alpha");
  expect(
    (await desk.type(["enter", "pump", "--leak-down", "90/80 74/80 74/80 75/80", "--gauge", "small"])).exit,
  ).not.toBe(0);
});

test("air at intake and exhaust together asks for the top dead centre again, and nothing is sized", async () => {
  const desk = await deskOf(4);
  const out = await enter(
    desk,
    ...[
      "--leak-down",
      "30/80 74/80 74/80 75/80",
      "--gauge",
      "small",
      "--heard",
      "carb+tailpipe none none none",
    ],
  );
  expect(out.replaceAll("\n", " ")).toContain("repeat the leak-down there.");
  expect(out).not.toContain("equal hole");
  expect((await shown(desk)).cylinders[0]?.leakDown).not.toHaveProperty("alpha");
});

test("a leak and the cranking reading beside it: whether one explains the other (H.4 #9)", async () => {
  const desk = await deskOf(4, { geometry: { bore: "86mm", stroke: "86.08mm", compressionRatio: 9.5 } });
  const out = await enter(
    desk,
    ...[
      "--dry",
      "118 150 150 150",
      "--leak-down",
      "56/80 72/80 72/80 72/80",
      "--gauge",
      "small",
      "--unit",
      "psi",
    ],
  );
  expect(out.replaceAll("\n", " ")).toContain(
    "The leak of 1 explains only part of its low cranking reading: it would bring it to 91 % of the others, and it reads 79 %; see to lash, lift and timing.",
  );
  expect((await desk.json("show", "pump")).leakTest).toMatchObject({
    cranking: {
      speedFrom: "assumed",
      cylinders: [{ label: "1", kind: "does-not-explain", expected: close(0.907, 3) }, {}, {}, {}],
    },
  });
});

test("oil closes the part of the rings, told as area and not as percent", async () => {
  const desk = await deskOf(2);
  const out = await enter(
    desk,
    ...["--leak-down", "64/80 74/80", "--leak-down-oiled", "74/80 x", "--gauge", "small"],
  );
  expect(out.replaceAll("\n", " ")).toContain(
    "With oil 1 lost 8 % instead of 20 %: oil closed about 40 % of the leak, the part of the rings; the rest goes elsewhere.",
  );
  expect((await desk.json("show", "pump")).leakTest).toMatchObject({
    parts: [
      { label: "1", what: "oiled", closedAlpha: close(0.389, 3), leftAlpha: close(0.536, 3), shown: "yes" },
    ],
  });
});

test("another tester is marked in the history, with the holes across it (H.3 #7)", async () => {
  const desk = await deskOf(2);
  await enter(desk, "--leak-down", "70/80 70/80", "--gauge", "small", "--date", "2015-05-02");
  await enter(desk, "--leak-down", "77/80 77/80", "--gauge", "large", "--date", "2022-05-02");
  const { out } = await desk.type(["history", "pump"]);
  expect(out.replaceAll("\n", " ")).toContain(
    "As holes across that change: such as cylinder 1: 0.85 ± 0.04, then 0.93 ± 0.13 mm; no change shown in any.",
  );
  const document = await desk.json("history", "pump");
  expect(document).toMatchObject({
    cylinders: [
      { equalHole_mm: [close(0.854, 3), close(0.931, 3)], u_equalHole_mm: [close(0.04, 3), close(0.133, 3)] },
      {},
    ],
    testerChanges: [
      {
        fromGauge: "small",
        toGauge: "large",
        carried: "new-history",
        cylinders: [{ lnRatio: close(0.086, 3), u_lnRatio: close(0.15, 3), shown: false }, {}],
      },
    ],
  });
  expect(misfits(document, schemaOf("history"))).toEqual([]);
});

test("open holes of known size tell a hole inside their span only, without any area (H.3 #8)", async () => {
  const desk = await deskOf(4);
  const holes = "0.80mm:74psi 1.00mm:66psi 1.25mm:52psi";
  desk.put(
    "logbook/gauges.csv",
    `gauge,kind,unit,full_scale,class_percent,division,restrictor_mm,dial,known_holes\nbare,leak-down,psi,100,1,0.02,unknown,pressure,${holes}\n`,
  );
  const out = await enter(desk, "--leak-down", "61/80 66/80 70/80 77/80", "--gauge", "bare");
  expect(out).toMatch(/\nequal hole {7}mm {2,}1\.08 {2,}1\.00 {2,}0\.89 {2,}- /); // .89 = sqrt(.8 x 1), half way in ln
  expect(out).toContain("4 lies outside what the open holes of known size span: no hole is told.");
  const { leakDown } = (await shown(desk)).cylinders[0] ?? {};
  expect(leakDown).toMatchObject({
    equalHole_mm: close(1.083, 3),
    u_equalHole_mm: close(0.013, 3),
    equalHoleFrom: "open-holes",
  });
  expect(leakDown).not.toHaveProperty("alpha");
  expect(leakDown).not.toHaveProperty("area_mm2");
});

test("a lower piston that leaks less points to a bore worn at the top; the next leak-down says what can hurt", async () => {
  const desk = await deskOf(4);
  const out = await enter(
    desk,
    ...["--leak-down", "60/80 74/80 74/80 75/80", "--leak-down-lower", "72/80 x x x", "--gauge", "small"],
  );
  expect(out.replaceAll("\n", " ")).toContain(
    "With its piston lower 1 lost 10 % instead of 25 %, about 40 % less of a leak: that points to a bore worn at the top.",
  );
  expect(out).toContain("\nCARE   air turns the crank if the piston is off the top");
  expect((await shown(desk)).cautions).toEqual([
    "air turns the crank if the piston is off the top: bars and sockets off, hands clear, low pressure first",
  ]);
});

test("a cylinder beyond the master of that day lags, and that is why", async () => {
  const desk = await deskOf(4);
  const out = await enter(
    desk,
    ...["--leak-down", "30 74 74 75", "--regulated", "80psi", "--master", "43", "--gauge", "small"],
  );
  expect(out.replaceAll("\n", " ")).toContain(
    "Cylinder 1 lags: 63 % lost in the leak-down, more than the master orifice of that day.",
  );
  const { out: rules } = await desk.type(["rules", "pump"]);
  expect(rules).toContain("\nmaster  not met: 131 % of it at cylinder 1\n"); // alpha of 30/80 over 43/80: 2.119/1.617 = 1.31
  const { rules: written } = (await desk.json("rules", "pump")) as {
    rules: { id: string; verdict: string }[];
  };
  expect(written.at(-1)).toMatchObject({ id: "master", verdict: "not-met" });
  expect(misfits(await desk.json("rules", "pump"), schemaOf("rules"))).toEqual([]);
  expect(misfits(await desk.json("rules"), schemaOf("rules"))).toEqual([]);
});

test("a leak-down limit is listed with the bores and the tester it is for", async () => {
  const { out } = await (await deskOf(4)).type(["rules"]);
  expect(out.replaceAll(/\n +/g, " ")).toContain(
    "For aircraft; spark; bores below 127 mm; a tester of 1.016 mm at 80 psi.", // 5 in, 0.040 in
  );
});
