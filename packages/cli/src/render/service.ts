// What a service means for the readings, and what to do next.
// 25 h or 1000 km of run-in, and the baseline after 50 h or 3000 km, are judgement: no published figure stands behind them.

import { type Engine, type Service, runInSpans, runsIn, startsAnew } from "@sealtrend/core/parts";
import { wrapText } from "./table.ts";
import { count, cylinders, joined, sentence } from "./words.ts";

export interface ServiceOptions {
  /** Names of the tests made on the day of the work. */
  readonly sameDay: readonly string[];
  readonly width: number;
}

/** Lines without line ends: the meaning, then the next step. */
export const serviceLines = (
  service: Service,
  engine: Engine,
  { sameDay, width }: ServiceOptions,
): readonly string[] => {
  const { runIn, baseline } = runInSpans[engine.meter ?? "either"];
  const anew = service.newBaseline.length > 0;
  const next = !anew
    ? `to see it in its place: sealtrend history ${engine.id}`
    : `a test ${runsIn(service) ? "after the run-in" : "now"} for reference, and one after ${baseline} as the new baseline (judgement, no published figure): sealtrend\u00a0how\u00a0dry\u00a0${engine.id}`;
  return [
    ...wrapText(
      [
        meaning(service, engine),
        ...ofThatDay(sameDay),
        ...noValves(service, engine),
        ...remarks(service, runIn),
      ].join(" "),
      width,
    ),
    "",
    ...wrapText(next, width, "next   "),
  ];
};

const meaning = ({ newBaseline, what }: Service, engine: Engine): string => {
  const all = engine.cylinders.length;
  if (what === "meter replaced") return "From this day the meter counts anew: it may read less than before.";
  if (newBaseline.length === 0)
    return "No cylinder begins a new history: readings before and after it are one series.";
  const stays = "no slope runs across it";
  if (all === 1) return `The engine begins a new history here: ${stays}.`;
  if (newBaseline.length === all) return `All ${count(all)} cylinders begin a new history here: ${stays}.`;
  const verb = newBaseline.length === 1 ? "begins" : "begin";
  return `${cylinders(newBaseline)} ${verb} a new history here: ${stays}; the others go on and serve as reference.`;
};

/** A day holds no order: the rule of the history, said where it matters. */
const ofThatDay = ([first, ...others]: readonly string[]): readonly string[] => {
  if (first === undefined) return [];
  return others.length === 0
    ? [
        `The test of that day, ${first}, counts as after the work; if it was made before, one more on that day settles it: of two the first counts as before.`,
      ]
    : [`Of the tests of that day ${first} counts as before the work, ${joined(others)} as after it.`];
};

/** It may be another work, or another engine, that was meant. */
const noValves = ({ what }: Service, { porting }: Engine): readonly string[] =>
  porting === "ports" && (what === "valve job" || what === "valve lash")
    ? [
        `This engine has ports and no valves: the ${what} is kept as you said it; if it was other work, sealtrend\u00a0undo takes it back.`,
      ]
    : [];

const remarks = (service: Service, runIn: string): readonly string[] => {
  const { what, meter, note, newBaseline } = service;
  if (what === "storage" && note === undefined)
    return [
      'How long it stood is not recorded: sealtrend undo, then again with --note\u00a0"7\u00a0months".',
    ];
  if (!runsIn(service))
    return startsAnew(what) && newBaseline.length === 0
      ? [sentence(`you said so; after a ${what} that is unusual.`)]
      : [];
  return [
    `Run-in: tests within ${runIn} from here are shown, but count in no slope and no baseline (judgement).`,
    ...(meter === undefined
      ? ["Without the meter reading they cannot be told apart: sealtrend undo, then again with --meter."]
      : []),
  ];
};
