// What bleeds a capacitor once the set is off: resistors that are known, and nothing else. Cold tubes are
// no load, and a heater is a few ohms only as long as it is in its socket.
import { solveNetwork, type Branch } from '#physics/network/index.ts';
import type { PlacedElement, Study } from '#study/index.ts';

const bleeders = new WeakMap<Study, readonly Branch[]>();

/** The resistors and windings of a chassis between its nets. */
function listBleeders(study: Study): readonly Branch[] {
  const known = bleeders.get(study);
  if (known) return known;
  const branches = study.elements.flatMap(({ id, values, from, to }): Branch[] => {
    const ends = { id, from: from.id, to: to.id };
    if (from === to) return [];
    if (values.kind === 'resistor') {
      return [{ kind: 'resistance', ...ends, ohms: values.ohms < 1e-6 ? 0 : values.ohms }];
    }
    // The winding of a source is wire, for all its volts.
    return values.kind === 'source' && values.current === 'ac' ? [{ kind: 'join', ...ends }] : [];
  });
  bleeders.set(study, branches);
  return branches;
}

/** Resistance between two nets through known resistors, ohm; null where none leads from one to the other. */
export function bleedOhms(study: Study, from: string, to: string): number | null {
  const branches: readonly Branch[] = [
    ...listBleeders(study),
    { kind: 'load', id: 'one ampere', from: to, to: from, amps: 1 }
  ];
  const { volts, faults } = solveNetwork({ branches, reference: [to] });
  const ohms = volts.get(from);
  if (ohms === null || ohms === undefined) return null;
  const isOpen = faults.some(
    ({ kind, branches: own }) => kind === 'starved' && own.includes('one ampere')
  );
  return isOpen || !(ohms >= 0) ? null : ohms;
}

/** Peak dc between the two sides of a capacitor, playing or before the tubes draw; null where not known. */
export function chargedTo(study: Study, { from, to }: PlacedElement): number | null {
  const [a, b] = [study.nets.get(from.id), study.nets.get(to.id)];
  if (!a?.dcV || !b?.dcV) return null;
  const playing = Math.abs(a.dcV.value - b.dcV.value);
  const cold =
    a.coldDcV === null && b.coldDcV === null
      ? 0
      : Math.abs((a.coldDcV ?? a.dcV).value - (b.coldDcV ?? b.dcV).value);
  return Math.max(playing, cold);
}
