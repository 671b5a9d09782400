// The canvas holds what the SVG holds: for every fixture the nodes of Konva's tree, in their order, paint
// the shapes that an XML parser finds in the SVG, with the same ids, geometry and colours.
import { SaxesParser } from 'saxes';
import { beforeAll, describe, expect, it } from 'vitest';
import { buildEmptyDocument, makeIdFrom, type ChassisDocument } from '#document/index.ts';
import { runChecks } from '#checks/index.ts';
import {
  buildDiagram,
  buildDisplayList,
  buildPictorial,
  toSvg,
  type DisplayList
} from '#drawing/index.ts';
import type { KonvaWriter } from '#editor/sheet/konva-writer.ts';
import { buildStudy } from '#study/index.ts';
import { buildSmallSet } from '../drawing/small-set.ts';
import { buildRadio } from '../demonstrations/radio.ts';
import { buildTelevision } from '../demonstrations/television.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { paperElement, putUpWindow } from '../helpers/paper-window.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

/** One shape, the same from either side: what kind, which numbers, which inks. */
interface Painted {
  readonly kind: 'path' | 'circle' | 'box' | 'text';
  readonly numbers: readonly number[];
  readonly text: string;
  readonly stroke: string | null;
  readonly fill: string | null;
}

interface Node {
  readonly id: () => string;
  readonly getAttr: (name: string) => (context: { _context: object }) => void;
}

type Attributes = Readonly<Record<string, string>>;
const numbersIn = (text: string): number[] => (text.match(/-?\d+(\.\d+)?/g) ?? []).map(Number);
const inkOf = (ink: string | undefined): string | null =>
  ink === undefined || ink === 'none' ? null : ink;

const shapeOf = (name: string, own: Attributes, text: string): Painted | null => {
  const number = (key: string): number => Number(own[key] ?? 0);
  const inks = { stroke: inkOf(own['stroke']), fill: inkOf(own['fill']), text };
  switch (name) {
    case 'polyline':
    case 'polygon':
      return { kind: 'path', numbers: numbersIn(own['points'] ?? ''), ...inks };
    case 'path':
      return { kind: 'path', numbers: numbersIn(own['d'] ?? ''), ...inks };
    case 'circle':
      return { kind: 'circle', numbers: [number('cx'), number('cy'), number('r')], ...inks };
    case 'rect': {
      const numbers = ['x', 'y', 'width', 'height', 'rx'].map(number);
      return { kind: 'box', numbers, ...inks };
    }
    case 'text': {
      const turn = numbersIn(own['transform'] ?? '')[0] ?? 0;
      const numbers = [number('x'), number('y'), number('font-size'), turn];
      return { kind: 'text', numbers, ...inks };
    }
    default:
      return null;
  }
};

/** The shapes of an SVG, and the class and id of the groups that they stand in. */
const shapesOfSvg = (svg: string): { shapes: Painted[]; groups: string[] } => {
  const shapes: Painted[] = [];
  const groups: string[] = [];
  let open: { name: string; own: Attributes } | null = null;
  let text = '';
  const parser = new SaxesParser();
  parser.on('error', (error) => {
    throw error;
  });
  parser.on('opentag', ({ name, attributes }) => {
    open = { name, own: attributes };
    text = '';
    if (name === 'g') groups.push(String(attributes['id']));
    const shape = name === 'text' ? null : shapeOf(name, attributes, '');
    if (shape) shapes.push(shape);
  });
  parser.on('text', (more) => (text += more));
  parser.on('closetag', ({ name }) => {
    if (name === 'text' && open) shapes.push(shapeOf(name, open.own, text)!);
  });
  parser.write(svg).close();
  return { shapes, groups };
};

/** A context that notes what is painted on it. */
class Notes {
  fillStyle = '';
  strokeStyle = '';
  font = '';
  readonly #numbers: number[] = [];
  #kind: Painted['kind'] = 'path';
  #text = '';
  #turn = 0;
  #moved: readonly number[] | null = null;
  #stroke: string | null = null;
  #fill: string | null = null;

  get painted(): Painted {
    const numbers = this.#kind === 'text' ? [...this.#numbers, this.#turn] : [...this.#numbers];
    return {
      kind: this.#kind,
      numbers,
      text: this.#text,
      stroke: this.#stroke,
      fill: this.#fill
    };
  }

  moveTo(...numbers: number[]): void {
    this.#numbers.push(...numbers);
  }
  lineTo(...numbers: number[]): void {
    this.#numbers.push(...numbers);
  }
  quadraticCurveTo(...numbers: number[]): void {
    this.#numbers.push(...numbers);
  }
  arc(x: number, y: number, r: number): void {
    this.#kind = 'circle';
    this.#numbers.push(x, y, r);
  }
  rect(...numbers: number[]): void {
    this.#kind = 'box';
    this.#numbers.push(...numbers, 0);
  }
  roundRect(...numbers: number[]): void {
    this.#kind = 'box';
    this.#numbers.push(...numbers);
  }
  translate(x: number, y: number): void {
    this.#moved = [x, y];
  }
  rotate(radians: number): void {
    this.#turn = (radians * 180) / Math.PI;
  }
  fillText(text: string, x: number, y: number): void {
    this.#kind = 'text';
    this.#text = text;
    this.#numbers.push(...(this.#moved ?? [x, y]), Number(/([\d.]+)px/.exec(this.font)?.[1]));
    this.#fill = this.fillStyle;
  }
  fill(): void {
    this.#fill = this.fillStyle;
  }
  stroke(): void {
    this.#stroke = this.strokeStyle;
  }
  beginPath(): void {}
  closePath(): void {}
  setLineDash(): void {}
  save(): void {}
  restore(): void {}
}

let createWriter: (host: HTMLDivElement, theme: 'light') => KonvaWriter;
let stages: { getLayers: () => { getChildren: () => Node[] }[] }[];
beforeAll(async () => {
  putUpWindow();
  ({ createKonvaWriter: createWriter } = await import('#editor/sheet/konva-writer.ts'));
  ({ stages } = (await import('konva/lib/Stage.js')) as unknown as { stages: typeof stages });
});

const pictorial = (document: ChassisDocument, face: 'below' | 'above' = 'below'): DisplayList => {
  const study = buildStudy(document);
  return buildPictorial(study, { findings: runChecks(study), face, withLengths: true });
};
const diagram = async (document: ChassisDocument): Promise<DisplayList> => {
  const study = buildStudy(document);
  const laid = await buildDiagram(study, layoutEngine, { timeLimitMs: 60_000 });
  return buildDisplayList(laid, { findings: runChecks(study) });
};
const blank = (): ChassisDocument =>
  buildEmptyDocument({ title: 'Blank', makeId: makeIdFrom(() => 0.5) });

const fixtures: readonly (readonly [string, () => DisplayList | Promise<DisplayList>])[] = [
  ['blank paper, to scale', () => pictorial(blank())],
  ['the small set, to scale', () => pictorial(buildSmallSet())],
  ['the small set, as a diagram', () => diagram(buildSmallSet())],
  ['the radio, to scale', () => pictorial(buildRadio())],
  ['the radio from above', () => pictorial(buildRadio(), 'above')],
  ['the television, to scale', () => pictorial(buildTelevision())],
  ['a generated chassis, to scale', () => pictorial(generateChassis(120))]
];

/** The SVG rounds to a hundredth of a millimetre. */
const roundedMm = 0.0051;

describe('the canvas against the SVG', () => {
  it.each(fixtures)(
    '%s',
    async (_name, build) => {
      const list = await build();
      const { shapes, groups } = shapesOfSvg(toSvg(list, { title: 'parity', theme: 'light' }));
      const writer = createWriter(paperElement(), 'light');
      // Close enough that no line is thickened and no text is left out.
      const close = { x: 0, y: 0, scale: 100 };
      writer.apply(list);
      writer.setViewport(close, { width: 800, height: 600 }, new Map());
      const nodes = stages.at(-1)?.getLayers()[0]?.getChildren() ?? [];
      expect(nodes.map((node) => node.id())).toEqual(list.items.map(({ id }) => id));
      expect(nodes).toHaveLength(shapes.length);
      for (const [n, node] of nodes.entries()) {
        const notes = new Notes();
        node.getAttr('sceneFunc')({ _context: notes });
        const { numbers, ...rest } = notes.painted;
        const { numbers: expected = [], ...others } = shapes[n] ?? {};
        expect([node.id(), rest]).toEqual([node.id(), others]);
        expect([node.id(), numbers.length]).toEqual([node.id(), expected.length]);
        const off = Math.max(
          0,
          ...numbers.map((value, at) => Math.abs(value - (expected[at] ?? NaN)))
        );
        expect([node.id(), off < roundedMm]).toEqual([node.id(), true]);
      }
      for (const { subject } of list.items) {
        if (!subject) continue;
        const id = `${subject.kind}-${subject.id.replace(/[^\w.-]/g, '-')}`;
        expect(groups).toContain(id);
      }
      writer.destroy();
    },
    120_000
  );
});
