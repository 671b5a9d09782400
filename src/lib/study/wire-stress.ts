// The peak volts that a wire's insulation must stand, and whether that is all of it.
import { formatVolts } from '#quantity/index.ts';
import { stressV } from '#physics/stress.ts';
import { agrees } from './network/holders.ts';
import type { Mate } from './bundle-mates.ts';
import type { ExpectedParts } from './expected-parts.ts';
import type { Amount, Stress } from './types.ts';

export interface StressParts {
  readonly dcV: Amount | null;
  readonly acV: Amount | null;
  readonly pulseV: Amount | null;
  readonly coldDcV: Amount | null;
  /** What the whole network gives, whatever was declared. */
  readonly solvedDcV: Amount | null;
}

/** Of what a wire's peak is made, in one of the two states of the set. */
interface State {
  readonly isCold: boolean;
  readonly dc: Amount | null;
  readonly ac: Amount | null;
  readonly pulse: Amount | null;
  readonly volts: number;
}

const stateOf = (
  isCold: boolean,
  dc: Amount | null,
  ac: Amount | null,
  pulse: Amount | null
): State => ({
  isCold,
  dc,
  ac,
  pulse,
  volts: stressV({
    dcV: dc?.value ?? 0,
    acRmsV: ac?.value ?? 0,
    pulsePeakV: pulse?.value ?? 0
  })
});

/** A rail that rises by less is said to stand where it stands, V. */
const leastRiseV = 1;

/** The worse of two states. While the set plays all parts are there, and the dc is what is known or, where
 *  the whole network gives more than a tenth above that, what it gives. Before the tubes draw the rails
 *  stand higher, and there is no signal and no pulse yet: of ac only what comes from the line.
 *  @param isLineAc its ac is that of the line or of a winding */
export function worseState(parts: StressParts, isLineAc: boolean): State {
  const { dcV, acV, pulseV, coldDcV } = parts;
  const playing = stateOf(false, playingDc(parts), acV, pulseV);
  if (!coldDcV || Math.abs(coldDcV.value) <= Math.abs(dcV?.value ?? 0) + leastRiseV) {
    return playing;
  }
  const cold = stateOf(true, coldDcV, isLineAc || acV?.how === 'part' ? acV : null, null);
  return cold.volts > playing.volts ? cold : playing;
}

function playingDc({ dcV, solvedDcV }: StressParts): Amount | null {
  if (!dcV || !solvedDcV) return dcV ?? solvedDcV;
  const isHigher = Math.abs(solvedDcV.value) > Math.abs(dcV.value);
  return isHigher && !agrees(dcV.value, solvedDcV.value) ? solvedDcV : dcV;
}

/** The stress of what is known, "at least" where an expected part is missing. Null where nothing is
 *  known, and where all that is known is that one part is nought.
 *
 *  Once the dc is known an ac or pulse part that nobody wrote down and nothing leads one to expect
 *  counts as none. The other way round it does not: who knows the ac alone does not know what dc it
 *  rides on, save on the power line. */
export function stressOf(
  parts: StressParts,
  expected: ExpectedParts,
  mate: Mate | null = null
): Stress | null {
  const { dcV, acV, pulseV, coldDcV, solvedDcV } = parts;
  if (!dcV && !acV && !pulseV && !coldDcV && !solvedDcV) return null;
  const { dc, ac, pulse, volts: own, isCold } = worseState(parts, expected.isLineAc);
  const missing = listMissing(parts, dc, expected);
  // No dc says nothing of ac and pulse: nought is known only where all three are, as on the chassis.
  if (own === 0 && (missing.length > 0 || !acV || !pulseV)) return null;
  const word = isCold ? ' cold' : dc !== null && dc === solvedDcV && dc !== dcV ? ' reckoned' : '';
  const words = [
    dc && dc.value !== 0 ? `${formatVolts(dc.value)} dc${word}` : '',
    ac && ac.value !== 0 ? `1.414 x ${formatVolts(ac.value)} ac` : '',
    pulse && pulse.value !== 0 ? `${formatVolts(pulse.value)} pulse` : ''
  ].filter((part) => part !== '');
  const counts = mate !== null && own > 0;
  const sum = words.length === 0 ? 'at chassis potential' : words.join(' + ');
  return {
    volts: counts ? own + mate.extraV : own,
    atLeast: missing.length > 0,
    coldDcV: isCold ? (dc?.value ?? null) : null,
    made: { dcV: dc?.value ?? 0, acV: ac?.value ?? 0, pulseV: pulse?.value ?? 0 },
    beside: counts ? { wire: mate.wire, words: mate.words } : null,
    missing,
    basis: counts ? `${sum} against ${mate.words}` : sum
  };
}

function listMissing(
  { dcV, acV, pulseV }: StressParts,
  dc: Amount | null,
  expected: ExpectedParts
): readonly string[] {
  const missing: string[] = [];
  if (!dc && !expected.noDc) missing.push('the dc that it rides on');
  // A declared voltage is known, whatever else was left open.
  const doubt = (dcV ?? dc)?.doubt;
  if (doubt !== undefined) missing.push(doubt);
  if (!acV && expected.ac !== null && Math.abs(dc?.value ?? 0) < expected.acMattersBelowV) {
    missing.push(`the ac (${expected.ac})`);
  }
  if (!pulseV && expected.pulse !== null) missing.push(`the pulse (${expected.pulse})`);
  return missing;
}
