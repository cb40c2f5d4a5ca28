// Where the readings of an entry come from: the command line, or a person at a terminal, whose answers are kept until they are saved.

import type { Engine } from "@sealtrend/core";
import { type Args, Stop } from "../../command.ts";
import type { Io } from "../../io.ts";
import type { EntryPlace } from "../../logbook/unfinished.ts";
import type { World } from "../../logbook/world.ts";
import { asideText, saidOnce } from "../../render/aside.ts";
import type { Session } from "../kept/entry-session.ts";
import { idleSession } from "../kept/idle-session.ts";
import { leftEarly } from "../kept/left-early.ts";
import { openSession, waitingAside } from "../kept/offer-kept.ts";
import { sayTo } from "../kept/say-to.ts";
import { usageFault } from "../usage.ts";
import { askReadings, entryTold } from "./entry-ask.ts";
import { conditionOptions, placeOptions, rowOptions } from "./entry-options.ts";
import type { Known } from "./entry-questions.ts";
import type { Slipped } from "./entry-slips.ts";

/** A command line that holds all readings. */
export interface Given {
  readonly kind: "typed" | "asked";
  readonly args: Args;
  /** Whether a reading that looks mistyped is still to be asked about. */
  readonly leaves: (slip: Slipped) => boolean;
  readonly session: Session;
  readonly say: (lines: readonly string[]) => void;
  /** Who leaves now. */
  readonly leave: (expected: string) => Stop;
  /** Said on stderr. */
  readonly asides: readonly string[];
}

interface ToComplete extends Known {
  readonly world: World;
  readonly place: EntryPlace;
  readonly isNew: boolean;
}

/** The command line with what is missing asked for, on a terminal; elsewhere readings must be there. */
export const completeEntry = async (typed: Args, io: Io, known: ToComplete): Promise<Given> => {
  const { world, place, engine, isNew } = known;
  const say = sayTo(typed, io, "asked");
  const words = isNew ? newWords(typed) : [];
  const leaving =
    (session: Session) =>
    (expected: string): Stop =>
      leftEarly(place, { typed: "", isKept: session.isKept(), expected, words });
  const isGiven = rowOptions.some(({ name }) => typed.list(name).length > 0);
  if (isGiven || !io.interactive) {
    const asides = waitingAside(world, place);
    if (!isGiven) throw readingsMissing(engine, asideText(saidOnce(asides), io.width));
    const session = idleSession(typed);
    const leave = leaving(session);
    return { kind: "typed", args: typed, leaves: () => true, session, say, leave, asides };
  }
  const session = await openSession(typed, io, {
    ...{ world, place, say },
    cylinders: engine.cylinders,
    options: keptOptions,
    tells: (answers) => entryTold(engine.cylinders, answers),
  });
  const { args, unitStands } = await askReadings(session.args, io, { ...known, session, say, words });
  return {
    kind: "asked",
    args,
    leaves: ({ label }) => label === undefined && !unitStands,
    ...{ session, say },
    leave: leaving(session),
    asides: [],
  };
};

const readingsMissing = ({ id, cylinders }: Engine, after: string): Stop => {
  const line = `sealtrend enter ${id} --dry "${cylinders.map(() => "150").join(" ")}" --unit psi`;
  const fault = usageFault("readings-missing", "no readings given", "at least one row of readings", line);
  return new Stop(2, [fault], after);
};

/** What is kept with an unfinished entry; the cylinders stand in it for themselves. */
const keptOptions = [
  ...conditionOptions,
  ...placeOptions.filter(({ name }) => ["test", "same-test", "ignition"].includes(name)),
];

const newWords = (args: Args): readonly string[] => [
  "--new",
  ...["cylinders", "ignition"].flatMap((name) => {
    const text = args.text(name);
    return text === undefined ? [] : [`--${name}`, text];
  }),
];
