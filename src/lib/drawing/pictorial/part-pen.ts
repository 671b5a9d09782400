// Draws one part in its own millimetres, from its middle and before it is turned; what comes out lies
// on the sheet. Texts are never turned with the part: they are read from the front of the bench.
import type { Id } from '#document/index.ts';
import type { Layer } from '../display-list.ts';
import { Sketch, type TextOptions } from '../figures/figure.ts';
import type { Spot } from '../presentation/sides.ts';
import { toSheet, type Pose } from './placed-part.ts';

interface Marks {
  readonly layer?: Layer;
  readonly terminal?: Id;
}

export class PartPen {
  readonly sketch = new Sketch();
  private readonly pose: Pose;

  constructor(pose: Pose) {
    this.pose = pose;
  }

  /** From the part's middle to the sheet. */
  toSheet(offset: Spot): Spot {
    return toSheet(this.pose, offset);
  }

  line(style: string, offsets: readonly Spot[], more: Marks & { closed?: boolean } = {}): void {
    const points = offsets.flatMap((offset) => {
      const { x, y } = this.toSheet(offset);
      return [x, y];
    });
    this.sketch.line(style, points, { layer: 'bodies', ...more });
  }

  /** A box between two corners; its corners are rounded where it does not lie slanted. */
  box(style: string, from: Spot, to: Spot, round = 0, marks: Marks = {}): void {
    const [a, b] = [this.toSheet(from), this.toSheet(to)];
    if (this.pose.rotation % 90 === 0) {
      const corner = { x: Math.min(a.x, b.x), y: Math.min(a.y, b.y) };
      const size = { width: Math.abs(a.x - b.x), height: Math.abs(a.y - b.y) };
      this.sketch.box(style, { ...corner, ...size }, round, { layer: 'bodies', ...marks });
      return;
    }
    const corners = [from, { x: to.x, y: from.y }, to, { x: from.x, y: to.y }];
    this.line(style, corners, { ...marks, closed: true });
  }

  circle(style: string, offset: Spot, r: number, marks: Marks = {}): void {
    const { x, y } = this.toSheet(offset);
    this.sketch.circle(style, x, y, r, { layer: 'bodies', ...marks });
  }

  /** An arc around a place, degrees clockwise from the right before the part is turned. */
  arc(style: string, middle: Spot, r: number, fromDeg: number, toDeg: number): void {
    const steps = Math.max(3, Math.ceil(Math.abs(toDeg - fromDeg) / 12));
    const offsets = Array.from({ length: steps + 1 }, (_, step) => {
      const angle = ((fromDeg + ((toDeg - fromDeg) * step) / steps) * Math.PI) / 180;
      return { x: middle.x + r * Math.cos(angle), y: middle.y + r * Math.sin(angle) };
    });
    this.line(style, offsets);
  }

  text(style: string, text: string, offset: Spot, options: TextOptions & Marks): void {
    const { x, y } = this.toSheet(offset);
    this.sketch.text(style, text, x, y, { layer: 'terminals', ...options });
  }
}
