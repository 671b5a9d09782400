// Layouts of generated chassis and of the demonstrations, proved: nothing through a part, nothing on
// one line, every number in its place, and no more crossings than were once reached (the budget).
import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { ChassisDocument } from '#document/index.ts';
import { buildDiagram, type Diagram } from '#drawing/index.ts';
import { findNumberClashes } from '#drawing/place-numbers.ts';
import { buildStudy } from '#study/build-study.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { laneMm } from '#drawing/router/lanes.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

const demonstration = (name: string): ChassisDocument => {
  const file = new URL(`../../static/demonstrations/${name}.chassis.json`, import.meta.url);
  return JSON.parse(readFileSync(file, 'utf8')) as ChassisDocument;
};

/** Crossings of unrelated lines that a layout may have: what was measured, and a tenth more. */
const budgets: readonly {
  name: string;
  build: () => ChassisDocument;
  crossings: number;
  tries: number;
}[] = [
  { name: 'the television', build: () => demonstration('console-21'), crossings: 150, tries: 3 },
  { name: 'the radio', build: () => demonstration('five-tube-radio'), crossings: 46, tries: 3 },
  { name: '100 wires, seed 1', build: () => generateChassis(100, 1), crossings: 64, tries: 3 },
  { name: '100 wires, seed 2', build: () => generateChassis(100, 2), crossings: 78, tries: 3 },
  { name: '100 wires, seed 3', build: () => generateChassis(100, 3), crossings: 57, tries: 3 },
  { name: '300 wires, seed 1', build: () => generateChassis(300, 1), crossings: 590, tries: 2 },
  { name: '300 wires, seed 2', build: () => generateChassis(300, 2), crossings: 615, tries: 2 },
  { name: '300 wires, seed 3', build: () => generateChassis(300, 3), crossings: 480, tries: 2 }
];

for (const { name, build, crossings, tries } of budgets) {
  describe(`the diagram of ${name}`, () => {
    let diagram: Diagram;
    beforeAll(async () => {
      diagram = await buildDiagram(buildStudy(build()), layoutEngine, {
        tries,
        timeLimitMs: 300_000
      });
    }, 300_000);

    it('has no wire through a part, none on another, no part on a part', () => {
      const { throughParts, overlaps, partClashes, slanted } = diagram.proofs;
      expect(throughParts).toEqual([]);
      expect(overlaps).toEqual([]);
      expect(partClashes).toEqual([]);
      expect(slanted).toBe(0);
    });

    it('crosses no more than its budget', () => {
      expect(diagram.proofs.crossings).toBeLessThanOrEqual(crossings);
      expect(diagram.proofs.lines).toBeGreaterThan(40);
    });

    it('draws every part once, and every line from terminal to terminal', () => {
      const { plan, geometry } = diagram;
      const drawn = geometry.parts.map(({ id }) => id);
      expect(new Set(drawn).size).toBe(drawn.length);
      expect(new Set([...drawn, ...plan.links.absorbed])).toEqual(
        new Set(plan.study.index.parts.map(({ id }) => id))
      );
      expect(geometry.lines).toHaveLength(plan.links.lines.length);
      for (const { link, route, fromPath, toPath } of geometry.lines) {
        expect(fromPath.at(-1)?.x, link.id).toBeCloseTo(route[0]!.x, 2);
        expect(fromPath.at(-1)?.y, link.id).toBeCloseTo(route[0]!.y, 2);
        expect(toPath.at(-1)?.x, link.id).toBeCloseTo(route.at(-1)!.x, 2);
        expect(toPath.at(-1)?.y, link.id).toBeCloseTo(route.at(-1)!.y, 2);
      }
    });

    it('names every wire, and no number lies on another', () => {
      const { plan, tags, cableNames } = diagram;
      const named = new Set([
        ...tags.map(({ tag }) => tag.wire),
        ...plan.links.marks.flatMap(({ wires }) => wires),
        ...plan.links.loose
      ]);
      expect(named).toEqual(new Set(plan.study.index.wires.map(({ id }) => id)));
      const places = [...tags, ...cableNames].map(({ place }) => place);
      expect(findNumberClashes(places)).toEqual([]);
    });

    it('keeps the sheet no wider than twice its height', () => {
      const { width, height } = diagram.geometry;
      expect(width / height).toBeLessThan(2);
    });
  });
}

/** Lanes that each of two parts keeps free beside it where they stand already. */
const nearest = 2;

describe('a layout', () => {
  it('comes out the same twice', async () => {
    const study = buildStudy(demonstration('five-tube-radio'));
    const one = await buildDiagram(study, layoutEngine, { tries: 2, timeLimitMs: 120_000 });
    const two = await buildDiagram(study, layoutEngine, { tries: 2, timeLimitMs: 120_000 });
    expect(two.geometry.lines.map(({ route }) => route)).toEqual(
      one.geometry.lines.map(({ route }) => route)
    );
  }, 120_000);

  it('moves nothing that was there where a wire and a part are added', async () => {
    const document = demonstration('five-tube-radio');
    const first = await buildDiagram(buildStudy(document), layoutEngine, {
      tries: 1,
      timeLimitMs: 120_000
    });
    const [strip] = Object.values(document.parts).filter(({ kind }) => kind === 'terminal strip');
    const [lug] = Object.values(strip!.terminals);
    const shares: number[] = [];
    // One more wire, at the beginning of each of these in turn.
    const wires = Object.values(document.wires).filter(({ from, to }) => from.at && to.at);
    for (const wire of wires.filter((_, index) => index % 4 === 0)) {
      const more: ChassisDocument = {
        ...document,
        parts: { ...document.parts, extra: { ...strip!, id: 'extra', reference: 'TS9' } },
        wires: {
          ...document.wires,
          extra: {
            ...wire,
            id: 'extra',
            number: '99',
            to: { at: { part: 'extra', terminal: lug!.id }, known: 'seen' }
          }
        }
      };
      const next = await buildDiagram(buildStudy(more), layoutEngine, {
        before: first.laidOut,
        timeLimitMs: 120_000
      });
      const places = new Map(
        next.geometry.parts.map(({ id, box }) => [id, { x: box.x, y: box.y }])
      );
      const moved = first.geometry.parts.filter(({ id, box }) => {
        const now = places.get(id);
        return now?.x !== box.x || now.y !== box.y;
      });
      // Nothing gives way but to the part that has grown by an end, where that would come too near.
      const grown = next.geometry.parts.find(({ id }) => id === wire.from.at!.part)!.box;
      for (const { box } of moved) {
        const across = Math.max(grown.x - box.x - box.width, box.x - grown.x - grown.width);
        const down = Math.max(grown.y - box.y - box.height, box.y - grown.y - grown.height);
        expect(Math.max(across, down)).toBeLessThanOrEqual(2 * nearest * laneMm);
      }
      expect(places.has('extra')).toBe(true);
      const routes = new Map(next.geometry.lines.map(({ link, route }) => [link.id, route]));
      expect(routes.size).toBe(first.geometry.lines.length + 1);
      const kept = first.geometry.lines.filter(
        ({ link, route }) => JSON.stringify(routes.get(link.id)) === JSON.stringify(route)
      );
      shares.push(kept.length / first.geometry.lines.length);
      expect(next.proofs.throughParts).toEqual([]);
      expect(next.proofs.overlaps).toEqual([]);
    }
    expect(shares.length).toBeGreaterThan(5);
    expect(shares.reduce((sum, share) => sum + share, 0) / shares.length).toBeGreaterThan(0.8);
  }, 120_000);
});
