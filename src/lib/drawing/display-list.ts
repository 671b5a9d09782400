// The drawing as plain records: geometry in millimetres, style names instead of colours.
// Every writer (SVG, canvas, paper) reads this one list, so that they cannot differ.

/** What a record stands for: the writers give it as id, and a click on it picks that element. */
export interface Subject {
  readonly kind: 'wire' | 'part' | 'terminal' | 'cable' | 'unit' | 'support' | 'finding';
  readonly id: string;
}

/** Painted in this order. */
export const layers = [
  'paper',
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
