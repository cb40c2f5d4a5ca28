// What `show` says. Readings invented; the sentences are those a mechanic should read.

import { expect, test } from "vitest";
import { type Desk, deskWithPump, newDesk } from "./desk.ts";

const after = async (...lines: readonly (readonly string[])[]): Promise<Desk> => {
  const desk = await deskWithPump();
  for (const line of lines) {
    const { exit, err } = await desk.type(["enter", "pump", ...line, "--unit", "psi"]);
    if (exit !== 0) throw new Error(err);
  }
  return desk;
};
const headline = async (desk: Desk, ...words: string[]): Promise<string> =>
  (await desk.type(["show", "pump", ...words], { width: 300 })).out.split("\n")[0] ?? "";

test.each([
  [
    "150 148 152 149",
    "All four are even: the lowest reads 3 % under the highest, within what healthy cylinders show.",
  ],
  ["150 150 150 150", "All four are even: they read the same."],
  ["150 148 152 131", "Cylinder 4 is suspect: 13 % under the others. Read it again before you believe it."],
  [
    "150 120 152 121",
    "Cylinders 2 and 4 are suspect: up to 20 % under the others. Read them again before you believe it.",
  ],
  ["150 148 152 100", "Cylinder 4 lags: 33 % under the others, below three quarters of the highest."],
  ["150 148 152 0", "Cylinder 4: no compression."],
  ["0 148 152 0", "Cylinders 1 and 4: no compression."],
  [
    "0 0 0 0",
    "Nothing held in any cylinder: first of all a dead gauge, a leaking adapter, an open release or a broken timing drive.",
  ],
  [
    "150 148 0 100",
    "Cylinder 3: no compression. Cylinder 4 lags: 33 % under the others, below three quarters of the highest.",
  ],
  [
    "150 x 152 149",
    "1, 3 and 4 are even: the lowest reads 2 % under the highest, within what healthy cylinders show.",
  ],
  ["150 x x x", "Only 1 was read, so nothing can be compared."],
  [
    "150 120 119 118",
    "Cylinder 1 reads high, 26 % over the others: carbon, oil in the chamber, or a slip, unless 2, 3 and 4 have all lost alike, which one test cannot tell. Read it again.",
  ],
  [
    "150 151 152 190",
    "Cylinder 4 reads high, 26 % over the others: carbon, oil in the chamber, or a slip, unless 1, 2 and 3 have all lost alike, which one test cannot tell. Read it again.",
  ],
  [
    "150 100 101 99",
    "Cylinder 1 reads high, 50 % over the others: carbon, oil in the chamber, or a slip, unless 2, 3 and 4, below three quarters of the highest, have all lost alike, which one test cannot tell. Read it again.",
  ],
  [
    "150 145 138 133",
    "No cylinder stands out alone, yet the lowest reads 11 % under the highest, more than healthy ones show: several may have lost. Read all again.",
  ],
  [
    "131 1310 132 130",
    "1310 psi of cylinder 2 is ten times the others: a slip of a digit? 1, 3 and 4 are even: the lowest reads 2 % under the highest, within what healthy cylinders show.",
  ],
  [
    "131 13.1 132 130",
    "13.1 psi of cylinder 2 is a tenth of the others: a slip of a digit? Cylinder 2 lags: 90 % under the others, below three quarters of the highest.",
  ],
  [
    ">300 x >300 >300",
    "This test tells nothing: the needle was pegged on cylinders 1, 3 and 4, all that were read. Test again with a gauge of higher range.",
  ],
  [
    ">300 >300 >300 >300",
    "This test tells nothing: the needle was pegged on every cylinder. Test again with a gauge of higher range.",
  ],
])("%s psi: the first sentence is the answer", async (readings, sentence) => {
  expect(await headline(await after(["--dry", readings]))).toBe(sentence);
});

test("flagged in two tests running, or read twice, a cylinder lags and the reason is said", async () => {
  const low = ["--dry", "150 148 152 131"];
  const running = await after([...low, "--date", "2025-05-03"], low);
  expect(await headline(running)).toBe(
    "Cylinder 4 lags: 13 % under the others, flagged in two tests running.",
  );
  const twice = await after(["--dry", "150 148 152 120", "--dry", "150 148 152 120"]);
  expect(await headline(twice)).toBe("Cylinder 4 lags: 20 % under the others, two readings agree.");
});

test("all below the maker's limit, and alike: worn alike or tested wrongly, and no one lags behind", async () => {
  const alike = async (readings: string) => {
    const desk = await after(["--dry", readings]);
    await desk.type(["engine", "set", "pump", "limits.compression.minimum", "100psi"]);
    return headline(desk);
  };
  expect(await alike("70 71 69 70")).toBe(
    "All four read below the maker's limit, and no lower than one another: all worn alike, or the test was not right.",
  );
  // Neither height nor gauge is known: 10 % is within two standard uncertainties.
  expect(await alike("90 91 89 90")).toBe(
    "All four read just below the maker's limit, too close to call; none stands out beside the others.",
  );
});

test("just below a limit is said to be too close to call, in the word and in the rule", async () => {
  const desk = await after(["--dry", "104 103 98 104", "--altitude", "0m"]);
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "100psi"]);
  const { out } = await desk.type(["show", "pump"], { width: 200 });
  expect(out).toContain(
    "Cylinder 3 reads just below the maker's limit, too close to call; beside the others it does not stand out.",
  );
  expect(out).toContain("lowest 98 psi, maker's limit 100 psi: near");
});

test("who lags behind the others is told before those that only miss a limit by a hair", async () => {
  const desk = await after(["--dry", "99.7 99.6 99.7 85", "--altitude", "0m"]);
  await desk.type(["engine", "set", "pump", "limits.compression.minimum", "100psi"]);
  expect(await headline(desk)).toBe(
    "Cylinder 4 lags: 15 % under the others, below the maker's limit. Cylinders 1, 2 and 3 read just below the maker's limit, too close to call.",
  );
  const { nextTests } = await desk.json("show", "pump");
  expect(nextTests).toContainEqual(
    expect.objectContaining({ code: "wet", text: "oil test on 4, with 1 as control" }),
  );
});

test("a test that is set aside says so first, and is not called trusted", async () => {
  const desk = await after(["--dry", "150 148 152 149"]);
  await desk.type(["amend", "pump", "--test", "latest", "--set-aside", "wrong adapter"]);
  const { out } = await desk.type(["show", "pump"], { width: 200 });
  expect(out).toMatch(/^Set aside: wrong adapter; it counts in nothing\. Read alone: all four are even/);
  expect(out).not.toContain("Trusted");
  expect(await desk.json("show", "pump")).toMatchObject({
    test: { setAside: "wrong adapter" },
    trust: { code: "doubtful", reasons: [{ code: "set-aside" }] },
  });
});

test("a leak-down alone is told in parts lost", async () => {
  const leak = (readings: string) => after(["--leak-down", readings]);
  expect(await headline(await leak("74/80 73/80 74/80 75/80"))).toBe(
    "All four are even in the leak-down: 6 to 9 % lost.",
  );
  expect(await headline(await leak("74/80 74/80 74/80 74/80"))).toBe(
    "All four are even in the leak-down: 8 % lost.",
  );
  expect(await headline(await leak("74/80 73/80 50/80 75/80"))).toBe(
    "Cylinder 3 is suspect: 38 % lost in the leak-down. Read it again before you believe it.",
  );
  expect(await headline(await leak("74/80 73/80 0/80 75/80"))).toBe(
    "Cylinder 3: no seal measurable in the leak-down.",
  );
});

test("a void test shows its readings and gives no verdict on a cylinder or a rule", async () => {
  const { out } = await (
    await after(["--dry", "90 80 70 60", "--throttle", "closed"])
  ).type(["show", "pump"], { width: 200 });
  expect(out).toMatch(
    /^This test tells nothing: the throttle was closed\. Block it wide open and test again\.\n/,
  );
  expect(out).toMatch(/read +psi +90 +80 +70 +60/);
  expect(out).not.toMatch(/against others|usual rule|Trusted/);
});

test("each doubt stands with its remedy", async () => {
  const { out } = await (
    await after(["--dry", "150 148? 152 149", "--by", "seller"])
  ).type(["show", "pump"], { width: 200 });
  expect(out).toContain(
    "Doubtful: the reading of cylinder 2 is marked doubtful (take it again); it is the seller's sheet (test it yourself: a seller's sheet is no baseline).",
  );
  expect(out).toContain("lowest/highest, usual rule 0.75: cannot tell, 2 is doubtful");
});

test("one cylinder is compared with nothing", async () => {
  const desk = newDesk();
  desk.put("logbook/.keep", "");
  await desk.type([
    "enter",
    "mower",
    "--new",
    "--cylinders",
    "1",
    "--ignition",
    "spark",
    "--dry",
    "90",
    "--unit",
    "psi",
  ]);
  const { out } = await desk.type(["show", "mower"]);
  expect(out).toMatch(/^One cylinder, so nothing to compare it with: watch it over the years\.\n/);
  expect(out).not.toContain("others");
});

test("what has moved since the first test stands under the cylinders", async () => {
  const desk = await after(
    ["--dry", "150 150 150 150", "--date", "2020-05-03"],
    ["--dry", "150 150 135 150"],
  );
  expect((await desk.type(["show", "pump"])).out).toMatch(
    /since 2020-05 +% +0 +0 +-10 +0 +\(against the others\)\n/,
  );
});

test("--as-of shows the latest test up to that day, --test any", async () => {
  const desk = await after(
    ["--dry", "150 148 152 149", "--date", "2024-05-03"],
    ["--dry", "151 149 153 150", "--date", "2026-05-03"],
  );
  const id = async (...words: string[]) =>
    ((await desk.json("show", "pump", ...words)) as { test: { id: string } }).test.id;
  expect(await id()).toBe("2026-05-03a");
  expect(await id("--as-of", "2025-01-01")).toBe("2024-05-03a");
  expect(await id("--test", "2024-05-03a")).toBe("2024-05-03a");
  const wrong = await desk.type(["show", "pump", "--test", "2024-05-03b"]);
  expect(wrong.exit).toBe(2);
  expect(wrong.err).toContain("did you mean 2024-05-03a?");
  expect((await desk.type(["show", "pump", "--as-of", "2020-01-01"])).exit).toBe(1);
});

test("units of the screen are those asked for; the document stays in kPa", async () => {
  const desk = await after(["--dry", "150 148 152 149"]);
  const out = async (units: string) => (await desk.type(["show", "pump", "--units", units])).out;
  // 150 psi = 1034.2 kPa = 10.34 bar
  expect(await out("kPa")).toMatch(/read +kPa +1034/);
  expect(await out("bar")).toMatch(/read +bar +10\.3/);
  expect(await out("metric")).toBe(await out("kPa"));
  expect(await out("us")).toMatch(/read +psi +150/);
  const document = await desk.json("show", "pump", "--units", "bar");
  expect(document).toEqual(await desk.json("show", "pump"));
});
