// The schedule as a workbook: wires, parts, bundles, cut list, shopping and tests, each on a sheet with
// a header that stays, columns wide enough, numbers as numbers. Text that a spreadsheet would run is
// stored as text and carries a quote in front, as in the CSV.
import { bundle } from '#physics/bundle.ts';
import { SumError } from '#physics/sum-error.ts';
import { findElement } from '#document/references.ts';
import { buildTestSheets } from '#plan/index.ts';
import type { Bundle, Study } from '#study/index.ts';
import writeXlsxFile, { type SheetData } from 'write-excel-file/universal';
import { formulaStart } from './formula-start.ts';
import { scheduleColumns } from './schedule-csv.ts';
import type { ScheduleRow } from './schedule.ts';
import type { WholePlan } from './sheets/all-plan-sheets.ts';
import {
  cutColumns,
  cutRows,
  numberOf,
  planColumns,
  planRow,
  shoppingColumns,
  shoppingRows
} from './sheets/plan-sheets.ts';
import type { Cell, Table } from './sheets/sheet.ts';
import { testRows } from './sheets/test-sheets-on-paper.ts';

/** As the CSV does: what begins like a formula gets a quote in front. */
const neutral = (text: string): string => (formulaStart.test(text) ? `'${text}` : text);

const widthOf = ({ columns, rows }: Table, at: number): number => {
  const longest = Math.max(
    columns[at]?.heading.length ?? 0,
    ...rows.map((row) => String(row[at] ?? '').length)
  );
  return Math.min(60, Math.max(6, longest + 2));
};

const dataOf = ({ columns, rows }: Table): SheetData => [
  columns.map(({ heading }) => ({
    value: heading,
    type: String,
    fontWeight: 'bold' as const,
    wrap: true
  })),
  ...rows.map((row) =>
    columns.map((_, at) => {
      const cell: Cell = row[at] ?? null;
      if (cell === null) return null;
      return typeof cell === 'number'
        ? { value: cell, type: Number }
        : { value: neutral(cell).slice(0, 32_000), type: String };
    })
  )
];

const sheet = (name: string, table: Table) => ({
  sheet: name,
  data: dataOf(table),
  columns: table.columns.map((_, at) => ({ width: widthOf(table, at) })),
  stickyRowsCount: 1
});

/** The workbook's bytes as a blob. */
export function scheduleToXlsx(
  study: Study,
  rows: readonly ScheduleRow[],
  { plan, cuts, shopping }: WholePlan
): Promise<Blob> {
  const tests = buildTestSheets(study).flatMap((test) =>
    testRows(study, test).map((row) => [test.title, ...row])
  );
  return writeXlsxFile([
    sheet('Wires', {
      columns: scheduleColumns.map(([heading]) => ({ heading })),
      rows: rows.map((row) => scheduleColumns.map(([, cell]) => cell(row)))
    }),
    sheet('Plan', { columns: planColumns, rows: plan.wires.map((own) => planRow(study, own)) }),
    sheet('Parts', partsTable(study)),
    sheet('Bundles', bundlesTable(study)),
    sheet('Cut list', { columns: cutColumns, rows: cutRows(study, cuts) }),
    sheet('Shopping', { columns: shoppingColumns, rows: shoppingRows(study, shopping) }),
    sheet('Tests', {
      columns: ['Test', 'What', 'Where', 'Expected', 'Reading', 'To know'].map((heading) => ({
        heading
      })),
      rows: tests
    })
  ]).toBlob();
}

const partsTable = ({ document, index }: Study): Table => ({
  columns: ['Reference', 'Kind', 'Type', 'Value', 'Function', 'Unit', 'Terminals', 'Notes'].map(
    (heading) => ({ heading })
  ),
  rows: index.parts.map(
    ({ reference, kind, type, value, function: does, unit, terminals, notes }) => [
      reference,
      kind,
      type ?? null,
      value ?? null,
      does ?? null,
      findElement(document.units, unit)?.name ?? null,
      Object.keys(terminals).length,
      notes ?? null
    ]
  )
});

const bundlesTable = (study: Study): Table => ({
  columns: ['Where', 'Wires', 'Numbers', 'Diameter mm', 'Clamp 1/16 in'].map((heading) => ({
    heading
  })),
  rows: study.bundles
    .filter(({ support, cable }) => support !== null || cable !== null)
    .map((own) => {
      const size = sizeOf(study, own);
      return [
        placeOf(study, own),
        own.wires.length,
        own.wires.map((id) => numberOf(study, id)).join(', '),
        size ? Number(size.packedMm.toFixed(2)) : null,
        size ? size.clampSixteenths : null
      ];
    })
});

const placeOf = ({ document }: Study, { support, cable }: Bundle): string =>
  (support !== null ? findElement(document.supports, support)?.name : undefined) ??
  (cable !== null ? `cable ${findElement(document.cables, cable)?.name ?? ''}` : '');

/** Null where the outside of one wire is not known, or no clamp is as large. */
function sizeOf(
  study: Study,
  { wires }: Bundle
): { packedMm: number; clampSixteenths: number } | null {
  const outsides = wires.flatMap((id) => study.wires.get(id)?.conductor.outsideMm ?? []);
  if (outsides.length < wires.length || outsides.length === 0) return null;
  try {
    return bundle(outsides);
  } catch (problem) {
    if (problem instanceof SumError) return null;
    throw problem;
  }
}
