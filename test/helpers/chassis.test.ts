// The builder makes documents that the schema takes, the same bytes every time.
import { documentSchema } from '#document/index.ts';
import { describe, expect, it } from 'vitest';
import { chassis } from './chassis.ts';

const small = () =>
  chassis('Bench set')
    .unit('Main chassis', { size: [300, 200] })
    .tube('V1', '6CG7', { at: [60, 60] })
    .strip('TS1', 5, { at: [120, 60], grounded: [3] })
    .ground('GL1')
    .support('K1', 'clamp', [90, 60])
    .cable('audio lead', 'shielded wire', { signal: 'audio' })
    .resistor('R4', '47k', 'V1-1', 'TS1-2', { watts: 1 })
    .capacitor('C1', '0.05 uF', 'TS1-2', 'TS1-3', { ratedV: 400 })
    .wire(12, 'V1-5', 'TS1-2', { colour: 'red', function: 'B+', dcV: 285, awg: 22, route: ['K1'] })
    .wire(13, 'V1-4', 'GL1')
    .wire(14, 'TS1-5', null, { toEnd: { as: 'grey, into the loom' }, cable: 'audio lead' })
    .build();

describe('the chassis builder', () => {
  it('joins ends, leads, supports and cables by the names people use', () => {
    const document = small();
    expect(document.wires['w12']).toMatchObject({
      from: { at: { part: 'pv1', terminal: 't5' }, known: 'seen' },
      to: { at: { part: 'pts1', terminal: 't2' } },
      carries: { dcV: 285 },
      found: { colour: 'red', awg: 22 },
      route: { supports: ['sk1'] }
    });
    expect(document.parts['pr4']?.terminals['ta']?.on).toEqual({ part: 'pv1', terminal: 't1' });
    expect(document.parts['pr4']?.elements).toMatchObject({
      eresistora: { ohms: 47_000, watts: 1, from: 'ta', to: 'tb' }
    });
    expect(document.parts['pc1']?.elements).toMatchObject({ ecapacitora: { farads: 5e-8 } });
    expect(document.parts['pts1']?.terminals['t3']?.grounded).toBe(true);
    expect(document.wires['w13']?.to.at).toEqual({ part: 'pgl1', terminal: 't1' });
    expect(document.wires['w14']?.to).toEqual({ known: 'unknown', as: 'grey, into the loom' });
    expect(document.wires['w14']?.cable).toBe('caudiolead');
  });

  it('gives the same bytes twice, and they pass the schema', () => {
    const document = small();
    expect(JSON.stringify(small())).toBe(JSON.stringify(document));
    expect(documentSchema.safeParse(JSON.parse(JSON.stringify(document))).success).toBe(true);
  });

  it('keeps two wires of one number apart', () => {
    const document = chassis()
      .strip('TS1', 2)
      .wire(7, 'TS1-1', null)
      .wire(7, 'TS1-2', null)
      .build();
    expect(Object.values(document.wires).map((wire) => wire.number)).toEqual(['7', '7']);
  });

  it('says which name it does not know', () => {
    expect(() => chassis().strip('TS1', 2).wire(1, 'TS1-3', null).build()).toThrow('"TS1-3"');
  });
});
