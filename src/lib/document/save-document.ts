// The text of a document: the same document gives the same bytes, whatever was done and undone before.
// Elements stand in the order of their ids, so that two people's additions fall on different lines.
import { keyOrderOf, keysInOrder, orderWithin, type KeyOrder } from './key-order.ts';
import { isDangerousKey } from './plain-json.ts';
import { documentSchema, type ChassisDocument } from './schema.ts';

/** What fits on a line is not broken. */
const lineLength = 120;
/** The root and the records of elements are always broken: one element begins a line. */
const brokenLevels = 2;

const documentOrder = keyOrderOf(documentSchema);

const writeScalar = (value: unknown): string => {
  if (typeof value === 'number' && !Number.isFinite(value)) {
    throw new RangeError(`a document cannot hold ${value}: give a finite number`);
  }
  return JSON.stringify(value);
};

const writeItems = (value: object, order: KeyOrder, level: number): string[] => {
  if (Array.isArray(value)) {
    return value.map((item: unknown) => write(item, order.each ?? order, level));
  }
  const items: string[] = [];
  for (const key of keysInOrder(value, order)) {
    const item = (value as Record<string, unknown>)[key];
    if (item === undefined) continue;
    if (isDangerousKey(key)) throw new RangeError(`a document cannot hold the key "${key}"`);
    items.push(`${JSON.stringify(key)}: ${write(item, orderWithin(order, key), level)}`);
  }
  return items;
};

const write = (value: unknown, order: KeyOrder, level: number): string => {
  if (typeof value !== 'object' || value === null) return writeScalar(value);
  const items = writeItems(value, order, level + 1);
  const [open, close] = Array.isArray(value) ? '[]' : '{}';
  if (items.length === 0) return `${open}${close}`;
  if (level >= brokenLevels) {
    const line = items.join(', ');
    if (line.length + level + 4 <= lineLength && !line.includes('\n')) {
      return Array.isArray(value) ? `[${line}]` : `{ ${line} }`;
    }
  }
  const indent = ' '.repeat(level + 1);
  return `${open}\n${indent}${items.join(`,\n${indent}`)}\n${' '.repeat(level)}${close}`;
};

/** The document as JSON text, its keys in the schema's order and unknown keys after them.
 *  Throws a RangeError on what would not open again: a number that is not finite, a dangerous key. */
export const saveDocument = (document: ChassisDocument): string =>
  `${write(document, documentOrder, 0)}\n`;
