// Two supplies of different volts, or a supply and the chassis, on points that are connected: one
// of the ends is at the wrong terminal, or the set has been miswired.
import type { Wire } from '#document/index.ts';
import { formatVolts } from '#quantity/index.ts';
import { findWireWay } from '#study/wire-way.ts';
import type { Net, Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { wireLabel, wirePlace } from '../places.ts';
import { capitalised, commonPractice, listed } from '../words.ts';

export const suppliesJoined: Rule = {
  id: 'supplies-joined',
  severity: 'fault',
  title: 'Different supplies on connected points',
  source: commonPractice,
  explain:
    'Connected points share one voltage. Where wires of one net declare dc that differs by more than a tenth of the larger (and by more than 10 V), or a source of a part says otherwise than a wire, or a wire that is connected to the chassis declares more than 30 V dc, something is joined that should not be, or written down wrongly. The message names the shortest way from one to the other. It passes when an end is moved, a wire is taken away, or the declared volts agree.',
  check: (study) =>
    [...study.nets.values()].flatMap((net) =>
      net.isChassis ? checkChassis(study, net) : checkNet(study, net)
    )
};

const wiresOf = (study: Study, net: Net): Wire[] => {
  const ids = new Set(net.wires);
  return study.index.wires.filter((wire) => ids.has(wire.id) && wire.carries.dcV !== undefined);
};

const differ = (a: number, b: number): boolean =>
  Math.abs(a - b) > Math.max(10, 0.1 * Math.max(Math.abs(a), Math.abs(b)));

const leastOnChassisV = 30;

function checkNet(study: Study, net: Net): Finding[] {
  if (net.dcV === null) return [];
  const wires = wiresOf(study, net);
  const dcOf = (wire: Wire) => wire.carries.dcV ?? 0;
  const [first] = wires;
  if (!first) return [];
  const high = wires.reduce((a, b) => (dcOf(b) > dcOf(a) ? b : a));
  const low = wires.reduce((a, b) => (dcOf(b) < dcOf(a) ? b : a));
  if (differ(dcOf(high), dcOf(low))) {
    const way = wayBetween(study, high, low);
    return [
      {
        rule: 'supplies-joined',
        severity: 'fault',
        at: [wirePlace(study, high), wirePlace(study, low)],
        message: `${capitalised(wireLabel(study, high))} is declared at ${formatVolts(dcOf(high))} dc and ${wireLabel(study, low)} at ${formatVolts(dcOf(low))} dc, but they are connected${way}. Until that is settled the larger counts for all of ${net.name}.`,
        source: commonPractice,
        fix: { words: 'Look for an end at the wrong terminal, or put the volts right.' }
      }
    ];
  }
  if (net.dcV.how !== 'part' || !differ(net.dcV.value, dcOf(high))) return [];
  return [
    {
      rule: 'supplies-joined',
      severity: 'fault',
      at: [wirePlace(study, high)],
      message: `${capitalised(wireLabel(study, high))} is declared at ${formatVolts(dcOf(high))} dc, but it is connected to a ${net.dcV.basis} that gives ${formatVolts(net.dcV.value)}.`,
      source: commonPractice,
      fix: { words: 'Look for an end at the wrong terminal, or put the volts right.' }
    }
  ];
}

function checkChassis(study: Study, net: Net): Finding[] {
  return wiresOf(study, net)
    .filter((wire) => Math.abs(wire.carries.dcV ?? 0) > leastOnChassisV)
    .map((wire) => {
      const entry = study.index.findAt(wire.from) ?? study.index.findAt(wire.to);
      const point = entry && study.pointOf.get(entry.key);
      const way = point === undefined ? null : findWireWay(study, point, study.chassisPoint);
      return {
        rule: 'supplies-joined',
        severity: 'fault',
        at: [wirePlace(study, wire)],
        message: `${capitalised(wireLabel(study, wire))} is declared at ${formatVolts(wire.carries.dcV ?? 0)} dc, but it is connected to the chassis${wayWords(study, way, wire)}.`,
        source: commonPractice,
        fix: { words: 'Look for an end at the wrong terminal, or put the volts right.' }
      };
    });
}

function wayBetween(study: Study, a: Wire, b: Wire): string {
  const from = study.index.findAt(a.from) ?? study.index.findAt(a.to);
  const to = study.index.findAt(b.from) ?? study.index.findAt(b.to);
  const start = from && study.pointOf.get(from.key);
  const goal = to && study.pointOf.get(to.key);
  if (start === undefined || goal === undefined) return '';
  return wayWords(study, findWireWay(study, start, goal), a, b);
}

function wayWords(study: Study, way: readonly Wire[] | null, ...known: Wire[]): string {
  const between = (way ?? []).filter((wire) => !known.includes(wire));
  if (between.length === 0) return '';
  return ` by ${listed(
    between.map((wire) => wireLabel(study, wire)),
    6
  )}`;
}
