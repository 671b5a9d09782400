// The text of a document: the same document gives the same bytes, whatever was done and undone before.
// Elements stand in the order of their ids, so that two people's additions fall on different lines.
import { inKeyOrder, keyOrderOf, type KeyOrder } from './key-order.ts';
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

const write = (value: unknown, order: KeyOrder, level: number): string => {
  if (typeof value !== 'object' || value === null) return writeScalar(value);
  const isList = Array.isArray(value);
  const items = isList
    ? value.map((item: unknown) => write(item, order.each ?? order, level + 1))
    : inKeyOrder(value, order).flatMap(([key, inner]) => {
        const item: unknown = (value as Record<string, unknown>)[key];
        return item === undefined
          ? []
          : [`${JSON.stringify(key)}: ${write(item, inner, level + 1)}`];
      });
  const [open, close] = isList ? '[]' : '{}';
  if (items.length === 0) return `${open}${close}`;
  const length = items.reduce((sum, item) => sum + item.length + 2, level + 2);
  const isBroken =
    level < brokenLevels || length > lineLength || items.some((i) => i.includes('\n'));
  if (!isBroken) return isList ? `[${items.join(', ')}]` : `{ ${items.join(', ')} }`;
  const indent = ' '.repeat(level + 1);
  return `${open}\n${indent}${items.join(`,\n${indent}`)}\n${' '.repeat(level)}${close}`;
};

/** The document as JSON text, its keys in the schema's order and unknown keys after them.
 *  Throws a RangeError on a number that is not finite. */
export const saveDocument = (document: ChassisDocument): string =>
  `${write(document, documentOrder, 0)}\n`;
