// The bench list's head: which step comes next, what is out of order and why, and that nothing which is said
// to be ready is out of order.
import { applyEdit, type Edit } from '#document/index.ts';
import {
  buildPlan,
  buildTestSheets,
  judgeReading,
  orderOfWork,
  toleranceRecord
} from '#plan/index.ts';
import { buildStudy, type Study } from '#study/index.ts';
import {
  nextStep,
  outOfOrder,
  stepBackEdit,
  stepEdit,
  stepsOf,
  whatNext
} from '#editor/work/bench-steps.ts';
import { readingEdit, readingsWithoutRow, recordEdit } from '#editor/work/reading-edits.ts';
import { describe, expect, it } from 'vitest';
import { buildTelevision } from '../../demonstrations/television.ts';
import { chassis } from '../../helpers/chassis.ts';

const wire = { awg: 22, dcV: 250, function: 'B+ 250 V', colour: 'red', tapedMm: 200 } as const;
const planned = { way: 'new wire', awg: 22, style: 'UL 1015' } as const;

const setOf = () =>
  buildStudy(
    chassis()
      .strip('TS1', 4)
      .strip('TS2', 4)
      .wire('1', 'TS1-1', 'TS2-1', { ...wire, planned })
      .wire('2', 'TS1-2', 'TS2-2', { ...wire, planned, state: 'tagged' })
      .wire('', 'TS1-3', 'TS2-3', { ...wire, state: 'tagged' })
      .stock('red', 9000, { awg: 22, stranding: 'solid', style: 'UL 1015', colour: 'red' })
      .build()
  );
const numbered = (study: Study, number: string) => {
  const found = study.index.wires.find((each) => each.number === number);
  if (!found) throw new Error(`no wire ${number}`);
  return found;
};
const after = (study: Study, edit: Edit): Study => {
  const result = applyEdit(study.document, edit);
  if (!result.ok) throw new Error(result.problem);
  return buildStudy(result.document);
};

describe('a step out of order', () => {
  const study = setOf();
  const plan = buildPlan(study);

  it('says which step was left out', () => {
    expect(outOfOrder(study, plan, numbered(study, '1'), 'removed')).toEqual([
      'It was not tagged yet.'
    ]);
    expect(outOfOrder(study, plan, numbered(study, '1'), 'fitted')[0]).toBe(
      'It was not tagged or removed yet.'
    );
  });

  it('says nothing where nothing is', () => {
    expect(outOfOrder(study, plan, numbered(study, '2'), 'removed')).toEqual([]);
  });

  it('names no number, and nothing to come', () => {
    const words = outOfOrder(study, plan, numbered(study, ''), 'removed').join(' ');
    expect(words).toMatch(/no number/);
    expect(words).toMatch(/Nothing is written down to come in its place/);
  });

  it('names the wire that is out already', () => {
    const out = after(study, stepEdit(numbered(study, '2'), 'removed', '2026-11-26'));
    const tagged = after(out, stepEdit(numbered(out, '1'), 'tagged', '2026-11-26'));
    expect(outOfOrder(tagged, buildPlan(tagged), numbered(tagged, '1'), 'removed').join()).toMatch(
      /Wire 2 is out and not fitted yet/
    );
  });
});

describe('a step', () => {
  it('is marked with its day, and taken back with every later one', () => {
    const study = setOf();
    const own = buildPlan(study).byWire.get(numbered(study, '2').id);
    const out = after(study, stepEdit(numbered(study, '2'), 'removed', '2026-11-26'));
    expect(numbered(out, '2')).toMatchObject({
      state: 'removed',
      work: { removed: { on: '2026-11-26' } }
    });
    const fitted = after(out, stepEdit(numbered(out, '2'), 'fitted', '2026-11-27'));
    const back = after(fitted, stepBackEdit(own, numbered(fitted, '2'), 'removed'));
    expect(numbered(back, '2').state).toBe('tagged');
    expect(numbered(back, '2').work).toEqual({});
  });

  it('of a wire that is kept goes from tagged to checked', () => {
    const study = buildStudy(buildTelevision());
    const plan = buildPlan(study);
    const kept = study.index.wires.find(
      ({ id, state }) => plan.byWire.get(id)?.way === 'keep' && state === 'found'
    );
    if (!kept) throw new Error('nothing is kept');
    expect(stepsOf(plan.byWire.get(kept.id), kept)).toEqual(['tagged', 'checked']);
    expect(nextStep(plan.byWire.get(kept.id), kept)).toBe('tagged');
  });
});

describe('what can be done next', () => {
  it('never has anything out of order, and what is out comes first', () => {
    const study = buildStudy(buildTelevision());
    const plan = buildPlan(study);
    const next = whatNext(study, plan, orderOfWork(study, plan), 200);
    expect(next.length).toBeGreaterThan(20);
    expect(next[0]).toMatchObject({ step: 'fitted', wire: { state: 'removed' } });
    for (const { wire: one, step } of next) expect(outOfOrder(study, plan, one, step)).toEqual([]);
  });
});

describe('readings', () => {
  const study = buildStudy(buildTelevision());

  it('are kept under their row, judged, and taken away again', () => {
    const sheet = buildTestSheets(study).find(({ id }) => id === 'power-up');
    const row = sheet?.rows.find(({ expected }) => expected !== null);
    if (!row) throw new Error('nothing to measure');
    const read = after(study, readingEdit(row, ' 1.2kV ', '2026-11-26'));
    expect(read.document.proof?.readings?.[row.id]).toMatchObject({
      typed: '1.2kV',
      on: '2026-11-26'
    });
    expect(judgeReading(row.expected, '1.2kV').verdict).toBe('too high');
    const gone = after(read, readingEdit(row, '', '2026-11-26'));
    expect(gone.document.proof?.readings).toEqual({});
  });

  it('whose row has left the sheet are not lost', () => {
    const [sheet] = buildTestSheets(study);
    if (!sheet?.rows[0]) throw new Error('no sheet');
    const row = { ...sheet.rows[0], id: 'continuity gone', where: 'X1 to X2' };
    const read = after(study, readingEdit(row, '0.2', '2026-11-26'));
    expect(readingsWithoutRow(read.document, sheet)).toEqual([
      ['continuity gone', expect.objectContaining({ typed: '0.2' })]
    ]);
  });

  it('of leakage are judged by the limit that was written down, and by none of ours', () => {
    const leakage = (of: Study) => {
      const row = buildTestSheets(of).find(({ id }) => id === 'leakage')?.rows[0];
      if (!row) throw new Error('no leakage');
      return row;
    };
    expect(judgeReading(leakage(study).expected, '5 mA').verdict).toBe('not judged');
    const limited = after(study, recordEdit('leakage', 'limit of the service data', '0.5 mA'));
    expect(judgeReading(leakage(limited).expected, '0.7 mA').verdict).toBe('too high');
    expect(judgeReading(leakage(limited).expected, '0.3 mA').verdict).toBe('as expected');
  });

  it('of the first power-up are held against the tolerance that was written down', () => {
    const most = (of: Study) => {
      const rows = buildTestSheets(of).find(({ id }) => id === 'power-up')?.rows ?? [];
      const own = rows.find(({ expected }) => expected !== null)?.expected;
      return (own?.most ?? 0) / (own?.least ?? 1);
    };
    expect(most(study)).toBeCloseTo(1.2 / 0.8, 1);
    const narrow = after(study, recordEdit('power-up', toleranceRecord, '10 %'));
    expect(most(narrow)).toBeCloseTo(1.1 / 0.9, 1);
    const odd = after(study, recordEdit('power-up', toleranceRecord, 'little'));
    expect(most(odd)).toBe(most(study));
  });
});
