// Line-ups as they stand on labels and in notebooks: common practice, no source. Pins by base: 6CG7 has
// nine, 6AU6A seven (published tube data, as the handbook names it).
import { describe, expect, it, test } from 'vitest';
import { documentSchema, makeIdFrom } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { buildNewChassis, readUnitNames } from '#editor/start/build-new-chassis.ts';
import { guideSteps, placeCard } from '#editor/start/guide-steps.ts';
import { readLineUp } from '#editor/start/line-up.ts';
import { seeded } from '../../helpers/generate-chassis.ts';

const build = (tubes: string, units = ['Main chassis'], bases = {}) =>
  buildNewChassis(
    { title: ' Bench set ', units, lineUp: readLineUp(tubes, bases, units), tubes },
    makeIdFrom(seeded(7))
  );
const short = (tubes: string): string[] =>
  sortByOrder(build(tubes).parts).map(
    ({ reference, type, terminals }) =>
      `${reference} ${type ?? ''} ${Object.keys(terminals).length}`
  );

describe('a tube line-up', () => {
  test.each([
    ['6CG7, 6AU6A', ['V1 6CG7 9', 'V2 6AU6A 7']],
    ['6CG7 6AU6A', ['V1 6CG7 9', 'V2 6AU6A 7']],
    ['V1 - 6CG7\nV2: 6AU6A', ['V1 6CG7 9', 'V2 6AU6A 7']],
    ['1. 6CG7\n2. 6AU6A', ['V1 6CG7 9', 'V2 6AU6A 7']],
    ['V7 6cg7 vertical oscillator; 6AU6A', ['V7 6CG7 9', 'V8 6AU6A 7']],
    ['2 x 6CG7', ['V1 6CG7 9', 'V2 6CG7 9']],
    ['6CG7, strip 5', ['V1 6CG7 9', 'TS1  5']],
    ['', []]
  ])('"%s"', (text, expected) => expect(short(text)).toEqual(expected));

  it('tells what it cannot read, and goes on with the rest', () => {
    const [known, unknown, odd] = readLineUp('6CG7, 6ZZ9, gibberish here');
    expect(known).toMatchObject({ problem: null });
    expect(unknown).toMatchObject({ needsBase: true, orders: [] });
    expect(unknown?.problem).toMatch(/which base/);
    expect(odd).toMatchObject({ needsBase: false, orders: [] });
    expect(short('6CG7, 6ZZ9, gibberish here')).toEqual(['V1 6CG7 9']);
  });

  it('gives a tube that is not in the handbook the pins of the base that is chosen', () => {
    const { parts } = build('6ZZ9', ['Main chassis'], { '6ZZ9': 'octal' });
    const [part] = Object.values(parts);
    expect(part).toMatchObject({ kind: 'tube', type: '6ZZ9', reference: 'V1' });
    expect(Object.keys(part?.terminals ?? {})).toHaveLength(8);
  });
});

describe('a new chassis', () => {
  it('is a document that holds what was said, and claims no place for anything', () => {
    const document = build('Tuner:\n6CG7\nMain chassis:\n6AU6A', ['Main chassis', 'Tuner']);
    expect(documentSchema.safeParse(document).success).toBe(true);
    expect(document.identity.title).toBe('Bench set');
    const where = Object.values(document.parts).map(({ type, unit, place }) => [
      type,
      document.units[unit]?.name,
      place
    ]);
    expect(where).toEqual([
      ['6CG7', 'Tuner', undefined],
      ['6AU6A', 'Main chassis', undefined]
    ]);
  });

  it('needs no field filled in', () => {
    const document = buildNewChassis(
      { title: '', units: readUnitNames(''), lineUp: [], tubes: '' },
      makeIdFrom(seeded(8))
    );
    expect(document.identity).toEqual({ title: 'Untitled chassis' });
    expect(Object.values(document.units).map(({ name }) => name)).toEqual(['Main chassis']);
  });

  it('names each unit once', () =>
    expect(readUnitNames('Main chassis, tuner; Tuner,')).toEqual(['Main chassis', 'Tuner']));
});

describe('the card of the tour', () => {
  const card = { width: 350, height: 180 };
  test.each([
    ['a page beside which there is room', { left: 16, top: 40, width: 590, height: 840 }],
    ['a margin at the right edge', { left: 1220, top: 40, width: 200, height: 840 }],
    ['a small button at the top', { left: 950, top: 0, width: 80, height: 40 }],
    ['the whole screen', { left: 0, top: 0, width: 1440, height: 900 }],
    ['what is off the screen', { left: -500, top: 2000, width: 10, height: 10 }]
  ])('stands whole on the screen beside %s', (_, target) => {
    for (const screen of [
      { width: 1440, height: 900 },
      { width: 390, height: 844 }
    ]) {
      const { left, top } = placeCard(target, card, screen);
      expect(left).toBeGreaterThanOrEqual(0);
      expect(top).toBeGreaterThanOrEqual(0);
      expect(left + card.width).toBeLessThanOrEqual(screen.width);
      expect(top + card.height).toBeLessThanOrEqual(screen.height);
    }
  });

  it('does not cover a small thing that it speaks of', () => {
    const target = { left: 950, top: 0, width: 80, height: 40 };
    const { left, top } = placeCard(target, card, { width: 1440, height: 900 });
    const isClear =
      left >= target.left + target.width ||
      left + card.width <= target.left ||
      top >= target.top + target.height;
    expect(isClear).toBe(true);
  });

  it('has three or four steps', () => expect(guideSteps.length).toBeLessThanOrEqual(4));
});
