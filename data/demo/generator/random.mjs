// Random numbers that are the same on every machine.

/** The small fast counter generator sfc32; a number in [0, 1) a call. */
export const uniformFrom = (start) => {
  let [a, b, c, d] = [start >>> 0, 0x9e3779b9, 0x243f6a88, 0xb7e15162];
  const next = () => {
    const t = (((a + b) | 0) + d) | 0;
    d = (d + 1) | 0;
    a = b ^ (b >>> 9);
    b = (c + (c << 3)) | 0;
    c = (((c << 21) | (c >>> 11)) + t) | 0;
    return (t >>> 0) / 4294967296;
  };
  for (let warmUp = 0; warmUp < 20; warmUp += 1) next();
  return next;
};

/** Normal numbers by Box and Muller, standard deviation 1. */
export const normalFrom = (uniform) => () =>
  Math.sqrt(-2 * Math.log(1 - uniform())) * Math.cos(2 * Math.PI * uniform());
