// Supports as small marks under the wires that they hold: a band across a bundle, a ring where wires
// go through the metal, a dot where they only turn.
import type { Support } from '#document/index.ts';
import { Sketch, type FigureItem } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { plus, times } from './vectors.ts';

export interface SupportFit {
  /** Across the wires, a step of 1. */
  readonly axis: Spot;
  /** How wide the wires lie there, mm. */
  readonly widthMm: number;
}

/** The mark of a support; without wires it shows its bore, or a middling size. */
export function drawSupport(
  { kind, boreMm }: Support,
  at: Spot,
  fit: SupportFit | null
): readonly FigureItem[] {
  const sketch = new Sketch();
  const half = Math.max((fit?.widthMm ?? 0) / 2 + 1.6, 2.4);
  const axis = fit?.axis ?? { x: 1, y: 0 };
  const along = { x: -axis.y, y: axis.x };
  const band = (deep: number): void => {
    const corner = (a: number, b: number): Spot => plus(plus(at, times(axis, a)), times(along, b));
    const corners = [
      corner(-half, -deep),
      corner(half, -deep),
      corner(half, deep),
      corner(-half, deep)
    ];
    const points = corners.flatMap(({ x, y }) => [x, y]);
    sketch.line('support.mark', points, { closed: true, layer: 'supports' });
  };
  switch (kind) {
    case 'clamp':
      band(1.7);
      break;
    case 'tie':
      band(0.75);
      break;
    case 'grommet': {
      const r = Math.max((boreMm ?? 0) / 2, half);
      sketch.circle('support.mark', at.x, at.y, r + 1.2, { layer: 'supports' });
      sketch.circle('support.bore', at.x, at.y, r, { layer: 'supports' });
      break;
    }
    case 'hole':
      sketch.circle('support.bore', at.x, at.y, Math.max((boreMm ?? 0) / 2, half), {
        layer: 'supports'
      });
      break;
    case 'corner':
      sketch.circle('support.mark', at.x, at.y, 1.5, { layer: 'supports' });
      break;
  }
  return sketch.items;
}
