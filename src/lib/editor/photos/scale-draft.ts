// Setting a photo's scale, before it is set: handles on the photo as it was taken, and what is typed
// beside them. A plain value, and functions that make the next.
import type { Photo, PhotoScale, PixelPoint, Unit } from '#document/index.ts';
import { rectangleToMm, SumError, twoPointsToMm } from '#physics/index.ts';
import { parseQuantity } from '#quantity/index.ts';
import { lengthText } from '../core/words.ts';
import type { LengthUnit } from '../core/preferences.svelte.ts';

export type ScaleWay = PhotoScale['by'];
type Corners = readonly [PixelPoint, PixelPoint, PixelPoint, PixelPoint];
type Pair = readonly [PixelPoint, PixelPoint];

export interface ScaleDraft {
  readonly by: ScaleWay;
  readonly corners: Corners;
  readonly pair: Pair;
  /** As typed. */
  readonly width: string;
  readonly height: string;
  readonly distance: string;
  readonly isEdge: boolean;
}

export const cornerNames = ['upper left', 'upper right', 'lower right', 'lower left'] as const;
export const pairNames = ['first', 'second'] as const;

/** How far in from the picture's edge the handles wait, as a share of its sides. */
const inset = 0.15;

/** What a photo's dialog begins with: the scale that it has, else handles inside the picture's edge. */
export const startScale = (photo: Photo, unit: Unit | null, lengthUnit: LengthUnit): ScaleDraft => {
  const { scale, picture } = photo;
  const at = (u: number, v: number): PixelPoint => ({
    x: Math.round(picture.width * u),
    y: Math.round(picture.height * v)
  });
  const [near, far] = [inset, 1 - inset];
  const text = (mm: number | undefined): string =>
    mm === undefined ? '' : lengthUnit === 'mm' ? lengthText(mm, 'mm') : inchText(mm);
  return {
    by: scale?.by ?? 'rectangle',
    corners:
      scale?.by === 'rectangle'
        ? scale.corners
        : [at(near, near), at(far, near), at(far, far), at(near, far)],
    pair: scale?.by === 'two points' ? [scale.a, scale.b] : [at(near, 0.5), at(far, 0.5)],
    width: text(scale?.by === 'rectangle' ? scale.widthMm : unit?.size?.width),
    height: text(scale?.by === 'rectangle' ? scale.heightMm : unit?.size?.height),
    distance: text(scale?.by === 'two points' ? scale.mm : undefined),
    isEdge: scale === undefined
  };
};

/** Exact, so that opening and saving changes nothing. */
const inchText = (mm: number): string => `${Math.round((mm / 25.4) * 1e4) / 1e4} in`;

/** The handles that are set. */
export const pointsOf = ({ by, corners, pair }: ScaleDraft): readonly PixelPoint[] =>
  by === 'rectangle' ? corners : pair;

export const handleNames = ({ by }: ScaleDraft): readonly string[] =>
  by === 'rectangle' ? cornerNames : pairNames;

/** The draft with one handle elsewhere; a handle never leaves the picture. */
export const movePoint = (
  draft: ScaleDraft,
  index: number,
  { x, y }: PixelPoint,
  { width, height }: Photo['picture']
): ScaleDraft => {
  const to = {
    x: Math.round(Math.min(width, Math.max(0, x)) * 10) / 10,
    y: Math.round(Math.min(height, Math.max(0, y)) * 10) / 10
  };
  if (draft.by === 'rectangle') {
    const [a, b, c, d] = draft.corners.map((point, place) => (place === index ? to : point));
    return a && b && c && d ? { ...draft, corners: [a, b, c, d] } : draft;
  }
  const [a, b] = draft.pair.map((point, place) => (place === index ? to : point));
  return a && b ? { ...draft, pair: [a, b] } : draft;
};

const steps: Readonly<Record<string, PixelPoint>> = {
  ArrowLeft: { x: -1, y: 0 },
  ArrowRight: { x: 1, y: 0 },
  ArrowUp: { x: 0, y: -1 },
  ArrowDown: { x: 0, y: 1 }
};

/** A handle moved by an arrow key: one pixel of the photo, ten with Shift. Null for another key. */
export const nudgePoint = (
  draft: ScaleDraft,
  index: number,
  { key, shiftKey }: { readonly key: string; readonly shiftKey: boolean },
  picture: Photo['picture']
): ScaleDraft | null => {
  const step = steps[key];
  const point = pointsOf(draft)[index];
  if (step === undefined || point === undefined) return null;
  const by = shiftKey ? 10 : 1;
  return movePoint(draft, index, { x: point.x + step.x * by, y: point.y + step.y * by }, picture);
};

export type ScaleReading =
  | { readonly ok: true; readonly scale: PhotoScale }
  /** `isEmpty`: nothing is wrong, something is still to be typed. */
  | { readonly ok: false; readonly problem: string; readonly isEmpty: boolean };

const longestMm = 10_000;

const readMm = (
  text: string,
  name: string,
  lengthUnit: LengthUnit
): number | Extract<ScaleReading, { ok: false }> => {
  if (text.trim() === '') {
    return { ok: false, isEmpty: true, problem: `Write ${name}, in mm or inches.` };
  }
  const read = parseQuantity(text, 'length', { defaultUnit: lengthUnit });
  if (!read.ok) return { ok: false, isEmpty: false, problem: `${read.problem}.` };
  if (read.value > 0 && read.value <= longestMm) return read.value;
  return {
    ok: false,
    isEmpty: false,
    problem: `${name} is ${read.understood}: it must be more than 0 and at most 10 m.`
  };
};

/** The scale that a draft gives, or what is still missing or wrong. */
export const readScale = (draft: ScaleDraft, lengthUnit: LengthUnit): ScaleReading => {
  try {
    if (draft.by === 'two points') {
      const mm = readMm(draft.distance, 'the distance between the two places', lengthUnit);
      if (typeof mm !== 'number') return mm;
      const [a, b] = draft.pair;
      twoPointsToMm(a, b, mm);
      return { ok: true, scale: { by: 'two points', a, b, mm } };
    }
    const widthMm = readMm(draft.width, 'the width of the rectangle', lengthUnit);
    if (typeof widthMm !== 'number') return widthMm;
    const heightMm = readMm(draft.height, 'the height of the rectangle', lengthUnit);
    if (typeof heightMm !== 'number') return heightMm;
    rectangleToMm(draft.corners, widthMm, heightMm);
    const [p, q, r, s] = draft.corners;
    return { ok: true, scale: { by: 'rectangle', corners: [p, q, r, s], widthMm, heightMm } };
  } catch (error) {
    if (error instanceof SumError) return { ok: false, isEmpty: false, problem: error.wayOut };
    throw error;
  }
};
