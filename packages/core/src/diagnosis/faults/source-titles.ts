// What stands behind a published statement, in words: sheets name sources by key, screens by title.

import { type Faults, type FaultStatus, findingNames, signNames } from "./faults.ts";
import { valueForEach } from "./value-for-each.ts";

/** Title and issuer of a source, by its key in data/sources.csv. */
export type SourceTitles = Readonly<Record<string, string>>;

/** The same tables with titles where something is published; what is no key stays as it was typed. */
export const withTitles = (faults: Faults, titles: SourceTitles): Faults => {
  const titled = <T extends { readonly status: FaultStatus; readonly source: string }>(row: T): T => ({
    ...row,
    source: titleOf(row.status, row.source, titles),
  });
  const { causes, states, shifts, tests } = faults;
  const findings = valueForEach(findingNames, (name) => {
    const finding = faults.findings[name];
    const columns = finding.columns.map((column) => ({
      ...column,
      source: titleOf(column.link, column.source, titles),
    }));
    return { ...finding, columns };
  });
  const signs = valueForEach(signNames, (name) => titled(faults.signs[name]));
  return {
    ...faults,
    causes: causes.map(titled),
    states: states.map(titled),
    shifts: shifts.map(titled),
    tests: tests.map(titled),
    findings: findings ?? faults.findings,
    signs: signs ?? faults.signs,
  };
};

const titleOf = (status: FaultStatus, source: string, titles: SourceTitles): string => {
  const keys = source.split(/\s+/);
  const known = keys.flatMap((key) => titles[key] ?? []);
  return status === "published" && known.length === keys.length ? known.join("; ") : source;
};
