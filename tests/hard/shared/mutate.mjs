// Damage to a file, by lot: bits and bytes as a bad disk does it, cells and lines as a spreadsheet, an editor or a sender of
// ill will does it.

const separators = /[,;\t\r\n:"{}[\] ]/;

/** What a cell may hold to the harm of whoever reads it. */
const nasty = [
  "", "x", "?", ">", "-", "--5", "+5", "0", "-0", "-1", "0.0001", "0,5", "1,234", "1.234", "1.234,5", "1e5", "1E400", "0x10",
  "99999999", "999999999999999999999", "4294967296", ">999", ">", "131?", "?131", "..", ".5", "5.", "１２３", "½", "∞",
  "1900-01-01", "2100-12-31", "2026-02-30", "2026-2-3", "03/02/2026", "0000-00-00", "9999-99-99", "2026-05-03a", "today",
  "__proto__", "constructor", "prototype", "toString", "hasOwnProperty", "valueOf", "__defineGetter__", "length",
  '"', '""', '"""', "'", "`", "\\", "\\u0000", "\\ud800", "${1}", "$&", "$1", "%s", "%n", "=1+1", "@SUM(A1)", "+cmd", "\u202e",
  "\u200b", "\ufeff", "\x1b[2J", "\x07", "\x9b2J", "\b\b", "\r", "\n", "\0", "\t", ",", ";", ",,,", "null", "true", "[]", "{}",
  "[[]]", '{"a":1}', "c1", "c5", "c", "1", "2", "all", "none", "neighbour:4", "neighbour:99", "exhaust+exhaust", "intake:faint:faint",
  "dry", "wet", "heard", "oil", "regulated", "speed", "strokes", "order", "leak-down", "leak-down-lower", "psi", "%", "MPa", "mm",
  "percent-held", "red", "tester", "nobody", "warm", "cold", "re-ring", "meter replaced", "storage", "top/thrust", "0.35..0.40",
  "<0.04", "a".repeat(300), "9".repeat(80), "é", "漢字", "e\u0301".repeat(20), "spark", "compression", "unknown", "for-good", "1e-320",
].map((text) => Buffer.from(text)); // prettier-ignore

const join = (...parts) => Buffer.concat(parts);
const cut = (bytes, from, to) => join(bytes.subarray(0, from), bytes.subarray(to));
const put = (bytes, from, to, more) => join(bytes.subarray(0, from), more, bytes.subarray(to));

/** Where the word around a place begins and ends. */
const wordAt = (text, at) => {
  let from = at;
  let to = at;
  while (from > 0 && !separators.test(text[from - 1])) from -= 1;
  while (to < text.length && !separators.test(text[to])) to += 1;
  return [from, to];
};

/** Where the line around a place begins, and where the next begins. */
const lineAt = (text, at) => {
  const from = Math.max(text.lastIndexOf("\n", at - 1), text.lastIndexOf("\r", at - 1)) + 1;
  const next = /\r\n|\r|\n/g;
  next.lastIndex = at;
  const end = next.exec(text);
  return [from, end === null ? text.length : end.index + end[0].length];
};

const place = (random, bytes) => random.below(bytes.length + 1);
const inLatin = (bytes) => bytes.toString("latin1");
const word = (random, bytes) => wordAt(inLatin(bytes), place(random, bytes));
const line = (random, bytes) => lineAt(inLatin(bytes), place(random, bytes));

const ways = {
  "a bit turned": (random, bytes) => {
    const changed = Buffer.from(bytes);
    const at = random.below(Math.max(1, bytes.length));
    if (at < bytes.length) changed[at] ^= 1 << random.below(8);
    return changed;
  },
  "a byte replaced": (random, bytes) => {
    const at = place(random, bytes);
    return put(bytes, at, at + 1, Buffer.from([random.below(256)]));
  },
  "bytes put in": (random, bytes) => {
    const at = place(random, bytes);
    return put(bytes, at, at, Buffer.from(Array.from({ length: random.between(1, 4) }, () => random.below(256))));
  },
  "bytes lost": (random, bytes) => {
    const at = place(random, bytes);
    return cut(bytes, at, at + random.between(1, 20));
  },
  "bytes twice": (random, bytes) => {
    const at = place(random, bytes);
    return put(bytes, at, at, bytes.subarray(at, at + random.between(1, 60)));
  },
  "cut off": (random, bytes) => bytes.subarray(0, place(random, bytes)),
  "a word replaced": (random, bytes) => put(bytes, ...word(random, bytes), random.pick(nasty)),
  "a word put in": (random, bytes) => {
    const at = place(random, bytes);
    return put(bytes, at, at, random.pick(nasty));
  },
  "a word of elsewhere": (random, bytes) => {
    const [from, to] = word(random, bytes);
    return put(bytes, ...word(random, bytes), bytes.subarray(from, to));
  },
  "a digit changed": (random, bytes) => {
    const digits = [...inLatin(bytes).matchAll(/\d/g)].map(({ index }) => index);
    if (digits.length === 0) return bytes;
    const at = random.pick(digits);
    return put(bytes, at, at + 1, Buffer.from(String(random.below(10))));
  },
  "a line lost": (random, bytes) => cut(bytes, ...line(random, bytes)),
  "a line twice": (random, bytes) => {
    const [from, to] = line(random, bytes);
    return put(bytes, to, to, bytes.subarray(from, to));
  },
  "a line elsewhere": (random, bytes) => {
    const [from, to] = line(random, bytes);
    const [at] = line(random, bytes);
    return put(bytes, at, at, bytes.subarray(from, to));
  },
}; // prettier-ignore

const names = Object.keys(ways);

/** One to three ways of damage, one after the other. @returns the bytes, and in words what was done */
export const mutate = (random, bytes) => {
  const done = [];
  let changed = bytes;
  const times = random.pick([1, 1, 1, 2, 3]);
  for (let n = 0; n < times; n += 1) {
    const name = random.pick(names);
    done.push(name);
    changed = ways[name](random, changed);
  }
  return { bytes: changed, what: done.join(", then ") };
};
