// What is asked of one typed reading, and everything that can be answered.

import type { AbsolutePressure, GaugePressure, Temperature } from "../quantity/index.ts";
import type { LeakReading } from "./alpha.ts";
import type { Restated } from "./carry-leak.ts";
import type { FlowModel } from "./flow-model.ts";
import type { LeakJudgement } from "./judge.ts";
import type { HoleOfReading, HoleReading } from "./known-holes.ts";
import type { LeakFigures } from "./leak.ts";
import type { OtherTester, RestateRefusal } from "./restate.ts";
import type { Restrictor } from "./restrictor.ts";
import type { Span } from "./unknown-supply.ts";
import type { Warmth } from "./warmth.ts";

/** Without its supply a pressure tells something only on a tester with open holes; a percent dial may be all there is. */
export type Typed =
  | { readonly kind: "pressure"; readonly cylinder: GaugePressure; readonly supply?: GaugePressure }
  | { readonly kind: "lost"; readonly lost: number; readonly supply?: GaugePressure };

/** Open holes read on the tester, in the kind of the typed reading. */
export interface KnownHoles {
  readonly holes: readonly HoleReading[];
  /** The supply they were read at, where it is known. */
  readonly supply?: GaugePressure;
}

/** Why open holes of known size do not tell the leak. */
export type HolesRefusal =
  | "holes-outside"
  | "holes-contradictory"
  /** One hole, and no supply beside which it could serve as a master. */
  | "holes-too-few"
  /** The cylinder was read at another supply than the holes. */
  | "holes-other-supply";

/** One typed leak-down reading, with what is known of its tester and, if asked, of another one. */
export interface LeakQuestion {
  readonly typed: Typed;
  readonly restrictor: Restrictor;
  /** What the tester read with open holes; counts where the bore is not known. */
  readonly knownHoles?: KnownHoles;
  readonly ambient: AbsolutePressure;
  /** Standard uncertainty of each of the two dials [Pa]. */
  readonly uDial: number;
  readonly warmth?: Warmth;
  /** Absent: 20 °C. */
  readonly supplyTemperature?: Temperature;
  /** Absent: nothing is to be restated. */
  readonly other?: OtherTester;
  readonly model?: FlowModel;
}

/** Everything that can be answered to a leak question. Fractions, alpha beside the restrictor, holes in m. */
export interface LeakAnswer {
  /** Fraction lost as read; negative where the dials disagree, absent for a pressure without its supply. */
  readonly lost?: number;
  /** Absent where the supply is not known. */
  readonly reading?: LeakReading;
  readonly judgement?: LeakJudgement;
  /** By the flow model, also where the dials do not carry them; absent at no pressure and where the supply is not known. */
  readonly figures?: LeakFigures;
  /** Where the supply is not known: alpha over those in use. */
  readonly alphaSpan?: Span;
  /** And the equal hole [m], where the bore is known. */
  readonly holeSpan?: Span;
  /** By the open holes the tester was read with; then there are no figures, for it may have no restrictor at all. */
  readonly byHoles?: HoleOfReading;
  readonly restated?: Restated;
  /** The other tester is the first again, at the same supply and height. */
  readonly unchanged?: "same-tester";
  readonly refused?: RestateRefusal | HolesRefusal;
}
