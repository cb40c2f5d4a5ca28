// What may never be in anything that is printed, and what a reader may never do, whatever it was given.

/** Everything that steers a terminal or hides itself, written here without the list of the program: controls but the line
 *  feed, half characters, separators, format characters, fillers. The variation selectors belong to ordinary letters. */
const steering = /(?![\n\ufe00-\ufe0f\u{e0100}-\u{e01ef}])[\p{Cc}\p{Cs}\p{Zl}\p{Zp}\p{Cf}\p{DI}]/u;
const ours = /\b(?:NaN|undefined|Infinity)\b|\[object |\n\s+at .+:\d+:\d+/;

/** What is wrong with a text that the command printed; undefined where nothing is. */
export const faultOfText = (text) => {
  const raw = steering.exec(text);
  if (raw !== null) return `U+${raw[0].codePointAt(0).toString(16)} raw in ${around(text, raw.index)}`;
  const slip = ours.exec(text);
  return slip === null ? undefined : `${slip[0].trim()} in ${around(text, slip.index)}`;
};

const around = (text, at) => JSON.stringify(text.slice(Math.max(0, at - 60), at + 60));

/** The first number in a value, at any depth, that is none; its path. */
export const faultOfNumbers = (value, path = "") => {
  if (typeof value === "number") return Number.isFinite(value) ? undefined : `${path} is ${String(value)}`;
  if (typeof value !== "object" || value === null) return undefined;
  const entries = value instanceof Map ? value.entries() : Object.entries(value);
  for (const [name, inner] of entries) {
    const fault = faultOfNumbers(inner, `${path}.${name}`);
    if (fault !== undefined) return fault;
  }
  return undefined;
};

const prototypes = [Object.prototype, Array.prototype, Function.prototype, String.prototype, Map.prototype];
const asBorn = prototypes.map((prototype) => Reflect.ownKeys(prototype).length);

/** Whether text of a file has changed what every object has. */
export const faultOfPrototypes = () =>
  prototypes.every((prototype, i) => Reflect.ownKeys(prototype).length === asBorn[i]) &&
  {}.polluted === undefined
    ? undefined
    : "a prototype has been changed";

/** Where a problem points must be in the text it is about. */
export const faultOfPlaces = (problems, texts) => {
  for (const { code, file, line = 1, column = 1, found, expected, mend } of problems) {
    const words = faultOfWords(`${found}\n${expected}\n${mend}`);
    if (words !== undefined) return `${code}: ${words}`;
    if (!(line >= 1 && column >= 1)) return `${code} at ${String(line)}:${String(column)}`;
    if (texts[file] === undefined) return `${code} names the file ${String(file)}`;
    const lines = texts[file].split(/\r\n|\n|\r/);
    if (line > lines.length) return `${code} at line ${String(line)} of ${String(lines.length)}`;
  }
  return undefined;
};

/** Words of a problem quote the file, and what is quoted is cleaned where it is shown: only our own slips count. */
const faultOfWords = (text) => {
  const slip = ours.exec(text);
  return slip === null ? undefined : `${slip[0]} in ${around(text, slip.index)}`;
};

/** Milliseconds that this process kept a processor busy: others that want it too change nothing. */
export const busy = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1_000;
};

/** The shortest of up to five runs: the engine may be at its own work meanwhile, and others at theirs, so that only what took
 *  too long by the clock is measured by the processor. @returns milliseconds */
export const timed = (act, bound) => {
  const first = performance.now();
  act();
  let best = performance.now() - first;
  for (let run = 1; run < 5 && best > bound; run += 1) {
    const begun = busy();
    act();
    best = Math.min(best, busy() - begun);
  }
  return best;
};
