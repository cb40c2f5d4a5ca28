// restate: how doubt is told, in which unit, and what is said beside the answer.

import { describe, expect, test } from "vitest";
import { newDesk } from "./desk.ts";
import { misfits, schemaOf } from "./fits-schema.ts";

const typed = (line: string) => newDesk().type(["restate", ...line.split(" ")]);
const document = (line: string) => newDesk().json("restate", ...line.split(" "));
const example = "--read 64psi --regulated 80psi --restrictor 1.016mm";

describe("what the dials leave open", () => {
  const bore = "--restrictor 0.040in";

  // 2·√2·1.190 = 3.4 psi
  test("a cylinder above its supply by more than they explain is a finding: the dials disagree", async () => {
    const line = `--read 90psi --regulated 80psi ${bore}`;
    const { exit, out, err } = await typed(line);
    expect([exit, err]).toEqual([0, ""]);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /^The dials disagree: the cylinder reads 90 psi, above its supply of 80 psi; by their doubt at most 3\.4 psi above\./,
    );
    for (const more of ["", " --to-regulated 100psi"]) {
      const told = await document(line + more);
      expect(misfits(told, schemaOf("restate"))).toEqual([]);
      expect(told).toMatchObject({
        refused: { code: "gauges-disagree" },
        from: { judgement: "disagree", lost: expect.closeTo(-0.125, 12) as unknown },
      });
      expect(told).not.toHaveProperty("alpha");
      expect(told).not.toHaveProperty("read_kPa");
    }
    expect((await typed(`--read 82psi --regulated 80psi ${bore}`)).out).toMatch(/^Tighter than/);
  });

  test("a drop next to nothing has an upper limit and no doubt to both sides", async () => {
    for (const read of ["78", "79.999999", "80"]) {
      const told = await document(`--read ${read}psi --regulated 80psi ${bore}`);
      expect(misfits(told, schemaOf("restate"))).toEqual([]);
      expect(Object.keys(told).filter((key) => key.startsWith("u_"))).toEqual([]);
      expect(told.from).toMatchObject({
        judgement: "tight",
        atMost: { alpha: expect.any(Number) as unknown },
      });
      expect(["alpha", "equalHole_mm", "area_mm2"].map((key) => typeof told[key])).toEqual(
        Array(3).fill("number"),
      );
      const { out } = await typed(`--read ${read}psi --regulated 80psi ${bore} --why`);
      expect(out).not.toMatch(/alpha\) [\d.]+ ±/);
    }
  });

  test("dials that read the same are told so: the leak is below what they show", async () => {
    const { out } = await typed(`--read 80psi --regulated 80psi ${bore}`);
    expect(out.replace(/\s+/g, " ")).toMatch(
      /^Both dials read the same: the leak is smaller than they can show, at most that of a hole of 0\.64 mm/,
    );
  });
});

describe("told alike", () => {
  test("a percent with its supply is the reading it stands for", async () => {
    const percent = await typed("--lost 25 --regulated 80psi --to-regulated 100psi");
    const pressure = await typed("--read 60psi --regulated 80psi --to-regulated 100psi");
    expect(percent.out).toBe(pressure.out);
    expect(percent.out).toMatch(/24 to 30 % lost\.\n/);
  });

  test("one unit of pressure on the screen: the typed one, or the one asked for", async () => {
    const { out } = await typed(`${example} --to-restrictor 1.5mm --units bar --why`);
    expect(out).not.toMatch(/psi|kPa/);
    expect(out.replace(/\s+/g, " ")).toContain("each dial ± 0.0821 bar, air of the place 1.013 bar absolute");
    const mixed = await typed(`${example} --to-regulated 6bar --why`);
    expect(mixed.out).toContain("of 87.02 psi (6 bar): ");
    expect(mixed.out.replace("(6 bar)", "")).not.toMatch(/\d (bar|kPa)/);
  });

  test("± is said to be one standard uncertainty wherever it stands", async () => {
    for (const line of ["--read 60psi --regulated 80psi", `${example} --to-regulated 100psi --why`])
      expect((await typed(line)).out).toContain("\n±        one standard uncertainty: 2 chances in 3; twice");
    expect((await typed("--lost 18")).out).not.toContain("±");
  });
});

describe("said beside the answer", () => {
  test("a full scale without its class does not count", async () => {
    const { exit, err } = await typed("--read 60psi --regulated 80psi --full-scale 300psi");
    expect(exit).toBe(0);
    expect(err).toMatch(/^--full-scale counts with --class only/);
    expect((await typed("--read 60psi --regulated 80psi --full-scale 300psi --class 1")).err).toBe("");
  });

  test("a percent below 1 is one, and how a larger one is typed", async () => {
    const { out, err } = await typed("--lost 0.18");
    expect(out).toMatch(/^0\.18 % lost on this tester/);
    expect(err).toBe("--lost is in percent: 0.18 percent; 18 % is --lost 18\n");
    expect((await typed("--lost 0.18%")).err).toBe("");
    expect((await typed("--lost 18")).err).toBe("");
  });

  test("where to listen is a command that can be typed for any engine", async () => {
    expect((await typed("--read 0psi --regulated 80psi")).out).toContain("sealtrend how leak-down ENGINE\n");
  });
});
