// What each element and each wire is to a circuit of resistances, sources and loads. Three circuits are
// reckoned: direct current with the tubes drawing, the same cold, and alternating current of the line.
import type { Policy } from '#document/index.ts';
import type { Branch } from '#physics/network/index.ts';
import type { PlacedElement } from '../circuit-elements.ts';

export const circuitNames = ['loaded', 'cold', 'ac'] as const;
/** `loaded`: direct current while the set plays. `cold`: direct current before the tubes draw, at
 *  high line. `ac`: alternating current of the line and its windings, all in phase or against it. */
export type CircuitName = (typeof circuitNames)[number];

export interface PlacedBranch {
  readonly branch: Branch;
  /** Points, as `Points.rootOf` has them. */
  readonly from: number;
  readonly to: number;
  /** Null for a wire. */
  readonly element: BranchElement | null;
}

/** An element without its nets: these come and go while the branch stays what it is. */
export type BranchElement = Omit<PlacedElement, 'from' | 'to'>;

/** By circuit; null where the element is no path in it. */
export type ElementBranches = Readonly<Record<CircuitName, PlacedBranch | null>>;

/** Nodes of a circuit go by the number of their point. */
export const nodeName = (point: number): string => String(point);

/** Parts whose resistance is that of a winding: what they are to alternating current nobody knows. */
const inductive: ReadonlySet<string> = new Set(['coil', 'transformer', 'yoke', 'speaker']);

/** What an element is in each circuit.
 *
 *  - A dc source is there with its no-load volts at high line when cold, where it gives them, else with
 *    its volts. It is no path for ac: most of them stand for a rectifier.
 *  - A winding with ac of its own is its series resistance for dc.
 *  - A heater is V / I of its rating. A load draws whatever the voltage, and nothing when cold.
 *  - Capacitors and pulses are no path. A closed link is no branch: it makes one point of two.
 *  - A rectifier gives what its winding gives, and is dealt with elsewhere. */
export function branchesOf(element: BranchElement, { highLine }: Policy): ElementBranches {
  const { id, values, fromPoint, toPoint, part } = element;
  const ends = { id, from: nodeName(fromPoint), to: nodeName(toPoint) };
  const placed = (branch: Branch): PlacedBranch => ({
    branch,
    from: fromPoint,
    to: toPoint,
    element
  });
  const resistance = (ohms: number) =>
    placed({ kind: 'resistance', ...ends, ohms: usableOhms(ohms) });
  // The circuit's source stands `to` above `from`; the element's stands `from` above `to`.
  const source = (volts: number, ohms = 0) =>
    placed({ kind: 'source', id, from: ends.to, to: ends.from, volts, ohms: usableOhms(ohms) });
  switch (values.kind) {
    case 'resistor': {
      const own = resistance(values.ohms);
      return { loaded: own, cold: own, ac: inductive.has(part.kind) ? null : own };
    }
    case 'heater': {
      const ohms = values.volts / values.amps;
      if (!Number.isFinite(ohms)) return nowhere;
      const own = resistance(ohms);
      return { loaded: own, cold: own, ac: own };
    }
    case 'load':
      return { ...nowhere, loaded: placed({ kind: 'load', ...ends, amps: values.amps }) };
    case 'source': {
      const { volts, seriesOhms: ohms, noLoadVolts } = values;
      if (values.current === 'ac') {
        const winding = source(0, ohms);
        return { loaded: winding, cold: winding, ac: source(volts, ohms) };
      }
      const risen = noLoadVolts === undefined ? volts : noLoadVolts * (1 + highLine);
      return { loaded: source(volts, ohms), cold: source(risen, ohms), ac: null };
    }
    default:
      return nowhere;
  }
}

/** Less than a microhm is none at all: no joint is that good. */
const usableOhms = (ohms: number): number => (ohms < 1e-6 ? 0 : ohms);

const nowhere: ElementBranches = { loaded: null, cold: null, ac: null };

/** A wire between two points: its resistance, or a mere join where that is not known.
 *  @param before the wire's branch of before, given again where it is the same */
export function wireBranch(
  id: string,
  from: number,
  to: number,
  ohms: number | null,
  before?: PlacedBranch
): PlacedBranch {
  const isSame =
    before?.from === from &&
    before.to === to &&
    (before.branch.kind === 'resistance' ? before.branch.ohms : null) === ohms;
  if (isSame) return before;
  const ends = { id, from: nodeName(from), to: nodeName(to) };
  const branch: Branch =
    ohms === null ? { kind: 'join', ...ends } : { kind: 'resistance', ...ends, ohms };
  return { branch, from, to, element: null };
}
