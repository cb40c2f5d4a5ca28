// Emphasis, where the terminal may have it. Bold only: no meaning ever hangs on colour.

import { styleText } from "node:util";

export interface Style {
  /** The sentence that matters most on a screen. */
  strong(text: string): string;
}

const bold: Style = { strong: (text) => styleText("bold", text, { validateStream: false }) };
const none: Style = { strong: (text) => text };

/** Emphasis as the surroundings allow it (`ioFacts` decides). Emphasise finished lines, after padding and cutting. */
export const style = (surroundings: { readonly colour: boolean }): Style =>
  surroundings.colour ? bold : none;
