// Steps that plain rules ask for before the diagnosis ranks any: what settles a finding for less than a test of the tables,
// and which of those it makes pointless.

import type { EngineRecord, Test } from "../record/index.ts";
import type { CylinderAssessment, NextTest, TestAssessment } from "./assessment.ts";
import { isLow } from "./causes/assessed.ts";
import { heardEvidence, standApart } from "./causes/heard-evidence.ts";
import type { Unexplained } from "./causes/unexplained-finding.ts";
import { notesAround } from "./causes/notes-around.ts";
import { labelsOf, listed } from "./labels.ts";
import { swappedOrder } from "./swapped-order.ts";

type Step = Omit<NextTest, "by">;
type Found = Pick<TestAssessment, "trust" | "cylinders" | "diagnosis" | "unexplained">;

interface FirstSteps {
  readonly steps: readonly Step[];
  /** Codes of tests of the tables that would tell nothing now; `all` where none would. */
  readonly pointless: readonly string[] | "all";
}

const step = (code: string, text: string, minutes: number): Step => ({ code, text, minutes });

type Rule = (record: EngineRecord, test: Test, found: Found) => FirstSteps | undefined;

/** @returns the steps in order, and all that they make pointless */
export const firstSteps = (record: EngineRecord, test: Test, found: Found): FirstSteps => {
  const asked = rules.flatMap((rule) => rule(record, test, found) ?? []);
  return {
    steps: asked.flatMap(({ steps }) => steps),
    pointless: asked.some(({ pointless }) => pointless === "all")
      ? "all"
      : asked.flatMap(({ pointless }) => pointless),
  };
};

const isDead = ({ pressures }: CylinderAssessment): boolean => pressures.dry?.value === 0;

/** A gauge that never moved tells of no cylinder. @source handbook/trade.md C3, C4 (two or more at zero) */
const nothingHeld: Rule = ({ engine }, _test, { cylinders }) => {
  const read = cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  if (read.length === 0 || !read.every(isDead)) return undefined;
  const drive = engine.porting === "ports" ? "" : ", that the camshaft turns with the crank";
  const release = engine.compressionRelease === "none" ? "" : ", that the compression release is shut";
  const text = `see that the gauge moves at all, that its adapter seals${release}${drive}, then read again`;
  return { steps: [step("second-gauge", text, 15)], pointless: ["repeat"] };
};

/** Two or more that hold nothing beside others that do: bent or stuck valves, or the timing drive, 8 times in 10.
 *  @source handbook/trade.md C3, C4, judgement; saturn-l300 (two or more cylinders at zero) */
const timing: Rule = ({ engine }, _test, { cylinders, diagnosis }) => {
  const read = cylinders.filter(({ pressures }) => pressures.dry !== undefined);
  const dead = read.filter(isDead);
  if (engine.porting === "ports" || dead.length === read.length) return undefined;
  if (dead.length > 1) {
    const text = `do not crank it on, valves may meet pistons: check the timing marks, and the belt or chain, by hand`;
    return { steps: [step("timing-marks", text, 30)], pointless: ["wet", "first-stroke", "repeat"] };
  }
  const first = diagnosis?.causes[0];
  if (first === undefined || !camTimings.includes(first.code) || diagnosis?.leads !== "cause")
    return undefined;
  const where =
    first.cylinders.length === cylinders.length
      ? ""
      : ` of the bank of ${listed(first.cylinders.map((place) => cylinders[place]?.label ?? ""))}`;
  const again = where === "" ? "every cylinder" : "that bank";
  const text = `check the timing marks${where}, then read ${again} again`;
  return { steps: [step("timing-marks", text, 30)], pointless: ["repeat"] };
};
const camTimings: readonly string[] = ["cam-retarded", "cam-advanced"];

/** Bubbles are never those of a sound engine. @source handbook/trade.md C2 */
const coolant: Rule = (record, test, { trust, cylinders, unexplained }) => {
  if (record.engine.cooling === "air") return undefined;
  const untold = unexplained.filter(({ finding }) => finding === "air-in-coolant").map(({ label }) => label);
  const heard = heardEvidence({ record, test, trust });
  const at = cylinders.filter(
    (one, i) =>
      untold.includes(one.label) ||
      (isLow(one) && heard[i]?.some(({ place }) => place === "coolant") === true),
  );
  if (at.length === 0) return undefined;
  const isLookedFor = notesAround({ record, test }, "combustion gas in coolant").length > 0;
  const text = "look for combustion gas, or a loss of pressure, in the coolant";
  return { steps: isLookedFor ? [] : [step("coolant", text, 15)], pointless: ["wet"] };
};

/** A leak at plug or adapter is that of the test. */
const seal: Rule = (record, test, { trust, cylinders, diagnosis }) => {
  const heard = heardEvidence({ record, test, trust });
  const at = cylinders.filter(
    (one, i) =>
      isLow(one) &&
      heard[i]?.some(({ place, faint }) => !faint && (place === "plug" || place === "outside")) === true,
  );
  if (at.length === 0) return undefined;
  const text = `seat plug or adapter of ${labelsOf(at)} anew with a new washer, soapy water on it, then air in again`;
  const leads = diagnosis?.causes[0]?.code === "plug-seal";
  return { steps: [step("repeat", text, 10)], pointless: leads ? "all" : [] };
};

/** Air heard where this engine cannot let it out, or at a neighbour that is none. */
const listenAgain: Rule = ({ engine }, test, { trust, cylinders }) => {
  if (trust.voids !== undefined) return undefined;
  const low = cylinders.filter(isLow);
  const apart = low.filter(({ label, heard = [] }) =>
    heard.some(
      ({ place, neighbour }) =>
        place === "neighbour" && neighbour !== undefined && standApart(engine.banks, label, neighbour),
    ),
  );
  const byPorts =
    engine.porting === "ports"
      ? low.filter(({ heard = [] }) => heard.some(({ place }) => place === "intake" || place === "exhaust"))
      : [];
  if (apart.length + byPorts.length === 0) return undefined;
  const text =
    byPorts.length > 0
      ? `listen on ${labelsOf(byPorts)} again at top dead centre, where the ports are shut: air gets out past the rings only`
      : `listen on ${labelsOf(apart)} again at the cylinders that stand next to it: what is heard further off came through a manifold`;
  return { steps: [step("leak-down-and-listen", text, 10)], pointless: ["leak-down-and-listen"] };
};

/** What the likeliest cause, none, leaves open. */
const open: Rule = ({ engine }, _test, { unexplained }) => {
  const of = (finding: Unexplained["finding"]): string =>
    labelsOf(unexplained.filter((one) => one.finding === finding));
  const [silent, lazy, oiled] = [of("leak-heard-nowhere"), of("running-low"), of("oil-rise")];
  const byAir = engine.leakDownTest?.allowed !== false;
  const tap = engine.porting === "ports" ? "" : ", tap its valves";
  const look = engine.porting === "valves" ? "valve lift, lifter and intake" : "intake, reeds and ports";
  const steps = [
    silent === "" || !byAir
      ? undefined
      : step(
          "re-seat-and-repeat",
          `bring ${silent} to top dead centre on compression again${tap}, then leak-down again and listen`,
          15,
        ),
    lazy === "" ? undefined : step("lash", `look at ${look} of ${lazy}`, 30),
    oiled === ""
      ? undefined
      : step("wet", `read ${oiled} with oil again, and a second cylinder with as much oil`, 10),
  ];
  return {
    steps: steps.filter((step) => step !== undefined),
    pointless: silent === "" ? [] : "all",
  };
};

/** A slip of the pen is asked for before the engine is. Common practice, no source. */
const swapped: Rule = (record, test) => {
  const found = swappedOrder(record, test);
  if (found === undefined) return undefined;
  const text = `see whether ${listed(found.pair)} were entered in swapped order, in ${found.before} or here: amend it, else read both again`;
  return { steps: [step("repeat", text, 5)], pointless: ["repeat"] };
};

const rules: readonly Rule[] = [swapped, nothingHeld, timing, coolant, seal, listenAgain, open];
