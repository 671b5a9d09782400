// The peak volts that a wire's insulation must stand, and whether that is all of it.
import { formatVolts } from '#quantity/index.ts';
import { stressV } from '#physics/stress.ts';
import type { ExpectedParts } from './expected-parts.ts';
import type { Amount, Stress } from './types.ts';

export interface StressParts {
  readonly dcV: Amount | null;
  readonly acV: Amount | null;
  readonly pulseV: Amount | null;
  readonly coldDcV: Amount | null;
}

/** The stress of what is known, "at least" where an expected part is missing. Null where nothing is
 *  known, and where all that is known is that one part is nought.
 *
 *  Once the dc is known an ac or pulse part that nobody wrote down and nothing leads one to expect
 *  counts as none. The other way round it does not: who knows the ac alone does not know what dc it
 *  rides on, save on the power line. */
export function stressOf(parts: StressParts, expected: ExpectedParts): Stress | null {
  const { dcV, acV, pulseV, coldDcV } = parts;
  if (!dcV && !acV && !pulseV && !coldDcV) return null;
  const cold = coldDcV && Math.abs(coldDcV.value) > Math.abs(dcV?.value ?? 0) ? coldDcV : null;
  const dc = cold ?? dcV;
  const missing: string[] = [];
  if (!dc && !expected.noDc) missing.push('the dc that it rides on');
  if (!acV && expected.ac !== null && Math.abs(dc?.value ?? 0) < expected.acMattersBelowV) {
    missing.push(`the ac (${expected.ac})`);
  }
  if (!pulseV && expected.pulse !== null) missing.push(`the pulse (${expected.pulse})`);
  const volts = stressV({
    dcV: dc?.value ?? 0,
    acRmsV: acV?.value ?? 0,
    pulsePeakV: pulseV?.value ?? 0
  });
  if (volts === 0 && missing.length > 0) return null;
  const words = [
    dc && dc.value !== 0 ? `${formatVolts(dc.value)} dc${cold ? ' cold' : ''}` : '',
    acV && acV.value !== 0 ? `1.414 x ${formatVolts(acV.value)} ac` : '',
    pulseV && pulseV.value !== 0 ? `${formatVolts(pulseV.value)} pulse` : ''
  ].filter((part) => part !== '');
  return {
    volts,
    atLeast: missing.length > 0,
    coldDcV: cold?.value ?? null,
    missing,
    basis: words.length === 0 ? 'at chassis potential' : words.join(' + ')
  };
}
