// What the tests in TypeScript use of random.mjs, which bare Node reads too.

/** Even numbers in 0 ... 1. */
export declare const evenly: (start: number) => () => number;
