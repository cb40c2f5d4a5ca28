// Walks through JSON text once, to say where each field stands and, in the words of a person who edits it by hand,
// where and why it is no JSON. What the engine of the day says of a fault differs from one release to the next.

export interface JsonFault {
  readonly offset: number;
  readonly length: number;
  readonly reason: string;
  readonly mend: string;
}

export interface JsonScan {
  /** Offset of each name of an object by its dotted path, such as `limits.compression.minimum`, and of each entry of a list. */
  readonly fields: ReadonlyMap<string, number>;
  /** Each number as it is written, by its path, such as `limits.clearances[0].wear[1]`: reading it loses zeros at its end. */
  readonly numbers: ReadonlyMap<string, string>;
  /** The first fault; the text is JSON where there is none. */
  readonly fault?: JsonFault;
}

const deepest = 32;
/** Of a text between quotes: more than a page; patterns that look through it may take time by the square of its length. */
const longest = 2_000;
/** Of a whole file, in characters, and of the names and entries in it: a hundred times what the largest engine needs. */
const most = { characters: 1_000_000, entries: 5_000 } as const;
const blank = /[ \t\r\n]*/y;
// Unrolled, so that a long text costs the pattern no stack.
// eslint-disable-next-line no-control-regex -- JSON allows no bare control character between quotes
const stringShape = /"[^"\\\u0000-\u001f]*(?:\\(?:["\\/bfnrt]|u[0-9A-Fa-f]{4})[^"\\\u0000-\u001f]*)*"/y;
const numberShape = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?(?![\w.+-])/y;
const wordShape = /(?:true|false|null)(?!\w)/y;
const anyWord = /[^\s,:[\]{}"]+/y;

/** Scans JSON text; a name that stands twice in one object is a fault too. */
export const scanJson = (text: string): JsonScan => {
  const scanner = new Scanner(text);
  const fault = scanner.whole();
  const { fields, numbers } = scanner;
  return { fields, numbers, ...(fault === undefined ? {} : { fault }) };
};

class Scanner {
  readonly fields = new Map<string, number>();
  readonly numbers = new Map<string, string>();
  readonly #text: string;
  #at = 0;
  constructor(text: string) {
    this.#text = text;
  }

  whole(): JsonFault | undefined {
    if (this.#text.length > most.characters)
      return this.#fault(
        `more than ${String(most.characters)} characters`,
        "take out what does not belong here",
      );
    const fault = this.#value("", 0);
    if (fault !== undefined) return fault;
    this.#take(blank);
    if (this.#at < this.#text.length)
      return this.#fault(
        "something stands after the end",
        "delete it, or look for a bracket too many before it",
      );
    return undefined;
  }

  #value(path: string, depth: number): JsonFault | undefined {
    this.#take(blank);
    if (depth > deepest) return this.#fault("brackets are nested too deep", "take the innermost ones out");
    const sign = this.#text[this.#at];
    if (sign === "{") return this.#object(path, depth);
    if (sign === "[") return this.#list(path, depth);
    if (sign === '"') return this.#string() === "" ? this.#stringFault() : undefined;
    const number = this.#take(numberShape);
    if (number !== "") this.numbers.set(path, number);
    if (number !== "" || this.#take(wordShape) !== "") return undefined;
    return this.#valueFault();
  }

  #object(path: string, depth: number): JsonFault | undefined {
    const names = new Set<string>();
    return this.#entries("}", () => {
      if (this.fields.size >= most.entries) return this.#entriesFault();
      if (this.#text[this.#at] !== '"') return this.#nameFault();
      const start = this.#at;
      const written = this.#string();
      if (written === "") return this.#stringFault();
      const name = JSON.parse(written) as string;
      if (names.has(name)) {
        this.#at = start;
        return this.#fault(`${written} stands twice`, "delete one of the two", written.length);
      }
      names.add(name);
      const inner = path === "" ? name : `${path}.${name}`;
      if (!this.fields.has(inner)) this.fields.set(inner, start);
      this.#take(blank);
      if (this.#text[this.#at] !== ":")
        return this.#fault(`no colon after ${written}`, `write ${written}: and its value`);
      this.#at++;
      return this.#value(inner, depth + 1);
    });
  }

  #list(path: string, depth: number): JsonFault | undefined {
    let count = 0;
    return this.#entries("]", () => {
      if (this.fields.size >= most.entries) return this.#entriesFault();
      const inner = `${path}[${String(count++)}]`;
      this.fields.set(inner, this.#at);
      return this.#value(inner, depth + 1);
    });
  }

  /** The entries between brackets, with a comma between two of them. */
  #entries(close: "}" | "]", entry: () => JsonFault | undefined): JsonFault | undefined {
    this.#at++;
    this.#take(blank);
    if (this.#text[this.#at] === close) {
      this.#at++;
      return undefined;
    }
    for (;;) {
      this.#take(blank);
      const fault = entry();
      if (fault !== undefined) return fault;
      this.#take(blank);
      const sign = this.#text[this.#at];
      if (sign === close) {
        this.#at++;
        return undefined;
      }
      if (sign !== ",") return this.#betweenFault(close);
      const comma = this.#at;
      this.#at++;
      this.#take(blank);
      if (this.#text[this.#at] !== close) continue;
      this.#at = comma;
      return this.#fault(`a comma after the last entry before ${close}`, "take the comma out");
    }
  }

  #entriesFault(): JsonFault {
    return this.#fault(
      `more than ${String(most.entries)} names and entries`,
      "take out what does not belong here",
    );
  }

  #valueFault(): JsonFault {
    const word = this.#word();
    if (word === "")
      return this.#ended() ?? this.#fault("a value is missing here", 'write it, such as "warm" or 4');
    const decimal = /^[+.]?\d/.test(word);
    if (decimal) return this.#fault(`${word} is no number`, "write it as 4 or 0.25", word.length);
    if (/^(yes|no|true|false)$/i.test(word))
      return this.#fault(
        `${word} is no value`,
        `write ${/^[yt]/i.test(word) ? "true" : "false"}`,
        word.length,
      );
    return this.#fault(`${word} stands without quotes`, `write ${inQuotes(word)}`, word.length);
  }

  #nameFault(): JsonFault {
    const word = this.#word();
    if (word === "")
      return this.#ended() ?? this.#fault("a name is missing here", 'write it in quotes: "name": …');
    const mend = /^[\d.]/.test(word) ? "write a decimal point, not a comma" : this.#nameMend(word);
    return this.#fault(`${word} stands where a name in quotes belongs`, mend, word.length);
  }

  /** A name alone in its quotes would be no JSON yet: its value is asked for too, and the bracket where the text ends. */
  #nameMend(word: string): string {
    const behind = this.#text.slice(this.#at + word.length).trimStart();
    const name = inQuotes(word);
    if (behind.startsWith(":")) return `write ${name}`;
    return `write ${name}: and its value${behind === "" ? " and a }" : ""}`;
  }

  #betweenFault(close: "}" | "]"): JsonFault {
    return (
      this.#ended() ??
      this.#fault(`no comma and no ${close} before this`, "put a comma after the entry before this")
    );
  }

  /** A whole text in its quotes; "" where there is none, or none that may stand here. */
  #string(): string {
    const start = this.#at;
    const written = this.#take(stringShape);
    if (written.length <= longest + 2) return written;
    this.#at = start;
    return "";
  }

  #stringFault(): JsonFault {
    stringShape.lastIndex = this.#at;
    const whole = stringShape.exec(this.#text)?.[0];
    if (whole !== undefined)
      return this.#fault(`a text longer than ${String(longest)} characters`, "shorten it", whole.length);
    const line = /[^\r\n]*/y;
    line.lastIndex = this.#at;
    const length = line.exec(this.#text)?.[0].length ?? 1;
    const backslash = this.#text.slice(this.#at, this.#at + length).includes("\\");
    const mend = `put a " at its end${backslash ? "; a \\ is written twice" : ""}`;
    return this.#fault("a quote mark opens here and does not close on this line", mend, 1);
  }

  #ended(): JsonFault | undefined {
    return this.#at < this.#text.length
      ? undefined
      : this.#fault("it ends too early", "close what is open: add the } or ] that is missing");
  }

  #word(): string {
    anyWord.lastIndex = this.#at;
    return anyWord.exec(this.#text)?.[0] ?? "";
  }

  /** Goes past what the pattern finds here; "" where it finds nothing. */
  #take(pattern: RegExp): string {
    const sticky = pattern;
    sticky.lastIndex = this.#at;
    const found = sticky.exec(this.#text)?.[0] ?? "";
    this.#at += found.length;
    return found;
  }

  #fault(reason: string, mend: string, length = 1): JsonFault {
    return { offset: this.#at, length, reason, mend };
  }
}

/** A word as a text of JSON, without the quote marks of another kind around it. */
const inQuotes = (word: string): string => JSON.stringify(word.replace(/^['“”]|['“”]$/g, ""));
