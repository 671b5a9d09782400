// A drawing made small for the list of chassis: its lines only, on a coarse grid, in the tones of the page, so that
// a few kB hold it and it is seen by day and by night.
import type { DisplayItem, DisplayList } from '#drawing/index.ts';

export const previewTones = ['frame', 'part', 'wire', 'high'] as const;
export type PreviewTone = (typeof previewTones)[number];

export interface Preview {
  readonly width: number;
  readonly height: number;
  /** Path data by tone, moves and lines on whole numbers only. */
  readonly paths: Readonly<Partial<Record<PreviewTone, string>>>;
}

/** The longer side of a preview, steps of its grid. */
const gridSteps = 320;
/** Lines beyond this many add nothing that can be seen. */
const mostLines = 1500;

/** Class bands of wires that are drawn in the tone of danger. */
const highBands = /^wire\.(?:5k-15k|20k\+)/;

const toneOf = ({ layer, style }: DisplayItem): PreviewTone | null => {
  if (layer === 'units') return 'frame';
  if (layer === 'bodies' || layer === 'parts') return 'part';
  if (layer !== 'wires') return null;
  return highBands.test(style) ? 'high' : 'wire';
};

const pointsOf = ({ shape }: DisplayItem): readonly number[] => {
  if (shape.kind === 'line') {
    const { points, closed } = shape;
    return closed === true ? [...points, ...points.slice(0, 2)] : points;
  }
  if (shape.kind === 'text' || shape.kind === 'picture') return [];
  const { x, y } = shape;
  if (shape.kind === 'circle') {
    const { r } = shape;
    return [x - r, y, x, y - r, x + r, y, x, y + r, x - r, y];
  }
  const [right, bottom] = [x + shape.width, y + shape.height];
  return [x, y, right, y, right, bottom, x, bottom, x, y];
};

/** The drawing as a preview; null where there is nothing to see. */
export const buildPreview = ({ items, bounds }: DisplayList): Preview | null => {
  const longer = Math.max(bounds.width, bounds.height);
  if (!(longer > 0)) return null;
  const scale = gridSteps / longer;
  const pieces: Partial<Record<PreviewTone, string[]>> = {};
  const seen = new Set<string>();
  for (const item of items) {
    const tone = toneOf(item);
    if (tone === null || seen.size >= mostLines) continue;
    const steps: string[] = [];
    const points = pointsOf(item);
    for (let at = 0; at + 1 < points.length; at += 2) {
      const x = Math.round(((points[at] ?? 0) - bounds.x) * scale);
      const y = Math.round(((points[at + 1] ?? 0) - bounds.y) * scale);
      if (steps.at(-1) !== `${x} ${y}`) steps.push(`${x} ${y}`);
    }
    const path = `M${steps.join('L')}`;
    if (steps.length < 2 || seen.has(path)) continue;
    seen.add(path);
    (pieces[tone] ??= []).push(path);
  }
  if (seen.size === 0) return null;
  const paths = Object.fromEntries(
    Object.entries(pieces).map(([tone, own]) => [tone, own.join('')])
  );
  return {
    width: Math.ceil(bounds.width * scale),
    height: Math.ceil(bounds.height * scale),
    paths
  };
};

/** Whether what was kept is a preview: nothing else is drawn. */
export const isPreview = (value: unknown): value is Preview => {
  if (typeof value !== 'object' || value === null) return false;
  const { width, height, paths } = value as Partial<Record<keyof Preview, unknown>>;
  if (typeof width !== 'number' || typeof height !== 'number') return false;
  if (typeof paths !== 'object' || paths === null) return false;
  return Object.entries(paths).every(
    ([tone, path]) =>
      (previewTones as readonly string[]).includes(tone) &&
      typeof path === 'string' &&
      /^[ML0-9 -]*$/.test(path)
  );
};
