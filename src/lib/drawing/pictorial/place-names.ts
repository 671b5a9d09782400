// Names of parts and supports: within the part where its middle is free, else beside it where the
// least is covered. Returns shapes and the boxes that they take.
import type { Part } from '#document/index.ts';
import { Sketch, type Box, type FigureItem } from '../figures/figure.ts';
import { drawHeader, measureHeader } from '../figures/header.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import { fitText, textWidthMm, wrapText } from '../text-width.ts';
import { boxAround, cornersOf } from './boxes.ts';
import type { Clutter } from './clutter.ts';
import { clutterWeights } from './hanging-places.ts';
import { outlineCorners, toSheet, type PlacedPart } from './placed-part.ts';
import { distance } from './vectors.ts';

export interface PlacedName {
  readonly items: readonly FigureItem[];
  readonly box: Box;
}

interface NameLine {
  readonly style: string;
  readonly text: string;
  readonly size: number;
  readonly bold?: boolean;
}

const functionSize = typeSizes.small * 0.92;
/** Room that a core's leads keep for their own names inside the edge, mm. */
const leadNamesMm = 2.8;

/** Half width and half height of the free middle of a part, and how wide it is above and below. */
interface InnerRoom {
  readonly halfHeight: number;
  readonly widthAt: (y: number) => number;
}

function innerRoomOf(placed: PlacedPart, middle: Spot): InnerRoom | null {
  const { outline, terminals, spots, pose, look } = placed;
  if (look === 'strip' || look === 'connector' || look === 'body' || look === 'switch') return null;
  const free = Math.min(
    Infinity,
    ...terminals.map(({ id }) => distance(spots.get(id) ?? middle, middle))
  );
  if (outline.kind === 'circle') {
    const isPinned = look === 'socket' || look === 'picture tube' || look === 'round connector';
    const r = Math.min(outline.r - 0.8, free - (isPinned ? 1.9 : 2.1));
    if (r < 4) return null;
    return { halfHeight: r * 0.92, widthAt: (y) => 2 * Math.sqrt(Math.max(0, r * r - y * y)) };
  }
  const turned = Math.abs(pose.rotation % 180) === 90;
  const [wide, high] = [outline.right - outline.left, outline.bottom - outline.top];
  const edge = look === 'core' || look === 'box' ? leadNamesMm : 0.6;
  const [x, y] = turned ? [high, wide] : [wide, high];
  const sideNames = terminals.some(({ id }) => {
    const spot = spots.get(id);
    return spot && Math.abs(spot.x - middle.x) > x / 2 - 2;
  });
  const halfX = x / 2 - (sideNames ? 5 : 1.4);
  const reach = look === 'tuned can' ? Math.min(halfX, free * Math.SQRT1_2 + 1.4) : halfX;
  const halfY = look === 'tuned can' ? free * Math.SQRT1_2 - 1.9 : y / 2 - edge - 1;
  return halfY < 1.8 || reach < 4 ? null : { halfHeight: halfY, widthAt: () => 2 * reach };
}

const middleOfOutline = ({ outline, pose }: PlacedPart): Spot =>
  outline.kind === 'circle'
    ? pose.at
    : toSheet(pose, {
        x: (outline.left + outline.right) / 2,
        y: (outline.top + outline.bottom) / 2
      });

const heightOf = (lines: readonly NameLine[]): number =>
  lines.reduce((sum, { size }) => sum + size * 1.2, 0);

/** The lines of a name that fit a room: fewer words rather than smaller ones. */
function linesFor(part: Part, { halfHeight, widthAt }: InnerRoom): NameLine[] | null {
  const reference: NameLine = {
    style: 'part.reference',
    text: part.reference,
    size: typeSizes.reference,
    bold: true
  };
  const kindText = part.type ?? part.value ?? '';
  const kind: NameLine[] =
    kindText === '' ? [] : [{ style: 'part.kind', text: kindText, size: typeSizes.kind }];
  const words = wrapText(part.function ?? '', widthAt(halfHeight * 0.45) - 0.6, {
    size: functionSize,
    face: 'sans'
  }).map((text): NameLine => ({ style: 'part.function', text, size: functionSize }));
  for (const tail of [[...kind, ...words.slice(0, 2)], [...kind, ...words.slice(0, 1)], kind, []]) {
    const lines = [reference, ...tail];
    const height = heightOf(lines);
    if (height > 2 * halfHeight) continue;
    let y = -height / 2;
    const fits = lines.every(({ text, size, bold }, index) => {
      const widest = Math.max(Math.abs(y), Math.abs(y + size * 1.2)) - size * 0.25;
      y += size * 1.2;
      const look = { size, face: 'sans' as const, ...(bold ? { bold } : {}) };
      const room = widthAt(Math.max(0, widest));
      return index === 0
        ? textWidthMm(text, look) <= room
        : textWidthMm(fitText(text, room, look), look) <= room && room > 4;
    });
    if (fits) return lines;
  }
  return null;
}

function nameInside(placed: PlacedPart, over: Clutter): PlacedName | null {
  const middle = middleOfOutline(placed);
  const room = innerRoomOf(placed, middle);
  const lines = room && linesFor(placed.part, room);
  if (!room || !lines) return null;
  const { x, y: middleY } = middle;
  const height = heightOf(lines);
  const sketch = new Sketch();
  let y = middleY - height / 2;
  let widest = 0;
  for (const { style, text, size, bold } of lines) {
    const look = { size, face: 'sans' as const, ...(bold ? { bold } : {}) };
    y += size * 0.6;
    const shown = fitText(text, room.widthAt(Math.abs(y - middleY)), look);
    widest = Math.max(widest, textWidthMm(shown, look));
    sketch.text(style, shown, x, y, look);
    y += size * 0.6;
  }
  const box = { x: x - widest / 2, y: middleY - height / 2, width: widest, height };
  // A wire or a component that lies across the middle: better beside the part than under it.
  if (over.costOfBox(middle, widest, height) > 1.5) return null;
  return { items: sketch.items, box };
}

/** Places around a box for another one of this size: its upper left corners, nearest first. */
function cornersAround(box: Box, width: number, height: number): Spot[] {
  const spots: Spot[] = [];
  for (const gap of [0.8, 2.4, 4.5, 7.5]) {
    for (const share of [0.5, 0.2, 0.8, -0.15, 1.15]) {
      const x = box.x + box.width * share - width / 2;
      const y = box.y + box.height * share - height / 2;
      spots.push(
        { x, y: box.y - height - gap },
        { x, y: box.y + box.height + gap },
        { x: box.x + box.width + gap, y },
        { x: box.x - width - gap, y }
      );
    }
  }
  return spots;
}

/** The place beside a box that covers the least, nearer ones first where it is the same. */
export function findPlaceBeside(box: Box, width: number, height: number, clutter: Clutter): Box {
  let best = { x: box.x, y: box.y - height - 0.8 };
  let least = Infinity;
  cornersAround(box, width, height).forEach((corner, index) => {
    const middle = { x: corner.x + width / 2, y: corner.y + height / 2 };
    const cost = clutter.costOfBox(middle, width + 0.6, height + 0.4) + index * 0.18;
    if (cost < least) [best, least] = [corner, cost];
  });
  return { ...best, width, height };
}

/** The name of a part, and the room that it takes marked in the clutter.
 *  @param mate the plug or jack that it goes with
 *  @param over what lies over the parts and would cover a name within one */
export function placePartName(
  placed: PlacedPart,
  mate: Part | undefined,
  clutter: Clutter,
  over: Clutter
): PlacedName {
  const words = [placed.part.function, mate && `mates ${mate.reference}`].filter(Boolean);
  const named = { ...placed, part: { ...placed.part, function: words.join(', ') } };
  const name = nameInside(named, over) ?? nameBeside(named, clutter);
  markBox(name.box, clutter);
  return name;
}

function nameBeside(placed: PlacedPart, clutter: Clutter): PlacedName {
  const around = boxAround(outlineCorners(placed));
  const header = measureHeader(placed.part);
  const box = findPlaceBeside(around, header.width, header.height, clutter);
  const sketch = new Sketch();
  drawHeader(sketch, header, box.x + box.width / 2, box.y);
  return { items: sketch.items, box };
}

/** Marks a box of text as taken. */
export const markBox = (box: Box, clutter: Clutter): void =>
  clutter.addPolygon(cornersOf(box), clutterWeights.name);
