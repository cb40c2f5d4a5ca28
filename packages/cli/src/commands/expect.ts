// expect: what a healthy cylinder should read when it is cranked, and how far that can be trusted.

import { expectedPressure, type PressureUnit } from "@sealtrend/core";
import { type Args, type Command, Stop } from "../command.ts";
import { expectDocument } from "../documents/expect-document.ts";
import type { Io } from "../io.ts";
import { lettersOf, systemOf } from "../render/expect/expect-units.ts";
import { expectScreen } from "../render/expect/expect.ts";
import { pressureUnit } from "../render/units.ts";
import { knownOf } from "./expect-steps/expect-known.ts";
import { expectOptions } from "./expect-steps/expect-options.ts";
import { type Picked, pickRecord, saidAside } from "./pick.ts";

export const expectedReading: Command = {
  name: "expect",
  summary: "what a healthy cylinder should read when cranked, from what is known of the engine",
  examples: [
    "sealtrend expect tractor",
    "sealtrend expect --compression-ratio 10 --bore 86mm --stroke 86mm --units psi",
    "sealtrend expect --compression-ratio 17.3 --ignition diesel --altitude 1200m --why",
  ],
  positionals: [
    { name: "ENGINE", help: "take what its engine.json knows; what is typed counts before it", need: "may" },
  ],
  options: expectOptions,
  run: async (args, io) => {
    const picked = await engineMeant(args, io);
    const book = picked === undefined ? undefined : { record: picked.record, facts: picked.logbook.facts };
    const known = knownOf(args, book);
    const expected = { answer: expectedPressure(known.cylinder), known, record: picked?.record };
    const facts = book?.facts ?? { demo: false };
    const unit = pressureUnit(args.text("units"), facts, unitTyped(picked));
    const lines = expectScreen(expected, {
      unit,
      width: io.width,
      detail: args.flag("why") ? "why" : "short",
      system: systemOf(args.text("units") ?? facts.units, known.typed),
      letters: lettersOf(io),
    });
    return {
      exit: 0,
      text: `${lines.join("\n")}\n`,
      json: expectDocument(expected),
      ...(picked === undefined ? {} : saidAside(picked.logbook)),
    };
  },
};

/** The engine named; without a name and a ratio the only one of the logbook, where there is one. */
const engineMeant = async (args: Args, io: Io): Promise<Picked | undefined> => {
  if (args.positionals.length === 0 && args.text("compression-ratio") !== undefined) return undefined;
  try {
    return await pickRecord(args, io);
  } catch (error) {
    const open =
      error instanceof Stop && ["logbook-none", "engine-open"].includes(error.faults[0]?.code ?? "");
    if (args.positionals.length === 0 && open) return undefined;
    throw error;
  }
};

/** The unit that the latest test of the engine was typed in. */
const unitTyped = (picked: Picked | undefined): PressureUnit | undefined =>
  picked?.record.tests
    .flatMap(({ rows }) => rows)
    .map(({ unit }) => unit)
    .findLast((unit): unit is PressureUnit => unit !== "%");
