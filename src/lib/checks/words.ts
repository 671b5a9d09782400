// Turns of phrase that several rules share.
import type { Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import type { Need, Rating, Study, WireStudy } from '#study/index.ts';
import { wireLabel } from './places.ts';

export const commonPractice = 'common practice, no source';

export const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** "a", "a and b", "a, b and c"; of more than `most` the rest is counted. */
export function listed(items: readonly string[], most = 12): string {
  const shown = items.length > most ? items.slice(0, most) : items;
  const rest = items.length - shown.length;
  const all = rest > 0 ? [...shown, `${rest} more`] : shown;
  if (all.length < 2) return all[0] ?? '';
  return `${all.slice(0, -1).join(', ')} and ${all[all.length - 1] ?? ''}`;
}

/** "Wire 12", "Wires 12, 14 and 15": the subject of a sentence. */
export function wiresAsSubject(study: Study, wires: readonly Wire[]): string {
  const [first] = wires;
  if (wires.length === 1 && first) return capitalised(wireLabel(study, first));
  const numbered = wires.filter((wire) => wire.number !== '').map((wire) => wire.number);
  const without = wires.length - numbered.length;
  const nameless = without === 0 ? '' : `${without} unnumbered wire${without === 1 ? '' : 's'}`;
  if (numbered.length === 0) return capitalised(nameless);
  const numbers = `${numbered.length === 1 ? 'Wire' : 'Wires'} ${listed(numbered)}`;
  return nameless === '' ? numbers : `${numbers}, and ${nameless}`;
}

/** "wire 12", "wires 12, 14 and 15": as an object in a sentence. */
export function wiresInWords(study: Study, wires: readonly Wire[]): string {
  const subject = wiresAsSubject(study, wires);
  return subject.charAt(0).toLowerCase() + subject.slice(1);
}

/** "18 kV dc", "285 V dc with a pulse of 3.4 kV", "6.3 V ac": what makes up the stress. */
export function carriesWords({ stress }: WireStudy): string {
  if (!stress) return 'nobody knows what';
  const { dcV, acV, pulseV } = stress.made;
  const parts: string[] = [];
  if (dcV !== 0) parts.push(`${formatVolts(dcV)} dc${stress.coldDcV === null ? '' : ' cold'}`);
  if (acV !== 0) parts.push(`${formatVolts(acV)} ac`);
  if (pulseV !== 0) parts.push(`a pulse of ${formatVolts(pulseV)}`);
  if (parts.length === 0) return 'nothing against the chassis';
  const beside = stress.beside ? ` against ${stress.beside.words}` : '';
  const sum = `${parts.join(' with ')}${beside}`;
  return stress.atLeast ? `at least ${sum}` : sum;
}

/** "the 25 kV class", "at least the 600 V class", "more than the 40 kV class". */
export function classWords(need: Need): string {
  const step = `the ${formatVolts(need.requiredV)} class`;
  if (need.beyondLadder) return `more than ${step}`;
  return need.atLeast ? `at least ${step}` : step;
}

/** "rated 10 kV", "rated 300 V (UL 1007)", "rated 20 kV for dc only". */
export function ratingWords(rating: Rating): string {
  const kind = rating.kind === 'any' ? '' : ` for ${rating.kind} only`;
  const basis = rating.basis === 'as marked' ? '' : ` (${rating.basis})`;
  return `rated ${formatVolts(rating.volts)}${kind}${basis}`;
}
