// Bodies of parts with two leads, lying along x: drawn the same whether the part stands alone,
// hangs between two terminals or bypasses a pin to the metal.
import { arcPoints, type Sketch } from './figure.ts';
import { twoLead } from './sizes.ts';

/** Draws along x or, upright, along y. */
interface Way {
  readonly x: number;
  readonly y: number;
  readonly upright: boolean;
  /** The second terminal comes first. */
  readonly reversed?: boolean;
  readonly body?: Body;
}

/** Length along the leads, and half the height across them, mm. */
interface Body {
  readonly body: number;
  readonly half: number;
}

/** For a component that is drawn as a mark beside its terminal. */
export const smallBody: Body = { body: 5, half: 0.9 };

type Marks = Parameters<Sketch['circle']>[4];

const turned = ({ x, y, upright, reversed = false }: Way, points: readonly number[]): number[] => {
  const out: number[] = [];
  for (let index = 0; index + 1 < points.length; index += 2) {
    const along = (points[index] ?? 0) * (reversed ? -1 : 1);
    const across = points[index + 1] ?? 0;
    out.push(x + (upright ? across : along), y + (upright ? along : across));
  }
  return out;
};

/** Half the length of a body along its leads, mm. */
export const halfLength = (kind: string, { body }: Body = twoLead): number =>
  kind === 'capacitor' ? 0.55 : body / 2;

const zigzag = (half: number, high: number): number[] => {
  const teeth = 6;
  const step = (2 * half) / teeth;
  const points = [-half, 0];
  for (let tooth = 0; tooth < teeth; tooth++) {
    points.push(-half + (tooth + 0.5) * step, tooth % 2 === 0 ? -high : high);
  }
  return [...points, half, 0];
};

/** Draws the body with its middle at (x, y) and returns nothing; leads end at `halfLength`. */
export const drawTwoLeadBody = (
  sketch: Sketch,
  kind: string,
  way: Way,
  marks: Marks = {}
): void => {
  const size = way.body ?? twoLead;
  const half = halfLength(kind, size);
  const high = size.half;
  const line = (points: readonly number[], style = 'part.line') =>
    sketch.line(style, turned(way, points), marks);
  const body = () => {
    const corners = [-half, -high, half, -high, half, high, -half, high];
    sketch.line('part.body', turned(way, corners), { ...marks, closed: true });
  };
  switch (kind) {
    case 'resistor':
      line(zigzag(half, high * 0.95));
      return;
    case 'capacitor':
      line([-half, -high * 1.25, -half, high * 1.25], 'part.plate');
      line([half, -high * 1.25, half, high * 1.25], 'part.plate');
      return;
    case 'coil':
      for (let turn = 0; turn < 4; turn++) {
        const r = half / 4;
        line(arcPoints(-half + r + turn * 2 * r, 0, r, 180, 360));
      }
      return;
    case 'fuse':
      body();
      line([-half, 0, half, 0], 'part.fine');
      return;
    case 'rectifier':
      sketch.line('part.solid', turned(way, [-high, -high, high, 0, -high, high]), {
        ...marks,
        closed: true
      });
      line([high, -high, high, high], 'part.plate');
      line([-half, 0, -high, 0]);
      line([high, 0, half, 0]);
      return;
    case 'lamp': {
      sketch.circle('part.body', way.x, way.y, high * 1.3, marks);
      const d = high * 1.3 * Math.SQRT1_2;
      line([-d, -d, d, d], 'part.fine');
      line([-d, d, d, -d], 'part.fine');
      line([-half, 0, -high * 1.3, 0]);
      line([high * 1.3, 0, half, 0]);
      return;
    }
    case 'crystal':
      sketch.line(
        'part.body',
        turned(way, [
          -half * 0.25,
          -high,
          half * 0.25,
          -high,
          half * 0.25,
          high,
          -half * 0.25,
          high
        ]),
        {
          ...marks,
          closed: true
        }
      );
      line([-half * 0.45, -high, -half * 0.45, high], 'part.plate');
      line([half * 0.45, -high, half * 0.45, high], 'part.plate');
      line([-half, 0, -half * 0.45, 0]);
      line([half * 0.45, 0, half, 0]);
      return;
    case 'switch':
      line([-half, 0, -half + 1.2, 0]);
      line([-half + 1.2, 0, half - 1.6, -high * 1.4]);
      line([half - 1.2, 0, half, 0]);
      sketch.circle('part.dot', ...pair(turned(way, [-half + 1.2, 0])), 0.45, marks);
      sketch.circle('part.dot', ...pair(turned(way, [half - 1.2, 0])), 0.45, marks);
      return;
    default:
      body();
  }
};

const pair = (points: readonly number[]): [number, number] => [points[0] ?? 0, points[1] ?? 0];
