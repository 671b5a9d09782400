// Many cells taken at once, as one step of undo: each text is read as if it had been typed; what cannot
// be read is left where it was and said in its place.
import { addElement, doMany, setWireFields, type Changes } from '#document/edits.ts';
import {
  ordersBetween,
  type ChassisDocument,
  type Edit,
  type MakeId,
  type Wire
} from '#document/index.ts';
import type { CellWrite } from './cell-block.ts';
import { buildNewWire, nextNumber } from './new-wire.ts';
import { pruneFields } from './prune-fields.ts';
import type { CellReading } from './read-cell.ts';

export interface RefusedCell {
  readonly row: string;
  readonly column: string;
  readonly text: string;
  readonly why: string;
}

export interface ManyCells {
  /** All that could be read, or null where that changes nothing. */
  readonly edit: Edit | null;
  readonly refused: readonly RefusedCell[];
  /** The cells that were read, for those that were refused before. */
  readonly taken: readonly { readonly row: string; readonly column: string }[];
  /** Wires that are changed or added. */
  readonly wires: number;
  /** Ids of the wires that are added. */
  readonly added: readonly string[];
}

interface Source {
  readonly document: ChassisDocument;
  readonly makeId: MakeId;
  readonly read: (column: string, text: string) => CellReading | null;
}

type Plain = Readonly<Record<string, unknown>>;
const isPlain = (value: unknown): value is Plain =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

const merge = (a: Plain, b: Plain): Plain => {
  const merged: Record<string, unknown> = { ...a };
  for (const [key, value] of Object.entries(b)) {
    const before = merged[key];
    merged[key] = isPlain(before) && isPlain(value) ? merge(before, value) : value;
  }
  return merged;
};

const newWires = ({ document, makeId }: Source, count: number): readonly Wire[] => {
  if (count === 0) return [];
  const first = buildNewWire(document, makeId);
  const number = Number(nextNumber(document));
  const rest = ordersBetween(first.order, null, count - 1);
  return [
    first,
    ...rest.map((order, index) => ({
      ...first,
      id: makeId('wire'),
      order,
      number: String(number + index + 1)
    }))
  ];
};

/** @param name of the step of undo */
export const takeManyCells = (
  writes: readonly CellWrite[],
  name: string,
  source: Source
): ManyCells => {
  const count = writes.reduce(
    (most, { row }) => (typeof row === 'number' ? Math.max(most, row + 1) : most),
    0
  );
  const added = newWires(source, count);
  const fieldsOf = new Map<string, Plain>();
  const refused: RefusedCell[] = [];
  const taken: { row: string; column: string }[] = [];
  for (const { row, column, text } of writes) {
    const id = typeof row === 'string' ? row : added[row]?.id;
    if (id === undefined) continue;
    const reading = source.read(column, text);
    if (reading === null) continue;
    if (!reading.ok) {
      refused.push({ row: id, column, text, why: reading.why });
      continue;
    }
    taken.push({ row: id, column });
    fieldsOf.set(id, merge(fieldsOf.get(id) ?? {}, reading.fields));
  }
  const changes = [...fieldsOf].flatMap(([id, all]) => {
    const present = source.document.wires[id];
    const fields = present === undefined ? all : pruneFields(all as Changes<Wire>, present);
    return Object.keys(fields).length === 0 ? [] : [{ id, fields: fields as Changes<Wire> }];
  });
  const edits = [
    ...added.map((wire) => addElement('wire', wire)),
    ...changes.map(({ id, fields }) => setWireFields(id, fields))
  ];
  return {
    edit: edits.length === 0 ? null : doMany(name, edits),
    refused,
    taken,
    wires: new Set([...added, ...changes].map(({ id }) => id)).size,
    added: added.map(({ id }) => id)
  };
};
