// Bytes of a user's file to text and back, without losing or changing any byte that is not touched.
// Windows-1252 is decoded by a table of ours: the runtime's own decoder differs between versions in 0x80 to 0x9F.

import { asTheirs, asWritten } from "../as-theirs.ts";

export const encodings = ["utf-8", "utf-16le", "utf-16be", "windows-1252"] as const;
export type Encoding = (typeof encodings)[number];

export interface Decoded {
  /** Without the byte order mark. */
  readonly text: string;
  readonly encoding: Encoding;
  readonly bom: "bom" | "none";
  /** Bytes of a UTF-8 character cut off at the very end; the text shows U+FFFD in their place. */
  readonly cutOff: Uint8Array;
  /** `mixed`: marked as UTF-8 with other bytes in it, which the text shows as U+FFFD; such a file is not rewritten. */
  readonly flaw: "none" | "mixed";
}

/** Decodes a whole file; undefined for UTF-16 with an odd number of bytes. */
export const decode = (bytes: Uint8Array): Decoded | undefined => theirs(decodedAsMarked(bytes));

const theirs = (decoded: Decoded | undefined): Decoded | undefined =>
  decoded === undefined ? undefined : { ...decoded, text: asTheirs(decoded.text) };

const decodedAsMarked = (bytes: Uint8Array): Decoded | undefined => {
  const none = new Uint8Array();
  if (startsWith(bytes, marks["utf-16le"])) return decodedAs(bytes, "utf-16le");
  if (startsWith(bytes, marks["utf-16be"])) return decodedAs(bytes, "utf-16be");
  const bom = startsWith(bytes, marks["utf-8"]) ? "bom" : "none";
  const body = bom === "bom" ? bytes.subarray(3) : bytes;
  const whole = strictUtf8(body);
  if (whole !== undefined) return { text: whole, encoding: "utf-8", bom, cutOff: none, flaw: "none" };
  const cut = cutLength(body);
  const head = cut === 0 ? undefined : strictUtf8(body.subarray(0, body.length - cut));
  // One odd byte at the end of plain ASCII may as well be an accented letter: only a file that shows UTF-8 elsewhere,
  // or a mark, is taken as a UTF-8 file cut off.
  if (head !== undefined && (bom === "bom" || /[^\0-\x7f]/.test(head)))
    return {
      text: `${head}\uFFFD`,
      encoding: "utf-8",
      bom,
      cutOff: body.slice(body.length - cut),
      flaw: "none",
    };
  if (bom === "bom") return { text: lenientUtf8(body), encoding: "utf-8", bom, cutOff: none, flaw: "mixed" };
  return { text: fromWindows1252(bytes), encoding: "windows-1252", bom: "none", cutOff: none, flaw: "none" };
};

/** Decodes a whole file by an encoding that somebody told, with or without its mark; undefined where it does not fit. */
export const decodeAs = (bytes: Uint8Array, encoding: Encoding): Decoded | undefined =>
  theirs(decodedAs(bytes, encoding));

const decodedAs = (bytes: Uint8Array, encoding: Encoding): Decoded | undefined => {
  const start = mark(encoding);
  const bom = start.length > 0 && startsWith(bytes, [...start]) ? "bom" : "none";
  const body = bom === "bom" ? bytes.subarray(start.length) : bytes;
  const text =
    encoding === "utf-8"
      ? strictUtf8(body)
      : encoding === "windows-1252"
        ? fromWindows1252(body)
        : utf16Text(body, encoding);
  return text === undefined ? undefined : { text, encoding, bom, cutOff: new Uint8Array(), flaw: "none" };
};

/** The bytes of a new file: UTF-8 without a mark. */
export const utf8 = (text: string): Uint8Array => Buffer.from(asWritten(text), "utf8");

/** Encodes text, without a mark; or names the first character that the encoding cannot hold. */
export const encode = (
  shown: string,
  encoding: Encoding,
): { readonly bytes: Uint8Array } | { readonly character: string } => {
  const text = asWritten(shown);
  const half = /\p{Surrogate}/u.exec(text);
  if (encoding === "utf-16le") return { bytes: Buffer.from(text, "utf16le") };
  if (encoding === "utf-16be") return { bytes: Buffer.from(text, "utf16le").swap16() };
  if (half !== null) return { character: half[0] };
  if (encoding === "utf-8") return { bytes: Buffer.from(text, "utf8") };
  return toWindows1252(text);
};

/** The byte order mark of an encoding. */
export const mark = (encoding: Encoding): Uint8Array => Uint8Array.from(marks[encoding]);

const marks: Readonly<Record<Encoding, readonly number[]>> = {
  "utf-8": [0xef, 0xbb, 0xbf],
  "utf-16le": [0xff, 0xfe],
  "utf-16be": [0xfe, 0xff],
  "windows-1252": [],
};

const startsWith = (bytes: Uint8Array, start: readonly number[]): boolean =>
  start.every((byte, index) => bytes[index] === byte);

const strictUtf8 = (bytes: Uint8Array): string | undefined => {
  try {
    return new TextDecoder("utf-8", { fatal: true, ignoreBOM: true }).decode(bytes);
  } catch {
    return undefined;
  }
};

const lenientUtf8 = (bytes: Uint8Array): string =>
  new TextDecoder("utf-8", { ignoreBOM: true }).decode(bytes);

/** How many bytes at the end begin a UTF-8 character without finishing it; 0 where there is none. */
const cutLength = (bytes: Uint8Array): number => {
  for (let back = 1; back <= Math.min(3, bytes.length); back += 1) {
    const byte = bytes[bytes.length - back] ?? 0;
    if (byte < 0x80) return 0;
    if (byte < 0xc0) continue;
    const length = byte >= 0xf0 ? 4 : byte >= 0xe0 ? 3 : 2;
    return length > back ? back : 0;
  }
  return 0;
};

const utf16Text = (bytes: Uint8Array, encoding: "utf-16le" | "utf-16be"): string | undefined => {
  if (bytes.length % 2 !== 0) return undefined;
  const body = Buffer.from(bytes);
  return (encoding === "utf-16be" ? body.swap16() : body).toString("utf16le");
};

/** The characters of bytes 0x80 to 0x9F; the five bytes without one stand for themselves. */
const high = "€\x81‚ƒ„…†‡ˆ‰Š‹Œ\x8dŽ\x8f\x90‘’“”•–—˜™š›œ\x9džŸ";

export const fromWindows1252 = (bytes: Uint8Array): string =>
  Buffer.from(bytes)
    .toString("latin1")
    .replace(/[\x80-\x9f]/g, (letter) => high.charAt(letter.charCodeAt(0) - 0x80));

const toWindows1252 = (text: string): { readonly bytes: Uint8Array } | { readonly character: string } => {
  const bytes = new Uint8Array(text.length);
  let length = 0;
  for (const character of text) {
    const code = character.codePointAt(0) ?? 0;
    const inHigh = high.indexOf(character);
    const plain = code < 0x80 || (code >= 0xa0 && code <= 0xff);
    if (!plain && inHigh < 0) return { character };
    bytes[length] = plain ? code : 0x80 + inHigh;
    length += 1;
  }
  return { bytes: bytes.slice(0, length) };
};
