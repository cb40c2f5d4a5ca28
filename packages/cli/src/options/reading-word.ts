// Which words go on with an unquoted list of readings, `--dry 152 150 >300 x tractor`: the last one does not.

const piece =
  /^(?:[<>~+-]?[.,]?\d\S*|[xX?-]|(?:intake|exhaust|crankcase|coolant|neighbour|plug|outside|none)(?:[:+]\S*)?|[A-Za-z][\w.]*=\S+)$/;

/** Begins with a digit, after a sign or a mark at most (`152`, `-5C`, `>300`, `131?`, `74/80`), or is a cell not
 *  taken (`x`, `-`, `?`), a place where air is heard (`exhaust:faint`, `intake+plug`), or a name with its value
 *  (`work.reRing=620`); several of these in one quoted word count too. Any other word is none: an engine's name
 *  begins with a letter. */
export const isReadingWord = (word: string): boolean =>
  word.trim() !== "" &&
  word
    .trim()
    .split(/\s+/)
    .every((part) => piece.test(part));
