// Readings as edits: what was typed goes into the document with its day and its row in words; an emptied
// field takes it away. What no row of a sheet asks for any more is kept and shown.
import { setProof } from '#document/edits.ts';
import type { ChassisDocument, Edit, Reading } from '#document/index.ts';
import type { TestRow, TestSheet } from '#plan/index.ts';

export const readingEdit = (row: TestRow, typed: string, on: string): Edit =>
  setProof({
    readings: {
      [row.id]:
        typed.trim() === '' ? null : { typed: typed.trim(), where: `${row.what}, ${row.where}`, on }
    }
  });

export const recordEdit = (sheet: TestSheet['id'], what: string, text: string): Edit =>
  setProof({ records: { [sheet]: { [what]: text.trim() === '' ? null : text.trim() } } });

/** Readings of a sheet whose row is gone: a net has changed, or a wire is no longer to be tested. */
export const readingsWithoutRow = (
  { proof }: ChassisDocument,
  { id, rows }: TestSheet
): readonly (readonly [id: string, reading: Reading])[] => {
  const known = new Set(rows.map((row) => row.id));
  return Object.entries(proof?.readings ?? {}).filter(
    ([row]) => row.startsWith(`${id} `) && !known.has(row)
  );
};
