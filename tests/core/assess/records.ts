// Invented engines, made from short rows and read as a logbook is: what a test says here could stand in a file.

import {
  type CylinderAssessment,
  type EngineRecord,
  type LogbookFacts,
  type TestAssessment,
  assessTest,
  readEngineRecord,
  readGauges,
} from "@sealtrend/core";

/** A row of tests.csv by column; `cells` are the readings in the order of the cylinders. */
export interface Row {
  readonly test: string;
  readonly what?: string;
  readonly cells: string;
  readonly [column: string]: string | undefined;
}

export interface Written {
  /** Fields of engine.json beside those below. */
  readonly engine?: object;
  readonly cylinders?: number;
  readonly tests: readonly Row[];
  /** Rows of services.csv: date,meter,what,cylinders,new_baseline,by,note; what stands last may be left out. */
  readonly services?: readonly string[];
  /** Rows of notes.csv: date,meter,what,value,unit,cylinders. */
  readonly notes?: readonly string[];
  /** Of logbook.json. */
  readonly tools?: LogbookFacts["tools"];
  readonly gauges?: string;
}

const columns =
  "date,meter,take,gauge,unit,altitude_m,station_pressure_hPa,qnh_hPa,air_temp_C,crank_rpm,strokes,engine_temp,engine_temp_C,throttle,release,regulated_psi,regulated_kPa,master_psi,master_percent,by,set_aside".split(
    ",",
  );

/** The record; a fault in it is a fault of the test. */
export const recordOf = ({
  engine = {},
  cylinders = 4,
  tests,
  services = [],
  notes = [],
  tools,
  gauges,
}: Written): EngineRecord => {
  const labels = Array.from({ length: cylinders }, (_, i) => String(i + 1));
  const line = (row: Row): string => {
    const cells = row.cells.split(" ");
    const date = row.date ?? row.test.slice(0, 10);
    const unit = row.unit ?? "psi";
    const own: Readonly<Record<string, string | undefined>> = { ...row, date, unit };
    return [
      row.test,
      row.what ?? "dry",
      ...labels.map((_, i) => cells[i] ?? ""),
      ...columns.map((name) => own[name] ?? ""),
    ].join(",");
  };
  const header = ["test", "what", ...labels.map((label) => `c${label}`), ...columns].join(",");
  const { record, problems } = readEngineRecord(
    {
      id: "engine",
      engine: {
        file: "engine.json",
        text: JSON.stringify({ cylinders: labels, ignition: "spark", ...engine }),
      },
      tests: { file: "tests.csv", text: [header, ...tests.map(line), ""].join("\n") },
      services: {
        file: "services.csv",
        text: [
          "date,meter,what,cylinders,new_baseline,by,note",
          ...services.map((row) => `${row}${",".repeat(Math.max(0, 7 - row.split(",").length))}`),
          "",
        ].join("\n"),
      },
      notes: {
        file: "notes.csv",
        text: ["date,meter,what,value,unit,cylinders,by,note", ...notes.map((row) => `${row},,`), ""].join(
          "\n",
        ),
      },
    },
    gauges === undefined ? [] : readGauges(gauges, "gauges.csv").gauges,
    { demo: false, ...(tools === undefined ? {} : { tools }) },
  );
  const errors = problems.filter(({ severity }) => severity === "error");
  if (record === undefined || errors.length > 0) throw new Error(errors.map(({ found }) => found).join("; "));
  return record;
};

/** The last test, or the one named. */
export const assessed = (written: Written, id?: string): TestAssessment => {
  const record = recordOf(written);
  const test = id === undefined ? record.tests.at(-1) : record.tests.find((one) => one.id === id);
  if (test === undefined) throw new Error(`no test ${id ?? ""}`);
  return assessTest(record, test);
};

export const cylinder = ({ cylinders }: TestAssessment, label: string): CylinderAssessment => {
  const found = cylinders.find((one) => one.label === label);
  if (found === undefined) throw new Error(`no cylinder ${label}`);
  return found;
};

export const standings = ({ cylinders }: TestAssessment): (string | undefined)[] =>
  cylinders.map(({ standing }) => standing);
