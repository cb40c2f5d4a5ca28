// A list of numbers that needs no more than their bytes: a typed array that doubles when it is full.

export interface Grown {
  at(place: number): number;
  set(place: number, value: number): void;
}

/** @param make - `(length) => new Uint32Array(length)`, or what else holds the numbers */
export const grown = (make: (length: number) => Float64Array | Uint32Array): Grown => {
  let values = make(1024);
  return {
    at: (place) => values[place] ?? 0,
    set: (place, value) => {
      if (place >= values.length) {
        const more = make(2 * Math.max(values.length, place));
        more.set(values);
        values = more;
      }
      values[place] = value;
    },
  };
};
