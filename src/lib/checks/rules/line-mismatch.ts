// Coax and twin lead of different impedance on one point with nothing between to match them.
import type { Cable, Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { findCableType } from '#handbook/cables.ts';
import { formatMm, formatNumber, formatOhms } from '#quantity/index.ts';
import { mismatch } from '#physics/mismatch.ts';
import type { Net, Study } from '#study/index.ts';
import { plainInput } from '../amount-input.ts';
import type { Finding, FindingPlace, Rule } from '../finding.ts';
import { cablePlace, partPlace } from '../places.ts';

const source =
  'line theory: the standing wave ratio of two lines joined is the ratio of their impedances';

export const lineMismatch: Rule = {
  id: 'line-mismatch',
  severity: 'caution',
  title: 'Lines of different impedance joined',
  source,
  explain:
    'Where the conductor of a coax or twin lead is connected to that of another, or ends at an antenna, plug or jack whose value is written in ohms, the two impedances should agree within a fifth. A mismatch sends a part back: ghosts on a long lead, nothing to speak of on one much shorter than a wave. Below a tenth of a wave at the top of the VHF television band (216 MHz) it is a note. It passes with a matching transformer between, drawn as a part of its own, or when the impedances agree.',
  check: (study) => {
    const found = new Map<string, Finding>();
    for (const net of study.nets.values()) {
      if (net.isChassis) continue;
      const [first, ...others] = portsOn(study, net);
      for (const other of others) {
        if (!first || agree(first.ohms, other.ohms)) continue;
        const key = [first.place.id, other.place.id].sort().join(' ');
        if (!found.has(key)) found.set(key, findingOf(study, first, other));
      }
    }
    return [...found.values()];
  }
};

interface Port {
  readonly place: FindingPlace;
  readonly ohms: number;
  /** Where the ohms come from. */
  readonly basis: string;
  readonly cable: Cable | null;
}

/** Within a fifth: 72 and 75 ohm lines are used for one another. */
const agree = (a: number, b: number): boolean => Math.max(a, b) <= 1.2 * Math.min(a, b);

function portsOn(study: Study, net: Net): readonly Port[] {
  const ports = new Map<string, Port>();
  for (const id of net.wires) {
    const wire = findElement(study.document.wires, id);
    const cable = wire && lineCableOf(study, wire);
    const line = cable && impedanceOf(cable);
    if (cable && line && line.ohms > 0) {
      ports.set(cable.id, { place: cablePlace(cable), ...line, cable });
    }
  }
  if (ports.size === 0) return [];
  for (const key of net.terminals) {
    const part = study.index.terminalByKey.get(key)?.part;
    if (!part || !/^(antenna|plug|jack)$/.test(part.kind)) continue;
    const ohms = Number(/(\d+(?:\.\d+)?)\s*(?:ohms?|Ω)/i.exec(part.value ?? '')?.[1] ?? 0);
    if (ohms > 0) {
      ports.set(part.id, { place: partPlace(part), ohms, basis: 'as entered', cable: null });
    }
  }
  return [...ports.values()];
}

function lineCableOf(study: Study, wire: Wire): Cable | undefined {
  if (wire.cable === undefined || wire.construction === 'shield') return undefined;
  const cable = findElement(study.document.cables, wire.cable);
  return cable && (cable.kind === 'coax' || cable.kind === 'twin lead') ? cable : undefined;
}

function impedanceOf({ impedanceOhm, name }: Cable): Pick<Port, 'ohms' | 'basis'> | null {
  if (impedanceOhm !== undefined) return { ohms: impedanceOhm, basis: 'as entered' };
  const type = findCableType(name);
  if (type?.impedanceOhm == null) return null;
  const memory = type.mark === 'from memory' ? ', from memory' : '';
  return { ohms: type.impedanceOhm, basis: `by the type of the lead, ${type.name}${memory}` };
}

const tenthOfWaveMm = (velocity: number): number => (velocity * 299_792_458_000) / 216e6 / 10;

function findingOf(study: Study, a: Port, b: Port): Finding {
  const { vswr, mismatchLossDb } = mismatch(a.ohms, b.ohms);
  const lengths = [a.cable, b.cable].map((cable) => cable && lengthOf(study, cable));
  const velocity = Math.min(...[a.cable, b.cable].map((cable) => cable?.velocity ?? 0.66));
  const limitMm = tenthOfWaveMm(velocity > 0 ? velocity : 0.66);
  const longest = Math.max(0, ...lengths.map((mm) => mm ?? 0));
  const known = longest > 0;
  const isShort = longest < limitMm;
  const about = !known
    ? 'How long they are is not known; on leads much shorter than a wave it does not matter.'
    : isShort
      ? `On leads of ${formatMm(Math.round(longest))} it hardly matters: a tenth of a wave at 216 MHz is ${formatMm(Math.round(limitMm))}.`
      : `At ${formatMm(Math.round(longest))}, over a tenth of a wave at 216 MHz (${formatMm(Math.round(limitMm))}), a part of the signal comes back, and ${formatNumber(mismatchLossDb, 2)} dB of it is lost.`;
  return {
    rule: 'line-mismatch',
    severity: known && !isShort ? 'caution' : 'note',
    at: [a.place, b.place],
    message: `${formatOhms(a.ohms)} (${a.place.label}) is joined to ${formatOhms(b.ohms)} (${b.place.label}), ${formatNumber(vswr, 3)} to 1. ${about}`,
    source,
    fix: { words: 'Put a matching transformer between, or use the lead of the right impedance.' },
    why: {
      sum: 'mismatch',
      inputs: [a, b].map(({ place, ohms, basis }) =>
        plainInput(place.label, formatOhms(ohms), basis)
      ),
      outcome: `Standing waves of ${formatNumber(vswr, 3)} to 1; up to 1.2 to 1 the two count as equal.`,
      passes: 'when the two impedances agree within a fifth.'
    }
  };
}

/** The longest conductor of a cable, mm; null where none is known. */
function lengthOf(study: Study, cable: Cable): number | null {
  let longest: number | null = null;
  for (const wire of study.index.wires) {
    if (wire.cable !== cable.id) continue;
    const mm = study.wires.get(wire.id)?.length?.mm;
    if (mm !== undefined && mm > (longest ?? 0)) longest = mm;
  }
  return longest;
}
