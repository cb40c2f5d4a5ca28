// The chance that a cylinder is still above its limit some years after the last test. Wear only: a valve, a gasket or a
// ring fails without notice, and one engine's history cannot tell how often.

import { believing, chanceAbove, type KnownLine } from "./forecast.ts";

export interface Stay {
  /** Years after the last test that counts. */
  readonly ahead: number;
  /** Not clamped; a text says "more than 9 in 10" at most. */
  readonly probability: number;
}

/** Years ahead. */
export const horizons = [1, 2, 3, 5];
/** Spread of yearly losses believed beforehand, ln units. @source handbook/statistics.md E (a choice) */
export const believedPerYear = 0.04;

/** For each horizon within three times the observed span: as wear does not heal, being above the limit then is having
 *  been above it all the way.
 *  @param line - nothing believed of its slope beforehand  @param limit - ln
 *  @param x - of the line's own readings, and the last test of the engine  @param perYear - units of x a year
 *  @source handbook/statistics.md E; C.7 (three spans) */
export const chancesOf = (
  line: KnownLine,
  {
    limit,
    x,
    perYear,
  }: {
    readonly limit: number;
    readonly x: { readonly first: number; readonly last: number; readonly now: number };
    readonly perYear: number | undefined;
  },
): readonly Stay[] => {
  if (perYear === undefined) return [];
  const known = believing(line, believedPerYear / perYear);
  const end = x.first + 3 * (x.last - x.first);
  return horizons
    .map((ahead) => ({ ahead, place: x.now + ahead * perYear }))
    .filter(({ place }) => place <= end)
    .map(({ ahead, place }) => ({ ahead, probability: chanceAbove(known, limit, place) }));
};

/** How the whole engine stands: by its weakest cylinder. */
export interface EngineStay {
  readonly ahead: number;
  readonly label: string;
  /** Of that cylinder, by the limit that it is nearer to: no engine is surer than this to stay above all. */
  readonly probability: number;
  /** That all of them stay above all limits, at least: 1 less the sum of what each limit of each leaves open. */
  readonly allAtLeast: number;
}
