// A resistor or capacitor with two leads, of which nothing but its value was written down: the value is
// all that an element needs.
import type { Part } from '#document/index.ts';
import { parseQuantity } from '#quantity/index.ts';

export type ValueElement =
  | { readonly kind: 'resistor'; readonly ohms: number }
  | { readonly kind: 'capacitor'; readonly farads: number };

/** As much as the schema takes of an element. */
const mostOhms = 1e12;
const mostFarads = 10;

const known = new Map<string, ValueElement | null>();

/** The element that a part's value stands for; null for other parts, for values that cannot be read,
 *  and for parts with more or fewer than two terminals. The same text gives the same object. */
export function elementFromValue(part: Part): ValueElement | null {
  const { kind, value } = part;
  if (value === undefined || value.length > 60) return null;
  if (kind !== 'resistor' && kind !== 'capacitor') return null;
  if (Object.keys(part.terminals).length !== 2) return null;
  const key = `${kind} ${value}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  const made = kind === 'resistor' ? readOhms(value) : readFarads(value);
  if (known.size < 5000) known.set(key, made);
  return made;
}

function readOhms(value: string): ValueElement | null {
  const read = parseQuantity(value, 'resistance');
  if (!read.ok || !(read.value >= 0) || read.value > mostOhms) return null;
  return { kind: 'resistor', ohms: read.value };
}

/** A bare number may be microfarads or picofarads: it says nothing. */
function readFarads(value: string): ValueElement | null {
  if (!/[a-zµμ]/i.test(value)) return null;
  const read = parseQuantity(value, 'capacitance');
  if (!read.ok || !(read.value > 0) || read.value > mostFarads) return null;
  return { kind: 'capacitor', farads: read.value };
}
