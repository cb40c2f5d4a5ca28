// `teardown` on a terminal: line after line, each answered at once, nothing that was typed is lost. Contract: design.md §4.

import { run } from "sealtrend";
import { expect, test } from "vitest";
import { fakeIo } from "../fake-io.ts";
import { misfits, schemaOf } from "./fits-schema.ts";
import { deskWithSix, measurements } from "./teardown-desk.ts";

const type = async (answers: readonly string[], words: readonly string[] = [], width = 80) => {
  const desk = await deskWithSix();
  return { desk, ...(await desk.type(["teardown", "tractor", ...words], { answers, width })) };
};

test("the order of the figures stands before the first prompt, and done ends", async () => {
  const { desk, exit, out, asked } = await type(["in", "pin 1: 2.2483 2.2482 2.2483 2.2482", "done"]);
  expect(exit).toBe(0);
  expect(asked).toEqual(["> ", "> ", "> "]);
  expect(out).toMatch(/^tractor, teardown 1: one line a part; \? shows the shapes/);
  expect(out).toContain("top, middle, bottom; at each thrust");
  expect(out).toContain("front 0, front 90, rear 0, rear 90");
  expect(out).toMatch(/figures without a unit are in .*\n {2}pin 1: diameter/);
  expect(out).toMatch(/pin 1: diameter [\s\S]*\nsaved {2}tractor teardown 1, four figures/);
  expect(measurements(desk)).toHaveLength(4);
});

test("an empty line ends too, and no terminal line is drawn anew", async () => {
  const { desk, out } = await type(["pin 1: 2.2483in", ""]);
  expect(measurements(desk)).toHaveLength(1);
  // eslint-disable-next-line no-control-regex -- an escape is looked for
  expect(out).not.toMatch(/[\r\x1b]/);
});

test("a fault is told at once with its mend, and the line is asked again", async () => {
  const { desk, exit, out } = await type(["in", "pin 1: 2.248O", "pin 1: 2.2480", "done"]);
  expect(exit).toBe(0);
  expect(out).toContain("a letter O stands where a zero may");
  expect(out).toContain("write 2.2480");
  expect(measurements(desk)).toHaveLength(1);
});

test("back takes back the last line, what it set too, and no further than the first", async () => {
  const { desk, out } = await type([
    ...["back", "in", "pin 1: 2.2480", "by shop", "back", "back", "pin 2: 2.2481", "done"],
  ]);
  expect(out).toContain("nothing to take back");
  expect(out).toContain("taken back: by shop");
  expect(out).toContain("taken back: pin 1: 2.2480");
  expect(measurements(desk)).toEqual(["1,2026-11-25,pin,2,front/0,diameter,2.2481,in,,,,as found,"]);
});

test("the first lines say how it ends, and ? shows the usual shapes on 20 lines at most", async () => {
  const { out } = await type(["?", "pin 1: 2.2480in", "done"]);
  const [opening = "", shapes = ""] = out.split("The usual lines");
  expect(opening.replace(/\s+/g, " ")).toContain("done, or an empty line, ends and saves");
  const shown = shapes.slice(0, shapes.indexOf("  pin 1: diameter"));
  expect(shown.trimEnd().split("\n").length).toBeLessThanOrEqual(20);
  expect(shown).toContain("ring gap 3:");
  expect(shown).toContain("? all");
});

test.each(["? head", "help head"])("%s shows the shapes of that part alone", async (asked) => {
  const { out } = await type([asked, "pin 1: 2.2480in", "done"]);
  expect(out).toContain("head long1 at 75mm: 0 0.02 0.04 0.02 0");
  expect(out).not.toContain("guide 3in");
});

test("? and a word that no line begins with offers what there is", async () => {
  const { out } = await type(["? wibble", "pin 1: 2.2480in", "done"]);
  expect(out).toContain('no line begins with "wibble"');
});

test.each(["end", "Done", ""])('"%s" ends and saves', async (word) => {
  const { desk, exit } = await type(["pin 1: 2.2483in", word]);
  expect([exit, measurements(desk).length]).toEqual([0, 1]);
});

test("help is ?", async () => {
  const { out } = await type(["help", "pin 1: 2.2480in", "done"]);
  expect(out).toContain("The usual lines");
});

test("who leaves by Ctrl-C is told that nothing was saved, with the lines so far", async () => {
  const desk = await deskWithSix();
  const left: string[] = [];
  const env = { XDG_STATE_HOME: `${desk.folder}/state` };
  const io = fakeIo({ cwd: desk.folder, interactive: true, terminal: true, env });
  const answers = ["in", "pin 1: 2.2483"];
  await run(["teardown", "tractor"], {
    ...io,
    ask: (_, ifLeft = "") => Promise.resolve(answers[left.push(ifLeft) - 1]),
  });
  expect(left[2]).toBe(
    "nothing was saved; what you typed is kept, to go on with:\nsealtrend teardown tractor\n" +
      "typed so far:\nin\npin 1: 2.2483\n",
  );
});

test("how teardown --why shows every shape without a terminal", async () => {
  const desk = await deskWithSix();
  const { out } = await desk.type(["how", "teardown", "tractor", "--why"]);
  expect(out).toContain("ring gap 3:");
  expect(out).toContain("with bore gauge 0.01mm");
  expect(misfits(await desk.json("how", "teardown", "tractor", "--why"), schemaOf("how"))).toEqual([]);
  expect((await desk.type(["help", "teardown"])).out).toContain("sealtrend how teardown --why");
});

test("? all shows every shape, on a narrow screen too", async () => {
  for (const width of [80, 40]) {
    const { out } = await type(["? all", "pin 1: 2.2480in", "done"], [], width);
    expect(out).toContain("ring gap 3:");
    expect(out).toContain("with bore gauge 0.01mm");
    expect(out).toContain("set 86.50");
    for (const line of out.split("\n"))
      if (!line.includes("sealtrend ")) expect(line.length).toBeLessThanOrEqual(width);
  }
});

test("the end of input gives back what was typed, ready to be read with --from", async () => {
  const lines = ["in", "pin 1: 2.2483 2.2482", "pin 2: 2.2483 2.2482"];
  const { desk, exit, err } = await type(lines);
  expect(exit).toBe(2);
  expect(err).toContain("nothing was saved");
  expect(err).toContain(`typed so far:\n${lines.join("\n")}\n`);
  expect(measurements(desk)).toEqual([]);
  desk.put("again.txt", err.slice(err.indexOf("typed so far:\n") + "typed so far:\n".length));
  expect((await desk.type(["teardown", "tractor", "--from", "again.txt"])).exit).toBe(0);
  expect(measurements(desk)).toHaveLength(4);
});

test("ended at once, what is recorded is judged; with nothing recorded it is said how to begin", async () => {
  const { desk, exit, err } = await type(["done"]);
  expect(exit).toBe(1);
  expect(err).toContain("tractor has no measurements yet");
  await desk.type(["teardown", "tractor"], { input: "pin 1: 2.2480in\n" });
  const again = await desk.type(["teardown", "tractor"], { answers: [""] });
  expect([again.exit, again.out.includes("saved")]).toEqual([0, false]);
});

test("under --json the talk stays off stdout", async () => {
  const { exit, out, err } = await type(["pin 1: 2.2480in", "done"], ["--json"]);
  expect(exit).toBe(0);
  expect(JSON.parse(out)).toMatchObject({ schema: "sealtrend/teardown@1", written: { rows: 1 } });
  expect(err).toContain("pin 1: diameter 2.2480");
});

test("in the demo nothing is asked: what it holds is judged, or said to be nothing", async () => {
  const desk = await deskWithSix();
  await desk.type(["demo", "book"]);
  const { asked, err } = await desk.type(["teardown", "tractor", "--logbook", "book"], {
    answers: ["pin 1: 2in"],
  });
  expect(asked).toEqual([]);
  expect(err).toMatch(/nothing is entered there|no measurements yet/);
});
