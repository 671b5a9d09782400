// Parts placed by hand: they stand where they were put, wires run round them, and what that does not
// touch stays as it was.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { applyEdit, type ChassisDocument, type Edit } from '#document/index.ts';
import type { Box } from '#drawing/figures/figure.ts';
import { finishDiagram } from '#drawing/finish-diagram.ts';
import { findFreePlace, isFree } from '#drawing/layout/free-place.ts';
import { letGoOfPlace, moveParts, placeInDiagram } from '#drawing/layout/place-by-hand.ts';
import { findNumberClashes } from '#drawing/place-numbers.ts';
import { buildPlan } from '#drawing/presentation/plan.ts';
import { proveGeometry } from '#drawing/proofs.ts';
import { redressDiagram } from '#drawing/redress-diagram.ts';
import { isOnLane, toLane } from '#drawing/router/lanes.ts';
import { buildStudy } from '#study/build-study.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { diagramInRows } from '../helpers/parts-in-rows.ts';

const edited = (document: ChassisDocument, edit: Edit): ChassisDocument => {
  const outcome = applyEdit(document, edit);
  if (!outcome.ok) throw new Error(outcome.problem);
  return outcome.document;
};

describe('a free place', () => {
  it('is the wish where nothing is near, and the nearest clear one where something is', () => {
    const box: Box = { x: 24, y: 24, width: 24, height: 24 };
    expect(findFreePlace(box, [])).toEqual({ x: 24, y: 24 });
    const other: Box = { x: 36, y: 24, width: 24, height: 24 };
    const { x, y } = findFreePlace(box, [other]);
    expect([x, y]).toEqual([0, 24]);
    // One that stood nearer may stay as near.
    expect(findFreePlace({ ...box, x: 4.8 }, [other], { ...box, x: 4.8 })).toEqual({
      x: 4.8,
      y: 24
    });
  });

  it('keeps clear of any parts', () => {
    const boxes = fc.array(
      fc.record({
        x: fc.integer({ min: 0, max: 200 }),
        y: fc.integer({ min: 0, max: 200 }),
        width: fc.integer({ min: 5, max: 40 }),
        height: fc.integer({ min: 5, max: 40 })
      }),
      { minLength: 1, maxLength: 20 }
    );
    fc.assert(
      fc.property(boxes, ([box, ...others]) => {
        const at = findFreePlace(box!, others);
        expect(isOnLane(at.x) && isOnLane(at.y)).toBe(true);
        expect(isFree({ ...box!, ...at }, others)).toBe(true);
      }),
      { seed: 3, numRuns: 200 }
    );
  });
});

describe.each([1, 2, 3])('a part moved by hand in a chassis, seed %i', (seed) => {
  const document = generateChassis(100, seed);
  const diagram = diagramInRows(document);

  it('stands where it was put, with no wire through a part and none on another', () => {
    const index = fc.nat({ max: diagram.geometry.parts.length - 1 });
    fc.assert(
      fc.property(index, fc.nat({ max: 900 }), fc.nat({ max: 500 }), (turn, x, y) => {
        const { geometry } = diagram;
        const part = geometry.parts[turn]!;
        const others = geometry.parts.filter(({ id }) => id !== part.id).map(({ box }) => box);
        const at = findFreePlace({ ...part.box, x, y }, others);
        const moved = moveParts(geometry, new Map([[part.id, at]]));
        expect(moved.parts.find(({ id }) => id === part.id)!.box).toMatchObject(at);
        const { throughParts, overlaps, partClashes, slanted } = proveGeometry(moved);
        expect([throughParts, overlaps, partClashes, slanted]).toEqual([[], [], [], 0]);
        // No other part has moved, and few wires have that do not end there.
        const rest = (one: typeof geometry) => one.parts.filter(({ id }) => id !== part.id);
        expect(rest(moved).map(({ box }) => box)).toEqual(rest(geometry).map(({ box }) => box));
        const routes = new Map(geometry.lines.map(({ link, route }) => [link.id, route]));
        const touched = moved.lines.filter(
          ({ link, route }) =>
            link.from.part !== part.id &&
            link.to.part !== part.id &&
            JSON.stringify(route) !== JSON.stringify(routes.get(link.id))
        );
        expect(touched.length).toBeLessThan(geometry.lines.length / 4);
      }),
      { seed, numRuns: 25, endOnFailure: true }
    );
  });

  it('makes what was laid out there give way', () => {
    const { geometry } = diagram;
    const [one, two] = geometry.parts;
    const at = { x: two!.box.x, y: two!.box.y };
    const moved = moveParts(geometry, new Map([[one!.id, at]]));
    const boxOf = (id: string) => moved.parts.find((part) => part.id === id)!.box;
    expect(boxOf(one!.id)).toMatchObject(at);
    expect(boxOf(two!.id)).not.toMatchObject(at);
    const { throughParts, overlaps, partClashes } = proveGeometry(moved);
    expect([throughParts, overlaps, partClashes]).toEqual([[], [], []]);
  });

  it('is written into the document, drawn from it, and let go of again', () => {
    const part = diagram.geometry.parts[4]!;
    const others = diagram.geometry.parts.filter(({ id }) => id !== part.id);
    const at = findFreePlace(
      { ...part.box, x: 300, y: 200 },
      others.map(({ box }) => box)
    );
    const placed = edited(document, placeInDiagram(diagram.plan, diagram.geometry, part.id, at));
    expect(placed.parts[part.id]!.diagramPlace).toEqual({ ...at, by: 'hand' });
    const drawn = redressDiagram(diagram, buildStudy(placed));
    expect(drawn.geometry.parts.find(({ id }) => id === part.id)!.box).toMatchObject(at);
    expect(drawn.laidOut.parts.map(({ box }) => box)).toEqual(
      diagram.laidOut.parts.map(({ box }) => box)
    );
    expect(findNumberClashes(drawn.tags.map(({ place }) => place))).toEqual([]);
    // The same from a layout that is made afterwards.
    const plan = buildPlan(buildStudy(placed));
    expect(finishDiagram(plan, diagram.laidOut).geometry.lines).toEqual(drawn.geometry.lines);
    const back = redressDiagram(drawn, buildStudy(edited(placed, letGoOfPlace(part.id))));
    expect(back.geometry.parts.map(({ box }) => box)).toEqual(
      diagram.geometry.parts.map(({ box }) => box)
    );
    expect(back.geometry.lines.map(({ route }) => route)).toEqual(
      diagram.geometry.lines.map(({ route }) => route)
    );
  });
});

describe('places', () => {
  it('are on lanes', () => {
    expect(toLane(12.1)).toBe(12);
    expect(isOnLane(12)).toBe(true);
    expect(isOnLane(12.1)).toBe(false);
  });
});
