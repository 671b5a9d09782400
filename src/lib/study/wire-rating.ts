// What a wire's insulation is rated for: what is marked on it, else the style, else its cable.
import type { ChassisDocument, Found, Planned, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { findWireStyle, type WireStyle } from '#handbook/wire-styles.ts';
import type { Rating } from './types.ts';

/** Constructions that have no insulation of their own. */
const bareConstructions: ReadonlySet<string> = new Set([
  'bare bus',
  'braid',
  'shield',
  'component lead',
  'jumper'
]);

/** True for bus, braid and component leads of which nobody recorded any insulation. */
export const isBareWire = ({ construction, found, planned }: Wire): boolean =>
  bareConstructions.has(construction) && ![found, planned].some(hasInsulation);

const hasInsulation = ({ insulation, style, ratingV }: Found | Planned): boolean =>
  ratingV !== undefined ||
  style !== undefined ||
  (insulation !== undefined &&
    insulation !== '' &&
    !/^(bare|none|no insulation)$/i.test(insulation));

/** The rating of a conductor as found or as planned; null where nothing tells it. */
export function ratingOf(conductor: Found | Planned): Rating | null {
  const { ratingV, ratingKind = 'any', style, insulation } = conductor;
  if (ratingV !== undefined) return { volts: ratingV, kind: ratingKind, basis: 'as marked' };
  // The print on the insulation is often written down where a style was not asked for.
  const row = styleOf(style) ?? styleOf(insulation);
  if (!row || row.volts === null) return null;
  const basis = row.mark === 'verified' ? row.name : `${row.name}, ${row.mark}`;
  return { volts: row.volts, kind: ratingKind, basis };
}

const styles = new Map<string, WireStyle | null>();
/** The handbook's row that a text names, or null; what was looked up once is remembered. */
export const styleOf = (text: string | undefined): WireStyle | null => {
  if (text === undefined || text.length > 200) return null;
  const known = styles.get(text);
  if (known !== undefined) return known;
  const row = findWireStyle(text);
  if (styles.size < 1000) styles.set(text, row);
  return row;
};

/** As `ratingOf`, or the rating of the cable that the wire is a conductor of. */
export function foundRatingOf(document: ChassisDocument, wire: Wire): Rating | null {
  const own = ratingOf(wire.found);
  if (own || wire.cable === undefined || wire.construction === 'shield') return own;
  const cable = findElement(document.cables, wire.cable);
  if (cable?.ratingV === undefined) return null;
  return { volts: cable.ratingV, kind: 'any', basis: `cable ${cable.name}` };
}
