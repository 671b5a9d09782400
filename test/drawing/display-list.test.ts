// What a display list must be whatever it shows: ids once, order of painting, everything inside its
// bounds, the foot clear of the drawing, no wire dressed lower than it needs.
import { beforeAll, describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { cautionsFor } from '#checks/cautions.ts';
import {
  buildDiagram,
  buildDisplayList,
  layers,
  styleNames,
  type Diagram,
  type DisplayItem,
  type DisplayList
} from '#drawing/index.ts';
import { boxOfShape } from '#drawing/item-boxes.ts';
import { redressDiagram } from '#drawing/redress-diagram.ts';
import { buildStudy } from '#study/build-study.ts';
import { classBandOf } from '#study/index.ts';
import { buildSmallSet } from './small-set.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

let diagram: Diagram;
let list: DisplayList;
const study = buildStudy(buildSmallSet());
const findings = runChecks(study);
const inLayer = (layer: string): DisplayItem[] => list.items.filter((item) => item.layer === layer);
const textsOf = (items: readonly DisplayItem[]): string[] =>
  items.flatMap(({ shape }) => (shape.kind === 'text' ? [shape.text] : []));

beforeAll(async () => {
  diagram = await buildDiagram(study, layoutEngine, { tries: 2, timeLimitMs: 60_000 });
  list = buildDisplayList(diagram, { findings, date: '2 May 1957' });
}, 60_000);

describe('a display list', () => {
  it('has every id once, and known styles only', () => {
    const ids = list.items.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    const known = new Set(styleNames);
    expect(list.items.filter(({ style }) => !known.has(style)).map(({ style }) => style)).toEqual(
      []
    );
  });

  it('is in the order of painting', () => {
    const ranks = list.items.map(({ layer }) => layers.indexOf(layer));
    expect(ranks).toEqual([...ranks].sort((a, b) => a - b));
  });

  it('lies within its bounds', () => {
    const { x, y, width, height } = list.bounds;
    for (const { id, shape } of list.items) {
      const box = boxOfShape(shape);
      expect(box.x, id).toBeGreaterThanOrEqual(x - 0.01);
      expect(box.y, id).toBeGreaterThanOrEqual(y - 0.01);
      expect(box.x + box.width, id).toBeLessThanOrEqual(x + width + 0.01);
      expect(box.y + box.height, id).toBeLessThanOrEqual(y + height + 0.01);
    }
  });

  it('keeps legend, cautions, notes and title block clear of the drawing and of each other', () => {
    const foot = inLayer('frame').filter(({ id }) => id !== 'border');
    const drawn = list.items.filter(({ layer }) => layer !== 'frame' && layer !== 'paper');
    const lowest = Math.max(
      ...drawn.map(({ shape }) => boxOfShape(shape)).map((box) => box.y + box.height)
    );
    for (const { id, shape } of foot) expect(boxOfShape(shape).y, id).toBeGreaterThan(lowest);
    const panelOf = ({ id }: DisplayItem): string => id.replace(/-\d+$/, '');
    const texts = foot.filter(({ shape }) => shape.kind === 'text');
    texts.forEach((one, index) => {
      for (const two of texts.slice(index + 1)) {
        if (panelOf(one) === panelOf(two)) continue;
        const [a, b] = [boxOfShape(one.shape), boxOfShape(two.shape)];
        const apart =
          a.x + a.width <= b.x ||
          b.x + b.width <= a.x ||
          a.y + a.height <= b.y ||
          b.y + b.height <= a.y;
        expect(apart, `${one.id} and ${two.id}`).toBe(true);
      }
    });
  });

  it('draws every wire in the band of the class it needs, and says what it needs', () => {
    for (const { id } of study.index.wires) {
      const items = list.items.filter(
        ({ subject }) => subject?.kind === 'wire' && subject.id === id
      );
      const band = classBandOf(study.wires.get(id)?.need?.requiredV ?? null);
      expect(items.length, id).toBeGreaterThan(0);
      for (const { style } of items.filter(({ style: own }) => /^(wire|number)\./.test(own))) {
        expect(style.split('.')[1], id).toBe(band);
      }
      expect(items.find(({ title }) => title)?.title).toContain('Wire');
    }
  });

  it('never dresses an unknown class as a low one', () => {
    const unknown = study.index.wires.filter(({ id }) => study.wires.get(id)?.need === null);
    expect(unknown.length).toBeGreaterThan(0);
    const steps = unknown.flatMap(({ id }) =>
      textsOf(
        list.items.filter(
          (item) => item.style === 'number.not known.step' && item.subject?.id === id
        )
      )
    );
    expect(steps.length).toBeGreaterThan(0);
    expect(new Set(steps)).toEqual(new Set(['?']));
  });

  it('explains what it uses, and not known always', () => {
    const words = textsOf(inLayer('frame'));
    expect(words).toContain('not known');
    expect(words).toContain('20 kV and up');
    expect(words).not.toContain('5 to 15 kV');
  });

  it('carries the cautions that apply, the title and the date', () => {
    const words = textsOf(inLayer('frame')).join(' ');
    for (const { short } of cautionsFor(study.document)) expect(words).toContain(short);
    expect(words).toContain('Bench set');
    expect(words).toContain('2 May 1957');
    expect(words).toContain('No finding is not "safe"');
  });

  it('numbers its marks as the findings are numbered', () => {
    const marked = findings.flatMap(({ severity }, index) =>
      severity === 'danger' || severity === 'fault' ? [String(index + 1)] : []
    );
    expect(marked.length).toBeGreaterThan(0);
    const seen = new Set(textsOf(inLayer('findings')));
    for (const number of seen) expect(marked).toContain(number);
  });

  it('names wires of which neither end is known below the drawing', () => {
    const loose = list.items.filter(({ id }) => id.startsWith('loose-'));
    expect(textsOf(loose)).toContain('7');
  });

  it('is the same for the same diagram', () => {
    expect(buildDisplayList(diagram, { findings, date: '2 May 1957' })).toEqual(list);
  });

  it('does without its foot in the editor', () => {
    const bare = buildDisplayList(diagram, { findings, withFoot: false });
    expect(bare.items.filter(({ layer }) => layer === 'frame')).toEqual([]);
    expect(bare.bounds.height).toBeLessThan(list.bounds.height);
  });
});

describe('a diagram in new dress', () => {
  it('shows the class of another study without moving anything', () => {
    const document = buildSmallSet();
    document.wires['w5']!.carries = { dcV: 9000 };
    const other = buildStudy(document);
    const dressed = redressDiagram(diagram, other);
    expect(dressed.geometry.lines).toEqual(diagram.geometry.lines);
    const items = buildDisplayList(dressed, { findings: [] }).items;
    expect(items.find(({ id }) => id === 'wire-w5')?.style).toBe('wire.5k-15k');
    const boxes = dressed.tags.filter(({ tag }) => tag.wire === 'w5');
    expect(boxes.every(({ tag }) => tag.band === '5k-15k')).toBe(true);
  });
});
