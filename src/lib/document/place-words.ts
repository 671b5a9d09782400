// Where in a document something is, in words: wires -> wire "12" -> found.awg
import { collections, type ElementName } from './edit.ts';

const elementNames = Object.fromEntries(
  Object.entries(collections).map(([name, record]) => [record, name])
) as Readonly<Record<string, ElementName>>;

/** What the elements of an inner record are called. */
const innerNames: Readonly<Record<string, string>> = { terminals: 'terminal', elements: 'element' };

const valueOf = (value: unknown, key: PropertyKey): unknown =>
  typeof value === 'object' && value !== null && Object.hasOwn(value, key)
    ? (value as Record<PropertyKey, unknown>)[key]
    : undefined;

/** What people call an element, else its id. */
const labelOf = (element: unknown, id: PropertyKey): string => {
  for (const key of ['number', 'reference', 'name']) {
    const label = valueOf(element, key);
    if (typeof label === 'string' && label !== '') return label.slice(0, 60);
    if (typeof label === 'number') return String(label);
  }
  return String(id);
};

/** An element with the place in it: wire "12" found.awg
 *  @param path from the element down */
export const placeInElement = (
  name: string,
  id: string,
  element: unknown,
  path: readonly PropertyKey[]
): string => {
  const steps = [`${name} "${labelOf(element, id)}"`, ...innerSteps(element, path)];
  return steps.join(' ');
};

const innerSteps = (value: unknown, path: readonly PropertyKey[]): string[] => {
  const [record, id, ...rest] = path;
  const name = typeof record === 'string' ? innerNames[record] : undefined;
  if (record !== undefined && name !== undefined && id !== undefined) {
    const inner = valueOf(valueOf(value, record), id);
    return [
      `${name} "${labelOf(inner, id)}"`,
      ...(rest.length > 0 ? [rest.map(String).join('.')] : [])
    ];
  }
  return path.length > 0 ? [path.map(String).join('.')] : [];
};

/** A place from the document's root down; "the document" for the root itself. */
export const placeInDocument = (document: unknown, path: readonly PropertyKey[]): string => {
  const [record, id, ...rest] = path;
  if (record === undefined) return 'the document';
  const name = typeof record === 'string' ? elementNames[record] : undefined;
  if (name === undefined || id === undefined) return path.map(String).join('.');
  const element = valueOf(valueOf(document, record), id);
  const steps = [String(record), `${name} "${labelOf(element, id)}"`, ...innerSteps(element, rest)];
  return steps.join(' -> ');
};
