// The schedule's rows as plain texts, ready to be shown. A row that reads as it did before is the
// same object, so that an edit repaints only the rows that it changed.
import { severities, type Finding, type Severity } from '#checks/index.ts';
import type { WireState } from '#document/index.ts';
import { classBandOf, type ClassBand, type Study } from '#study/index.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';
import { isHalfTraced } from '../core/words.ts';
import type { Column, ColumnId } from './columns.ts';

export interface CellView {
  readonly column: ColumnId;
  readonly text: string;
  readonly isDerived: boolean;
}

export interface RowView {
  readonly id: string;
  readonly cells: readonly CellView[];
  readonly band: ClassBand;
  readonly state: WireState;
  readonly halfTraced: boolean;
  /** The worst that the validator says of the wire, or null. */
  readonly worst: Severity | null;
}

/** The worst severity that concerns each wire, by wire id. */
export const worstByWire = (findings: readonly Finding[]): ReadonlyMap<string, Severity> => {
  const worst = new Map<string, Severity>();
  for (const { at, severity } of findings) {
    for (const place of at) {
      if (place.kind !== 'wire') continue;
      const known = worst.get(place.id);
      const isWorse =
        known === undefined || severities.indexOf(severity) < severities.indexOf(known);
      if (isWorse) worst.set(place.id, severity);
    }
  }
  return worst;
};

const isSameRow = (a: RowView, b: RowView): boolean =>
  a.band === b.band &&
  a.state === b.state &&
  a.halfTraced === b.halfTraced &&
  a.worst === b.worst &&
  a.cells.length === b.cells.length &&
  a.cells.every((cell, index) => {
    const other = b.cells[index];
    return (
      cell.column === other?.column &&
      cell.text === other.text &&
      cell.isDerived === other.isDerived
    );
  });

/** All rows in the document's order. `before` are the rows shown until now. */
export const buildRows = (
  study: Study,
  findings: readonly Finding[],
  columns: readonly Column[],
  lengthUnit: LengthUnit,
  before: readonly RowView[] = []
): readonly RowView[] => {
  const worst = worstByWire(findings);
  const known = new Map(before.map((row) => [row.id, row]));
  return study.index.wires.flatMap((wire) => {
    const about = study.wires.get(wire.id);
    if (about === undefined) return [];
    const source = { wire, about, study, lengthUnit };
    const row: RowView = {
      id: wire.id,
      cells: columns.map((column) => ({
        column: column.id,
        text: column.show(source),
        isDerived: column.isDerived?.(source) ?? false
      })),
      band: classBandOf(about.need?.requiredV ?? null),
      state: wire.state,
      halfTraced: isHalfTraced(wire),
      worst: worst.get(wire.id) ?? null
    };
    const former = known.get(wire.id);
    return [former !== undefined && isSameRow(former, row) ? former : row];
  });
};
