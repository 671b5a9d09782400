// A figure is how one part is drawn: shapes in its own millimetres from its top left corner, and
// the ports at which lines leave its box. Figures know nothing of where the part will stand.
import type { Id } from '#document/index.ts';
import type { Layer, Shape } from '../display-list.ts';
import type { Side, Spot } from '../presentation/sides.ts';

export interface FigureItem {
  /** Unique in the figure. */
  readonly key: string;
  readonly layer: Layer;
  readonly style: string;
  readonly shape: Shape;
  readonly terminal?: Id;
  readonly wire?: Id;
  /** A component that is drawn within the figure of another part. */
  readonly component?: Id;
}

export interface Port {
  /** The end that leaves here. */
  readonly end: string;
  readonly x: number;
  readonly y: number;
  readonly side: Side;
  /** From the terminal to the port, inside the box; the last spot is the port. */
  readonly path: readonly Spot[];
}

/** An upright rectangle. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface Figure {
  readonly width: number;
  readonly height: number;
  readonly ports: readonly Port[];
  readonly items: readonly FigureItem[];
}

export type Anchor = 'start' | 'middle' | 'end';

export interface TextOptions {
  readonly size: number;
  readonly anchor?: Anchor;
  readonly face?: 'sans' | 'mono';
  readonly bold?: boolean;
  readonly turn?: number;
}

interface Marks {
  readonly layer?: Layer;
  readonly terminal?: Id;
  readonly wire?: Id;
  readonly component?: Id;
}

/** Collects the shapes of a figure as they are drawn. */
export class Sketch {
  readonly items: FigureItem[] = [];

  private add(style: string, shape: Shape, { layer = 'parts', ...more }: Marks): void {
    this.items.push({ key: String(this.items.length), layer, style, shape, ...more });
  }

  line(
    style: string,
    points: readonly number[],
    more: Marks & { closed?: boolean; round?: number } = {}
  ): void {
    const { closed, round, ...marks } = more;
    const shape = {
      kind: 'line' as const,
      points,
      ...(closed === undefined ? {} : { closed }),
      ...(round === undefined ? {} : { round })
    };
    this.add(style, shape, marks);
  }

  circle(style: string, x: number, y: number, r: number, marks: Marks = {}): void {
    this.add(style, { kind: 'circle', x, y, r }, marks);
  }

  box(style: string, { x, y, width, height }: Box, round = 0, marks: Marks = {}): void {
    this.add(style, { kind: 'box', x, y, width, height, ...(round ? { round } : {}) }, marks);
  }

  /** `y` is the middle of the small letters' height, which looks centred, not the baseline. */
  text(style: string, text: string, x: number, y: number, options: TextOptions & Marks): void {
    const { size, anchor = 'middle', face = 'sans', bold, turn, ...marks } = options;
    if (text === '') return;
    const drop = size * 0.35;
    const radians = ((turn ?? 0) * Math.PI) / 180;
    this.add(
      style,
      {
        kind: 'text',
        x: x - drop * Math.sin(radians),
        y: y + drop * Math.cos(radians),
        text,
        size,
        anchor,
        face,
        ...(bold ? { bold } : {}),
        ...(turn ? { turn } : {})
      },
      marks
    );
  }
}

/** Points of an arc, for a line: degrees clockwise from the right, as the page has y down. */
export const arcPoints = (
  x: number,
  y: number,
  r: number,
  fromDeg: number,
  toDeg: number,
  stepDeg = 15
): number[] => {
  const steps = Math.max(2, Math.ceil(Math.abs(toDeg - fromDeg) / stepDeg));
  return Array.from({ length: steps + 1 }, (_, index) => {
    const angle = ((fromDeg + ((toDeg - fromDeg) * index) / steps) * Math.PI) / 180;
    return [x + r * Math.cos(angle), y + r * Math.sin(angle)];
  }).flat();
};
