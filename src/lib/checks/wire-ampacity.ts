// What a wire may carry where it lies: by its gauge, its insulation, the cabinet's warmth, and the loaded
// wires that it lies beside.
import type { Id, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { ampacity, type Ampacity, type AmpacityBasis } from '#physics/ampacity.ts';
import { SumError } from '#physics/sum-error.ts';
import type { Conductor, Study } from '#study/index.ts';
import { insulationCelsius, type InsulationCelsius } from './conductor-celsius.ts';

export interface WireAmpacity extends Ampacity {
  readonly awg: number;
  readonly insulation: InsulationCelsius;
  readonly ambientC: number;
  /** Wires of the bundle that are loaded, this one among them. */
  readonly loaded: number;
}

/** Thinner wire than the table holds goes by circular mils, which is less. */
const thinnestInTable = 24;
const thickestInTable = 10;

const known = new Map<string, Ampacity | null>();

function ampacityOf(
  awg: number,
  wires: number,
  ratingC: number,
  ambientC: number,
  wanted: AmpacityBasis
): Ampacity | null {
  const key = `${awg} ${wires} ${ratingC} ${ambientC} ${wanted}`;
  const before = known.get(key);
  if (before !== undefined) return before;
  let found: Ampacity | null = null;
  try {
    const basis = awg > thinnestInTable ? '700 cmil' : wanted;
    found = ampacity({ awg: Math.max(awg, thickestInTable), wires, ratingC, ambientC, basis });
  } catch (problem) {
    // A cabinet hotter than the insulation stands is the affair of another rule.
    if (!(problem instanceof SumError)) throw problem;
  }
  if (known.size < 10_000) known.set(key, found);
  return found;
}

/** A mate that carries less than this share of what it could counts as not loaded: it adds no heat worth
 *  counting. The published curve begins at the same share. */
const loadedShare = 0.2;

/** Null where the gauge is not known, or no table holds it.
 *  @param conductor the one that lies there, or the one that is planned */
export function findAmpacity(study: Study, wire: Wire, conductor: Conductor): WireAmpacity | null {
  const { awg } = conductor;
  if (awg === null) return null;
  const isBare = study.wires.get(wire.id)?.isBare === true;
  const insulation = insulationCelsius(conductor, wire[conductor.which], isBare);
  const { ambientC, ampacityBasis } = study.policy;
  const loaded = 1 + loadedMates(study, wire.id);
  const found = ampacityOf(awg, loaded, insulation.celsius, ambientC, ampacityBasis);
  return found && { ...found, awg, insulation, ambientC, loaded };
}

/** The most loaded mates in any bundle of the wire, a cable of several conductors among them. */
function loadedMates(study: Study, id: Id): number {
  let most = 0;
  for (const { wires } of study.bundlesOf.get(id) ?? []) {
    const count = wires.filter((mate) => mate !== id && isLoaded(study, mate)).length;
    most = Math.max(most, count);
  }
  return Math.min(most, 399);
}

function isLoaded(study: Study, id: Id): boolean {
  const about = study.wires.get(id);
  const amps = about?.carries.amps?.value ?? 0;
  if (!about || amps < 0.1 || about.conductor.awg === null) return false;
  const wire = findElement(study.document.wires, id);
  if (!wire) return false;
  const { celsius } = insulationCelsius(about.conductor, wire[about.conductor.which], about.isBare);
  const alone = ampacityOf(
    about.conductor.awg,
    1,
    celsius,
    study.policy.ambientC,
    study.policy.ampacityBasis
  );
  return alone !== null && amps >= loadedShare * alone.singleA;
}
