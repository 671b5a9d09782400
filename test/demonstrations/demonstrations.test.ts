// The two demonstrations hold together: electrically, on the bench, and as the committed files.
import { readFileSync } from 'node:fs';
import { runChecks } from '#checks/index.ts';
import { openDocument, sortByOrder, type ChassisDocument, type Wire } from '#document/index.ts';
import { findDanglingReferences } from '#document/references.ts';
import { findTubeType, heaterElements } from '#handbook/tube-types.ts';
import { readWireList } from '#intake/index.ts';
import { solveNetwork } from '#physics/network/index.ts';
import { buildStudy, terminalKey, type Net, type Study } from '#study/index.ts';
import { describe, expect, it } from 'vitest';
import { toDcCircuit } from './dc-circuit.ts';
import { buildDemonstrationFiles } from './files.ts';
import { buildRadio } from './radio.ts';
import { buildTelevision } from './television.ts';
import { toWireList } from './wire-list.ts';

const television = buildTelevision();
const radio = buildRadio();
const both: readonly [string, ChassisDocument][] = [
  ['television', television],
  ['radio', radio]
];

const wireOf = (document: ChassisDocument, number: string): Wire => {
  const found = Object.values(document.wires).find((wire) => wire.number === number);
  if (!found) throw new Error(`no wire ${number}`);
  return found;
};
const terminalOf = (document: ChassisDocument, reference: string, name: string): string => {
  const part = Object.values(document.parts).find((each) => each.reference === reference);
  const terminal = Object.values(part?.terminals ?? {}).find((each) => each.name === name);
  if (!part || !terminal) throw new Error(`no terminal ${reference} ${name}`);
  return terminalKey(part.id, terminal.id);
};
const netAt = (study: Study, reference: string, name: string): Net => {
  const net = study.nets.get(study.netOf.get(terminalOf(study.document, reference, name)) ?? '');
  if (!net) throw new Error(`no net at ${reference} ${name}`);
  return net;
};

describe('the committed files', () => {
  it.each([...buildDemonstrationFiles()])('%s is as test/demonstrations makes it', (name, text) => {
    const committed = readFileSync(`static/demonstrations/${name}`, 'utf8');
    expect(
      committed === text,
      'run node .config/write-demonstrations.mjs and look at the change'
    ).toBe(true);
  });

  it.each([...buildDemonstrationFiles()].filter(([name]) => name.endsWith('.json')))(
    '%s opens',
    (name, text) => {
      expect(openDocument(text, name)).toMatchObject({ ok: true });
    }
  );
});

describe.each(both)('the %s', (_, document) => {
  const study = buildStudy(document);

  it('has every end, lead, cable and support that it names', () => {
    expect(findDanglingReferences(document)).toEqual([]);
  });

  it('was never taped shorter than the drawing allows', () => {
    const withoutTape = buildStudy({
      ...document,
      wires: Object.fromEntries(
        Object.entries(document.wires).map(([id, { tapedMm: _taped, ...rest }]) => [id, rest])
      )
    });
    const tooShort = study.index.wires.filter((wire) => {
      const drawn = withoutTape.wires.get(wire.id)?.length;
      return drawn && wire.tapedMm !== undefined && wire.tapedMm < drawn.mm;
    });
    expect(tooShort.map((wire) => wire.number)).toEqual([]);
  });

  it('declares volts that its own circuit gives, to one part in twenty', () => {
    const circuit = toDcCircuit(document, study);
    // The radio's B- floats: count from it, as its service data would.
    const minus = document === radio ? [netAt(study, 'TS2', '1').id] : [];
    const { volts } = solveNetwork({ ...circuit, reference: [...circuit.reference, ...minus] });
    const compared = study.index.wires.flatMap((wire) => {
      const declared = wire.carries.dcV;
      const solved = volts.get(study.wires.get(wire.id)?.net ?? '');
      if (declared === undefined || solved === undefined || solved === null) return [];
      return [{ number: wire.number, declared, solved }];
    });
    expect(compared.length).toBeGreaterThan(document === radio ? 15 : 55);
    for (const { number, declared, solved } of compared) {
      const allowed = Math.max(0.5, Math.abs(declared) * 0.05);
      expect(Math.abs(solved - declared), `wire ${number}`).toBeLessThanOrEqual(allowed);
    }
  });
});

describe('the television', () => {
  const study = buildStudy(television);
  const wires = sortByOrder(television.wires);

  it('is as large as a set on the bench', () => {
    expect(wires.length).toBeGreaterThanOrEqual(100);
    expect(Object.keys(television.units)).toHaveLength(5);
    const numbers = wires.map((wire) => wire.number);
    expect(new Set(numbers).size).toBe(numbers.length);
    expect([...numbers].sort((a, b) => Number(a) - Number(b))).toEqual(numbers);
  });

  it('carries in each length of heater trunk what the heaters further on draw', () => {
    const heaterAmps = new Map<string, number>();
    for (const part of Object.values(television.parts)) {
      const type = part.type === undefined ? null : findTubeType(part.type);
      if (!type || type.heater?.isFilament === true) continue;
      for (const { from, to, amps } of heaterElements(type)) {
        const live = [from, to].map((pin) => terminalOf(television, part.reference, pin));
        for (const key of live) heaterAmps.set(key, amps);
      }
    }
    const trunk = wires.filter((wire) => wire.function === 'heaters 6.3 V');
    expect(trunk).toHaveLength(22);
    // A pin of the power cable's plug and the pin of the jack that it sits in are one point.
    const keyOf = (end: Wire['from']) =>
      end.at ? terminalKey(end.at.part, end.at.terminal).replace('pp4/', 'pj4/') : '';
    const beyond = (wire: Wire): number => {
      const at = keyOf(wire.to);
      const onwards = trunk.filter((next) => keyOf(next.from) === at);
      return (heaterAmps.get(at) ?? 0) + onwards.reduce((sum, next) => sum + beyond(next), 0);
    };
    for (const wire of trunk) {
      expect(wire.carries.amps, `wire ${wire.number}`).toBeCloseTo(beyond(wire), 9);
    }
  });

  it('returns through each winding what it sends out', () => {
    expect(wireOf(television, '2').carries.amps).toBe(wireOf(television, '1').carries.amps);
    expect(wireOf(television, '4').carries.amps).toBe(wireOf(television, '3').carries.amps);
  });

  it('joins what should be joined and keeps the rails apart', () => {
    const rails = [
      netAt(study, 'V17', '8'),
      netAt(study, 'C1', 'B'),
      netAt(study, 'C2', 'A'),
      netAt(study, 'TS13', '1'),
      netAt(study, 'V15', '3'),
      netAt(study, 'V16', '7'),
      netAt(study, 'V18', 'anode')
    ];
    expect(new Set(rails.map((net) => net.id)).size).toBe(rails.length);
    expect(rails.some((net) => net.isChassis)).toBe(false);
    expect(netAt(study, 'L1', '1')).toBe(netAt(study, 'V17', '8'));
    for (const [reference, name] of [
      ['T4', 'red'],
      ['T3', 'red'],
      ['V9', '6'],
      ['V15', '5']
    ] as const) {
      expect(netAt(study, reference, name)).toBe(netAt(study, 'C1', 'B'));
    }
    for (const [reference, name] of [
      ['TS16', '2'],
      ['TS6', '4'],
      ['TS12', '1'],
      ['R4', '3']
    ] as const) {
      expect(netAt(study, reference, name)).toBe(netAt(study, 'C2', 'A'));
    }
    expect(netAt(study, 'DY1', '1')).toBe(netAt(study, 'T2', '3'));
    for (const [reference, name] of [
      ['R3', '1'],
      ['V18', '12'],
      ['TS16', '4'],
      ['T1', 'red/yellow']
    ] as const) {
      expect(netAt(study, reference, name).isChassis).toBe(true);
    }
  });

  it('shows the findings that it was made to show, and no other faults', () => {
    const loud = runChecks(study).filter(
      ({ severity }) => severity === 'danger' || severity === 'fault'
    );
    expect(loud.map(({ rule, at }) => [rule, at[0]?.label])).toEqual([
      ['class-found', 'wire 128'],
      ['insulation-failing', 'wire 128'],
      ['class-found', 'wire 38'],
      ['class-planned', 'wire 130']
    ]);
  });
});

describe('the wire list of the television', () => {
  let count = 0;
  const { document, notes, counts } = readWireList(toWireList(television), {
    fileName: 'console-21.csv',
    makeId: (kind) => `${kind.slice(0, 1)}${String(++count).padStart(4, '0')}`
  });

  it('is read wire for wire, and tells which plugs it took for the halves of a connector', () => {
    expect(notes.map(({ kind, words }) => `${kind}: ${words.split(/,| for /)[0]}`)).toEqual([
      'reading: P4 and J4 are taken',
      'reading: P2 and J2 have one number',
      'reading: P1 and J1 are taken'
    ]);
    expect(counts).toMatchObject({
      wires: Object.keys(television.wires).length,
      unread: 0,
      halfKnown: 1
    });
    const figures = (list: ChassisDocument) =>
      sortByOrder(list.wires).map(({ number, carries, found }) => ({
        number,
        carries,
        awg: found.awg,
        ratingV: found.ratingV
      }));
    expect(figures(document ?? radio)).toEqual(figures(television));
  });

  it('leads to the same loud finding of what was found', () => {
    const found = (list: ChassisDocument) =>
      runChecks(buildStudy(list))
        .filter(
          ({ rule, severity }) =>
            rule === 'class-found' && (severity === 'danger' || severity === 'fault')
        )
        .map(({ at }) => at[0]?.label);
    expect(found(document ?? radio)).toEqual(found(television));
  });
});

describe('the radio', () => {
  const study = buildStudy(radio);

  it('has its B- apart from the chassis, and its heaters in one string across the line', () => {
    const minus = netAt(study, 'TS2', '1');
    expect(minus.isChassis).toBe(false);
    expect(netAt(study, 'V3', '3')).toBe(minus);
    expect(netAt(study, 'S1', '1')).toBe(minus);
    expect(netAt(study, 'TS2', '3').isChassis).toBe(true);
    expect(netAt(study, 'V5', '4')).toBe(netAt(study, 'P1', '1'));
    const order = [
      ['V5', '3', 'V4', '4'],
      ['V4', '3', 'V2', '4'],
      ['V2', '3', 'V1', '4'],
      ['V1', '3', 'V3', '4']
    ] as const;
    for (const [first, out, second, into] of order) {
      expect(netAt(study, first, out)).toBe(netAt(study, second, into));
    }
  });

  it('asks of its heaters about what the line gives, at one current', () => {
    const heaters = ['12BE6', '12BA6', '12AV6', '50C5', '35W4'].map(
      (type) => findTubeType(type)?.heater
    );
    expect(heaters.reduce((sum, heater) => sum + (heater?.volts ?? 0), 0)).toBeCloseTo(122.8, 9);
    for (const heater of heaters) expect(heater?.amps).toBe(0.15);
  });
});
