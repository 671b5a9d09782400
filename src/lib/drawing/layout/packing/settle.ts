// Parts laid clear of each other, once they are about where they should be.
import type { Box } from '../../figures/figure.ts';
import type { Floor, FloorPart } from './floor.ts';

/** Lays every part clear of the others at the nearest place, biggest first; those that find no room in
 *  their region stand below it. Corners in lanes come back.
 *  @param comesLater which parts have to find their place between the others */
export const settle = (
  { parts, regions, x, y }: Floor,
  comesLater: readonly boolean[] = []
): { x: number; y: number }[] => {
  const late = (index: number): number => (comesLater[index] === true ? 1 : 0);
  const order = parts
    .map((part, index) => ({ part, index }))
    .sort(
      (a, b) =>
        late(a.index) - late(b.index) || b.part.width * b.part.height - a.part.width * a.part.height
    );
  const laid: { index: number; x: number; y: number }[] = [];
  const isClear = (index: number, left: number, top: number): boolean => {
    const { width, height, room } = parts[index] as FloorPart;
    return laid.every((other) => {
      const { width: w, height: h, room: r } = parts[other.index] as FloorPart;
      return (
        left - room[3] >= other.x + w + r[1] - 1e-6 ||
        left + width + room[1] <= other.x - r[3] + 1e-6 ||
        top - room[0] >= other.y + h + r[2] - 1e-6 ||
        top + height + room[2] <= other.y - r[0] + 1e-6
      );
    });
  };
  for (const { part, index } of order) {
    const box = regions[part.region] as Box;
    const [x0, y0] = [x[index] ?? 0, y[index] ?? 0];
    let best: { far: number; x: number; y: number } | null = null;
    for (let ring = 0; ring < 400 && (best === null || best.far > ring); ring++) {
      for (let step = -ring; step <= ring; step++) {
        for (const [dx, dy] of [
          [step, -ring],
          [step, ring],
          [-ring, step],
          [ring, step]
        ] as const) {
          const far = Math.abs(dx) + Math.abs(dy);
          if (best && best.far <= far) continue;
          const [left, top] = [x0 + dx, y0 + dy];
          if (left < box.x || left + part.width > box.x + box.width || top < box.y) continue;
          if (isClear(index, left, top)) best = { far, x: left, y: top };
        }
      }
    }
    laid.push({ index, x: best?.x ?? x0, y: best?.y ?? y0 });
  }
  const out = parts.map(() => ({ x: 0, y: 0 }));
  for (const { index, x: left, y: top } of laid) out[index] = { x: left, y: top };
  return out;
};
