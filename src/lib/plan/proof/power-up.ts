// The first time that power comes on: in steps, behind a transformer, with what each terminal should show.
// Where pulses or kilovolts are, no meter goes.
import type { Part } from '#document/index.ts';
import { findTubeType } from '#handbook/tube-types.ts';
import { formatNumber, formatVolts } from '#quantity/index.ts';
import type { Net, Study, TerminalEntry } from '#study/index.ts';
import type { Expectation } from './expectation.ts';
import type { TestRow, TestSheet } from './test-row.ts';

/** As service data of the time allowed, where it said nothing else. Common practice, no source. */
export const usualTolerance = 0.2;

/** No signal is as large that would be read as ac of the line, V. A matter of judgement, no source. */
const leastWindingV = 60;

/** Where a common meter is not to be put on, V. A matter of judgement, no source. */
const meterV = 1000;
const pulseV = 300;

/** Beside the readings: by how much the volts may differ, per cent, where the service data says so. */
export const toleranceRecord = 'volts may differ by, %';

/** As it was written down, as a share; undefined where nothing sensible was. */
export function writtenTolerance({ document }: Study): number | undefined {
  const text = document.proof?.records?.['power-up']?.[toleranceRecord] ?? '';
  const percent = Number(text.replace('%', '').replace(',', '.').trim());
  return text.trim() !== '' && percent > 0 && percent <= 100 ? percent / 100 : undefined;
}

export function powerUpSheet(study: Study, tolerance = usualTolerance): TestSheet {
  const rows = study.index.terminals.flatMap((entry) => rowOf(study, entry, tolerance));
  return {
    id: 'power-up',
    title: 'First power-up',
    before: [
      'Everything discharged, tests above done, tubes as the service data says.',
      'Isolation transformer, set to the line volts of the service data.',
      'A lamp of 60 to 100 W in series, or a variac: a quarter, half, three quarters, full, some minutes each. Rectifier tubes start late on low volts.',
      'Stop at smoke, smell, a red plate, or a lamp that stays bright.',
      'Clip the meter on with power off; one hand when it is on.'
    ],
    limits: [
      `Readings within ${formatNumber(tolerance * 100)} % of what is expected, or as the data says. A reading that fits does not say that anything is safe.`,
      'DO NOT MEASURE where it is written: pulses and kilovolts destroy the meter and jump to the hand.'
    ],
    record: [
      'line volts',
      'meter type and its ohms per volt or megohms',
      'lamp or variac step',
      toleranceRecord,
      'date'
    ],
    rows
  };
}

function rowOf(study: Study, entry: TerminalEntry, tolerance: number): TestRow[] {
  const { part, terminal, key } = entry;
  if (
    part.kind !== 'tube' &&
    part.kind !== 'picture tube' &&
    !(part.kind === 'capacitor' && hasCan(part))
  )
    return [];
  const net = study.nets.get(study.netOf.get(key) ?? '');
  const label = study.index.labelOf({
    at: { part: part.id, terminal: terminal.id },
    known: 'seen'
  });
  const role = pinRole(part, terminal.name);
  const why = whyNot(study, entry, net);
  const row = { id: `power-up ${key}`, what: role ?? part.reference, where: label } as const;
  if (why !== null)
    return [{ ...row, expected: null, words: 'DO NOT MEASURE', doNotMeasure: true, note: why }];
  if (!net || net.isChassis || net.wires.length === 0) return [];
  const expected = expectationOf(study, key, net, tolerance);
  return [
    {
      ...row,
      expected,
      words: expected?.words ?? 'not known: see the service data',
      doNotMeasure: false,
      note: expected?.basis ?? null
    }
  ];
}

const hasCan = (part: Part): boolean => Object.keys(part.terminals).length > 2;

const pinRole = (part: Part, name: string): string | null => {
  const type = part.type === undefined ? null : findTubeType(part.type);
  const pin = type?.pinFunctions.find((each) => String(each.pin) === name);
  return pin ? pin.role : null;
};

/** Tubes whose plate or cathode swings by kilovolts when the sweep runs. */
const sweepTubes =
  /horizontal output|line output|sweep output|damper|high[- ]voltage rectifier|hv rectifier/i;

/** Why no meter goes there; null where one may. What is not known of a sweep counts as there. */
function whyNot(
  study: Study,
  { part, terminal, key }: TerminalEntry,
  net: Net | undefined
): string | null {
  const type = part.type === undefined ? null : findTubeType(part.type);
  const words = `${type?.what ?? ''} ${part.function ?? ''}`;
  const role = pinRole(part, terminal.name);
  const isTop = terminal.ending === 'cap' || /^(cap|anode)$/i.test(terminal.name);
  if (part.kind === 'picture tube' && isTop) return 'second anode';
  if (/high[- ]voltage rectifier|hv rectifier/i.test(words)) return 'high-voltage rectifier';
  if (/damper/i.test(words) && role !== 'heater') return 'damper: pulses of kilovolts';
  if (sweepTubes.test(words) && (isTop || role === 'plate'))
    return 'output plate: pulses of kilovolts';
  if (!net) return null;
  if (net.roles.has('second anode')) return 'high voltage';
  const volts = study.network.voltsAt(key);
  if (Math.max(Math.abs(net.dcV?.value ?? 0), Math.abs(volts.dcV ?? 0)) >= meterV)
    return 'high voltage';
  if ((net.pulseV?.value ?? 0) >= pulseV)
    return `a pulse of ${formatVolts(net.pulseV?.value ?? 0)}`;
  const isSweep = net.roles.has('sweep') && !net.isSupply;
  return isSweep && net.pulseV === null && (role === 'plate' || isTop)
    ? 'sweep: its pulse is not known'
    : null;
}

function expectationOf(study: Study, key: string, net: Net, tolerance: number): Expectation | null {
  const solved = study.network.voltsAt(key);
  const from = solved.countedFrom === null ? '' : `, counted from ${solved.countedFrom}`;
  const dc = net.dcV?.how === 'declared' || net.dcV?.how === 'net' ? net.dcV : null;
  const dcV = dc?.value ?? solved.dcV ?? net.dcV?.value ?? null;
  if (dcV !== null && Math.abs(dcV) >= 0.05) {
    return around(
      dcV,
      'dc',
      tolerance,
      `${dc?.basis ?? net.dcV?.basis ?? 'reckoned from the circuit'}${from}`
    );
  }
  const acV = solved.acV ?? net.acV?.value ?? null;
  const isLineAc = net.atHeater || net.onLineSide || Math.abs(acV ?? 0) >= leastWindingV;
  if (acV !== null && Math.abs(acV) >= 0.5 && isLineAc) {
    const basis = solved.acV === null ? net.acV?.basis : undefined;
    return around(Math.abs(acV), 'ac', tolerance, basis ?? 'reckoned from the circuit');
  }
  return null;
}

function around(volts: number, kind: 'dc' | 'ac', tolerance: number, basis: string): Expectation {
  const ends = [volts * (1 - tolerance), volts * (1 + tolerance)].map((end) =>
    Number(end.toPrecision(3))
  );
  const least = Math.min(...ends);
  const most = Math.max(...ends);
  return {
    dimension: 'voltage',
    least,
    most,
    words: `${formatVolts(Number(volts.toPrecision(3)))} ${kind}, ${formatNumber(least)} to ${formatVolts(most)}`,
    basis
  };
}
