// Sentences for faults in the logbook's tables.

import { nearest } from "../nearest.ts";
import { listed, quoted } from "./print.ts";

export const recordWords = {
  "id-missing": ({ column, example }: { column: string; example: string }) => ({
    found: `no name in the column ${column}`,
    expected: `a name such as ${example}`,
    mend: `write ${example}, or a name of your own`,
  }),
  "percent-out-of-place": ({ what }: { what: string }) => ({
    found: `a ${what} row in percent`,
    expected: "a pressure; only a leak-down is read in percent",
    mend: "write the unit that stands on the dial, or leak-down in the column what",
  }),
  "row-twice": ({ what, take, test }: { what: string; take: number | undefined; test: string }) => ({
    found: `${what}${take === undefined ? "" : `, take ${String(take)}`} of test ${test} stands twice${take === undefined ? "" : " for one gauge"}`,
    expected:
      take === undefined ? `one row ${what} in a test` : "each take once; repeats are numbered 1, 2, 3",
    mend:
      take === undefined
        ? "bring the two rows together into one, or delete one"
        : `number the second one take ${String(take + 1)}, or delete it`,
  }),
  "test-disagrees": (facts: {
    readonly test: string;
    readonly column: string;
    readonly here: string;
    readonly there: string;
    readonly line: number;
  }) => ({
    found: `test ${facts.test} says ${facts.column} ${quoted(facts.here)} here and ${quoted(facts.there)} on line ${String(facts.line)}`,
    expected: "one value for one test",
    mend: "make them the same, empty one, or give one row a test name of its own",
  }),
  "engine-disagrees": (facts: {
    readonly engine: string;
    readonly column: string;
    readonly here: string;
    readonly there: string;
    readonly line: number;
  }) => ({
    found: `engine ${facts.engine} says ${facts.column} ${quoted(facts.here)} here and ${quoted(facts.there)} on line ${String(facts.line)}`,
    expected: "one value for one engine",
    mend: `write ${facts.there} in both, or empty one, or give one row the name of another engine`,
  }),
  "condition-twice": ({ first, second }: { first: string; second: string }) => ({
    found: `${first} and ${second} say different things`,
    expected: "one of the two filled in, or both with the same value",
    mend: `empty ${first} or ${second}`,
  }),
  "cylinder-unknown": ({ column, labels }: { column: string; labels: readonly string[] }) => ({
    found: `the column ${column} holds a reading, but the engine has no such cylinder`,
    expected: `cylinders ${listed(labels)}`,
    mend: "move the reading to its column, or add the cylinder in engine.json",
  }),
  "gauge-over": ({ reading, scale }: { reading: string; scale: string }) => ({
    found: `${reading} is more than the gauge can show (${scale})`,
    expected: "a reading within the dial",
    mend: `check reading, unit and gauge; write >${scale.replace(/ .*/, "")} if the needle was pegged`,
  }),
  "leak-over-supply": ({ read, supply }: { read: string; supply: string }) => ({
    found: `the cylinder reads ${read}, more than the supply of ${supply}`,
    expected: "at most the supply, and 3 % more where the two dials differ",
    mend: "check both figures against the paper sheet: the lower one is the cylinder side",
  }),
  "supply-missing": ({ test }: { test: string }) => ({
    found: `test ${test} has a leak-down pressure without its supply pressure`,
    expected: "the regulated pressure of the day, or the readings in percent",
    mend: "enter it as 74/80 or with --regulated 80psi; in the file, fill in regulated_psi (or _kPa, _bar) in this row",
  }),
  "master-impossible": ({ test, reads }: { test: string; reads: string }) => ({
    found: `the master orifice of test ${test} reads ${reads}`,
    expected: "a reading above 0 and below the supply: a master lets some of the air by",
    mend: "write what the cylinder side showed with the master fitted (--master 43psi, or 46% lost), or leave it out",
  }),
  "sea-level-barometer": (facts: {
    readonly station: string;
    readonly altitude: string;
    readonly sea: string;
  }) => ({
    found: `a station pressure of ${facts.station} at ${facts.altitude} would be ${facts.sea} at sea level, which no weather brings`,
    expected: "the pressure at the place itself, as a barometer there shows it",
    mend: "if it came from a weather report or an altimeter setting, write it in the column qnh_hPa (or qnh_inHg)",
  }),
  "heard-unknown": (facts: {
    readonly text: string;
    readonly places: readonly string[];
    /** The cylinder is named as its own neighbour. */
    readonly own?: string | undefined;
    /** The label after `neighbour:`, where the engine has no such cylinder, and those that it has. */
    readonly neighbour?: string | undefined;
    readonly labels: readonly string[];
  }) => {
    const { text, places, neighbour, labels, own } = facts;
    if (own !== undefined)
      return {
        found: `${quoted(text)}: cylinder ${quoted(own)} is named as its own neighbour`,
        expected: `neighbour, alone or with one of the cylinders ${listed(labels.filter((label) => label !== own))}`,
        mend: "write neighbour alone, or the cylinder that is meant behind the colon",
      };
    return neighbour === undefined
      ? {
          found: `${quoted(text)} is no place where air is heard`,
          expected: `${listed(places)} (none stands alone); with :faint where so, neighbour:2 for which one, several joined by +`,
          mend: `write ${nearest(text, places)[0] ?? "one of these, or x where nobody listened"}`,
        }
      : {
          found: `${quoted(text)}: the engine has no cylinder ${quoted(neighbour)}`,
          expected: `neighbour, alone or with one of the cylinders ${listed(labels)}`,
          mend: "write neighbour alone, or the cylinder that is meant behind the colon",
        };
  },
  "take-bad": ({ text }: { text: string }) => ({
    found: `take ${quoted(text)} does not number a repeat`,
    expected: "1, 2, 3 … for the repeats of one test",
    mend: "write 1 for the first time it was read, 2 for the next",
  }),
  "cylinders-bad": ({ text, labels }: { text: string; labels: readonly string[] }) => ({
    found: `${quoted(text)} does not name cylinders of this engine`,
    expected: `all, none, or some of ${labels.join(" ")} with blanks between`,
    mend: `write all, none, or such as: ${labels.slice(0, 2).join(" ")}`,
  }),
  "note-value": (facts: {
    readonly what: string;
    readonly text: string;
    readonly words: readonly string[];
    readonly units: readonly string[];
  }) => {
    const { what, text, words, units } = facts;
    const number = `a number with one of the units ${listed(units)}`;
    const parts = [
      ...(words.length > 0 ? [`one of: ${listed(words)}`] : []),
      ...(units.length > 0 ? [number] : []),
    ];
    const [near] = nearest(text, words);
    const open =
      units.length > 0 ? "write one of these words, or a number with its unit" : "write one of these words";
    return {
      found: `${what} ${quoted(text)} is not understood`,
      expected: parts.join(", or "),
      mend:
        /^[+-]?\d/.test(text) && units[0] !== undefined
          ? `give it in a unit such as ${units[0]}`
          : near === undefined
            ? open
            : `write ${near}`,
    };
  },
  "meter-backwards": ({ here, there, date }: { here: string; there: string; date: string }) => ({
    found: `the meter reads ${here}, less than ${there} on ${date}`,
    expected: "a meter that never runs backwards",
    mend: "check the figure; if the meter was changed, enter a service: meter replaced",
  }),
  "text-formula": ({ column }: { column: string }) => ({
    found: `${column} begins like a spreadsheet formula`,
    expected: "text that begins with a letter or a digit",
    mend: "put a word in front of it",
  }),
} as const;
