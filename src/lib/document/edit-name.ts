// What an edit is called in the list of undo steps: "change wire 12 colour".
import type { Edit, ElementName, Fields } from './edit.ts';
import { collections } from './edit.ts';
import { isRecord } from './plain-json.ts';
import { findElement } from './references.ts';
import type { ChassisDocument } from './schema.ts';

/** Where a field's own name, its capitals taken apart, would not do. */
const fieldWords: Readonly<Record<string, string>> = {
  awg: 'gauge',
  dcV: 'dc volts',
  acV: 'ac volts',
  pulseV: 'pulse volts',
  ratingV: 'rating',
  ratingC: 'temperature rating',
  tapedMm: 'taped length',
  outsideMm: 'length outside the drawing',
  isPart: 'being a part',
  pieceMm: 'piece to splice in',
  mates: 'mate'
};

/** What a field is called: `awg` is "gauge", `tapedMm` "taped length". */
export const wordOfField = (key: string): string =>
  fieldWords[key] ??
  key
    .replace(/(Mm|V|C|Ohm)$/, '')
    .replaceAll(/([A-Z])/g, ' $1')
    .toLowerCase();

/** Fields whose parts are not worth telling apart: a place has an x and a y. */
const wholes = new Set([
  'place',
  'diagramPlace',
  'size',
  'route',
  'critical',
  'terminals',
  'elements'
]);
/** Fields of these are told by their own names alone. */
const plainSections = new Set(['found', 'carries']);

const endWords: Readonly<Record<string, string>> = { from: 'first end', to: 'second end' };

/** The fields of an element or of a section as a person calls them, each once. */
export const fieldsInWords = (kind: ElementName | 'section', fields: Fields): string[] => {
  const words = new Set<string>();
  for (const [key, value] of Object.entries(fields)) {
    if (kind === 'wire' && endWords[key] !== undefined) words.add(endWords[key]);
    else if (wholes.has(key) || !isRecord(value)) words.add(wordOfField(key));
    else {
      const prefix = plainSections.has(key) ? '' : `${wordOfField(key)} `;
      for (const inner of Object.keys(value)) words.add(prefix + wordOfField(inner));
    }
  }
  return [...words];
};

const shortList = (words: readonly string[]): string =>
  words.length > 2 ? `${words.length} fields` : words.join(' and ');

/** "wire 12", "part V3", "cable audio lead". */
export const elementInWords = (kind: ElementName, element: Fields | undefined): string => {
  const label = element?.['number'] ?? element?.['reference'] ?? element?.['name'];
  if (typeof label === 'string' && label !== '') return `${kind} ${label}`;
  return kind === 'unit' ? 'a unit' : `a ${kind}`;
};

/** "reading at V3-5", "readings and records of the tests". */
const proofInWords = (before: ChassisDocument, { readings, records }: Fields): string => {
  if (!isRecord(readings) || records !== undefined) return 'write down what stands beside readings';
  const [only, ...others] = Object.entries(readings);
  if (only === undefined || others.length > 0) return 'change readings';
  const [row, reading] = only;
  const where = (isRecord(reading) ? reading : before.proof?.readings?.[row])?.['where'];
  const verb = reading === null ? 'take away' : 'write down';
  return `${verb} the reading${typeof where === 'string' ? ` at ${where}` : ''}`;
};

/** The name of an edit, made from it and the document that it was applied to. */
export const editInWords = (before: ChassisDocument, edit: Edit): string => {
  if (edit.kind === 'do-many') return edit.args.name;
  if (edit.kind === 'change-identity') {
    return `change the set's ${shortList(fieldsInWords('section', edit.args.fields))}`;
  }
  if (edit.kind === 'change-policy') {
    return `change the rules' ${shortList(fieldsInWords('section', edit.args.fields))}`;
  }
  if (edit.kind === 'change-proof') return proofInWords(before, edit.args.fields);
  const [verb, kind] = edit.kind.split('-') as ['add' | 'change' | 'remove', ElementName];
  if ('element' in edit.args) return `add ${elementInWords(kind, edit.args.element)}`;
  const element = elementInWords(
    kind,
    findElement<Fields>(before[collections[kind]], edit.args.id)
  );
  if (!('fields' in edit.args)) return `${verb} ${element}`;
  const words = fieldsInWords(kind, edit.args.fields);
  if (words.length === 1 && (words[0] === 'place' || words[0] === 'diagram place')) {
    return `move ${element}`;
  }
  return words.length === 0 ? `change ${element}` : `change ${element} ${shortList(words)}`;
};
