// Lines that begin with # at the top of a sheet: for its reader, not for the program.

/** Empties the comment lines at the top, so that every later line keeps its number. */
export const withoutTopComments = (text: string): string =>
  text.replace(/^\uFEFF?(?:[ \t]*#[^\r\n]*(?:\r\n|\r|\n|$)|[ \t]*(?:\r\n|\r|\n))+/, (top) =>
    top.replace(/[^\r\n]+/g, ""),
  );
