// Text in one order everywhere. No collator of a language: building one costs more than reading a logbook, and its order
// would differ from machine to machine.

/** For `sort`: by code unit, capitals first. */
export const byText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
