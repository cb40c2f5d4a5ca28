// P_0 of one test: what this engine would read on this gauge without losses, from all that is known of it.

import {
  type LossFreePressure,
  type ReadingAtSpeed,
  type UsualLossSpeed,
  combineLossFree,
  defaultOrNew,
  lossFreeByDefault,
  lossFreeFromGeometry,
  lossFreeFromNew,
  sweptVolume,
  usualLossSpeed,
} from "../../cranking/index.ts";
import type { Volume } from "../../quantity/index.ts";
import type { Engine, EngineRecord } from "../../record/index.ts";

export interface KnownLossFree {
  readonly lossFree: LossFreePressure;
  /** What engine.json says of the calibration that it comes from. */
  readonly calibration?: string;
}

/** Volume swept by one cylinder, where bore and stroke are known. */
export const sweptOf = ({ geometry: { bore, stroke } }: Engine): Volume | undefined =>
  bore === undefined || stroke === undefined ? undefined : sweptVolume({ bore, stroke });

export const usualLossOf = (engine: Engine): UsualLossSpeed =>
  usualLossSpeed(engine.ignition, sweptOf(engine));

/** A calibration of this engine on this gauge stands alone: with one P_0 for all years the loss speeds tell the wear. Else
 *  the middle of the test or the maker's figure, with the sizes of the engine.
 *  @param middle - of this test  @param gauge - that read it */
export const lossFreeOf = (
  record: EngineRecord,
  middle: ReadingAtSpeed,
  gauge: string | undefined,
): KnownLossFree => {
  const { engine } = record;
  const calibrated = calibrationOf(engine, gauge);
  if (calibrated !== undefined) return calibrated;
  const usual = usualLossOf(engine);
  const { new: asNew, speed } = engine.compressionLimits;
  const fromNew =
    asNew === undefined || speed === undefined || !(asNew > 0 && speed > 0)
      ? undefined
      : lossFreeFromNew({ pressure: asNew, speed }, usual);
  const own = defaultOrNew(lossFreeByDefault(middle, usual), fromNew);
  const geometry = geometryOf(record, gauge);
  return { lossFree: geometry === undefined ? own : combineLossFree([own, geometry]) };
};

/** Entries that name this gauge go before those that name none; several are independent estimates. */
const calibrationOf = ({ crankingCurves }: Engine, gauge: string | undefined): KnownLossFree | undefined => {
  if (crankingCurves.length === 0) return undefined;
  const named = crankingCurves.filter((curve) => curve.gauge !== undefined && curve.gauge === gauge);
  const curves = named.length > 0 ? named : crankingCurves.filter((curve) => curve.gauge === undefined);
  if (curves.length === 0) return undefined;
  const said = curves.flatMap(({ source }) => source ?? []);
  return {
    lossFree: combineLossFree(
      curves.map(({ P0, uncertainty }): LossFreePressure => ({
        pressure: P0,
        uncertainty,
        sources: ["calibration"],
        ownShare: 0,
      })),
    ),
    ...(said.length === 0 ? {} : { calibration: said.join("; ") }),
  };
};

const geometryOf = (
  { engine, gauges }: EngineRecord,
  name: string | undefined,
): LossFreePressure | undefined => {
  const { geometry, ignition, use } = engine;
  const { bore, stroke, compressionRatio } = geometry;
  if (bore === undefined || stroke === undefined || compressionRatio === undefined) return undefined;
  if (ignition === "unknown") return undefined;
  const gauge = gauges.find(({ id }) => id === name);
  const hose = gauge?.valveEnd === "gauge" ? gauge.hose : undefined;
  const sizes = {
    ...geometry,
    bore,
    stroke,
    compressionRatio,
    ...(hose === undefined ? {} : { hose }),
  };
  return lossFreeFromGeometry(sizes, ignition === "spark" && use === "motorcycle" ? "motorcycle" : ignition);
};
