// Memory kept small where a file may be as large as files can be: V8 lets what nobody needs any more grow to four times what is in
// use before it clears it away, which would be most of what the command takes.

/** Below this a run is over before it matters, and faster. */
const large = 1_048_576;

/** Has the rest of this run cleared away whenever it has grown by three tenths. @param bytes - of what is to be read */
export const sparing = (bytes: number): void => {
  // Loaded only where it is needed: it costs more than the rest of a start. That V8 is told on the way is safe: it asks for this
  // number each time that it decides when to clear away next, and never what.
  // V8 13 is that of Node 24; a later one might not know the word, and would say so.
  const isKnown = Number.parseInt(process.versions.v8, 10) <= 13;
  if (bytes >= large && isKnown)
    process.getBuiltinModule("node:v8").setFlagsFromString("--heap-growing-percent=30");
};
