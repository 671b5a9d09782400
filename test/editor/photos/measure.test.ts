// Measuring and moving photos on the sheet, without a page.
import { describe, expect, it } from 'vitest';
import type { ChassisDocument, Photo } from '#document/index.ts';
import { measuredText, measureLengths } from '#editor/photos/measure-lengths.ts';
import { pickAndMove } from '#editor/tools/pick-and-move.ts';
import { chassis } from '../../helpers/chassis.ts';
import { ToolBench } from '../../helpers/tool-bench.ts';

const twoPoints = { by: 'two points', a: { x: 0, y: 0 }, b: { x: 500, y: 0 }, mm: 250 } as const;

const withPhoto = (more: Partial<Photo>): ChassisDocument => {
  const blank = chassis('Blank')
    .unit('Main', { size: [500, 400] })
    .build();
  const [unit] = Object.keys(blank.units);
  const photo: Photo = {
    id: 'hphoto0001',
    order: 'V',
    unit: unit!,
    name: 'underside',
    picture: { hash: 'a'.repeat(64), type: 'image/jpeg', width: 1000, height: 800 },
    face: 'below',
    ...more
  };
  return { ...blank, photos: { [photo.id]: photo } };
};

describe('measuring', () => {
  it('says what lies between two presses in mm and inches', () => {
    const bench = new ToolBench(measureLengths, withPhoto({ scale: twoPoints }));
    bench.pointer('tap', { x: 50, y: 50 }).pointer('tap', { x: 200, y: 162.5 });
    expect(bench.said.at(-1)).toBe('187.5 mm (7 3/8 in)');
    expect(bench.shown.words?.text).toBe('187.5 mm (7 3/8 in)');
    expect(bench.edits).toEqual([]);
  });

  it('refuses on a photo that has no scale, at either end', () => {
    const bench = new ToolBench(measureLengths, withPhoto({}));
    bench.pointer('tap', { x: 50, y: 50 });
    expect(bench.said.at(-1)).toContain('has no scale: nothing can be measured on it');
    expect(bench.state.from).toBeNull();
  });

  it('draws to a terminal that is near', () => {
    const document = chassis('One')
      .unit('Main', { size: [300, 200] })
      .strip('TS1', 3, { at: [100, 100] })
      .build();
    const bench = new ToolBench(measureLengths, document);
    const [one, three] = [bench.terminal('TS1', '1').at, bench.terminal('TS1', '3').at];
    bench
      .pointer('tap', { x: one.x + 0.5, y: one.y })
      .pointer('tap', { x: three.x, y: three.y + 1 });
    expect(bench.said.at(-1)).toBe(measuredText(one, three));
  });

  it('goes by keys alone, and Escape lets go of the first place', () => {
    const bench = new ToolBench(measureLengths, withPhoto({ scale: twoPoints }));
    bench.key('Enter').key('ArrowRight', { shift: true }).key('ArrowRight').key('Enter');
    expect(bench.said.at(-1)).toBe('11 mm (3/8 in)');
    bench.key('Enter');
    expect(bench.state.from).not.toBeNull();
    bench.key('Escape');
    expect(bench.claims).toBe(true);
    expect(bench.state.from).toBeNull();
    bench.key('Escape');
    expect(bench.claims).toBe(false);
  });

  it('says so where two units were not placed beside each other', () => {
    const document = chassis('Two')
      .unit('Main', { size: [300, 200] })
      .unit('Tuner', { size: [100, 100] })
      .build();
    const bench = new ToolBench(measureLengths, document);
    const [main, tuner] = bench.world.scene.homes.map(({ box }) => ({
      x: box!.x + 10,
      y: box!.y + 10
    }));
    bench.pointer('tap', main!).pointer('tap', tuner!);
    expect(bench.said.at(-1)).toContain('not true');
  });
});

describe('a photo in the hand', () => {
  it('is moved by as much as it was dragged, on either side', () => {
    for (const face of ['below', 'above'] as const) {
      const start = withPhoto({ scale: twoPoints, face, place: { x: 300, y: 40, rotation: 10 } });
      const bench = new ToolBench(pickAndMove, start, face);
      const before = bench.world.scene.geometry.places.photos[0]!.at;
      const grasp = { x: before.x + 60, y: before.y + 80 };
      bench.drag(grasp, { x: grasp.x + 25, y: grasp.y - 10 }, null);
      const after = bench.world.scene.geometry.places.photos[0]!;
      expect(after.at.x - before.x).toBeCloseTo(25, 6);
      expect(after.at.y - before.y).toBeCloseTo(-10, 6);
      expect(after.rotation).toBe(10);
      expect(bench.edits).toHaveLength(1);
    }
  });

  it('stays where it is locked', () => {
    const bench = new ToolBench(pickAndMove, withPhoto({ scale: twoPoints, locked: true }));
    bench.pointer('grab', { x: 60, y: 60 });
    expect(bench.claims).toBe(false);
  });
});
