// A person's own text may quote a command of ours: a note that says `sealtrend show pump`. So that it is never taken for one
// that we print, the first letter of our name has a stand-in in it, from where the text comes in until it goes out.

/** Of Unicode's private use: a letter as wide as the one it stands for, which no keyboard types. */
const standIn = "\ue5ea";
/** Our name with something behind it that could make it a command, in JSON a blank that is written out. */
const name = /\bsealtrend(?=[\s\\])/g;
const rest = "ealtrend";

/** A text that comes in: what was typed, what stands in a file. */
export const asTheirs = (text: string): string =>
  text.includes("sealtrend") ? text.replace(name, standIn + rest) : text;

/** A text that goes out, each letter as it was. */
export const asWritten = (text: string): string =>
  text.includes(standIn) ? text.replaceAll(standIn + rest, `s${rest}`) : text;
