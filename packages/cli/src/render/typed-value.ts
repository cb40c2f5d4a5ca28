// The value of a field of engine.json as a person types it.

/** A value as it would be typed after `engine set ENGINE PATH`. */
export const typedValue = (value: unknown): string => {
  if (typeof value === "string") return value;
  if (Array.isArray(value) && value.every((one) => typeof one === "string")) return value.join(" ");
  if (Array.isArray(value) && value.every((one) => Array.isArray(one)))
    return value.map((bank: readonly unknown[]) => bank.join(" ")).join(" / ");
  return JSON.stringify(value);
};
