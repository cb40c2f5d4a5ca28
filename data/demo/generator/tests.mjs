// The rows of one test: what truly is, times the day, the gauge and the noise, rounded as the dial is read.
// Noise: the simulator of the project's statistics notes without its rare bad readings (our assumption, no
// published repeatability is known): day 2 %, cylinder in a test 1 %, one reading 1.5 %; leak-down 2, 1 and 0.7 %.

import { gauges, logbook } from "./farm.mjs";

const noise = { day: 0.02, cell: 0.01, reading: 0.015, leakDay: 0.02, leakCell: 0.01, leakReading: 0.007 };

export const conditionColumns = (
  "altitude_m,station_pressure_hPa,qnh_hPa,air_temp_C,crank_rpm,crank_V,strokes,engine_temp,engine_temp_C," +
  "throttle,plugs_out,release,regulated_psi,master_psi"
).split(",");

const yearsBetween = (from, to) => (Date.parse(to) - Date.parse(from)) / (365.25 * 86_400_000);

/** Pressure at `altitude` [m] as a share of that at sea level: standard atmosphere, troposphere. */
const pressureShare = (altitude) => (1 - (0.0065 * altitude) / 288.15) ** 5.25588;

/** What slow or fast cranking does to a reading: P = P0 / (1 + Ns / 2N)^2 with Ns = 70 rpm. */
const speedShare = (rpm, reference) => ((1 + 35 / reference) / (1 + 35 / rpm)) ** 2;

const rounded = (value, step) => (Math.round(value / step) * step).toFixed(step < 1 ? 1 : 0);

const scaleOf = (name) => gauges.find(({ gauge }) => gauge === name)?.scale ?? 0;

/** What has truly happened to a cylinder by `date`, in ln of its pressure. */
const truth = (engine, label, date) =>
  engine.changes
    .filter(
      (change) =>
        change.label === label && date >= change.since && (change.until === undefined || date < change.until),
    )
    .reduce((sum, change) => sum + change.at(yearsBetween(change.since, date)), 0);

/** A leak-down on the engine's own tester: what each cylinder holds of the regulated pressure. */
const leakDown = (engine, test, { state, day, cells, normal }) => {
  const held = (ln, i) => ln + noise.leakDay * day + noise.leakCell * cells[i] + noise.leakReading * normal();
  const read = (ln, i) =>
    rounded(Math.min(engine.regulated_psi, engine.leakLevel * Math.exp(held(ln, i))), 1);
  return [["leak-down", 1, test.gauge, "psi", state.map(read)]];
};

/** Cranking readings of one test: dry repeats on one or two gauges, then first strokes and oiled readings. */
const cranking = (engine, test, { state, day, cells, normal, station }) => {
  const labels = engine.json.cylinders;
  const worn = engine.commonPerYear * yearsBetween(engine.tests[0].date, test.date);
  const common = noise.day * day - worn + Math.log(station / 1013.25);
  const level = engine.level * (test.rpm === undefined ? 1 : speedShare(test.rpm, engine.speedReference));
  const read = (i, gauge, share) =>
    rounded(
      share *
        level *
        Math.exp(common + scaleOf(gauge) + state[i] + noise.cell * cells[i] + noise.reading * normal()),
      engine.step,
    );
  const mark = (label) => (String(test.doubtful) === label ? "?" : "");
  const takes = Array.from({ length: test.takes ?? 1 }, (_, place) => place + 1);
  const used = test.second === undefined ? [test.gauge] : [test.gauge, test.second];
  const dry = used.flatMap((gauge) =>
    takes.map((take) => [
      "dry",
      take,
      gauge,
      engine.unit,
      labels.map((label, i) => read(i, gauge, 1) + mark(label)),
    ]),
  );
  const { firstStroke, wet } = test;
  const first = (label, i) => read(i, test.gauge, firstStroke.weak[label] ?? firstStroke.share);
  const oiled = (label, i) =>
    wet.rise[label] === undefined ? "x" : read(i, test.gauge, Math.exp(wet.rise[label]));
  const oil = (label) => (wet.rise[label] === undefined ? "x" : wet.oil_ml);
  return [
    ...dry,
    ...(firstStroke === undefined ? [] : [["first-stroke", 1, test.gauge, engine.unit, labels.map(first)]]),
    ...(wet === undefined
      ? []
      : [
          ["wet", 1, test.gauge, engine.unit, labels.map(oiled)],
          ["oil", 1, "", "", labels.map(oil)],
        ]),
  ];
};

/** The readings of one test: [what, take, gauge, unit, cells]. */
const readings = (engine, test, day) => {
  if (test.literal !== undefined) return [["dry", 1, test.gauge, test.literal.unit, test.literal.cells]];
  return engine.leakLevel === undefined ? cranking(engine, test, day) : leakDown(engine, test, day);
};

/** The rows of one test as they stand in tests.csv. */
export const rowsOf = (engine, test, normal) => {
  const weather = 1013 + 7 * normal();
  const station = Math.round(weather * pressureShare(engine.always.altitude_m ?? logbook.homeAltitude_m));
  const day = normal();
  const cells = engine.json.cylinders.map(() => normal());
  const state = engine.json.cylinders.map(
    (label, i) => engine.offsets[i] + truth(engine, label, test.date) + (test.spoilt?.[i] ?? 0),
  );
  const rows = readings(engine, test, { state, day, cells, normal, station });
  if (test.leak !== undefined) rows.push(["leak-down", 1, "tester", "psi", test.leak.read]);
  if (test.heard !== undefined) rows.push(["heard", 1, "", "", test.heard]);

  const conditions = {
    ...engine.always,
    station_pressure_hPa: test.station === true ? station : "",
    qnh_hPa: test.qnh === true ? Math.round(weather) : "",
    air_temp_C: test.air,
    crank_rpm: test.rpm,
    regulated_psi: test.leak?.regulated_psi ?? engine.always.regulated_psi,
    ...test.conditions,
  };
  const ofTheDay = [
    ...conditionColumns.map((column) => conditions[column]),
    test.by ?? "me",
    test.setAside,
    test.note,
  ];
  return rows.map(([what, take, gauge, unit, values], place) => [
    `${test.date}a`,
    ...[test.date, test.meter, what, take, gauge, unit],
    ...values,
    ...(place === 0 ? ofTheDay : ofTheDay.map(() => "")),
  ]);
};
