// The body of each part as it is seen from the wiring side. Names come later, where there is room.
import { findTubeBase, findTubeType, tubeBaseOf } from '#handbook/index.ts';
import type { Spot } from '../presentation/sides.ts';
import type { FigureItem } from '../figures/figure.ts';
import { drawPictureTube } from './draw-picture-tube.ts';
import { drawTerminals, type TerminalUse } from './draw-terminals.ts';
import { isLevelRow, type Look, type Outline } from './outlines.ts';
import { PartPen } from './part-pen.ts';
import type { PlacedPart } from './placed-part.ts';

type BoxOutline = Extract<Outline, { kind: 'box' }>;
type Draw = (pen: PartPen, placed: PlacedPart) => void;

const middle: Spot = { x: 0, y: 0 };

const boxOf = (outline: Outline): BoxOutline =>
  outline.kind === 'box'
    ? outline
    : { kind: 'box', left: -outline.r, top: -outline.r, right: outline.r, bottom: outline.r };

const radiusOf = (outline: Outline): number =>
  outline.kind === 'circle'
    ? outline.r
    : Math.min(outline.right - outline.left, outline.bottom - outline.top) / 2;

function drawBox(
  pen: PartPen,
  { outline }: PlacedPart,
  style = 'part.body',
  round = 1,
  inset = 0
): void {
  const { left, top, right, bottom } = boxOf(outline);
  const from = { x: left + inset, y: top + inset };
  pen.box(style, from, { x: right - inset, y: bottom - inset }, round);
}

/** Key or gap at the bottom before the socket is turned: pins count clockwise from it, from below. */
function drawIndex(pen: PartPen, { part, outline }: PlacedPart): void {
  const tube = part.type === undefined ? null : findTubeType(part.type);
  const base = tube
    ? tubeBaseOf(tube.base)
    : part.type === undefined
      ? null
      : findTubeBase(part.type);
  const r = radiusOf(outline);
  if (base?.index === 'key' || (!base && part.kind !== 'tube' && part.kind !== 'picture tube')) {
    pen.circle('part.key', { x: 0, y: r }, 1);
    return;
  }
  const half = r * 0.14;
  const corners = [
    { x: -half, y: r - 0.1 },
    { x: 0, y: r - 1.6 },
    { x: half, y: r - 0.1 }
  ];
  pen.line('part.key', corners, { closed: true });
}

const drawSocket: Draw = (pen, placed) => {
  pen.circle('part.socket', middle, radiusOf(placed.outline));
  drawIndex(pen, placed);
};

const drawStrip: Draw = (pen, { offsets, outline }) => {
  const { left, top, right, bottom } = boxOf(outline);
  const level = isLevelRow([...offsets.values()]);
  const from = level ? { x: left, y: -1.6 } : { x: -1.6, y: top };
  pen.box('part.bar', from, level ? { x: right, y: 1.6 } : { x: 1.6, y: bottom }, 1);
};

const drawCore: Draw = (pen, placed) => {
  drawBox(pen, placed, 'part.body', 1.2);
  const { left, top, right, bottom } = boxOf(placed.outline);
  const inset = Math.min(5, (right - left) * 0.14, (bottom - top) * 0.14);
  // The lamination shows at both ends of the core.
  for (const x of [left + inset * 0.5, right - inset * 0.5]) {
    pen.line('part.fine', [
      { x, y: top + 1 },
      { x, y: bottom - 1 }
    ]);
  }
};

const drawCan: Draw = (pen, { outline }) => {
  pen.circle('part.body', middle, radiusOf(outline));
  pen.circle('part.fine', middle, radiusOf(outline) - 1.1);
};

const drawTunedCan: Draw = (pen, placed) => {
  drawBox(pen, placed, 'part.body', 1.4);
  drawBox(pen, placed, 'part.fine', 0.8, 1);
};

const drawControl: Draw = (pen, { outline }) => {
  const r = radiusOf(outline);
  pen.circle('part.body', middle, r);
  pen.circle('part.fine', middle, r - 1.1);
};

const drawRoundConnector: Draw = (pen, placed) => {
  const r = radiusOf(placed.outline);
  pen.circle('part.plug', middle, r);
  if (placed.part.kind === 'plug') pen.circle('part.fine', middle, r - 1);
  drawIndex(pen, placed);
};

const drawSpeaker: Draw = (pen, { outline }) => {
  const r = radiusOf(outline);
  pen.circle('part.body', middle, r);
  pen.circle('part.fine', middle, r - 3);
  pen.circle('part.line.ring', middle, r * 0.34);
};

const drawLamp: Draw = (pen, { outline }) => {
  const r = radiusOf(outline);
  pen.circle('part.body', middle, r);
  const d = r * 0.62;
  for (const way of [1, -1]) {
    pen.line('part.fine', [
      { x: -d, y: -d * way },
      { x: d, y: d * way }
    ]);
  }
};

const drawYoke: Draw = (pen, placed) => {
  drawBox(pen, placed, 'part.body', 3);
  const { left, top, right, bottom } = boxOf(placed.outline);
  const turns = 5;
  for (let turn = 1; turn < turns; turn++) {
    const x = left + ((right - left) * turn) / turns;
    pen.line('part.fine', [
      { x, y: top + 1.2 },
      { x, y: bottom - 1.2 }
    ]);
  }
};

const drawAntenna: Draw = (pen, placed) => {
  drawBox(pen, placed, 'part.body', 1);
  for (const inset of [1.4, 2.4, 3.4]) drawBox(pen, placed, 'part.fine', 0.8, inset);
};

const drawBody: Draw = (pen, placed) => {
  const { left, top, right, bottom } = boxOf(placed.outline);
  const spots = [...placed.offsets.values()];
  pen.line('lead', [spots[0] ?? middle, spots.at(-1) ?? middle]);
  const level = isLevelRow(spots);
  const inset = 3.2;
  const from = level ? { x: left + inset, y: top } : { x: left, y: top + inset };
  const to = level ? { x: right - inset, y: bottom } : { x: right, y: bottom - inset };
  pen.box('part.body', from, to, 1.5);
};

const drawSwitch: Draw = (pen, placed) => {
  drawBox(pen, placed, 'part.body', 1);
  const [a, b] = [...placed.offsets.values()];
  if (!a || !b || placed.offsets.size !== 2) return;
  pen.line('part.line', [
    { x: a.x + (b.x - a.x) * 0.24, y: a.y + (b.y - a.y) * 0.24 },
    {
      x: a.x + (b.x - a.x) * 0.72 + (b.y - a.y) * 0.16,
      y: a.y + (b.y - a.y) * 0.72 - (b.x - a.x) * 0.16
    }
  ]);
};

const drawPost: Draw = (pen, { outline }) => pen.circle('part.body', middle, radiusOf(outline));

const drawMark: Draw = (pen, { part, outline }) => {
  // A lug on the metal: the ring of a screw around it.
  if (part.kind === 'ground lug') pen.circle('part.fine', middle, radiusOf(outline) + 0.6);
};

const drawings: Readonly<Record<Look, Draw>> = {
  socket: drawSocket,
  'picture tube': (pen, placed) => {
    drawPictureTube(pen, placed);
    drawSocket(pen, placed);
  },
  strip: drawStrip,
  post: drawPost,
  mark: drawMark,
  core: drawCore,
  'tuned can': drawTunedCan,
  can: drawCan,
  control: drawControl,
  'round connector': drawRoundConnector,
  connector: (pen, placed) => drawBox(pen, placed, 'part.plug', 1.6),
  body: drawBody,
  yoke: drawYoke,
  speaker: drawSpeaker,
  antenna: drawAntenna,
  lamp: drawLamp,
  switch: drawSwitch,
  box: (pen, placed) =>
    drawBox(pen, placed, placed.part.kind === 'board' ? 'part.board' : 'part.body')
};

/** The shapes of a part at its place: its body, then its terminals. */
export function drawPart(placed: PlacedPart, use: TerminalUse): readonly FigureItem[] {
  const pen = new PartPen(placed.pose);
  drawings[placed.look](pen, placed);
  drawTerminals(pen, placed, use);
  return pen.sketch.items;
}
