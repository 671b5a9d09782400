// A table of a sheet as a spreadsheet reads it: a byte order mark, numbers as numbers, and no cell that
// it would run.
import Papa from 'papaparse';
import type { Table } from './sheet.ts';

export const tableToCsv = ({ columns, rows }: Table): string =>
  '\uFEFF' +
  Papa.unparse(
    { fields: columns.map(({ heading }) => heading), data: rows.map((row) => [...row]) },
    { newline: '\r\n', escapeFormulae: true }
  ) +
  '\r\n';
