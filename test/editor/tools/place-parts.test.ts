import { describe, expect, it } from 'vitest';
import { buildEmptyDocument, makeIdFrom, type ChassisDocument } from '#document/index.ts';
import { readOrders } from '#editor/tools/place/read-order.ts';
import { partSorts } from '#editor/tools/place/part-sorts.ts';
import { placeParts } from '#editor/tools/place/place-parts.ts';
import { pinPlaces } from '#handbook/index.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const blank = (): ChassisDocument => {
  let seed = 7;
  const makeId = makeIdFrom(() => (seed = (seed * 16_807) % 2_147_483_647) / 2_147_483_647);
  return buildEmptyDocument({ title: 'Blank', makeId });
};

const ordersOf = (text: string) => {
  const reading = readOrders(text);
  if (!reading.ok) throw new Error(reading.problem);
  return reading.orders;
};

describe('what is to be placed, as it is written', () => {
  it.each([
    ['6CG7', { type: '6CG7' }, 'socket'],
    ['V5 6cg7 horizontal oscillator', { reference: 'V5', does: 'horizontal oscillator' }, 'socket'],
    ['21ALP4', { type: '21ALP4' }, 'picture tube'],
    ['tube noval', { type: null }, 'socket'],
    ['strip 5 ground 3', { names: ['1', '2', '3', '4', '5'], grounded: ['3'] }, 'strip'],
    ['TS4 7', { reference: 'TS4' }, 'strip'],
    ['R12 47k', { reference: 'R12', value: '47k' }, 'resistor'],
    ['plug red blue red', { names: ['red', 'blue', 'red 2'] }, 'plug'],
    ['control 1M', { value: '1M', names: ['1', '2', '3'] }, 'control']
  ] as const)('%s', (text, fields, sort) => {
    const [order, more] = ordersOf(text);
    expect(more).toBeUndefined();
    expect(order).toMatchObject(fields);
    expect(order?.sort.id).toBe(sort);
  });

  it('reads several at once, and how often', () => {
    const orders = ordersOf('6CG7, 3 x strip 5; R1 1k\n2x octal');
    expect(orders.map(({ sort }) => sort.id)).toEqual([
      ...['socket', 'strip', 'strip', 'strip', 'resistor', 'socket', 'socket']
    ]);
  });

  it.each(['gizmo 5', '6ZZ9', 'strip 5 ground 9', 'strip 900', '250 x strip 2'])(
    'says why %s is not read',
    (text) => {
      expect(readOrders(text)).toMatchObject({ ok: false, problem: expect.stringMatching(/\w/) });
    }
  );

  it('takes a tube that the handbook does not know by its base', () => {
    expect(ordersOf('6ZZ9 noval')[0]).toMatchObject({ type: '6ZZ9', base: { id: 'noval' } });
  });

  it('reads every example of the palette as the sort that it stands for', () => {
    for (const { id, example } of partSorts) {
      expect(ordersOf(example).map(({ sort }) => sort.id)).toEqual([id]);
    }
  });
});

describe('place parts', () => {
  it('puts a socket of the handbook on a blank chassis where it is pressed', () => {
    const tool = new ToolBench(placeParts, blank());
    tool.field('what', '6CG7', false);
    tool.pointer('tap', { x: 80, y: 60 }, null, { alt: true });
    const part = tool.partNamed('V1');
    const pins = Object.values(part.terminals).map(({ name, offset }) => ({
      pin: name,
      ...offset
    }));
    const published = pinPlaces('noval');
    expect(pins).toHaveLength(9);
    for (const { pin, x, y } of published) {
      const own = pins.find((one) => one.pin === pin);
      expect(own?.x).toBeCloseTo(x, 1);
      expect(own?.y).toBeCloseTo(y, 1);
    }
    const placed = tool.world.scene.geometry.places.parts.get(part.id);
    expect(placed?.pose.at.x).toBeCloseTo(80, 6);
    expect(placed?.pose.at.y).toBeCloseTo(60, 6);
  });

  it('gives the next reference, leaves what stands where it stands, and is one step each', () => {
    const tool = new ToolBench(placeParts, blank());
    for (const x of [60, 110, 160]) tool.pointer('tap', { x, y: 60 }, null, { alt: true });
    expect(tool.edits).toHaveLength(3);
    const middles = ['V1', 'V2', 'V3'].map(
      (name) => tool.world.scene.geometry.places.parts.get(tool.partNamed(name).id)?.pose.at
    );
    expect(middles).toEqual([60, 110, 160].map((x) => ({ x, y: 60 })));
  });

  it('places a line-up in rows by one edit, none on another', () => {
    const tool = new ToolBench(placeParts, blank());
    tool.field('what', '6CG7, 12AU7, 6CB6, 5U4, strip 5, strip 3', false);
    tool.pointer('tap', { x: 50, y: 50 });
    expect(tool.edits).toHaveLength(1);
    const placed = [...tool.world.scene.geometry.places.parts.values()];
    expect(placed.map(({ part }) => part.reference)).toEqual(
      expect.arrayContaining(['V1', 'V2', 'V3', 'V4', 'TS1', 'TS2'])
    );
    const { clutter } = tool.world.scene.geometry;
    expect(clutter).toBeDefined();
    for (const [n, one] of placed.entries()) {
      for (const other of placed.slice(n + 1)) {
        const far = Math.hypot(one.pose.at.x - other.pose.at.x, one.pose.at.y - other.pose.at.y);
        expect(far).toBeGreaterThan(25);
      }
    }
  });

  it('places by keys alone, beside what is there', () => {
    const tool = new ToolBench(placeParts, blank());
    tool.field('what', '6CG7').field('what', '6CG7').field('what', 'strip 5');
    const spots = ['V1', 'V2', 'TS1'].map((name) => tool.partNamed(name).place);
    expect(new Set(spots.map((place) => `${place?.x} ${place?.y}`)).size).toBe(3);
    expect(spots[1]?.y).toBe(spots[0]?.y);
  });

  it('hangs a component between two terminals, with no place of its own', () => {
    const tool = new ToolBench(
      placeParts,
      chassis()
        .unit('Main')
        .strip('TS1', 4, { at: [60, 60] })
        .strip('TS2', 4, { at: [60, 90] })
        .build()
    );
    tool.field('what', 'resistor 47k', false);
    const [a, b] = [tool.terminal('TS1', '2'), tool.terminal('TS2', '3')];
    tool.pointer('tap', a.at, a.subject).pointer('tap', b.at, b.subject);
    const part = tool.partNamed('R1');
    expect(part.place).toBeUndefined();
    const on = Object.values(part.terminals).map((one) => `${one.on?.part}/${one.on?.terminal}`);
    expect(on).toEqual([a.subject.id, b.subject.id]);
    expect(tool.world.scene.geometry.bodies.map(({ part: { id } }) => id)).toEqual([part.id]);
  });

  it('takes what waits in the tray to its place instead of making it twice', () => {
    const tool = new ToolBench(placeParts, chassis().unit('Main').tube('V3', '6CG7').build());
    tool.field('what', 'V3 6CG7', false).pointer('tap', { x: 40, y: 40 }, null, { alt: true });
    expect(Object.keys(tool.document.parts)).toHaveLength(1);
    expect(tool.partNamed('V3').place).toMatchObject({ by: 'hand' });
    tool.pointer('tap', { x: 90, y: 40 }, null, { alt: true });
    expect(tool.said.at(-1)).toMatch(/V3 is placed already/);
  });

  it('turns and turns over what is in the hand', () => {
    const tool = new ToolBench(placeParts, blank());
    tool.key('r').key('r').key('o').pointer('tap', { x: 50, y: 50 });
    expect(tool.partNamed('V1').place).toMatchObject({ rotation: 30, face: 'above' });
  });

  it('stands under the pointer when seen from above as well', () => {
    const document = chassis()
      .unit('Main', { size: [200, 100] })
      .tube('V1', '6CG7', { at: [50, 50] });
    const tool = new ToolBench(placeParts, document.build(), 'above');
    tool.pointer('tap', { x: -120, y: 40 }, null, { alt: true });
    const { at } = tool.world.scene.geometry.places.parts.get(tool.partNamed('V2').id)?.pose ?? {};
    expect(at).toEqual({ x: -120, y: 40 });
  });
});
