// A path without its first and last bit.
import type { Spot } from './presentation/sides.ts';

const trimStart = (path: readonly Spot[], length: number): Spot[] => {
  let left = length;
  for (let index = 1; index < path.length; index++) {
    const [a, b] = [path[index - 1] as Spot, path[index] as Spot];
    const long = Math.hypot(b.x - a.x, b.y - a.y);
    if (long > left) {
      const share = left / long;
      return [{ x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share }, ...path.slice(index)];
    }
    left -= long;
  }
  return path.slice(-1);
};

/** The path without `length` mm at either end; one spot where it is shorter than that. */
export const trimPath = (path: readonly Spot[], length: number): Spot[] =>
  trimStart(trimStart(path, length).reverse(), length).reverse();
