// A sheet and its map as they are handed on to be read.

import type { Place } from "../../problem/index.ts";
import type { IsoDate } from "../iso-date.ts";
import type { ImportMap } from "./import-map.ts";
import type { Sheet } from "./imported.ts";

/** What is known beside the sheet and its map. */
export interface ImportOptions {
  /** Where an entry of the map stands, for a message. */
  readonly place?: (path: string) => Place;
  /** A later day is left out; where it is not said, every day is taken. */
  readonly today?: IsoDate;
}

/** A sheet whose map goes with it. */
export interface ToRead {
  readonly sheet: Sheet;
  readonly map: ImportMap;
  /** With readings, from 0, ascending. */
  readonly columns: readonly number[];
  readonly today: IsoDate | undefined;
}
