// Two supplies of different volts, or a supply and the chassis, on points that are connected: one
// of the ends is at the wrong terminal, or the set has been miswired.
import type { Wire } from '#document/index.ts';
import { findElement } from '#document/references.ts';
import { formatVolts } from '#quantity/index.ts';
import { findWireWay } from '#study/wire-way.ts';
import { listAt, type Lists } from '#study/lists.ts';
import type { Net, Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { eachNet, inPieces } from '../pieces.ts';
import { wireLabel, wirePlace } from '../places.ts';
import { commonPractice, wiresAsSubject, wiresInWords } from '../words.ts';

export const suppliesJoined: Rule = {
  id: 'supplies-joined',
  severity: 'fault',
  title: 'Different supplies on connected points',
  source: commonPractice,
  explain:
    'Connected points share one voltage. Where wires of one net declare dc that differs by more than a tenth of the larger (and by more than 10 V), or a source of a part says otherwise than a wire, or a wire that is connected to the chassis declares more than 30 V dc, something is joined that should not be, or written down wrongly. The message names the shortest way from one to the other. It passes when an end is moved, a wire is taken away, or the declared volts agree.',
  ...inPieces(
    eachNet((study, net) => (net.isChassis ? checkChassis(study, net) : checkNet(study, net)))
  )
};

const wayOut = { words: 'Look for an end at the wrong terminal, or put the volts right.' };

const dcOf = (wire: Wire): number => wire.carries.dcV ?? 0;

const wiresOf = ({ document }: Study, net: Net): Wire[] =>
  net.wires
    .map((id) => findElement(document.wires, id))
    .filter((wire) => wire !== undefined)
    .filter((wire) => wire.carries.dcV !== undefined);

const differ = (a: number, b: number): boolean =>
  Math.abs(a - b) > Math.max(10, 0.1 * Math.max(Math.abs(a), Math.abs(b)));

function checkNet(study: Study, net: Net): Finding[] {
  if (net.dcV === null) return [];
  const wires = wiresOf(study, net);
  const [first] = wires;
  if (!first) return [];
  const high = wires.reduce((a, b) => (dcOf(b) > dcOf(a) ? b : a));
  const low = wires.reduce((a, b) => (dcOf(b) < dcOf(a) ? b : a));
  if (differ(dcOf(high), dcOf(low))) {
    const way = wayBetween(study, high, low);
    const message = `${wiresAsSubject(study, [high])} is declared at ${formatVolts(dcOf(high))} dc and ${wireLabel(study, low)} at ${formatVolts(dcOf(low))} dc, but they are connected${way}. Until that is settled the larger counts for all of ${net.name}.`;
    return [findingAt(study, [high, low], message)];
  }
  if (net.dcV.how !== 'part' || !differ(net.dcV.value, dcOf(high))) return [];
  const message = `${wiresAsSubject(study, [high])} is declared at ${formatVolts(dcOf(high))} dc, but the ${net.dcV.basis} that it is connected to gives ${formatVolts(net.dcV.value)}.`;
  return [findingAt(study, [high], message)];
}

/** More dc than a wire on the chassis can have by the drop along it. */
const mostOnChassisV = 30;

/** One finding for each voltage that is declared on wires of the chassis. */
function checkChassis(study: Study, net: Net): Finding[] {
  const byVolts: Lists<number, Wire> = new Map();
  for (const wire of wiresOf(study, net)) {
    if (Math.abs(dcOf(wire)) > mostOnChassisV) listAt(byVolts, dcOf(wire)).push(wire);
  }
  return [...byVolts].map(([volts, wires]) => {
    const one = wires.length === 1;
    const way = wayToChassis(study, wires);
    const message = `${wiresAsSubject(study, wires)} ${one ? 'is' : 'are'} declared at ${formatVolts(volts)} dc, but ${one ? 'it is' : 'they are'} connected to the chassis${way}.`;
    return findingAt(study, wires, message);
  });
}

const findingAt = (study: Study, wires: readonly Wire[], message: string): Finding => ({
  rule: 'supplies-joined',
  severity: 'fault',
  at: wires.map((wire) => wirePlace(study, wire)),
  message,
  source: commonPractice,
  fix: wayOut
});

const pointOf = (study: Study, wire: Wire): number | undefined => {
  const entry = study.index.findAt(wire.from) ?? study.index.findAt(wire.to);
  return entry && study.pointOf.get(entry.key);
};

function wayBetween(study: Study, a: Wire, b: Wire): string {
  const start = pointOf(study, a);
  const goal = pointOf(study, b);
  if (start === undefined || goal === undefined) return '';
  return wayWords(study, findWireWay(study, start, goal), [a, b]);
}

/** The shortest way of any of the wires. */
function wayToChassis(study: Study, wires: readonly Wire[]): string {
  const ways = wires
    .map((wire) => pointOf(study, wire))
    .map((point) => (point === undefined ? null : findWireWay(study, point, study.chassisPoint)))
    .filter((way) => way !== null)
    .sort((a, b) => a.length - b.length);
  return wayWords(study, ways[0] ?? null, wires);
}

function wayWords(study: Study, way: readonly Wire[] | null, known: readonly Wire[]): string {
  const between = (way ?? []).filter((wire) => !known.includes(wire));
  return between.length === 0 ? '' : ` by ${wiresInWords(study, between)}`;
}
