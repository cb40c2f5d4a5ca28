// Sentences for faults in the logbook's records.

const quoted = (text: string): string => `"${text}"`;
const listed = (words: readonly string[]): string => words.join(", ");

const letterO = (text: string): string => text.replace(/[Oo]/g, "0");

const numberWords: Record<string, (text: string) => { found: string; mend: string }> = {
  "letter-o": (text) => ({
    found: "a letter O stands where a zero may belong",
    mend: `write ${letterO(text)}, or x if it was not taken`,
  }),
  "two-marks": () => ({ found: "more than one decimal mark", mend: "write it with one decimal mark and no thousands mark, or x if it was not taken" }),
  "full-width": () => ({ found: "full-width digits", mend: "write it with ordinary digits" }),
  "unit-inside": (text) => ({
    found: "a unit stands in the cell",
    mend: `write ${/^[+-]?[\d.,]+/.exec(text)?.[0] ?? "the number"} here; the unit has a column of its own`,
  }),
  "too-long": () => ({ found: "too many digits", mend: "write it as the gauge shows it" }),
};

/** The closest of the words offered, for a suggestion; undefined when none is near. */
const nearest = (text: string, words: readonly string[]): string | undefined =>
  words
    .map((word) => [distance(text.toLowerCase(), word.toLowerCase()), word] as const)
    .filter(([far, word]) => far <= Math.max(1, Math.floor(word.length / 3)))
    .sort(([a], [b]) => a - b)[0]?.[1];

const distance = (a: string, b: string): number => {
  if (a.length > 40 || b.length > 40) return 99;
  let row = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const next = [i];
    for (let j = 1; j <= b.length; j++)
      next[j] = Math.min((row[j] ?? 0) + 1, (next[j - 1] ?? 0) + 1, (row[j - 1] ?? 0) + (a[i - 1] === b[j - 1] ? 0 : 1));
    row = next;
  }
  return row[b.length] ?? 99;
};

export const recordWords = {
  "number-bad": ({ column, text, fault }: { column: string; text: string; fault: string }) => {
    const words = numberWords[fault]?.(text);
    const sheetError = /^#/.test(text);
    return {
      found: `${column} ${quoted(text)} is not a number${words ? `: ${words.found}` : sheetError ? ": a spreadsheet's error mark" : ""}`,
      expected: "a number such as 131 or 9.8",
      mend: words?.mend ?? "write the number, or x if it was not taken",
    };
  },
  "number-two-ways": ({ text, small, large }: { text: string; small: number; large: number }) => ({
    found: `${quoted(text)} can be read two ways: ${String(small)} or ${String(large)}`,
    expected: "a number without a thousands mark",
    mend: `write ${String(large)} for the large one, ${String(small)}0 for the small one`,
  }),
  "number-range": ({ text, least, most, of }: { text: string; least: number; most: number; of: string }) => ({
    found: `${quoted(text)} is out of range for ${of}`,
    expected: `${of} from ${String(least)} to ${String(most)}`,
    mend: "check the figure and its unit against the paper sheet",
  }),
  "word-unknown": ({ column, text, words }: { column: string; text: string; words: readonly string[] }) => {
    const near = nearest(text, words);
    return {
      found: `${column} ${quoted(text)} is not a word that is known here`,
      expected: `one of: ${listed(words)}`,
      mend: near === undefined ? "write one of these words" : `write ${near}`,
    };
  },
  "date-missing": ({ column }: { column: string }) => ({
    found: `no ${column}`,
    expected: "a date such as 2026-05-03",
    mend: "write the day of the test as year-month-day",
  }),
  "date-bad": ({ text, ways }: { text: string; ways: readonly string[] }) => ({
    found: `the date ${quoted(text)} is ${ways.length > 1 ? "open: it can be read two ways" : "not written year-month-day, or no day of the calendar"}`,
    expected: "a date such as 2026-05-03",
    mend: ways.length === 0 ? "write the day as year-month-day" : `write ${ways.join(" or ")}`,
  }),
  "id-missing": ({ column }: { column: string }) => ({
    found: `no ${column}`,
    expected: "the name of the test, such as 2026-05-03a; rows that share it are one test",
    mend: "write the date and a letter",
  }),
  "unit-missing": ({ text }: { text: string }) => ({
    found: `no unit for the reading ${quoted(text)}`,
    expected: "psi, kPa, bar, MPa or kgf/cm2",
    mend: "write the unit of the gauge in the unit column",
  }),
  "unit-unknown": ({ text, units }: { text: string; units: readonly string[] }) => ({
    found: `the unit ${quoted(text)} is not known here`,
    expected: `one of: ${listed(units)}`,
    mend: `write ${nearest(text, units) ?? "one of these"}`,
  }),
  "percent-out-of-place": ({ what }: { what: string }) => ({
    found: `a ${what} row in percent`,
    expected: "a pressure; only a leak-down is read in percent",
    mend: "write the unit of the gauge, or what: leak-down",
  }),
  "row-twice": ({ what, take, test }: { what: string; take: number; test: string }) => ({
    found: `${what}, take ${String(take)} of test ${test} stands twice for one gauge`,
    expected: "each take once; repeats are numbered 1, 2, 3",
    mend: `number the second one take ${String(take + 1)}, or delete it`,
  }),
  "test-disagrees": ({ test, column, here, there, line }: { test: string; column: string; here: string; there: string; line: number }) => ({
    found: `test ${test} says ${column} ${quoted(here)} here and ${quoted(there)} on line ${String(line)}`,
    expected: "one value for one test",
    mend: `make them the same, empty one, or give one row a test name of its own`,
  }),
  "condition-twice": ({ first, second }: { first: string; second: string }) => ({
    found: `${first} and ${second} say different things`,
    expected: "one of the two filled in",
    mend: `empty ${first} or ${second}`,
  }),
  "cylinder-unknown": ({ column, labels }: { column: string; labels: readonly string[] }) => ({
    found: `the column ${column} holds a reading, but the engine has no such cylinder`,
    expected: `cylinders ${listed(labels)}`,
    mend: `move the reading to its column, or add the cylinder in engine.json`,
  }),
  "gauge-over": ({ reading, scale }: { reading: string; scale: string }) => ({
    found: `${reading} is more than the gauge can show (${scale})`,
    expected: "a reading within the dial",
    mend: `check reading, unit and gauge; write >${scale.replace(/ .*/, "")} if the needle was pegged`,
  }),
  "leak-over-supply": ({ read, supply }: { read: string; supply: string }) => ({
    found: `the cylinder reads ${read}, more than the supply of ${supply}`,
    expected: "at most the supply: the two gauges disagree",
    mend: "read both gauges with the valve shut, and enter the cylinder side first: 74/80",
  }),
  "supply-missing": ({ test }: { test: string }) => ({
    found: `test ${test} has a leak-down pressure but no supply pressure`,
    expected: "the regulated pressure of the day, or the readings in percent",
    mend: "fill in regulated_psi (or _kPa, _bar)",
  }),
  "sea-level-barometer": ({ station, altitude, sea }: { station: string; altitude: string; sea: string }) => ({
    found: `a station pressure of ${station} at ${altitude} would be ${sea} at sea level, which no weather brings`,
    expected: "the pressure at the place itself, as a barometer there shows it",
    mend: "if it came from a weather report or an altimeter setting, write it in the qnh column",
  }),
  "heard-unknown": ({ text, places }: { text: string; places: readonly string[] }) => ({
    found: `${quoted(text)} is no place where air is heard`,
    expected: `${listed(places)}; with :faint where so, several joined by +`,
    mend: `write ${nearest(text, places) ?? "one of these"}`,
  }),
  "take-bad": ({ text }: { text: string }) => ({
    found: `take ${quoted(text)}`,
    expected: "1, 2, 3 … for the repeats of one test",
    mend: "write 1",
  }),
  "cylinders-bad": ({ text, labels }: { text: string; labels: readonly string[] }) => ({
    found: `cylinders ${quoted(text)}`,
    expected: `all, none, or labels of this engine separated by spaces: ${labels.join(" ")}`,
    mend: "write all, none or the labels",
  }),
  "note-value": ({ what, text, words, units }: { what: string; text: string; words: readonly string[]; units: readonly string[] }) => ({
    found: `${what} ${quoted(text)}`,
    expected: [words.length > 0 ? `one of: ${listed(words)}` : "", units.length > 0 ? `a number with one of the units ${listed(units)}` : ""].filter((part) => part !== "").join(", or "),
    mend: words[0] === undefined ? "write the number, and its unit in the unit column" : `write ${nearest(text, words) ?? words[0]}`,
  }),
  "meter-backwards": ({ here, there, date }: { here: string; there: string; date: string }) => ({
    found: `the meter reads ${here}, less than ${there} on ${date}`,
    expected: "a meter that never runs backwards",
    mend: "check the figure, or enter a service: meter replaced",
  }),
  "text-formula": ({ column }: { column: string }) => ({
    found: `${column} begins like a spreadsheet formula`,
    expected: "text that begins with a letter or a digit",
    mend: "put a word in front of it",
  }),
  "gauge-twice": ({ gauge }: { gauge: string }) => ({
    found: `the gauge ${quoted(gauge)} stands twice`,
    expected: "each gauge once",
    mend: "rename or delete one of the two",
  }),
  "json-bad": ({ reason }: { reason: string }) => ({
    found: `this is not JSON: ${reason}`,
    expected: "JSON: names and text in double quotes, a comma between entries",
    mend: "look for a missing comma, quote mark or bracket just before this place",
  }),
  "field-missing": ({ field, example }: { field: string; example: string }) => ({
    found: `no ${field}`,
    expected: `"${field}": ${example}`,
    mend: `add "${field}": ${example}`,
  }),
  "field-bad": ({ field, text, expected }: { field: string; text: string; expected: string }) => ({
    found: `${field} is ${text}`,
    expected,
    mend: `write ${expected}`,
  }),
  "field-unknown": ({ field, fields }: { field: string; fields: readonly string[] }) => {
    const near = nearest(field, fields);
    return {
      found: `nothing here is named ${quoted(field)}; it is kept but not used`,
      expected: near === undefined ? `one of: ${listed(fields)}` : quoted(near),
      mend: near === undefined ? "rename it, or leave it" : `rename it ${near}`,
    };
  },
} as const;
