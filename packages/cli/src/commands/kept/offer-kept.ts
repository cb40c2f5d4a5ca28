// What was left the last time, offered to go on with. Whatever its files hold, nothing of it stands in the way of a new entry.

import type { Args } from "../../command.ts";
import type { Io } from "../../io.ts";
import { type EntryPlace, type KeptEntry, dropEntries, keptEntries } from "../../logbook/unfinished.ts";
import type { Unfinished } from "../../logbook/unfinished-text.ts";
import { shown } from "../../logbook/words.ts";
import type { World } from "../../logbook/world.ts";
import { clean } from "../../render/clean.ts";
import { prose } from "../../render/prose.ts";
import { askPerson } from "./ask-person.ts";
import { type Begun, type Session, sessionOf } from "./entry-session.ts";
import { fitsOptions, withKept } from "./kept-options.ts";
import { leftEarly } from "./left-early.ts";

interface Offering extends Begun {
  /** How far an entry had come: `after cylinder 3 (1:150 2:148 3:147)`. */
  readonly tells: (answers: Unfinished["answers"]) => string;
}

/** The session of a new entry, or of one that is gone on with.
 *  @throws Stop 2 where the person leaves; all that is kept stays */
export const openSession = async (typed: Args, io: Io, offering: Offering): Promise<Session> => {
  const { world, place, cylinders, options, say } = offering;
  const { entries, unreadable, otherVersion, open } = keptEntries(world, place);
  const isSound = ({ entry }: KeptEntry): boolean => fitsOptions(entry, options);
  const isOfThese = ({ entry }: KeptEntry): boolean => entry.cylinders.join("\n") === cylinders.join("\n");
  const bad = [...unreadable, ...entries.filter((one) => !isSound(one)).map(({ path }) => path)];
  const others = entries.filter((one) => isSound(one) && !isOfThese(one));
  const tell = (text: string): void => say(prose(text, io.width));
  for (const path of bad)
    tell(`an unfinished entry could not be made out and is left aside: ${shown(world.cwd, path)}`);
  for (const path of otherVersion)
    tell(`an unfinished entry of another version of sealtrend is left aside: ${shown(world.cwd, path)}`);
  for (const { entry } of others)
    tell(
      `${whenOf(entry)} is left aside: it is for cylinders ${clean(entry.cylinders.join(" "))}, and the engine has others now`,
    );
  if (open > 0) tell(`another entry of ${clean(place.engine)} is open in another window`);
  const left = [...bad, ...others.map(({ path }) => path)];
  const { chosen, passed } = await choose(
    io,
    entries.filter((one) => isSound(one) && isOfThese(one)),
    offering,
  );
  const session = { io, chosen, passed: [...left, ...passed] };
  if (chosen === undefined) return sessionOf(offering, { ...session, args: typed, day: io.today });
  const args = withKept(typed, chosen.entry, options);
  const { day } = chosen.entry;
  if (day !== io.today && args.text("date") === day)
    tell(`its day stays ${day} (today is ${io.today}); another: --date`);
  return sessionOf(offering, { ...session, args, day });
};

interface Choice {
  readonly chosen: KeptEntry | undefined;
  /** Left for a new entry, and dropped once that is saved. */
  readonly passed: readonly string[];
}

const choose = async (io: Io, entries: readonly KeptEntry[], offering: Offering): Promise<Choice> => {
  const passed: string[] = [];
  for (const one of entries) {
    const choice = await askChoice(io, one.entry, offering);
    if (choice === "go on") return { chosen: one, passed };
    if (choice === "drop") dropEntries(offering.world, [one.path]);
    else passed.push(one.path);
  }
  if (passed.length > 0)
    offering.say(prose("begun anew; what was left is dropped once this one is saved", io.width));
  return { chosen: undefined, passed };
};

const askChoice = async (
  io: Io,
  entry: Unfinished,
  { tells, say, place }: Offering,
): Promise<"go on" | "anew" | "drop"> => {
  const told = `${whenOf(entry)} was left ${tells(entry.answers)}`;
  const doubt =
    entry.stage === "saving"
      ? `It was being saved and may stand in the logbook: look at sealtrend show ${clean(place.engine)} first`
      : undefined;
  say([told, ...(doubt === undefined ? [] : [doubt])].flatMap((text) => prose(text, io.width)));
  for (;;) {
    const answer = await askPerson(io, "go on with it (Enter), begin anew (n), drop it (d): ", {
      takes: "typed now",
    });
    if (answer === undefined || answer === "q")
      throw leftEarly(place, { typed: "", isKept: true, expected: "Enter, n or d" });
    if (answer === "") return "go on";
    if (/^n(?:o|ew)?$/i.test(answer)) return "anew";
    if (/^d(?:rop)?$/i.test(answer)) return "drop";
    say(["  Enter, n or d"]);
  }
};

/** A line for whoever is not asked; none where nothing waits. */
export const waitingAside = (world: World, place: EntryPlace): readonly string[] => {
  const [newest] = keptEntries(world, place).entries;
  if (newest === undefined) return [];
  const line = `sealtrend ${place.command} ${place.engine}`;
  return [`${whenOf(newest.entry)} waits unfinished; on a terminal it goes on: ${line}`];
};

/** `an entry of 2026-11-25, 14:02,`. */
const whenOf = ({ begun }: Unfinished): string =>
  `an entry of ${begun.slice(0, 10)}, ${begun.slice(11, 16)},`;
