// Continuity by net: from one terminal to every other that should be connected.
import { wireOhms, type Net, type Study } from '#study/index.ts';
import { findWireWay } from '#study/wire-way.ts';
import { formatNumber } from '#quantity/index.ts';
import type { TestRow, TestSheet } from './test-row.ts';

/** What joints and a contact of a probe may add once the leads are nulled, ohm. Common practice, no source. */
const jointsOhm = 0.3;

export function continuitySheet(study: Study): TestSheet {
  const rows = [...study.nets.values()].flatMap((net) => rowsOf(study, net));
  return {
    id: 'continuity',
    title: 'Continuity by connected points',
    before: [
      'Power off, plug pulled, everything discharged and measured.',
      'Tubes out: their heaters and cathodes join what should be apart.',
      'Null the leads: touch the probes together and take that reading off.',
      'With a tube in, a cold heater reads a small part of its hot ohms: that is no short.'
    ],
    limits: [
      'A good reading says that the points are connected, not that the wire will carry its current or stand its volts.',
      'It does not show what is connected that should not be.'
    ],
    record: ['meter and its type', 'date'],
    rows
  };
}

function rowsOf(study: Study, net: Net): TestRow[] {
  if (net.wires.length === 0) return [];
  const { index } = study;
  // Points of one metal need no test: one terminal for each.
  const seen = new Set<number>();
  const ends = net.terminals.flatMap((key) => {
    const entry = index.terminalByKey.get(key);
    const point = study.pointOf.get(key);
    if (!entry || point === undefined || seen.has(point)) return [];
    seen.add(point);
    const label = index.labelOf({
      at: { part: entry.part.id, terminal: entry.terminal.id },
      known: 'seen'
    });
    return [{ key, point, label }];
  });
  const [first, ...rest] = ends;
  if (!first) return [];
  return rest.map(({ key, point, label }): TestRow => {
    const way = findWireWay(study, first.point, point) ?? [];
    const ohms = way.map((wire) => {
      const about = study.wires.get(wire.id);
      return about ? wireOhms(about.conductor, about.length, study.policy) : null;
    });
    const most = Number(
      (jointsOhm + ohms.reduce<number>((sum, own) => sum + (own ?? 0), 0)).toPrecision(2)
    );
    const doubt = ohms.includes(null) ? '; a length or gauge on the way is not known' : '';
    const words = `below ${formatNumber(most)} Ω`;
    return {
      id: `continuity ${first.key} ${key}`,
      what: net.name,
      where: `${first.label} to ${label}`,
      expected: {
        dimension: 'resistance',
        least: 0,
        most,
        words,
        basis: `wire by gauge and length, and ${formatNumber(jointsOhm)} Ω for joints (common practice, no source)${doubt}`
      },
      words,
      doNotMeasure: false,
      note:
        way.length === 0
          ? null
          : `by wire ${way.map(({ number }) => number || 'without number').join(', ')}`
    };
  });
}
