// A JSON document as text that steers no terminal.

const steering = /[\u007f-\u009f\u061c\u200b-\u200f\u2028-\u202e\u2060-\u206f\ufeff]/g;

/** Indented, newline at the end. Characters that hide or steer are written `\u….`: the value stays what it was. */
export const jsonText = (value: unknown): string =>
  `${JSON.stringify(value, undefined, 2).replace(
    steering,
    (character) => `\\u${character.charCodeAt(0).toString(16).padStart(4, "0")}`,
  )}\n`;
