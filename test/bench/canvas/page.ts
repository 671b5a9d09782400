// Runs in Chromium: what the canvas writer costs, against a full redraw of itself and against a bare
// canvas that strokes the same lines. Every time ends with a pixel read back, so that nothing is put off.
import Konva from 'konva/lib/Core.js';
import type { DisplayItem, DisplayList } from '#drawing/display-list.ts';
import { drawPictorial, layPictorial, styleOf } from '#drawing/index.ts';
import { createKonvaWriter } from '#editor/sheet/konva-writer.ts';
import { pickAndMove } from '#editor/tools/pick-and-move.ts';
import { buildScene } from '#editor/tools/scene.ts';
import type { ToolWorld } from '#editor/tools/tool.ts';
import { fitBox, zoomAt, panBy, type Viewport } from '#editor/sheet/viewport.ts';
import { buildStudy } from '#study/index.ts';
import { buildHitIndex } from '#editor/sheet/hit-test.ts';
import { seeded } from '../../helpers/generate-chassis.ts';
import { chassis } from '../../helpers/chassis.ts';

const size = { width: 1200, height: 800 };
const strips = 60;
const lugs = 40;

/** A thousand wires between strips that stand in rows; the first strip has exactly twenty of them. */
const buildWired = () => {
  const chance = seeded(20_531);
  const build = chassis().unit('Main');
  const spot = (n: number): [number, number] => [(n % 3) * 420 + 210, Math.floor(n / 3) * 40 + 30];
  for (let n = 0; n < strips; n += 1) build.strip(`TS${n + 1}`, lugs, { at: spot(n) });
  const lug = (first: number): string => {
    const strip = first + Math.floor(chance() * (strips - first));
    return `TS${strip + 1}-${Math.floor(chance() * lugs) + 1}`;
  };
  for (let n = 0; n < 20; n += 1) build.wire(n + 1, `TS1-${n + 1}`, lug(1));
  for (let n = 20; n < 1000; n += 1) build.wire(n + 1, lug(1), lug(1));
  return build.build();
};

const median = (values: number[]): number => values.sort((a, b) => a - b)[values.length >> 1] ?? 0;

/** Median milliseconds of some work, its pixels included. */
const time = (work: (run: number) => CanvasRenderingContext2D, runs = 15): number => {
  const times: number[] = [];
  for (let run = 0; run < runs + 3; run += 1) {
    const before = performance.now();
    work(run).getImageData(0, 0, 1, 1);
    if (run >= 3) times.push(performance.now() - before);
  }
  return median(times);
};

const contextOf = (layer: Konva.Layer): CanvasRenderingContext2D => layer.getContext()._context;

const makeHost = (): HTMLDivElement => {
  const host = document.createElement('div');
  document.body.replaceChildren(host);
  return host;
};

/** Strokes the lines of a list, and does nothing else. */
const strokeBare = (
  context: CanvasRenderingContext2D,
  items: readonly DisplayItem[],
  { x, y, scale }: Viewport
): CanvasRenderingContext2D => {
  context.setTransform(1, 0, 0, 1, 0, 0);
  context.clearRect(0, 0, size.width, size.height);
  context.setTransform(scale, 0, 0, scale, x, y);
  context.lineJoin = 'round';
  for (const { shape, style } of items) {
    if (shape.kind !== 'line') continue;
    const { stroke = '#000', width = 0.25, dash = [], cap = 'butt' } = styleOf(style, 'light');
    context.beginPath();
    context.moveTo(shape.points[0] ?? 0, shape.points[1] ?? 0);
    for (let n = 2; n < shape.points.length; n += 2) {
      context.lineTo(shape.points[n] ?? 0, shape.points[n + 1] ?? 0);
    }
    context.strokeStyle = stroke;
    context.lineWidth = Math.max(width, 0.6 / scale);
    context.lineCap = cap;
    context.setLineDash([...dash]);
    context.stroke();
  }
  return context;
};

export interface CanvasTimes {
  readonly wires: number;
  readonly items: number;
  readonly heldWires: number;
  readonly redrawMs: number;
  readonly dragMs: number;
  readonly panMs: number;
  readonly barePanMs: number;
  readonly zoomMs: number;
  readonly bareZoomMs: number;
}

/** The drawing with all that is on it, and dragging a part with twenty wires over it. */
const timeDrag = (): Pick<CanvasTimes, 'redrawMs' | 'dragMs' | 'heldWires' | 'items'> & {
  readonly list: DisplayList;
} => {
  const study = buildStudy(buildWired());
  const geometry = layPictorial(study, 'below');
  const list = drawPictorial(study, geometry, { findings: [], withFoot: false });
  const writer = createKonvaWriter(makeHost(), 'light');
  writer.apply(list);
  const viewport = fitBox(list.bounds, size);
  writer.setViewport(viewport, size, new Map());
  const stage = Konva.stages.at(-1);
  const [drawing, , hand] = stage?.getLayers() ?? [];
  if (!stage || !drawing || !hand) throw new Error('there is nothing to paint on');
  const redrawMs = time(() => {
    drawing.draw();
    return contextOf(drawing);
  });
  const world: ToolWorld = {
    study,
    scene: buildScene(study, geometry, 'below'),
    pick: null,
    lengthUnit: 'mm',
    pxPerMm: viewport.scale,
    makeId: (kind) => `${kind.charAt(0)}0`
  };
  const [strip] = study.index.parts;
  const at = strip ? geometry.places.parts.get(strip.id)?.pose.at : undefined;
  if (!strip || !at) throw new Error('the strip is not on the sheet');
  const plain = { shift: false, alt: false, ctrl: false, touch: false, reachMm: 1 };
  const subject = { kind: 'part', id: strip.id } as const;
  let { state } = pickAndMove.step(
    pickAndMove.resting,
    { kind: 'grab', at, subject, ...plain },
    world
  );
  const move = (run: number): CanvasRenderingContext2D => {
    const to = { x: at.x + 20 + run, y: at.y + 5 + run / 2 };
    ({ state } = pickAndMove.step(state, { kind: 'drag', at: to, subject: null, ...plain }, world));
    writer.setPreview(pickAndMove.show(state, world));
    hand.draw();
    return contextOf(hand);
  };
  const heldWires = [...(pickAndMove.show(state, world).hidden ?? [])].filter((key) =>
    key.startsWith('wire ')
  ).length;
  const dragMs = time(move, 30);
  writer.destroy();
  return { redrawMs, dragMs, heldWires, items: list.items.length, list };
};

const timeViews = (
  list: DisplayList
): Omit<CanvasTimes, 'redrawMs' | 'dragMs' | 'heldWires' | 'items'> => {
  const items = list.items.filter(({ id }) => /^wire-[^-]+$/.test(id));
  const writer = createKonvaWriter(makeHost(), 'light');
  const lines = { ...list, items };
  writer.apply(lines);
  writer.setCulling(buildHitIndex(items).within);
  const bareCanvas = document.createElement('canvas');
  Object.assign(bareCanvas, size);
  const bare = bareCanvas.getContext('2d');
  const base = fitBox(list.bounds, size);
  const [drawing] = Konva.stages.at(-1)?.getLayers() ?? [];
  if (!bare || !drawing) throw new Error('there is nothing to paint on');
  const writeAt = (viewport: Viewport): CanvasRenderingContext2D => {
    writer.setViewport(viewport, size, new Map());
    drawing.draw();
    return contextOf(drawing);
  };
  const panned = (run: number): Viewport => panBy(base, run, run / 2);
  const zoomed = (run: number): Viewport => zoomAt(base, 1 + run / 40, { x: 600, y: 400 });
  const panMs = time((run) => writeAt(panned(run)));
  const barePanMs = time((run) => strokeBare(bare, items, panned(run)));
  const zoomMs = time((run) => writeAt(zoomed(run)));
  const bareZoomMs = time((run) => strokeBare(bare, items, zoomed(run)));
  writer.destroy();
  return { wires: items.length, panMs, barePanMs, zoomMs, bareZoomMs };
};

declare global {
  interface Window {
    timeCanvas: () => CanvasTimes;
  }
}

window.timeCanvas = () => {
  const { list, ...drag } = timeDrag();
  return { ...drag, ...timeViews(list) };
};
