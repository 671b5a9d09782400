import { describe, expect, it } from 'vitest';
import { buildFigure, type Figure, type FigureRole } from '#editor/bench/sums/figures.ts';
import { runSum } from '#physics/index.ts';

const figureOf = (id: string, texts: Record<string, string>): Figure => {
  const figure = buildFigure(runSum(id, texts));
  if (figure === null) throw new Error(`${id} has no figure`);
  return figure;
};
const circles = ({ shapes }: Figure, role: FigureRole) =>
  shapes.flatMap((shape) => (shape.kind === 'circle' && shape.role === role ? [shape] : []));

describe('figures', () => {
  it('draw every wire of a bundle, inside the hole and clear of the others', () => {
    const figure = figureOf('bundle', { diameters: '12x1.6,3x2.4' });
    const [hole] = circles(figure, 'hole');
    const wires = circles(figure, 'wire');
    expect(wires).toHaveLength(15);
    for (const [index, wire] of wires.entries()) {
      const out = Math.hypot(wire.x - hole!.x, wire.y - hole!.y) + wire.radius;
      expect(out).toBeLessThanOrEqual(hole!.radius + 0.05);
      for (const other of wires.slice(index + 1)) {
        const apart = Math.hypot(wire.x - other.x, wire.y - other.y);
        expect(apart).toBeGreaterThanOrEqual(wire.radius + other.radius - 0.05);
      }
    }
    expect(circles(figure, 'clamp')[0]!.radius).toBeGreaterThanOrEqual(hole!.radius);
  });

  it('draw a coaxial line to scale', () => {
    const figure = figureOf('coax-line', { outer: '4mm', inner: '1mm', er: '2.26' });
    const ratio = circles(figure, 'shield')[0]!.radius / circles(figure, 'copper')[0]!.radius;
    expect(ratio).toBeCloseTo(4, 2);
  });

  it('draw twin lead to scale, within the picture', () => {
    const figure = figureOf('twin-line', { spacing: '8mm', conductor: '1mm', er: '1.5' });
    const [left, right] = circles(figure, 'copper');
    expect((right!.x - left!.x) / (2 * left!.radius)).toBeCloseTo(8, 2);
    expect(left!.x - left!.radius).toBeGreaterThanOrEqual(0);
    expect(right!.x + right!.radius).toBeLessThanOrEqual(figure.width);
  });

  it('let the discharge pass its end voltage where the answer says', () => {
    // After one time constant 36.8 % is left (Navy Electricity and Electronics Training Series).
    const figure = figureOf('discharge', {
      capacitance: '100uF',
      resistance: '100k',
      from: '100V',
      to: '36.8V'
    });
    const mark = figure.shapes.find((shape) => shape.kind === 'path' && shape.role === 'mark');
    const curve = figure.shapes.find((shape) => shape.kind === 'path' && shape.role === 'curve');
    const [, level, time] = /^M\S+ (\S+)H(\S+)V/.exec(mark?.kind === 'path' ? mark.d : '')!;
    const points = (curve?.kind === 'path' ? curve.d : '')
      .slice(1)
      .split('L')
      .map((point) => point.split(' ').map(Number));
    const near = points.filter(([x]) => Math.abs(x! - Number(time)) < 5);
    expect(near.length).toBeGreaterThan(0);
    for (const [, y] of near) expect(Math.abs(y! - Number(level))).toBeLessThan(3);
    const texts = figure.shapes.flatMap((shape) => (shape.kind === 'text' ? [shape.text] : []));
    expect(texts).toEqual(['100 V', '36.8 V', '9.997 s']);
  });

  it('are none for sums that need none', () => {
    expect(buildFigure(runSum('wire-size', { awg: '22' }))).toBeNull();
  });
});
