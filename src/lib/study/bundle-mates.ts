// What a wire's neighbours do to its stress: between two wires of a bundle stands the difference of their
// volts, which is more than either has to chassis where one is above it and the other below, or where
// they swing against each other. It counts against the one with the higher stress.
import type { Id } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Bundle } from './types.ts';

/** Where a wire stands. */
export interface Standing {
  /** The dc that its stress counts. */
  readonly dcV: number;
  /** Rms. */
  readonly acV: number;
  /** The same with the sign of its phase; null where the phase is not known. */
  readonly phasedV: number | null;
  /** Peak to chassis, with its pulses. */
  readonly stressV: number;
  /** "wire 12". */
  readonly name: string;
}

export interface Mate {
  readonly wire: Id;
  /** Peak volts that the difference is above the wire's own to chassis. */
  readonly extraV: number;
  readonly words: string;
}

export type MatesOf = ReadonlyMap<Id, Mate>;
type StandingOf = (wire: Id) => Standing | undefined;

/** Less than that is no more than a bias or a heater, and well within every margin. */
const leastExtraV = 30;

/** By wire: the neighbour that adds most to its stress. A wire to which none adds is not in it. */
export function findMates(bundles: readonly Bundle[], standingOf: StandingOf): MatesOf {
  const mates = new Map<Id, Mate>();
  for (const { wires } of bundles) {
    // Of two wires above the chassis that swing together nothing can come.
    const active = wires.filter((id) => {
      const standing = standingOf(id);
      return standing !== undefined && (standing.dcV < 0 || (standing.phasedV ?? 0) < 0);
    });
    for (const id of active) {
      for (const other of wires) {
        if (other === id) continue;
        note(id, other, standingOf, mates);
        note(other, id, standingOf, mates);
      }
    }
  }
  return mates;
}

function note(id: Id, other: Id, standingOf: StandingOf, mates: Map<Id, Mate>): void {
  const [own, mate] = [standingOf(id), standingOf(other)];
  if (!own || !mate || own.stressV < mate.stressV) return;
  const dcExtraV = own.dcV * mate.dcV < 0 ? Math.abs(mate.dcV) : 0;
  const extraV = dcExtraV + Math.SQRT2 * (acBetween(own, mate) - own.acV);
  const known = mates.get(id);
  if (extraV < leastExtraV || (known && known.extraV >= extraV)) return;
  mates.set(id, { wire: other, extraV, words: `${voltsWords(mate)} of ${mate.name} beside it` });
}

/** Where a phase is not known the two are taken to swing together. */
const acBetween = (a: Standing, b: Standing): number =>
  a.phasedV === null || b.phasedV === null || a.phasedV * b.phasedV >= 0
    ? a.acV
    : Math.abs(a.phasedV - b.phasedV);

const voltsWords = ({ dcV, acV }: Standing): string =>
  [dcV === 0 ? '' : `${formatVolts(dcV)} dc`, acV === 0 ? '' : `${formatVolts(acV)} ac`]
    .filter((part) => part !== '')
    .join(' with ');
