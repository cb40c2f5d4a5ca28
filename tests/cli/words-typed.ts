// The words of a line as a shell would hand them over, the program's name taken off; what comes after `|`, `<` or `>` is
// not ours.

export const wordsTyped = (line: string): readonly string[] =>
  [
    ...((line.split("sealtrend ")[1] ?? "").split(/ [|<>] /)[0] ?? "").matchAll(
      /"([^"]*)"|[^\s"]+(?:"[^"]*")?/g,
    ),
  ].map(([whole, quoted]) => quoted ?? whole.replaceAll('"', ""));
