import { describe, expect, it } from 'vitest';
import { applyEdit, type ChassisDocument, type Wire } from '#document/index.ts';
import { listHalfTraced, proposeJoins, halfWords } from '#editor/pin-walk/half-traced.ts';
import { joinWires } from '#editor/pin-walk/join-wires.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../../helpers/chassis.ts';
import { checkEdit } from '../../helpers/check-edit.ts';

const bench = () =>
  chassis('Bench set')
    .unit('Main chassis')
    .tube('V1', '6CG7')
    .tube('V2', '6AU6A')
    .strip('TS3', 5)
    .support('clamp 1', 'clamp', [10, 10])
    .support('clamp 2', 'clamp', [20, 10])
    .support('clamp 3', 'clamp', [30, 10]);

const join = (document: ChassisDocument, keep: string, gone: string): ChassisDocument => {
  const joined = joinWires(buildStudy(document), keep, gone);
  if (!joined.ok) throw new Error(joined.why);
  return checkEdit(document, joined.edit).document;
};
const wireOf = (document: ChassisDocument, id: string): Wire => document.wires[id]!;

describe('two half-traced wires', () => {
  const both = bench()
    .wire(12, 'V1-3', null, { colour: 'blue', notes: 'stiff', dress: 'along the apron' })
    .wire(31, 'TS3-2', null, {
      colour: 'blue',
      awg: 22,
      notes: 'scorched',
      dress: 'over the clamp',
      toEnd: { as: 'into the loom' },
      critical: { keepShort: true },
      state: 'tagged'
    })
    .build();

  it('become one with both ends, and keep what was noted of either', () => {
    const document = join(both, 'w12', 'w31');
    expect(Object.keys(document.wires)).toEqual(['w12']);
    const wire = wireOf(document, 'w12');
    const { index } = buildStudy(document);
    expect([wire.number, index.labelOf(wire.from), index.labelOf(wire.to)]).toEqual([
      '12',
      'V1-3',
      'TS3-2'
    ]);
    expect(wire.found).toEqual({ colour: 'blue', awg: 22 });
    expect(wire.notes).toBe(
      'stiff; scorched; written for the end: into the loom; joined with wire 31 from TS3-2'
    );
    expect(wire.dress).toBe('along the apron; over the clamp');
    expect(wire.critical).toEqual({ keepShort: true });
  });

  it('are no further along than the one that is least so', () => {
    expect(wireOf(join(both, 'w31', 'w12'), 'w31').state).toBe('found');
  });

  it('are two again after one undo', () => {
    const joined = joinWires(buildStudy(both), 'w12', 'w31');
    if (!joined.ok) throw new Error(joined.why);
    const applied = applyEdit(both, joined.edit);
    expect(applied).toMatchObject({ ok: true, name: 'join wires 12 and 31' });
  });

  it('give their second end whichever way round each was traced', () => {
    const document = join(
      bench()
        .wire(1, null, 'V1-3', { colour: 'red' })
        .wire(2, null, 'V2-5', { colour: 'red' })
        .build(),
      'w1',
      'w2'
    );
    const { index } = buildStudy(document);
    const wire = wireOf(document, 'w1');
    expect([index.labelOf(wire.from), index.labelOf(wire.to)]).toEqual(['V2-5', 'V1-3']);
  });

  it('put their supports in one order', () => {
    const document = join(
      bench()
        .wire(1, 'V1-3', null, { route: ['clamp 1', 'clamp 2'] })
        .wire(2, 'V2-5', null, { route: ['clamp 3', 'clamp 2'] })
        .build(),
      'w1',
      'w2'
    );
    const names = wireOf(document, 'w1').route?.supports.map((id) => document.supports[id]?.name);
    expect(names).toEqual(['clamp 1', 'clamp 2', 'clamp 3']);
  });

  it('say in the notes what they disagree on, and keep the first', () => {
    const document = join(
      bench()
        .wire(1, 'V1-3', null, { colour: 'red', awg: 22, dcV: 285, tapedMm: 120 })
        .wire(2, 'V2-5', null, { colour: 'red', awg: 20, dcV: 280, tapedMm: 200 })
        .build(),
      'w1',
      'w2'
    );
    const wire = wireOf(document, 'w1');
    expect(wire).toMatchObject({ found: { awg: 22 }, carries: { dcV: 285 }, tapedMm: 120 });
    expect(wire.notes).toBe(
      'joined with wire 2 from V2-5; there: taped 200, found gauge 20, carries V dc 280'
    );
  });

  it('take photos and callouts with them', () => {
    const plain = bench().wire(1, 'V1-3', null).wire(2, 'V2-5', null).build();
    const order = 'a0';
    const picture = { hash: '0'.repeat(64), type: 'image/jpeg' as const, width: 10, height: 10 };
    const photo = { id: 'f1', order, unit: 'u1', name: 'spot', picture, face: 'below' as const };
    const document = join(
      {
        ...plain,
        photos: { f1: { ...photo, of: { wire: 'w2' } } },
        callouts: { n1: { id: 'n1', order, text: 'here', of: { kind: 'wire', id: 'w2' } } }
      } as ChassisDocument,
      'w1',
      'w2'
    );
    expect(document.photos['f1']?.of).toEqual({ wire: 'w1' });
    expect(document.callouts['n1']?.of).toEqual({ kind: 'wire', id: 'w1' });
  });
});

describe('wires that cannot be joined', () => {
  const document = bench()
    .wire(1, 'V1-3', null)
    .wire(2, 'V1-3', null)
    .wire(3, 'V1-4', 'V2-4')
    .wire(4, null, null)
    .build();
  const why = (keep: string, gone: string): string => {
    const joined = joinWires(buildStudy(document), keep, gone);
    return joined.ok ? 'joined' : joined.why;
  };
  it('say why', () => {
    expect(why('w1', 'w2')).toMatch(/both begin at V1-3/);
    expect(why('w1', 'w3')).toMatch(/wire 3 is not half-traced/);
    expect(why('w1', 'w4')).toMatch(/wire 4 is not half-traced/);
    expect(why('w1', 'w1')).toMatch(/same wire/);
    expect(why('w1', 'w9')).toMatch(/gone/);
  });
});

describe('the list of half-traced wires', () => {
  const study = buildStudy(
    bench()
      .wire(1, 'V1-1', null, { colour: 'blue', tracer: 'white', awg: 22 })
      .wire(2, 'V1-2', null, { colour: 'red' })
      .wire(3, 'V2-1', null, { colour: 'blu', tracer: 'wht' })
      .wire(4, 'V2-2', null, { colour: 'blue' })
      .wire(5, 'V2-3', null, { colour: 'blue', tracer: 'white', awg: 16 })
      .wire(6, 'TS3-1', null, { colour: 'blue', tracer: 'white', awg: 22 })
      .wire(7, 'TS3-2', null)
      .wire(8, 'TS3-3', 'TS3-4', { colour: 'blue', tracer: 'white' })
      .wire(9, 'V1-1', null, { colour: 'blue', tracer: 'white' })
      .build()
  );
  const first = study.document.wires['w1']!;

  it('holds those with an end not found', () => {
    expect(listHalfTraced(study).map(halfWords)).toEqual([
      'wire 1, blue with a white tracer, from V1-1',
      'wire 2, red, from V1-2',
      'wire 3, blu with a wht tracer, from V2-1',
      'wire 4, blue, from V2-2',
      'wire 5, blue with a white tracer, from V2-3',
      'wire 6, blue with a white tracer, from TS3-1',
      'wire 7, colour not told, from TS3-2',
      'wire 9, blue with a white tracer, from V1-1'
    ]);
  });

  it('proposes the likely ones first: colour and tracer however they were written, then gauge', () => {
    const proposed = proposeJoins(study, first);
    expect(proposed.map(({ half, isLikely }) => [half.wire.number, isLikely])).toEqual([
      ['6', true],
      ['3', true],
      ['5', false],
      ['4', false],
      ['7', false],
      ['2', false]
    ]);
    expect(proposed[0]?.words).toBe('same colour and tracer, both 22 AWG');
    expect(proposed[2]?.words).toBe('same colour and tracer, 22 AWG against 16 AWG');
    expect(proposed[3]?.words).toBe('same colour, a tracer on one only');
    expect(proposed[5]?.words).toBe('blue with a white tracer against red');
  });
});
