// Cylinders by their labels, as they stand in a sentence.

/** `2`, `2 and 3`, `1, 2 and 3`. */
export const listed = (items: readonly string[]): string =>
  items.length < 2 ? items.join("") : `${items.slice(0, -1).join(", ")} and ${items.at(-1) ?? ""}`;

export const labelsOf = (some: readonly { readonly label: string }[]): string =>
  listed(some.map(({ label }) => label));
