// Marks beside a terminal: chassis ground, an end nobody has found, a component down to the metal,
// a wire that goes into its plug's cable. Each is measured first and drawn in the room it asked for.
import type { Spot, Side } from '../presentation/sides.ts';
import { isUpright, outwardOf } from '../presentation/sides.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import type { Sketch } from './figure.ts';
import { drawTag, tagWidth } from './number-tag.ts';
import type { MarkFace } from './part-end.ts';
import { numberBox, pitch, type } from './sizes.ts';
import { drawTwoLeadBody, halfLength, smallBody } from './two-lead-symbol.ts';

const lead = 2;
const barsDeep = 1.9;
const queryRadius = 1.35;
const gap = 0.9;
const componentLead = 1.3;
const arrow = 0.9;
const tagsPerLine = 4;
const wordsLook = { size: type.small, face: 'sans' } as const;
const mostWords = 13;

interface MarkRoom {
  /** Along the side of the part. */
  readonly pitch: number;
  /** Outwards from the part. */
  readonly depth: number;
}

const wordsOf = (face: MarkFace): string => fitText(face.words, mostWords, wordsLook);

/** What the lines of the mark itself take, before tags and words. */
const stemOf = (face: MarkFace): number => {
  const { kind, component } = face;
  if (kind === 'metal') return lead * 0.6 + barsDeep;
  if (kind === 'ground') return lead + barsDeep;
  if (kind === 'free') return lead * 1.5 + 2 * queryRadius;
  if (kind === 'component' && component) {
    return componentReach(face) + (component.toMetal ? barsDeep : arrow);
  }
  return lead;
};

const componentWords = (face: MarkFace): string =>
  face.component ? `${face.component.reference} ${face.component.value}`.trim() : '';

/** From the terminal to the far lead's mark: past the body, and past the words above it. */
const componentReach = (face: MarkFace): number => {
  const half = halfLength(face.component?.kind ?? '', smallBody);
  const words = textWidthMm(componentWords(face), wordsLook);
  return Math.max(2 * (componentLead + half), words + 0.9);
};

/** The room that a mark needs on a side, mm. */
export const measureMark = (face: MarkFace, side: Side): MarkRoom => {
  const words = textWidthMm(wordsOf(face), wordsLook);
  const widths = face.tags.map(tagWidth);
  const stem = stemOf(face);
  const lines = Math.ceil(face.tags.length / tagsPerLine);
  if (isUpright(side)) {
    const own = face.kind === 'component' ? pitch.component : pitch.mark;
    const deep = face.tags.length * (numberBox.height + 0.3) + (words > 0 ? type.small * 1.3 : 0);
    const component = textWidthMm(componentWords(face), wordsLook);
    return {
      pitch: Math.max(own, ...widths.map((width) => width + gap), words + gap),
      depth: Math.max(stem + gap * 0.4 + deep, face.kind === 'component' ? component + 1 : 0)
    };
  }
  const perLine = Array.from({ length: lines }, (_, line) =>
    widths.slice(line * tagsPerLine, (line + 1) * tagsPerLine).reduce((sum, w) => sum + w + 0.4, 0)
  );
  const beside = Math.max(0, ...perLine) + (words > 0 ? words + 0.6 : 0);
  const component = textWidthMm(componentWords(face), wordsLook);
  return {
    pitch:
      face.kind === 'component'
        ? pitch.component
        : Math.max(pitch.mark, lines * (numberBox.height + 0.5)),
    depth: Math.max(stem + (beside > 0 ? gap * 0.6 + beside : 0), component + 1)
  };
};

class MarkPen {
  private readonly sketch: Sketch;
  private readonly start: Spot;
  private readonly side: Side;

  constructor(sketch: Sketch, start: Spot, side: Side) {
    this.sketch = sketch;
    this.start = start;
    this.side = side;
  }

  /** A spot so far out and so far across (to the right of the way out). */
  at(out: number, across = 0): Spot {
    const way = outwardOf[this.side];
    return {
      x: this.start.x + way.x * out - way.y * across,
      y: this.start.y + way.y * out + way.x * across
    };
  }

  line(style: string, from: [number, number], to: [number, number], more: object = {}): void {
    const a = this.at(...from);
    const b = this.at(...to);
    this.sketch.line(style, [a.x, a.y, b.x, b.y], { layer: 'grounds', ...more });
  }

  bars(out: number): void {
    [1.55, 1.0, 0.45].forEach((half, index) => {
      this.line('ground.bar', [out + index * 0.75, -half], [out + index * 0.75, half]);
    });
  }
}

const drawWords = (sketch: Sketch, text: string, spot: Spot, side: Side): void => {
  const anchor = side === 'east' ? 'start' : side === 'west' ? 'end' : 'middle';
  sketch.text('note', text, spot.x, spot.y, { ...wordsLook, anchor, layer: 'grounds' });
};

/** Tags and words outwards from `out`. */
const drawLegend = (
  sketch: Sketch,
  pen: MarkPen,
  face: MarkFace,
  side: Side,
  out: number
): void => {
  const words = wordsOf(face);
  if (isUpright(side)) {
    let deep = out + gap * 0.4;
    for (const tag of face.tags) {
      const spot = pen.at(deep + numberBox.height / 2);
      drawTag(sketch, tag, spot.x, spot.y);
      deep += numberBox.height + 0.3;
    }
    drawWords(sketch, words, pen.at(deep + type.small * 0.6), side);
    return;
  }
  const lines = Math.ceil(face.tags.length / tagsPerLine);
  let farthest = out + gap * 0.6;
  for (let line = 0; line < lines; line++) {
    let deep = out + gap * 0.6;
    const across = (line - (lines - 1) / 2) * (numberBox.height + 0.5) * (side === 'east' ? 1 : -1);
    for (const tag of face.tags.slice(line * tagsPerLine, (line + 1) * tagsPerLine)) {
      const width = tagWidth(tag);
      const spot = pen.at(deep + width / 2, across);
      drawTag(sketch, tag, spot.x, spot.y);
      deep += width + 0.4;
    }
    farthest = Math.max(farthest, deep);
  }
  drawWords(sketch, words, pen.at(farthest + 0.2), side);
};

const drawComponent = (sketch: Sketch, pen: MarkPen, face: MarkFace, side: Side): void => {
  const { component } = face;
  if (!component) return;
  const upright = isUpright(side);
  const half = halfLength(component.kind, smallBody);
  const marks = { layer: 'grounds', component: component.id } as const;
  const end = componentReach(face);
  const near = end / 2 - half;
  const middle = pen.at(end / 2);
  pen.line('lead', [0, 0], [near, 0], marks);
  pen.line('lead', [near + 2 * half, 0], [end, 0], marks);
  const reversed = side === 'west' || side === 'north';
  drawTwoLeadBody(sketch, component.kind, { ...middle, upright, reversed, body: smallBody }, marks);
  if (component.toMetal) pen.bars(end);
  else {
    pen.line('lead', [end, -0.7], [end + arrow, 0], marks);
    pen.line('lead', [end, 0.7], [end + arrow, 0], marks);
  }
  const text = componentWords(face);
  const look = { ...wordsLook, ...marks };
  if (upright) {
    const spot = pen.at(0.5, side === 'south' ? -2.15 : 2.15);
    const turn = side === 'south' ? 90 : -90;
    sketch.text('component', text, spot.x, spot.y, { ...look, anchor: 'start', turn });
    return;
  }
  const spot = pen.at(0.5);
  const anchor = side === 'east' ? 'start' : 'end';
  sketch.text('component', text, spot.x, spot.y - 2.15, { ...look, anchor });
};

/** Draws a mark outwards from `start`, a spot on the border of the part's own shape. */
export const drawMark = (sketch: Sketch, face: MarkFace, start: Spot, side: Side): void => {
  const pen = new MarkPen(sketch, start, side);
  const band = face.tags[0]?.band;
  const style = band ? `wire.${band}` : 'lead';
  const wire = face.tags[0] ? { wire: face.tags[0].wire } : {};
  const stem = stemOf(face);
  switch (face.kind) {
    case 'component':
      drawComponent(sketch, pen, face, side);
      break;
    case 'metal':
      pen.line('ground.bar', [0, 0], [lead * 0.6, 0]);
      pen.bars(lead * 0.6);
      break;
    case 'ground':
      pen.line(style, [0, 0], [lead, 0], wire);
      pen.bars(lead);
      break;
    case 'free': {
      pen.line(style, [0, 0], [lead * 1.5, 0], wire);
      const spot = pen.at(lead * 1.5 + queryRadius);
      sketch.circle('free.ring', spot.x, spot.y, queryRadius, { layer: 'grounds', ...wire });
      sketch.text('free.text', '?', spot.x, spot.y, {
        size: type.small,
        bold: true,
        layer: 'grounds',
        ...wire
      });
      break;
    }
    case 'gather':
      return;
  }
  drawLegend(sketch, pen, face, side, stem);
};
