// A case of the shell's catalogue as it stands in cases.txt, a blank line between two cases:
//   book: boat                what it starts from, a folder of shell-logbooks; `book: none` for an empty working folder
//   with: swapped             a folder beside cases.txt, laid over it
//   state: folder page.html   what text alone cannot bring about (shell-state.ts)
//   also: file-system         another code that comes with it
//   answers: 4 | q            on a terminal, the answers to its questions
//   input: red                standard input
//   $ sealtrend show pmup     the line as typed
//   exit 2                    and all that stands on stderr, up to the first line with an arrow:
//   => $ sealtrend show pump  the line mended; what is new in it must stand in the mend that was printed
//   => first $ sealtrend ...  a line that stands in the mend word for word; the typed one passes after it
//   => sh rm page.html        the same for a line of the system
//   => files mended           a folder beside cases.txt as the mend would have the files; what is new in them, likewise
//   => by hand: why           the mend leaves a choice; what follows is not looked for in it
//   => free                   what stood in the way by itself goes away

export interface Step {
  readonly kind: "line" | "first" | "sh" | "files" | "by hand" | "free";
  readonly text: string;
}

export interface Case {
  readonly book: string;
  readonly layers: readonly string[];
  /** Other codes that come with it. */
  readonly also: readonly string[];
  readonly states: readonly string[];
  readonly answers: readonly string[] | undefined;
  readonly input: string;
  readonly typed: string;
  readonly exit: number;
  readonly expected: string;
  readonly steps: readonly Step[];
}

export const casesIn = (text: string): readonly Case[] =>
  text
    .replace(/^#.*\n/gm, "")
    .split(/\n{2,}/)
    .map((block) => block.trim())
    .filter((block) => block !== "")
    .map(caseOf);

const caseOf = (block: string): Case => {
  const lines = block.split("\n");
  const at = lines.findIndex((line) => line.startsWith("$ "));
  const exit = /^exit (\d+)$/.exec(lines[at + 1] ?? "")?.[1];
  if (at === -1 || exit === undefined) throw new Error(`no line typed, or no exit code: ${block}`);
  const all = (name: string): readonly string[] =>
    lines.slice(0, at).flatMap((line) => (line.startsWith(`${name}: `) ? [line.slice(name.length + 2)] : []));
  const after = lines.slice(at + 2);
  const arrow = after.findIndex((line) => line.startsWith("=> "));
  const said = arrow === -1 ? after : after.slice(0, arrow);
  const [answers] = all("answers");
  return {
    book: all("book")[0] ?? "boat",
    layers: all("with"),
    also: all("also"),
    states: all("state"),
    answers: answers?.split("|").map((answer) => answer.trim()),
    input: all("input")[0] ?? "",
    typed: unmasked(lines[at]?.slice(2) ?? ""),
    exit: Number(exit),
    expected: said.map((line) => `${line}\n`).join(""),
    steps: arrow === -1 ? [] : after.slice(arrow).map(stepOf),
  };
};

const stepOf = (line: string): Step => {
  const [, kind, text = ""] = /^=> (\$|first \$|sh|files|by hand:|free)(?: (.*))?$/.exec(line) ?? [];
  switch (kind) {
    case "$":
      return { kind: "line", text: unmasked(text) };
    case "first $":
      return { kind: "first", text };
    case "by hand:":
      return { kind: "by hand", text };
    case "sh":
    case "files":
    case "free":
      return { kind, text };
    default:
      throw new Error(`no such step: ${line}`);
  }
};

/** `{{u+1b}}` stands for a character that no editor shows, `{{x*300}}` for so many of it. */
const unmasked = (text: string): string =>
  text
    .replace(/\{\{(.)\*(\d+)\}\}/g, (_, sign: string, count: string) => sign.repeat(Number(count)))
    .replace(/\{\{u\+([0-9a-f]+)\}\}/g, (_, code: string) => String.fromCodePoint(Number(`0x${code}`)));

/** The words of a line as typed, quotes and all. */
export const typedWords = (line: string): readonly string[] =>
  line.match(/(?:"(?:\\.|[^"\\])*"|'[^']*'|\\.|[^\s"'\\])+/g) ?? [];

/** What a shell makes of a word as typed. */
export const unquoted = (word: string): string =>
  word.replace(
    /"((?:\\.|[^"\\])*)"|'([^']*)'|\\(.)/g,
    (_, double: string | undefined, single: string | undefined, one: string | undefined) =>
      double?.replace(/\\(["\\$`])/g, "$1") ?? single ?? one ?? "",
  );
