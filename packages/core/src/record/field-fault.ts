// A fault inside a field of engine.json that holds a list or an object.

export interface FieldFault {
  /** From the field on: `[2].wear`, `.bore.unit`; "" for the field itself. */
  readonly path: string;
  /** What stands there; undefined where nothing does. */
  readonly value: unknown;
  readonly expected: string;
  readonly mend?: string;
}

/** What of a field is known by no name here: kept, and told. */
export interface FieldStranger {
  readonly path: string;
  readonly known: readonly string[];
}

/** The entries of an object that have no name here. */
export const strangersIn = (
  value: Readonly<Record<string, unknown>>,
  known: readonly string[],
  path: string,
): readonly FieldStranger[] =>
  Object.keys(value)
    .filter((name) => !known.includes(name))
    .map((name) => ({ path: `${path}.${name}`, known }));
