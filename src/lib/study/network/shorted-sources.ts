// Sources that cannot be right: one whose two sides are connected, and two that put different volts
// between the same two nets. Looked for net by net, where no resistance of a wire hides them.
import type { PlacedElement } from '../circuit-elements.ts';
import { roundSignificant } from '#quantity/index.ts';

export interface ShortedSource {
  readonly element: PlacedElement;
  /** The other source that it is set against; null where its own two sides are connected. */
  readonly against: PlacedElement | null;
}

/** Two sources that differ by no more than this share are alike. */
const alike = 0.1;

export function findShortedSources(elements: readonly PlacedElement[]): readonly ShortedSource[] {
  const shorted: ShortedSource[] = [];
  const byNets = new Map<string, { element: PlacedElement; volts: number }>();
  for (const element of elements) {
    const { values, from, to } = element;
    if (values.kind !== 'source' || values.volts === 0) continue;
    if (from === to) {
      shorted.push({ element, against: null });
      continue;
    }
    if ((values.seriesOhms ?? 0) > 0) continue;
    const turned = from.id > to.id;
    const key = `${values.current} ${turned ? `${to.id} ${from.id}` : `${from.id} ${to.id}`}`;
    // The phase of a winding is seldom written down: only how much it gives counts.
    const signed = turned ? -values.volts : values.volts;
    const volts = values.current === 'ac' ? Math.abs(signed) : signed;
    const known = byNets.get(key);
    if (!known) byNets.set(key, { element, volts });
    else if (!areAlike(known.volts, volts)) shorted.push({ element, against: known.element });
  }
  return shorted;
}

const areAlike = (a: number, b: number): boolean =>
  roundSignificant(Math.abs(a - b)) <= alike * Math.max(Math.abs(a), Math.abs(b));
