// Text for a terminal that shows ASCII only: our own signs by their plain twins, letters without their marks.

const twins: Readonly<Record<string, string>> = {
  " · ": "; ",
  "·": ".",
  "±": "+-",
  "…": "...",
  "−": "-",
  "–": "-",
  "—": "-",
  "×": "x",
  "°": " deg ",
  "†": "*",
  µ: "u",
  μ: "u",
  "→": "->",
  "≤": "<=",
  "≥": ">=",
  "\t": " ",
  "’": "'",
  "“": '"',
  "”": '"',
  ß: "ss",
  æ: "ae",
  ø: "o",
};

const own = /( · |[^\x20-\x7e\n])/gu;

/** The text in ASCII. A letter that has no plain twin becomes `?`. */
const asciiText = (text: string): string =>
  text.replace(own, (sign) => {
    const plain = twins[sign] ?? sign.normalize("NFKD").replace(/\p{M}/gu, "");
    return /^[\x20-\x7e]+$/.test(plain) ? plain : /^\p{M}$/u.test(sign) ? "" : "?";
  });

/** JSON text in ASCII, its other letters as `\\u00b5`. */
export const escaped = (json: string): string =>
  json.replace(/[^\n\x20-\x7e]/g, (unit) => `\\u${unit.charCodeAt(0).toString(16).padStart(4, "0")}`);

/** A screen as the terminal can show it. */
export const shownOn = ({ unicode }: { readonly unicode: boolean }, text: string): string =>
  unicode ? text : asciiText(text);
