// What a wire's neighbours do to its stress: between two wires of a bundle stands the difference of their
// volts, which is more than either has to chassis where one is above it and the other below, or where
// one swings away from the other. Phases that nobody knows count at their worst, so that the peaks add.
// It counts against the one with the higher stress.
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
  /** Between two wires of one net stands nothing; null where it is on none. */
  readonly net: Id | null;
  /** Its ac is the line's itself, or comes from there through a string of heaters. */
  readonly isFromLine: boolean;
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
    // Where neither is below the chassis nor swings by half of what counts, nothing that counts can come.
    const active = wires.filter((id) => {
      const standing = standingOf(id);
      return (
        standing !== undefined && (standing.dcV < 0 || standing.acV * Math.SQRT2 >= leastExtraV / 2)
      );
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
  if (own.net !== null && own.net === mate.net) return;
  // A rail beside ac that swings about the chassis is the everyday bundle, and each is rated for its own
  // volts to chassis. Common practice, no source.
  if (own.dcV * mate.dcV >= 0 && (own.acV === 0 || mate.acV === 0)) return;
  const extraV = dcExtraV(own, mate) + Math.SQRT2 * (acBetween(own, mate) - own.acV);
  const known = mates.get(id);
  if (extraV < leastExtraV || (known && known.extraV >= extraV)) return;
  const isDoubtful = own.acV !== 0 && mate.acV !== 0 && !isPhaseKnown(own, mate);
  const doubt = !isDoubtful ? '' : ' (phases not known: taken to swing against each other)';
  mates.set(id, {
    wire: other,
    extraV,
    words: `${voltsWords(mate)} of ${mate.name} beside it${doubt}`
  });
}

/** What the mate's dc adds where it stands on the other side of the chassis; on the same side it takes off. */
const dcExtraV = (own: Standing, mate: Standing): number =>
  own.dcV * mate.dcV < 0 ? Math.abs(mate.dcV) : -Math.min(Math.abs(own.dcV), Math.abs(mate.dcV));

/** What comes from one line stands no more apart than the line gives. */
const isPhaseKnown = (a: Standing, b: Standing): boolean =>
  (a.phasedV !== null && b.phasedV !== null) || (a.isFromLine && b.isFromLine);

/** Rms of what they swing apart: the sum where a phase is not known. */
function acBetween(a: Standing, b: Standing): number {
  if (a.acV === 0 || b.acV === 0 || !isPhaseKnown(a, b)) return a.acV + b.acV;
  return a.phasedV === null || b.phasedV === null
    ? Math.max(a.acV, b.acV)
    : Math.abs(a.phasedV - b.phasedV);
}

const voltsWords = ({ dcV, acV }: Standing): string =>
  [dcV === 0 ? '' : `${formatVolts(dcV)} dc`, acV === 0 ? '' : `1.414 x ${formatVolts(acV)} ac`]
    .filter((part) => part !== '')
    .join(' with ');
