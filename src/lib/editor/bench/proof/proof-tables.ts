// Reference rows as the tables of a handbook: by topic and sum, then one table for each source and
// figure. What all rows of a table share is said once, above it.
import type { ReferenceMark, ReferenceRow } from '#physics/reference/reference-row.ts';
import { findReferenceFunction, referenceUnit } from '#physics/reference/work-out.ts';
import { spokenName } from '../sums/sum-words.ts';
import { topics, type TopicSum } from '../topics.ts';

export interface ProofTable {
  readonly key: string;
  readonly source: string;
  readonly mark: ReferenceMark;
  /** What the figures are: "resistance". */
  readonly figure: string;
  readonly unit: string;
  /** Inputs that differ from row to row; empty where there are too many for a column each. */
  readonly columns: readonly string[];
  /** What all rows share: "length 1000ft". */
  readonly shared: string;
  /** Notes on the table; those on single rows have a sign, which stands at the row as well. */
  readonly notes: readonly ProofNote[];
  readonly rows: readonly ProofRow[];
}

export interface ProofNote {
  /** "a", "b"; empty where the note is on the whole table. */
  readonly sign: string;
  readonly text: string;
}

export interface ProofRow {
  readonly row: ReferenceRow;
  /** What goes in: a cell for each column, or one for all. */
  readonly cells: readonly string[];
  /** Of its note; empty where it has none of its own. */
  readonly sign: string;
}

export interface ProofSum extends TopicSum {
  readonly tables: readonly ProofTable[];
}

export interface ProofTopic {
  readonly number: number;
  readonly title: string;
  readonly sums: readonly ProofSum[];
}

/** More columns than this make one: a phone has room for no more. */
const mostColumns = 2;

/** Every sum of every topic with the tables of its rows; none for a sum that has no row. */
export function buildProofTopics(rows: readonly ReferenceRow[]): readonly ProofTopic[] {
  const bySum = groupBy(rows, ({ target }) => findReferenceFunction(target)?.sum ?? target);
  return topics.map(({ number, title, sums }) => ({
    number,
    title,
    sums: sums.map((entry) => ({
      ...entry,
      tables: buildTables(bySum.get(entry.sum.id) ?? [])
    }))
  }));
}

function buildTables(rows: readonly ReferenceRow[]): ProofTable[] {
  const keyOf = ({ target, output, source, mark }: ReferenceRow): string =>
    [target, output, source, mark].join(' ');
  return [...groupBy(rows, keyOf)].map(([key, group]) => buildTable(key, group));
}

function buildTable(key: string, rows: readonly ReferenceRow[]): ProofTable {
  const [first] = rows;
  if (first === undefined) throw new RangeError(`no rows of ${key}`);
  const names = [...new Set(rows.flatMap(({ inputs }) => Object.keys(inputs)))];
  const differs = (name: string): boolean =>
    rows.length === 1 || rows.some(({ inputs }) => inputs[name] !== first.inputs[name]);
  const varying = names.filter(differs);
  const columns = varying.length > mostColumns ? [] : varying;
  const shared = names.filter((name) => !differs(name));
  const texts = [...new Set(rows.map(({ note }) => note))];
  const isShared = texts.length === 1;
  const notes = texts
    .filter((text) => text !== '')
    .map((text, index) => ({ sign: isShared ? '' : signOf(index), text }));
  return {
    key,
    source: first.source,
    mark: first.mark,
    figure: findReferenceFunction(first.target)?.title ?? spokenName(first.output),
    unit: referenceUnit(first),
    columns,
    shared: inputsText(first, shared),
    notes,
    rows: rows.map((row) => ({
      row,
      cells:
        columns.length > 0
          ? columns.map((name) => row.inputs[name] ?? '')
          : [inputsText(row, varying)],
      sign: notes.find(({ text }) => text === row.note)?.sign ?? ''
    }))
  };
}

const signOf = (index: number): string => String.fromCharCode('a'.charCodeAt(0) + index);

const inputsText = ({ inputs }: ReferenceRow, names: readonly string[]): string =>
  names
    .flatMap((name) => (inputs[name] === undefined ? [] : [`${spokenName(name)} ${inputs[name]}`]))
    .join(', ');

function groupBy<T>(items: readonly T[], keyOf: (item: T) => string): Map<string, T[]> {
  const groups = new Map<string, T[]>();
  for (const item of items) {
    const key = keyOf(item);
    const group = groups.get(key);
    if (group) group.push(item);
    else groups.set(key, [item]);
  }
  return groups;
}

/** The topics with only the tables and rows that match; sums and topics without any are left out. */
export function filterProofTopics(
  all: readonly ProofTopic[],
  isMatch: (topic: ProofTopic, sum: ProofSum, table: ProofTable, row: ProofRow) => boolean
): readonly ProofTopic[] {
  return all.flatMap((topic) => {
    const found = topic.sums.flatMap((sum) => {
      const tables = sum.tables.flatMap((table) => {
        const rows = table.rows.filter((row) => isMatch(topic, sum, table, row));
        return rows.length > 0 ? [{ ...table, rows }] : [];
      });
      return tables.length > 0 ? [{ ...sum, tables }] : [];
    });
    return found.length > 0 ? [{ ...topic, sums: found }] : [];
  });
}
