// A drawing with marks on what two documents differ in: an outline along a wire or round a part, and above the
// drawing what the outlines mean.
import { changeInOneLine, type ElementChange } from '#document/index.ts';
import type { DisplayItem, DisplayList, Subject } from './display-list.ts';
import type { Box } from './figures/figure.ts';
import { boxOfShape } from './item-boxes.ts';
import { besideLine } from './beside-line.ts';

export interface ChangeMark {
  readonly kind: Subject['kind'];
  readonly id: string;
  readonly what: 'added' | 'removed' | 'changed';
  /** "wire 12 changed: gauge: 20 AWG instead of 22 AWG". */
  readonly words: string;
}

const drawn: ReadonlySet<string> = new Set(['wire', 'part', 'cable', 'unit', 'support', 'photo']);

/** The marks for what was found to differ, of what a drawing shows. */
export const toMarks = (changes: readonly ElementChange[]): ChangeMark[] =>
  changes.flatMap((change) =>
    drawn.has(change.kind)
      ? [
          {
            kind: change.kind as ChangeMark['kind'],
            id: change.id,
            what: change.what,
            words: changeInOneLine(change)
          }
        ]
      : []
  );

const apartMm = 1.3;
const roundMm = 1.6;
const clusterMm = 3;
const legendMm = 11;
const textMm = 3.4;
const sampleMm = 14;

const widened = ({ x, y, width, height }: Box, by: number): Box => ({
  x: x - by,
  y: y - by,
  width: width + 2 * by,
  height: height + 2 * by
});

const wireMarks = (item: DisplayItem, mark: ChangeMark): DisplayItem[] => {
  const { shape } = item;
  if (shape.kind !== 'line' || shape.closed === true) return [];
  return [-apartMm, apartMm].map((offset, side) => ({
    id: `change-${item.id}-${side}`,
    layer: 'findings',
    order: -1,
    style: `change.${mark.what}`,
    shape: { ...shape, points: besideLine(shape.points, offset) },
    subject: { kind: mark.kind, id: mark.id },
    title: mark.words
  }));
};

const isWireLine = ({ style, layer }: DisplayItem): boolean =>
  layer === 'wires' && /^wire\.[^.]+$/.test(style);

const unionOf = (a: Box, b: Box): Box => {
  const [x, y] = [Math.min(a.x, b.x), Math.min(a.y, b.y)];
  return {
    x,
    y,
    width: Math.max(a.x + a.width, b.x + b.width) - x,
    height: Math.max(a.y + a.height, b.y + b.height) - y
  };
};
const near = (a: Box, b: Box): boolean =>
  a.x - clusterMm < b.x + b.width &&
  b.x - clusterMm < a.x + a.width &&
  a.y - clusterMm < b.y + b.height &&
  b.y - clusterMm < a.y + a.height;

/** One box for what lies together: a component may be drawn at each of the terminals that it sits on. */
const boxesOf = (items: readonly DisplayItem[]): Box[] => {
  const boxes: Box[] = [];
  for (const { shape } of items) {
    let box = boxOfShape(shape);
    for (let at = boxes.findIndex((other) => near(box, other)); at >= 0;) {
      box = unionOf(box, boxes.splice(at, 1)[0] ?? box);
      at = boxes.findIndex((other) => near(box, other));
    }
    boxes.push(box);
  }
  return boxes;
};

/** What the legend calls them; as they are named where nothing is said. */
export type ChangeNames = Readonly<Partial<Record<ChangeMark['what'], string>>>;

const legendItems = (
  list: DisplayList,
  marks: readonly ChangeMark[],
  names: ChangeNames
): DisplayItem[] => {
  const { x, y } = list.bounds;
  let at = x + 6;
  return (['added', 'changed', 'removed'] as const).flatMap((what): DisplayItem[] => {
    const count = marks.filter((mark) => mark.what === what).length;
    if (count === 0) return [];
    const middle = y - legendMm / 2;
    const text = `${names[what] ?? what} (${count})`;
    const start = at;
    at += sampleMm + text.length * textMm * 0.6 + 10;
    const base = { layer: 'frame', order: 1 } as const;
    return [
      {
        ...base,
        id: `change-legend-${what}`,
        style: `change.${what}`,
        shape: { kind: 'line', points: [start, middle, start + sampleMm, middle] }
      },
      {
        ...base,
        id: `change-legend-${what}-text`,
        style: 'change.text',
        shape: {
          kind: 'text',
          x: start + sampleMm + 2,
          y: middle + textMm * 0.36,
          text,
          size: textMm,
          anchor: 'start',
          face: 'sans'
        }
      }
    ];
  });
};

/** The drawing with the marks of what is on it; the paper grows by a strip for what they mean. */
export function markChanges(
  list: DisplayList,
  marks: readonly ChangeMark[],
  names: ChangeNames = {}
): DisplayList {
  const byKey = new Map(marks.map((mark) => [`${mark.kind} ${mark.id}`, mark]));
  const added: DisplayItem[] = [];
  const parts = new Map<string, DisplayItem[]>();
  for (const item of list.items) {
    const mark = item.subject && byKey.get(`${item.subject.kind} ${item.subject.id}`);
    if (!mark) continue;
    if (mark.kind === 'wire') {
      if (isWireLine(item)) added.push(...wireMarks(item, mark));
    } else
      parts.set(`${mark.kind} ${mark.id}`, [...(parts.get(`${mark.kind} ${mark.id}`) ?? []), item]);
  }
  for (const [key, items] of parts) {
    const mark = byKey.get(key);
    if (!mark) continue;
    boxesOf(items).forEach((box, index) =>
      added.push({
        id: `change-${mark.kind}-${mark.id}-${index}`,
        layer: 'findings',
        order: -1,
        style: `change.${mark.what}`,
        shape: { kind: 'box', ...widened(box, roundMm), round: roundMm },
        subject: { kind: mark.kind, id: mark.id },
        title: mark.words
      })
    );
  }
  const bounds = {
    ...list.bounds,
    y: list.bounds.y - legendMm,
    height: list.bounds.height + legendMm
  };
  const paper = list.items.map((item): DisplayItem =>
    item.layer === 'paper' ? { ...item, shape: { kind: 'box', ...bounds } } : item
  );
  const frameAt = paper.findIndex(({ layer }) => layer === 'frame');
  const cut = frameAt < 0 ? paper.length : frameAt;
  return {
    items: [
      ...paper.slice(0, cut),
      ...added,
      ...paper.slice(cut),
      ...legendItems(list, marks, names)
    ],
    bounds
  };
}
