// A list of numbers that needs no more than their bytes: typed arrays of one size, one behind the other, so that no number is ever
// moved and none is held twice while the list grows.

export interface Grown {
  at(place: number): number;
  set(place: number, value: number): void;
}

const bits = 14;
const size = 1 << bits;

/** @param make - `(length) => new Uint32Array(length)`, or what else holds the numbers */
export const grown = (make: (length: number) => Float64Array | Uint32Array): Grown => {
  const blocks: (Float64Array | Uint32Array)[] = [];
  return {
    at: (place) => blocks[place >>> bits]?.[place & (size - 1)] ?? 0,
    set: (place, value) => {
      while (blocks.length <= place >>> bits) blocks.push(make(size));
      const block = blocks[place >>> bits];
      if (block !== undefined) block[place & (size - 1)] = value;
    },
  };
};
