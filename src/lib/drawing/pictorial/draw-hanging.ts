// Components that hang by their leads: leads, body, and their name along the body.
import type { FigureItem } from '../figures/figure.ts';
import { Sketch } from '../figures/figure.ts';
import { type as typeSizes } from '../figures/sizes.ts';
import type { Spot } from '../presentation/sides.ts';
import { fitText, textWidthMm } from '../text-width.ts';
import { bodyCorners, type PlacedBody } from './hanging-places.ts';
import { plus, turnedBy } from './vectors.ts';

const pointsOf = (line: readonly Spot[]): number[] => line.flatMap(({ x, y }) => [x, y]);

const referenceLook = { size: typeSizes.small * 0.94, face: 'sans', bold: true } as const;
const valueLook = { size: typeSizes.small * 0.9, face: 'sans' } as const;
const lineMm = 2.05;

/** The text on a body: reference and value in one line where both fit, else one above the other,
 *  else the reference alone. */
function drawWords(sketch: Sketch, { part, body, middle, degrees }: PlacedBody): void {
  const value = part.value ?? part.type ?? '';
  const room = body.length - 0.8;
  const at = (x: number, y: number): Spot => plus(middle, turnedBy({ x, y }, degrees));
  const put = (
    text: string,
    x: number,
    y: number,
    look: typeof referenceLook | typeof valueLook
  ) => {
    const spot = at(x, y);
    sketch.text(look === referenceLook ? 'part.reference' : 'part.kind', text, spot.x, spot.y, {
      ...look,
      turn: degrees
    });
  };
  const [first, second] = [
    textWidthMm(part.reference, referenceLook),
    textWidthMm(value, valueLook)
  ];
  const gap = 0.6;
  if (value !== '' && first + gap + second <= room) {
    const left = -(first + gap + second) / 2;
    put(part.reference, left + first / 2, 0, referenceLook);
    put(value, left + first + gap + second / 2, 0, valueLook);
  } else if (value !== '' && body.width >= 2 * lineMm) {
    put(fitText(part.reference, room, referenceLook), 0, -lineMm / 2, referenceLook);
    put(fitText(value, room, valueLook), 0, lineMm / 2, valueLook);
  } else {
    put(fitText(part.reference, room, referenceLook), 0, 0, referenceLook);
  }
}

/** The shapes of a component that hangs by its leads. */
export function drawHanging(placed: PlacedBody): readonly FigureItem[] {
  const sketch = new Sketch();
  const { body, middle, degrees, leads } = placed;
  for (const { terminal, line, isFree } of leads) {
    sketch.line('lead', pointsOf(line), { terminal });
    const end = line.at(-1);
    if (isFree && end) sketch.circle('part.dot', end.x, end.y, 0.5, { terminal });
  }
  const turned = (x: number, y: number): Spot => plus(middle, turnedBy({ x, y }, degrees));
  if (body.shape === 'disc') {
    sketch.circle('part.body', middle.x, middle.y, body.width / 2);
  } else {
    sketch.line('part.body', pointsOf(bodyCorners(placed)), { closed: true });
  }
  if (body.shape === 'roll') {
    // The ends of the tube.
    for (const end of [-1, 1]) {
      const x = end * (body.length / 2 - 0.55);
      sketch.line('part.fine', pointsOf([turned(x, -body.width / 2), turned(x, body.width / 2)]));
    }
  }
  if (body.shape === 'coil') {
    for (const x of [-0.34, -0.17, 0.17, 0.34]) {
      const along = x * body.length;
      sketch.line(
        'part.fine',
        pointsOf([turned(along, -body.width / 2), turned(along, body.width / 2)])
      );
    }
  }
  drawWords(sketch, placed);
  return sketch.items;
}
