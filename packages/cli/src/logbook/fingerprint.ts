// Fingerprints of file contents. node:crypto is loaded when the first one is taken: a command that only reads needs none.

const crypto = (): typeof import("node:crypto") => process.getBuiltinModule("node:crypto");

export const sha256 = (content: Uint8Array | string): string =>
  crypto().createHash("sha256").update(content).digest("hex");

/** A name no other process takes. */
export const uniqueName = (): string => crypto().randomUUID();
