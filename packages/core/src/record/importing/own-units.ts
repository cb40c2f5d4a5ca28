// Units that stand beside single readings, in the cell or in the name of their kind: they go before what is said of the whole sheet.

import { unitIn } from "./heading-text.ts";
import type { ImportMap } from "./import-map.ts";
import type { Imported } from "./imported.ts";
import { type SheetUnit, goesWithUnit, unitOfCell } from "./reading-text.ts";

export interface OwnUnits {
  /** The unit that a reading names itself; undefined where what is said of all of them holds. */
  of(text: string, kind: string): SheetUnit | undefined;
  /** The unit in the name of the kind where the sheet has another beside the reading. */
  against(kind: string, unit: SheetUnit): SheetUnit | undefined;
  /** Takes note of a reading that came in, with what its cell named. */
  note(own: SheetUnit | undefined, supply: string): void;
  counts(): Pick<Imported["counts"], "ownUnits" | "ownSupplies">;
}

/** The unit of the cell itself, else the one in the name of the kind, which also says whether percent are lost or held. */
export const ownUnitOf = (text: string, kind: string): SheetUnit | undefined => {
  const [own, beside] = [unitOfCell(text), unitIn(kind)];
  return own === undefined || (beside !== undefined && goesWithUnit(own, beside)) ? beside : own;
};

/** Where the sheet has a unit beside every reading, that one holds, and a cell that says another is a fault. */
export const ownUnits = ({ unit }: ImportMap): OwnUnits => {
  const isBeside = unit !== undefined && !("fixed" in unit);
  const said = unit !== undefined && "fixed" in unit ? unitIn(unit.fixed) : undefined;
  const found = new Map<SheetUnit, number>();
  let supplies = 0;
  return {
    of: (text, kind) => {
      if (isBeside) return undefined;
      const own = ownUnitOf(text, kind);
      return own === undefined || said === undefined || !goesWithUnit(own, said) ? own : said;
    },
    against: (kind, value) => {
      const own = isBeside ? unitIn(kind) : undefined;
      return own === undefined || goesWithUnit(own, value) ? undefined : own;
    },
    note: (own, supply) => {
      if (own !== undefined && own !== said) found.set(own, (found.get(own) ?? 0) + 1);
      if (supply !== "") supplies++;
    },
    counts: () => ({
      ownUnits: [...found].map(([name, readings]) => ({ unit: name, readings })),
      ownSupplies: supplies,
    }),
  };
};
