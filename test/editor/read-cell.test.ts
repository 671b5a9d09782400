import { describe, expect, it } from 'vitest';
import { EndNames } from '#editor/schedule/end-text.ts';
import * as read from '#editor/schedule/read-cell.ts';
import { buildStudy } from '#study/index.ts';
import { chassis } from '../helpers/chassis.ts';

const document = chassis('Bench set').unit('Main chassis').tube('V3', '6CG7').build();
const ends = new EndNames(document, buildStudy(document).index);
const context = (lengthUnit: 'mm' | 'in') => ({ ends, lengthUnit });

const fieldsOf = (reading: read.CellReading): unknown =>
  reading.ok ? reading.fields : `not read: ${reading.why}`;

describe('what is typed into a cell', () => {
  it.each([
    ['285 V dc, 5 kV pulse, 0.2 A', { dcV: 285, acV: null, pulseV: 5000, amps: 0.2 }],
    ['6.3VAC; 4.8 A', { dcV: null, acV: 6.3, pulseV: null, amps: 4.8 }],
    ['-45 V dc', { dcV: -45, acV: null, pulseV: null, amps: null }],
    ['18kV dc + 450 mA', { dcV: 18_000, acV: null, pulseV: null, amps: 0.45 }],
    ['300 dc', { dcV: 300, acV: null, pulseV: null, amps: null }],
    ['', { dcV: null, acV: null, pulseV: null, amps: null }]
  ])('carries: %s', (text, carries) => {
    expect(fieldsOf(read.readCarries(text))).toEqual({ carries });
  });

  it('asks what kind of volts it is, and does not guess', () => {
    expect(read.readCarries('285 V')).toEqual({
      ok: false,
      why: '"285 V": is that dc, ac or pulse?'
    });
    expect(read.readCarries('285 V dc, 90 V dc').ok).toBe(false);
    expect(read.readCarries('-6.3 V ac').ok).toBe(false);
    expect(read.readCarries('lots').ok).toBe(false);
  });

  it('shows what was understood', () => {
    expect(read.readCarries('4.5kV dc')).toMatchObject({ understood: '4.5 kV dc' });
    expect(read.readGauge('#22')).toMatchObject({ understood: '22 AWG' });
    expect(read.readLength('7 1/2 in', context('mm'))).toMatchObject({ understood: '190.5 mm' });
  });

  it.each([
    ['red/yellow', { colour: 'red', tracer: 'yellow' }],
    ['red with yellow tracer', { colour: 'red', tracer: 'yellow' }],
    ['red with a yellow tracer', { colour: 'red', tracer: 'yellow' }],
    ['dark green', { colour: 'dark green', tracer: null }],
    ['', { colour: null, tracer: null }]
  ])('colour: %s', (text, found) => {
    expect(fieldsOf(read.readColour(text))).toEqual({ found });
  });

  it.each([
    ['yelow', '“yelow” is no colour known here: kept as written; if yellow is meant, write yellow'],
    ['red/mauve', '“mauve” is no colour known here: kept as written'],
    ['red', null]
  ])('says of the colour %s what it is taken for', (text, understood) => {
    expect(read.readColour(text)).toMatchObject({ ok: true, understood });
  });

  it('reads a bare length in the unit that is shown', () => {
    expect(fieldsOf(read.readLength('10', context('mm')))).toEqual({ tapedMm: 10 });
    expect(fieldsOf(read.readLength('10', context('in')))).toEqual({ tapedMm: 254 });
    expect(fieldsOf(read.readLength('', context('in')))).toEqual({ tapedMm: null });
    expect(read.readLength('-3 mm', context('mm')).ok).toBe(false);
  });

  it('does not put alternating volts under dc', () => {
    expect(read.readDc('6.3 V ac')).toEqual({
      ok: false,
      why: '6.3 V ac does not belong under volts dc'
    });
    expect(fieldsOf(read.readAc('6.3 V ac'))).toEqual({ carries: { acV: 6.3 } });
    expect(fieldsOf(read.readPulse('5 kV peak'))).toEqual({ carries: { pulseV: 5000 } });
  });

  it('says why a cell was not read', () => {
    expect(read.readGauge('thick')).toMatchObject({ ok: false });
    for (const text of ['-2', '-22', '−22 AWG'])
      expect(read.readGauge(text)).toMatchObject({ ok: false });
    expect(read.readAmps('0.2 V').ok).toBe(false);
  });

  it('puts an end on its terminal, or keeps the words', () => {
    expect(read.readEnd('to')('V3-5', context('mm'))).toMatchObject({
      ok: true,
      understood: 'V3-5',
      fields: { to: { known: 'seen', as: null } }
    });
    expect(read.readEnd('from')('the loom', context('mm'))).toMatchObject({
      fields: { from: { at: null, as: 'the loom', known: 'unknown' } },
      understood: 'kept as written: no part of that name'
    });
  });
});
