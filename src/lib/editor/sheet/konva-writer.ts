// Writes a display list to a canvas through Konva: one node an item, reused while its item is the
// same record. Two layers: the drawing, and above it a copy of whatever is lit, so that lighting a
// net repaints a handful of nodes. Pointers never reach Konva; hit-test.ts answers for them.
import Konva from 'konva/lib/Core.js';
import type { DisplayItem, DisplayList, Shape } from '#drawing/display-list.ts';
import type { ThemeName } from '#drawing/inks.ts';
import { styleOf } from '#drawing/styles.ts';
import { subjectKey, type ToolPreview } from '../tools/tool.ts';
import { paint, type PictureSource } from './paint-shape.ts';
import { traceShape } from './trace-shape.ts';
import type { SpreadMark } from './spread-marks.ts';
import { seenBox, type Box, type Size, type Viewport } from './viewport.ts';

export interface KonvaWriter {
  /** Shows a list; items that are the same records as before keep their nodes. */
  readonly apply: (list: DisplayList) => void;
  /** The colours of day or night; also paints again once the faces have come. */
  readonly setTheme: (theme: ThemeName) => void;
  readonly setViewport: (
    viewport: Viewport,
    view: Size,
    marks: ReadonlyMap<string, SpreadMark>
  ) => void;
  /** Which items stand out (and which of them have a halo); the rest steps back. Null: none is picked. */
  readonly setLit: (lit: ((item: DisplayItem) => Light) | null) => void;
  /** Which items can be in view at all; the rest is not drawn. */
  readonly setCulling: (within: ((box: Box) => ReadonlySet<DisplayItem>) | null) => void;
  /** What is in the hand, above everything; what it hides is left out of the drawing. */
  readonly setPreview: (preview: ToolPreview) => void;
  /** Paints again: a picture has come, or has gone. */
  readonly repaint: () => void;
  readonly destroy: () => void;
}

export type Light = 'no' | 'lit' | 'halo';

interface Drawn {
  item: DisplayItem;
  readonly node: Konva.Shape;
}

/** More pixels than this per CSS pixel are not seen but must be painted. */
const mostPixelRatio = 2;

/** How far the halo of a picked thing reaches on screen, both sides together. */
const haloPx = 7;

/** From a figure's foot to its middle, as a share of its size. */
const halfFigure = 0.35;

/** The shape of a finding's mark as it is painted: grown about its middle and moved aside. */
const asMarked = (shape: Shape, mark: SpreadMark | undefined): Shape => {
  if (mark === undefined) return shape;
  const { grow, shift } = mark;
  if (shape.kind === 'circle') {
    return { ...shape, x: shape.x + shift.x, y: shape.y + shift.y, r: shape.r * grow };
  }
  if (shape.kind !== 'text') return shape;
  const drop = shape.size * halfFigure;
  const y = shape.y - drop + drop * grow + shift.y;
  return { ...shape, size: shape.size * grow, x: shape.x + shift.x, y };
};

/** What is picked has this halo; the rest steps back to that strength. */
const pickedLook: Readonly<Record<ThemeName, { readonly halo: string; readonly rest: number }>> = {
  light: { halo: '#bcd8d9', rest: 0.32 },
  dark: { halo: '#315c5f', rest: 0.5 },
  print: { halo: '#d0d0d0', rest: 0.4 }
};

const paintHalo = (
  raw: CanvasRenderingContext2D,
  item: DisplayItem,
  theme: ThemeName,
  scale: number
): void => {
  if (item.shape.kind === 'text') return;
  const { width = 0.25 } = styleOf(item.style, theme);
  traceShape(raw, item.shape);
  raw.setLineDash([]);
  raw.lineJoin = 'round';
  raw.lineCap = 'round';
  raw.strokeStyle = pickedLook[theme].halo;
  raw.lineWidth = width + Math.max(1.6, haloPx / scale);
  raw.stroke();
};

/** A writer into `host`, which must be in the page. The caller destroys it. */
export const createKonvaWriter = (
  host: HTMLDivElement,
  firstTheme: ThemeName,
  pictures: PictureSource = () => null
): KonvaWriter => {
  let theme = firstTheme;
  let scale = 1;
  let lit: ((item: DisplayItem) => Light) | null = null;
  let within: ((box: Box) => ReadonlySet<DisplayItem>) | null = null;
  let drawn = new Map<string, Drawn>();
  let marks: ReadonlyMap<string, SpreadMark> = new Map();
  let view: Size = { width: 1, height: 1 };
  let viewport: Viewport = { x: 0, y: 0, scale: 1 };

  const stage = new Konva.Stage({ container: host, width: 1, height: 1, listening: false });
  const drawing = new Konva.Layer({ listening: false });
  const overlay = new Konva.Layer({ listening: false });
  // One node for all that is in the hand: it changes with every move and nothing else does.
  let preview: ToolPreview = { shapes: [] };
  const hand = new Konva.Layer({ listening: false });
  hand.add(
    new Konva.Shape({
      listening: false,
      perfectDrawEnabled: false,
      sceneFunc: (context) => {
        for (const { shape, style } of preview.shapes) {
          paint(context._context, shape, styleOf(style, theme), { theme, scale, pictures });
        }
      }
    })
  );
  stage.add(drawing, overlay, hand);
  const layersShown = [drawing, overlay, hand];

  /** Drawn in the hand, so not here. */
  const isHeld = ({ subject }: DisplayItem): boolean =>
    subject !== undefined && preview.hidden?.has(subjectKey(subject)) === true;

  const nodeFor = (record: { item: DisplayItem }): Konva.Shape =>
    new Konva.Shape({
      id: record.item.id,
      name: record.item.style,
      listening: false,
      perfectDrawEnabled: false,
      shadowForStrokeEnabled: false,
      sceneFunc: (context) => {
        const { shape, style, layer, subject } = record.item;
        const mark = layer === 'findings' ? marks.get(subject?.id ?? '') : undefined;
        const palette = { theme, scale, pictures };
        paint(context._context, asMarked(shape, mark), styleOf(style, theme), palette);
      }
    });

  const haloFor = (item: DisplayItem): Konva.Shape =>
    new Konva.Shape({
      listening: false,
      perfectDrawEnabled: false,
      sceneFunc: (context) => paintHalo(context._context, item, theme, scale)
    });

  const relight = (): void => {
    overlay.removeChildren();
    const test = lit;
    if (test !== null) {
      const items = [...drawn.values()].flatMap(({ item }) => (isHeld(item) ? [] : [item]));
      for (const item of items) if (test(item) === 'halo') overlay.add(haloFor(item));
      for (const item of items) if (test(item) !== 'no') overlay.add(nodeFor({ item }));
    }
    // The canvas itself steps back: no node has to be repainted to dim it.
    drawing.getNativeCanvasElement().style.opacity = String(
      test === null ? 1 : pickedLook[theme].rest
    );
    overlay.batchDraw();
  };

  const cull = (): void => {
    const seen = within?.(seenBox(viewport, view));
    for (const { item, node } of drawn.values()) {
      node.visible(!isHeld(item) && (seen === undefined || seen.has(item)));
    }
  };

  const watchPixelRatio = followPixelRatio((ratio) => {
    for (const layer of layersShown) layer.getCanvas().setPixelRatio(ratio);
    stage.batchDraw();
  });

  return {
    apply: (list) => {
      const next = new Map<string, Drawn>();
      let sameOrder = list.items.length === drawn.size;
      const before = drawn.keys();
      for (const item of list.items) {
        if (sameOrder && before.next().value !== item.id) sameOrder = false;
        const known = drawn.get(item.id);
        if (known === undefined) {
          const record = { item };
          next.set(item.id, Object.assign(record, { node: nodeFor(record) }));
          continue;
        }
        known.item = item;
        known.node.name(item.style);
        next.set(item.id, known);
      }
      for (const [id, { node }] of drawn) if (!next.has(id)) node.destroy();
      drawn = next;
      if (!sameOrder) {
        drawing.removeChildren();
        drawing.add(...[...next.values()].map(({ node }) => node));
      }
      relight();
      drawing.batchDraw();
    },
    setTheme: (next) => {
      theme = next;
      relight();
      drawing.batchDraw();
    },
    setViewport: (next, nextView, nextMarks) => {
      marks = nextMarks;
      if (nextView.width !== view.width || nextView.height !== view.height) {
        stage.size({ width: Math.max(1, nextView.width), height: Math.max(1, nextView.height) });
      }
      view = nextView;
      viewport = next;
      scale = next.scale;
      for (const layer of layersShown) {
        layer.position({ x: next.x, y: next.y });
        layer.scale({ x: scale, y: scale });
      }
      cull();
      stage.batchDraw();
    },
    setLit: (next) => {
      lit = next;
      relight();
    },
    setPreview: (next) => {
      const isSame = sameKeys(preview.hidden, next.hidden);
      preview = next;
      if (!isSame) {
        cull();
        drawing.batchDraw();
        relight();
      }
      hand.batchDraw();
    },
    setCulling: (next) => {
      within = next;
      cull();
    },
    repaint: () => {
      drawing.batchDraw();
      hand.batchDraw();
    },
    destroy: () => {
      watchPixelRatio();
      stage.destroy();
    }
  };
};

const sameKeys = (
  a: ReadonlySet<string> | undefined,
  b: ReadonlySet<string> | undefined
): boolean => {
  if (a === b) return true;
  if ((a?.size ?? 0) !== (b?.size ?? 0)) return false;
  return [...(a ?? [])].every((key) => b?.has(key) === true);
};

/** Calls back with the pixel ratio now and whenever it changes; returns what stops it. */
const followPixelRatio = (changed: (ratio: number) => void): (() => void) => {
  let query: MediaQueryList | null = null;
  const update = (): void => {
    query?.removeEventListener('change', update);
    changed(Math.min(mostPixelRatio, window.devicePixelRatio));
    query = window.matchMedia(`(resolution: ${window.devicePixelRatio}dppx)`);
    query.addEventListener('change', update);
  };
  update();
  return () => query?.removeEventListener('change', update);
};
