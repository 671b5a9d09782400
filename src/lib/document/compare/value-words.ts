// Fields and their values as people say them: "second end: V3-5 instead of V3-4".
import { findTerminal, findTerminalLabel } from '../references.ts';
import type { TerminalRef } from '../primitives.ts';
import type { ChassisDocument } from '../schema.ts';
import { elementInWords, wordOfField } from '../edit-name.ts';
import { isRecord } from '../plain-json.ts';
import type { Path } from './leaves.ts';

const endNames: Readonly<Record<string, string>> = { from: 'first end', to: 'second end' };
const plain = new Set(['found', 'carries', 'identity', 'policy', 'proof']);
const inner: Readonly<Record<string, readonly [record: 'terminals' | 'elements', word: string]>> = {
  terminals: ['terminals', 'terminal'],
  elements: ['elements', 'element']
};

const isTerminalRef = (value: unknown): value is TerminalRef =>
  isRecord(value) && typeof value['part'] === 'string' && typeof value['terminal'] === 'string';

/** What a path is called: "found gauge" is "gauge", "terminals t1 name" is "terminal 5 name". */
export const pathInWords = (path: Path, element: unknown): string => {
  const words: string[] = [];
  for (let at = 0; at < path.length; at++) {
    const key = path[at] ?? '';
    const list = at === 0 ? inner[key] : undefined;
    if (list) {
      const id = path[++at] ?? '';
      const record = isRecord(element) ? element[list[0]] : undefined;
      const item = isRecord(record) ? record[id] : undefined;
      const name = isRecord(item) ? (item['name'] ?? item['kind']) : undefined;
      words.push(`${list[1]} ${typeof name === 'string' && name !== '' ? name : id}`);
    } else if (at === 0 && endNames[key] !== undefined) {
      words.push(endNames[key]);
      if (path[1] === 'at') at++;
    } else if (!(at === 0 && plain.has(key) && path.length > 1)) words.push(wordOfField(key));
  }
  return words.join(' ');
};

const unitOf = (key: string): string =>
  /Mm$/.test(key)
    ? ' mm'
    : /Ohm$|^ohms$/i.test(key)
      ? ' ohm'
      : /V$/.test(key)
        ? ' V'
        : key === 'amps'
          ? ' A'
          : key === 'awg'
            ? ' AWG'
            : /C$/.test(key)
              ? ' C'
              : '';

/** References to other elements by name; a number with its unit; nothing where there is nothing. */
export const valueInWords = (path: Path, value: unknown, document: ChassisDocument): string => {
  const key = path.at(-1) ?? '';
  if (value === undefined) return 'nothing';
  if (typeof value === 'boolean') return value ? 'yes' : 'no';
  if (typeof value === 'number') return `${value}${unitOf(key)}`;
  if (typeof value === 'string') {
    const named = nameOf(key, value, document);
    return (
      named ??
      (value === '' ? 'nothing' : `“${value.length > 80 ? `${value.slice(0, 80)}…` : value}”`)
    );
  }
  if (isTerminalRef(value)) return findTerminalLabel(document, value) ?? 'a terminal that is gone';
  if (isRecord(value) && typeof value['x'] === 'number' && typeof value['y'] === 'number')
    return `${Math.round(value['x'])}, ${Math.round(value['y'])} mm`;
  if (key === 'route' && isRecord(value) && Array.isArray(value['supports'])) {
    const names = value['supports'].map((id) => document.supports[String(id)]?.name ?? String(id));
    return names.length === 0 ? 'no support' : names.join(' > ');
  }
  return 'something else';
};

type Held = readonly [value: unknown, document: ChassisDocument];

/** Two values that differ, each in words, first what stands there now. Where both would be called the same, what
 *  tells them apart is said. */
export const distinctWords = (
  path: Path,
  now: Held,
  old: Held
): readonly [now: string, old: string] => {
  const words = [valueInWords(path, ...now), valueInWords(path, ...old)] as const;
  if (words[0] !== words[1]) return words;
  const [is, was] = [closerWords(...now), closerWords(...old)];
  return is === was ? [`another ${words[0]}`, 'the one before'] : [is, was];
};

/** A value with all that tells it from one of the same name. */
const closerWords = (value: unknown, document: ChassisDocument): string => {
  if (!isTerminalRef(value))
    return typeof value === 'string' ? `“${value}”` : JSON.stringify(value);
  const found = findTerminal(document, value);
  if (!found) return `a terminal that is gone (${value.part} ${value.terminal})`;
  const { part, terminal } = found;
  const unit = part.unit === undefined ? undefined : document.units[part.unit]?.name;
  const own = [
    terminal.name === '' ? 'its terminal without a name' : `its terminal “${terminal.name}”`,
    part.kind,
    ...(part.type === undefined ? [] : [part.type]),
    ...(unit === undefined ? [] : [`in ${unit}`])
  ];
  return `${part.reference} (${own.join(', ')})`;
};

const nameOf = (key: string, id: string, document: ChassisDocument): string | undefined => {
  const element =
    key === 'unit'
      ? document.units[id]
      : key === 'cable'
        ? document.cables[id]
        : key === 'mates'
          ? document.parts[id]
          : key === 'stock'
            ? document.shelf[id]
            : undefined;
  if (element === undefined) return undefined;
  const kind = key === 'mates' ? 'part' : (key as 'unit' | 'cable' | 'stock');
  return elementInWords(kind, element).replace(`${kind} `, '');
};
