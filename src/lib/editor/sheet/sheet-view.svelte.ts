// How the sheet stands: its viewport, its size, what the pointer rests on. Moves that the person
// did not make (to show a pick) never change the zoom unless they must.
import type { DisplayItem, DisplayList, Subject } from '#drawing/display-list.ts';
import type { Lit, Pick } from '../core/pick.ts';
import { buildHitIndex, type HitIndex } from './hit-test.ts';
import type { Light } from './konva-writer.ts';
import { findMarkAt, marksOf, spreadMarks } from './spread-marks.ts';
import {
  bringIntoView,
  fitBox,
  keepInSight,
  panBy,
  toDrawing,
  toScreen,
  zoomAt,
  type Box,
  type Place,
  type Size,
  type Viewport
} from './viewport.ts';

interface Host {
  readonly pick: Pick | null;
  readonly lit: Lit | null;
  /** Ids of the findings that concern the pick. */
  readonly litFindings: ReadonlySet<string>;
  readonly diagram: { readonly list: DisplayList | null; readonly which: string };
  readonly tools: { readonly isOpen: boolean };
}

export interface Hover {
  readonly title: string;
  readonly x: number;
  readonly y: number;
}

/** How far from a thing a pointer still picks it, in pixels. */
export const reachPx = { mouse: 6, touch: 16 } as const;

/** Pixels per millimetre at 100 %: CSS counts 96 to the inch. */
const lifeSize = 96 / 25.4;
/** What is looked at closely is shown between these scales, pixels per millimetre. */
const closeScale = { least: 3.6, most: 6 } as const;

/** How wide the strip of tools is, px. */
const railPx = 76;
/** Pixels per millimetre that show a socket and its neighbours. */
const nearScale = 2.6;

const nothing: DisplayList = { items: [], bounds: { x: 0, y: 0, width: 100, height: 100 } };

export class SheetView {
  viewport = $state.raw<Viewport>({ x: 0, y: 0, scale: 1 });
  size = $state.raw<Size>({ width: 0, height: 0 });
  hover = $state.raw<Hover | null>(null);
  /** Puts the keyboard on the canvas; set while there is one. */
  focus: () => void = () => undefined;
  /** The canvas shows the list that is there. */
  isDrawn = $state(false);
  /** Until a person moves the paper, the whole drawing is kept in view. */
  #isFitted = true;
  #covered: Box | null = null;
  /** What to go near as soon as the sheet is on screen. */
  #due: Pick | null = null;
  readonly #host: Host;

  readonly list = $derived.by(() => this.#host.diagram.list ?? nothing);
  readonly hits = $derived.by((): HitIndex => buildHitIndex(this.list.items));
  readonly #allMarks = $derived.by(() => marksOf(this.list.items));
  readonly #scale = $derived.by(() => this.viewport.scale);
  /** The marks of findings, as large and as far apart as they are painted. */
  readonly marks = $derived.by(() => spreadMarks(this.#allMarks, this.#scale));
  readonly caption = $derived.by(
    () =>
      `${this.#host.diagram.which}, zoom ${Math.round((this.viewport.scale / lifeSize) * 100)} %`
  );

  constructor(host: Host) {
    this.#host = host;
  }

  setSize(size: Size): void {
    if (size.width === this.size.width && size.height === this.size.height) return;
    this.size = size;
    if (this.#due !== null && size.width > 0) this.lookNear(this.#due);
    else if (this.#isFitted) this.fit();
  }

  /** Shows the whole drawing, and keeps showing it whole until the paper is moved. */
  fit(): void {
    this.#isFitted = true;
    if (this.size.width === 0) return;
    const { width, height } = this.size;
    // The tools stand at the left edge.
    const left = this.#host.tools.isOpen && width > 500 ? railPx : 0;
    const free = { width: width - left, height };
    const fitted = fitBox(roomFor(this.list.bounds), free, Math.min(20, width / 30));
    this.viewport = panBy(fitted, left, 0);
  }

  /** Keeps the paper where it lies from now on: a hand is at work on it. */
  hold(): void {
    this.#isFitted = false;
  }

  /** A new drawing: shown whole, or where the paper lay. */
  newDrawing(): void {
    if (this.#isFitted) this.fit();
    else this.#set(this.viewport);
  }

  pan(dx: number, dy: number): void {
    this.#isFitted = false;
    this.#set(panBy(this.viewport, dx, dy));
  }

  zoomBy(factor: number, at: Place = { x: this.size.width / 2, y: this.size.height / 2 }): void {
    this.#isFitted = false;
    this.#set(zoomAt(this.viewport, factor, at));
  }

  /** The drawn thing under a place on screen, or null. */
  itemAt(at: Place, touch: boolean): DisplayItem | null {
    const reach = (touch ? reachPx.touch : reachPx.mouse) / this.viewport.scale;
    const place = toDrawing(this.viewport, at);
    return findMarkAt(this.marks, place, reach / 2) ?? this.hits.find(place, reach);
  }

  /** A place on screen as tools see it: mm of the drawing, how near is near, what lies there. */
  pointerAt(
    at: Place,
    touch: boolean
  ): { readonly at: Place; readonly reachMm: number; readonly subject: Subject | null } {
    return {
      at: toDrawing(this.viewport, at),
      reachMm: (touch ? reachPx.touch : reachPx.mouse) / this.viewport.scale,
      subject: this.itemAt(at, touch)?.subject ?? null
    };
  }

  /** What the tag hides of the sheet, screen px; null where it hides nothing. */
  setCovered(covered: Box | null): void {
    this.#covered = covered;
  }

  /** Brings the picked thing into view if it is not, or if it lies under the tag. */
  show(pick: Pick): void {
    const box = this.hits.boxOf(pick);
    if (box === null || this.size.width === 0) return;
    const covered = this.#covered;
    const isHidden = covered !== null && overlaps(boxOnScreen(this.viewport, box), covered);
    const height = isHidden ? this.#freeHeight : this.size.height;
    const next = bringIntoView(this.viewport, box, { ...this.size, height });
    if (next !== this.viewport && !isSame(next, this.viewport)) this.#isFitted = false;
    this.viewport = next;
  }

  /** Goes close enough to what is picked to read it: all of it where that fits, else its number. */
  lookCloser(): void {
    const { pick } = this.#host;
    const box = pick === null ? null : this.hits.boxOf(pick);
    if (pick === null || box === null) return;
    this.#isFitted = false;
    const room = { ...this.size, height: this.#freeHeight };
    const whole = fitBox(box, room, 48);
    const scale = Math.min(closeScale.most, Math.max(closeScale.least, whole.scale));
    const target = whole.scale < closeScale.least ? (this.#numberBoxes(pick)[0] ?? box) : box;
    this.viewport = {
      scale,
      x: room.width / 2 - (target.x + target.width / 2) * scale,
      y: room.height / 2 - (target.y + target.height / 2) * scale
    };
  }

  /** Goes where a thing and what is around it fill the sheet; where no sheet is on screen, as soon as
   *  one is. */
  lookNear(pick: Pick): void {
    this.#due = this.size.width === 0 ? pick : null;
    const box = this.size.width === 0 ? null : this.hits.boxOf(pick);
    if (box === null) return;
    this.#isFitted = false;
    this.viewport = {
      scale: nearScale,
      x: this.size.width / 2 - (box.x + box.width / 2) * nearScale,
      y: this.size.height / 2 - (box.y + box.height / 2) * nearScale
    };
  }

  /** Where on screen the tag's string is tied to a pick, or null where nothing is drawn of it. */
  anchorOf(pick: Pick): Place | null {
    const boxes = this.#numberBoxes(pick);
    const box =
      boxes.find((candidate) => this.#isSeen(candidate)) ?? boxes[0] ?? this.hits.boxOf(pick);
    if (box === null) return null;
    return toScreen(this.viewport, { x: box.x + box.width / 2, y: box.y + box.height });
  }

  /** Whether an item stands out while something is picked. */
  lightOf(item: DisplayItem): Light {
    const { pick, lit } = this.#host;
    const { subject } = item;
    if (pick === null || lit === null || subject === undefined) return 'no';
    if (subject.kind === pick.kind && subject.id === pick.id) {
      return item.layer === 'numbers' ? 'lit' : 'halo';
    }
    if (subject.kind === 'finding') return this.#host.litFindings.has(subject.id) ? 'lit' : 'no';
    const set =
      subject.kind === 'wire'
        ? lit.wires
        : subject.kind === 'part'
          ? lit.parts
          : subject.kind === 'terminal'
            ? lit.terminals
            : null;
    return set?.has(subject.id) === true ? 'lit' : 'no';
  }

  /** The boxes that carry the number of a picked wire. */
  #numberBoxes(pick: Pick): Box[] {
    return this.list.items.flatMap(({ subject, layer, shape }) =>
      layer === 'numbers' &&
      shape.kind === 'box' &&
      subject?.kind === pick.kind &&
      subject.id === pick.id
        ? [shape]
        : []
    );
  }

  #isSeen(box: Box): boolean {
    const screen = boxOnScreen(this.viewport, box);
    const isInside = overlaps(screen, { x: 0, y: 0, ...this.size });
    return isInside && (this.#covered === null || !overlaps(screen, this.#covered));
  }

  /** The height above the tag. */
  get #freeHeight(): number {
    return Math.max(160, Math.min(this.size.height, this.#covered?.y ?? this.size.height));
  }

  #set(viewport: Viewport): void {
    this.viewport = keepInSight(viewport, this.list.bounds, this.size);
  }
}

/** A sheet with nothing on it is smaller than this; so much of it is shown, mm. */
const blankMm = 50;
const leastShown = { width: 240, height: 160 } as const;

const roomFor = (bounds: Box): Box => {
  const { x, y, width, height } = bounds;
  if (width > blankMm || height > blankMm) return bounds;
  const { width: wide, height: high } = leastShown;
  return { x: x - (wide - width) / 2, y: y - (high - height) / 2, width: wide, height: high };
};

const boxOnScreen = (viewport: Viewport, box: Box): Box => ({
  ...toScreen(viewport, box),
  width: box.width * viewport.scale,
  height: box.height * viewport.scale
});

const overlaps = (a: Box, b: Box): boolean =>
  a.x < b.x + b.width && b.x < a.x + a.width && a.y < b.y + b.height && b.y < a.y + a.height;

const isSame = (a: Viewport, b: Viewport): boolean =>
  a.x === b.x && a.y === b.y && a.scale === b.scale;
