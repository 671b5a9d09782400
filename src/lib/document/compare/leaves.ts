// The values of an element, each with the path to it. What means nothing in halves is one value: a place is
// not an x from one person and a y from another.
import { isRecord, type JsonRecord } from '../plain-json.ts';

export type Path = readonly string[];

/** Records that stand for one thing. */
const wholes = new Set([
  'place',
  'diagramPlace',
  'tip',
  'size',
  'at',
  'on',
  'route',
  'of',
  'picture',
  'scale'
]);
/** Keys that say nothing about the set. */
const silent = new Set(['id', 'order']);

/** True for a value that is not looked into. */
export const isLeaf = (key: string, value: unknown): boolean => !isRecord(value) || wholes.has(key);

/** Every value with its path, in the order of the keys; records without a value are left out. */
export function* leavesOf(record: JsonRecord, at: Path = []): Generator<[Path, unknown]> {
  for (const [key, value] of Object.entries(record)) {
    if (silent.has(key) || value === undefined) continue;
    if (isRecord(value) && !isLeaf(key, value)) yield* leavesOf(value, [...at, key]);
    else yield [[...at, key], value];
  }
}

/** One text for a path. */
export const pathKey = (path: Path): string => path.join('\u0000');
