// A logbook of one engine from bytes to records, as the command reads it, without a disk.

const csvNames = ["tests", "services", "notes", "measurements"];

/** Text of each file; a file that holds no text is left out and counted.
 *  @returns texts by name, and the number of files that were refused as bytes */
const textsOf = (program, files) => {
  const texts = {};
  let refused = 0;
  for (const [name, bytes] of Object.entries(files)) {
    const text = program.decode(bytes)?.text;
    if (text === undefined || text.includes("\0")) refused += 1;
    else texts[name] = text;
  }
  return { texts, refused };
};

/** @returns record, problems (of every file) and the texts they are about */
export const readBook = (program, files) => {
  const { texts, refused } = textsOf(program, files);
  const own =
    texts["logbook.json"] === undefined
      ? { logbook: { demo: false }, problems: [] }
      : program.readLogbook(texts["logbook.json"], "logbook.json");
  const shelf =
    texts["gauges.csv"] === undefined
      ? { gauges: [], problems: [] }
      : program.readGauges(texts["gauges.csv"], "gauges.csv");
  const named = (name) => ({ file: name, text: texts[name] });
  const tables = csvNames.filter((name) => texts[`${name}.csv`] !== undefined);
  const { record, problems } = program.readEngineRecord(
    {
      id: "pump",
      engine: { file: "engine.json", text: texts["engine.json"] ?? "{}" },
      ...Object.fromEntries(tables.map((name) => [name, named(`${name}.csv`)])),
    },
    shelf.gauges,
    own.logbook,
  );
  return {
    record,
    gauges: shelf.gauges,
    problems: [...own.problems, ...shelf.problems, ...problems],
    texts: { "engine.json": "{}", ...texts },
    refused,
  };
};
