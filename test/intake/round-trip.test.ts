// A schedule that we export is a wire list, and reads as the same wires. The two demonstrations are
// the documents; a wire list of the television, in the hand of its maker, is the other way in.
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { buildSchedule, scheduleToCsv } from '#paperwork/index.ts';
import { openDocument, type ChassisDocument, type Wire } from '#document/index.ts';
import { roundSignificant } from '#quantity/index.ts';
import { buildStudy } from '#study/index.ts';
import { readText, wireOf, wiresOf } from './read-list.ts';

const file = (name: string): string =>
  readFileSync(new URL(`../../static/demonstrations/${name}`, import.meta.url), 'utf8');

const open = (name: string): ChassisDocument => {
  const opened = openDocument(file(name), name);
  if (!opened.ok) throw new Error(opened.problems[0]?.wrong);
  return opened.document;
};

const labelsOf = (document: ChassisDocument): Map<string, string> => {
  const { index } = buildStudy(document);
  return new Map(
    index.wires.map((wire) => [
      wire.number,
      `${index.labelOf(wire.from)} > ${index.labelOf(wire.to)}`
    ])
  );
};

const found = ({ awg, colour, tracer, ratingV, condition }: Wire['found']) => ({
  awg,
  colour,
  tracer,
  ratingV,
  condition
});

const sixDigits = (value: number | undefined): number | undefined =>
  value === undefined ? undefined : roundSignificant(value, 6);

describe.each(['console-21.chassis.json', 'five-tube-radio.chassis.json'])('%s', (name) => {
  const document = open(name);
  const study = buildStudy(document);
  const again = readText(scheduleToCsv(buildSchedule(study, []))).document!;

  test('each wire comes back between the same ends', () => {
    expect(labelsOf(again)).toEqual(labelsOf(document));
  });

  test('each wire is what it was', () => {
    for (const wire of wiresOf(document)) {
      const back = wireOf(again, wire.number);
      const about = study.wires.get(wire.id)!;
      expect(back.function).toBe(wire.function);
      expect(back.construction).toBe(wire.construction);
      expect(back.state).toBe(wire.state);
      expect(back.found.awg).toBe(wire.found.awg);
      expect(back.planned.awg).toBe(wire.planned.awg);
      expect(back.found.condition).toBe(wire.found.condition);
      expect(back.found.ratingV).toBe(about.foundRating?.volts);
      // What was reckoned is printed to six digits.
      expect(back.carries.dcV).toBe(sixDigits(about.carries.dcV?.value));
      expect(back.carries.pulseV).toBe(sixDigits(about.carries.pulseV?.value));
      // The schedule prints hundredths of a millimetre at the finest.
      if (about.length) expect(back.tapedMm).toBeCloseTo(about.length.mm, 1);
      else expect(back.tapedMm).toBeUndefined();
    }
  });

  test('cables hold the same wires', () => {
    const members = (from: ChassisDocument) =>
      wiresOf(from).map(({ cable }) => (cable === undefined ? null : from.cables[cable]!.name));
    expect(members(again)).toEqual(members(document));
  });

  test('metal that stands apart from the chassis still does', () => {
    const metal = (from: ChassisDocument) =>
      new Map(Object.values(from.units).map((unit) => [unit.name, unit.metal === 'apart']));
    const before = metal(document);
    for (const [unit, isApart] of metal(again))
      expect([unit, isApart]).toEqual([unit, before.get(unit)]);
  });

  test('units hold the same parts', () => {
    const unitOf = (from: ChassisDocument) =>
      new Map(
        Object.values(from.parts)
          .filter(({ reference }) => !/^(?:chassis|ground)/.test(reference))
          .map(({ reference, unit }) => [reference, from.units[unit]!.name])
      );
    const before = unitOf(document);
    for (const [reference, unit] of unitOf(again))
      expect([reference, unit]).toEqual([reference, before.get(reference)]);
  });
});

describe('the television’s wire list', () => {
  const document = open('console-21.chassis.json');
  const { document: read, counts } = readText(file('console-21.csv'), 'console-21.csv');

  test('every wire is read, no cell is left unread', () => {
    expect(counts).toMatchObject({ wires: wiresOf(document).length, unread: 0 });
  });

  test('conductors, volts and amperes are those of the document', () => {
    for (const wire of wiresOf(document)) {
      const own = wireOf(read!, wire.number);
      expect(found(own.found)).toEqual(found(wire.found));
      expect(own.construction).toBe(wire.construction);
      const { dcV, acV, pulseV, amps } = wire.carries;
      expect(own.carries).toEqual(
        Object.fromEntries(
          Object.entries({ dcV, acV, pulseV, amps }).filter(([, value]) => value !== undefined)
        )
      );
    }
  });

  test('every end on a part with a reference is that end', () => {
    const labels = labelsOf(document);
    const readLabels = labelsOf(read!);
    const plain = (runs: Map<string, string>, number: string) =>
      (runs.get(number) ?? '')
        .split(' > ')
        .map((label) => (/^(?:chassis|metal|GL|\?|goes)/.test(label) ? '' : label));
    for (const { number } of wiresOf(document)) {
      const want = plain(labels, number);
      const have = plain(readLabels, number);
      want.forEach((label, index) => {
        if (label !== '' && have[index] !== '')
          expect([number, have[index]]).toEqual([number, label]);
      });
    }
  });
});
