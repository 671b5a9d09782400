// Figures beside an answer, drawn to the numbers that went into it: the packed bundle, the section
// of a line, the fall of a voltage. Plain shapes with roles; the page gives them their ink.
import { packCircles, type SumResult } from '#physics/index.ts';
import { formatMm, formatSeconds, formatVolts } from '#quantity/index.ts';

export type FigureRole =
  'hole' | 'clamp' | 'wire' | 'shield' | 'filling' | 'copper' | 'axis' | 'curve' | 'mark';

export type FigureShape =
  | {
      readonly kind: 'circle';
      readonly role: FigureRole;
      readonly x: number;
      readonly y: number;
      readonly radius: number;
    }
  | { readonly kind: 'path'; readonly role: FigureRole; readonly d: string }
  | {
      readonly kind: 'text';
      readonly x: number;
      readonly y: number;
      readonly text: string;
      readonly anchor: 'start' | 'middle' | 'end';
    };

export interface Figure {
  /** Says what is drawn, for those who do not see it as well. */
  readonly caption: string;
  readonly width: number;
  readonly height: number;
  /** Within 0, 0, width, height. */
  readonly shapes: readonly FigureShape[];
}

/** The figure of a result; null for sums that have none. */
export const buildFigure = (result: SumResult): Figure | null =>
  builders[result.id]?.(result) ?? null;

const side = 200;
const middle = side / 2;

const builders: Readonly<Record<string, (result: SumResult) => Figure>> = {
  bundle: ({ inputs, results }) => {
    const packing = packCircles(inputs['diameters'] as readonly number[]);
    const clampMm = results['clamp_mm']?.value ?? packing.diameter;
    const scale = (side - 8) / Math.max(clampMm, packing.diameter);
    return {
      caption: `The wires as packed, in a hole of ${formatMm(packing.diameter)}; the outer ring is the clamp.`,
      width: side,
      height: side,
      shapes: [
        circle('clamp', middle, middle, (clampMm / 2) * scale),
        circle('hole', middle, middle, (packing.diameter / 2) * scale),
        ...packing.circles.map(({ x, y, diameter }) =>
          circle('wire', middle + x * scale, middle + y * scale, (diameter / 2) * scale)
        )
      ]
    };
  },
  'coax-line': ({ inputs }) => {
    const [outer, inner] = [inputs['outer'] as number, inputs['inner'] as number];
    const scale = (side - 16) / outer;
    return {
      caption: `Section, to scale: ${formatMm(inner)} in ${formatMm(outer)}.`,
      width: side,
      height: side,
      shapes: [
        circle('filling', middle, middle, (outer / 2) * scale),
        circle('shield', middle, middle, (outer / 2) * scale),
        circle('copper', middle, middle, (inner / 2) * scale)
      ]
    };
  },
  'twin-line': ({ inputs }) => {
    const [spacing, conductor] = [inputs['spacing'] as number, inputs['conductor'] as number];
    const scale = (side - 16) / (spacing + conductor);
    const [radius, half] = [(conductor / 2) * scale, (spacing / 2) * scale];
    const height = Math.max(60, 2 * radius + 16);
    return {
      caption: `Section, to scale: ${formatMm(conductor)} conductors, ${formatMm(spacing)} between centres.`,
      width: side,
      height,
      shapes: [
        { kind: 'path', role: 'axis', d: `M${middle - half} ${height / 2}H${middle + half}` },
        circle('copper', middle - half, height / 2, radius),
        circle('copper', middle + half, height / 2, radius)
      ]
    };
  },
  discharge: ({ inputs, results }) => {
    const [from, to] = [inputs['from'] as number, inputs['to'] as number];
    const seconds = results['time']?.value ?? 0;
    return fallFigure(from, to, seconds);
  }
};

const circle = (role: FigureRole, x: number, y: number, radius: number): FigureShape => ({
  kind: 'circle',
  role,
  x: short(x),
  y: short(y),
  radius: short(radius)
});

const short = (value: number): number => Math.round(value * 100) / 100;

const plot = { left: 8, right: 252, top: 18, bottom: 112, width: 260, height: 130 };

/** Volts over time from `from` down past `to`; nothing falls where the two are equal. */
function fallFigure(from: number, to: number, seconds: number): Figure {
  const share = to / from;
  // The answer lies at seven tenths of the width, so that what comes after can be seen too.
  const stopX = plot.left + 0.7 * (plot.right - plot.left);
  const x = (time: number): number => plot.left + time * (stopX - plot.left);
  const y = (level: number): number => plot.bottom - level * (plot.bottom - plot.top);
  const points = Array.from({ length: 41 }, (_, step) => (step / 40) * (1 / 0.7));
  const line = points.map((time) => `${short(x(time))} ${short(y(share ** time))}`).join('L');
  return {
    caption: `The voltage falls from ${formatVolts(from)} to ${formatVolts(to)} in ${formatSeconds(seconds)}, and further only slowly.`,
    width: plot.width,
    height: plot.height,
    shapes: [
      {
        kind: 'path',
        role: 'axis',
        d: `M${plot.left} ${plot.top - 8}V${plot.bottom}H${plot.right}`
      },
      {
        kind: 'path',
        role: 'mark',
        d: `M${plot.left} ${short(y(share))}H${short(stopX)}V${plot.bottom}`
      },
      { kind: 'path', role: 'curve', d: `M${line}` },
      { kind: 'text', x: plot.left + 6, y: plot.top - 4, text: formatVolts(from), anchor: 'start' },
      {
        kind: 'text',
        x: stopX + 5,
        y: short(y(share)) - 5,
        text: formatVolts(to),
        anchor: 'start'
      },
      {
        kind: 'text',
        x: short(stopX),
        y: plot.bottom + 14,
        text: formatSeconds(seconds),
        anchor: 'middle'
      }
    ]
  };
}
