// The drawing as plain records: geometry in millimetres, style names instead of colours.
// Every writer (SVG, canvas, paper) reads this one list, so that they cannot differ.

import type { Straightening } from './photos/straighten.ts';

/** What a record stands for: the writers give it as id, and a click on it picks that element. */
export interface Subject {
  readonly kind: 'wire' | 'part' | 'terminal' | 'cable' | 'unit' | 'support' | 'finding' | 'photo';
  readonly id: string;
}

/** Painted in this order. */
export const layers = [
  'paper',
  'photos',
  'units',
  'supports',
  // Parts that wires run over, as seen from below.
  'bodies',
  'wires',
  'parts',
  'terminals',
  'grounds',
  'numbers',
  'findings',
  'frame'
] as const;
export type Layer = (typeof layers)[number];

/** From a thing's own millimetres to the sheet's: x' = a x + c y + e, y' = b x + d y + f. */
export type Affine = readonly [a: number, b: number, c: number, d: number, e: number, f: number];

/** A picture that is kept beside the document, as it is or straightened. */
export interface PictureAsset {
  /** The same for the same pixels. */
  readonly key: string;
  /** Of the picture as it is kept. */
  readonly hash: string;
  /** How the pixels that are shown come of those that are kept; null where they are the same. */
  readonly straightening: Straightening | null;
}

export type Shape =
  | {
      readonly kind: 'line';
      /** x, y pairs. */
      readonly points: readonly number[];
      readonly closed?: boolean;
      /** Radius at the corners. */
      readonly round?: number;
    }
  | { readonly kind: 'circle'; readonly x: number; readonly y: number; readonly r: number }
  | {
      readonly kind: 'box';
      readonly x: number;
      readonly y: number;
      readonly width: number;
      readonly height: number;
      readonly round?: number;
    }
  | {
      readonly kind: 'text';
      readonly x: number;
      /** Of the baseline. */
      readonly y: number;
      readonly text: string;
      /** Height of the face, mm. */
      readonly size: number;
      readonly anchor: 'start' | 'middle' | 'end';
      readonly face: 'sans' | 'mono';
      readonly bold?: boolean;
      /** Degrees clockwise about (x, y). */
      readonly turn?: number;
    }
  | {
      readonly kind: 'picture';
      readonly asset: PictureAsset;
      /** From the picture's own millimetres, counted from its upper left corner. */
      readonly matrix: Affine;
      readonly width: number;
      readonly height: number;
      /** 0 is not to be seen, 1 covers. */
      readonly opacity: number;
      /** Written into the frame that stands for a picture that is not there. */
      readonly name: string;
      /** Nothing is shown outside of this polygon: x, y pairs, the picture's own millimetres. */
      readonly clip?: readonly number[];
    };

export interface DisplayItem {
  /** Stable: the same for the same element from one drawing to the next. */
  readonly id: string;
  readonly layer: Layer;
  /** Within the layer, smaller first. */
  readonly order: number;
  readonly shape: Shape;
  /** A name from `styles.ts`, such as `wire.600` or `part.body`. */
  readonly style: string;
  readonly subject?: Subject;
  /** For a pointer that rests on it, and for those who cannot see: "wire 60, V10-2 to V11 anode, needs 25 kV". */
  readonly title?: string;
}

export interface DisplayList {
  readonly items: readonly DisplayItem[];
  /** The box that holds every item, mm. */
  readonly bounds: {
    readonly x: number;
    readonly y: number;
    readonly width: number;
    readonly height: number;
  };
}
