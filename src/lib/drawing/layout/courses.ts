// What a layout teaches for the next one: which way each line really goes from each of its ends, and
// in which order the ends of one terminal should stand.
import { endId, type Course } from '../presentation/part-ends.ts';
import type { Spot } from '../presentation/sides.ts';
import type { Geometry } from './join.ts';

/** How much of the way counts: the near part of a line says more than its far end. */
const lookAhead = 60;

/** The spot a line has reached after so many millimetres, or its end. */
const spotAfter = (route: readonly Spot[], mm: number): Spot => {
  let left = mm;
  for (let index = 1; index < route.length; index++) {
    const [a, b] = [route[index - 1] as Spot, route[index] as Spot];
    const length = Math.abs(a.x - b.x) + Math.abs(a.y - b.y);
    if (length >= left) {
      const share = length === 0 ? 0 : left / length;
      return { x: a.x + (b.x - a.x) * share, y: a.y + (b.y - a.y) * share };
    }
    left -= length;
  }
  return route.at(-1) ?? { x: 0, y: 0 };
};

const degrees = (from: Spot, to: Spot): number =>
  ((Math.atan2(to.x - from.x, from.y - to.y) * 180) / Math.PI + 360) % 360;

/** Where a line lies after its first turn. */
const sortOf = (route: readonly Spot[]): number => {
  const [first, second, third] = route;
  if (!first || !second) return 0;
  const isLevel = Math.abs(first.y - second.y) < 1e-3;
  const after = third ?? second;
  return isLevel ? after.y : after.x;
};

/** Courses for every end of every line of a layout. */
export const learnCourses = ({ lines, parts }: Geometry): Map<string, Course> => {
  const middles = new Map(
    parts.map(({ id, box }) => [id, { x: box.x + box.width / 2, y: box.y + box.height / 2 }])
  );
  const courses = new Map<string, Course>();
  for (const { link, route } of lines) {
    const back = [...route].reverse();
    const [from, to] = [middles.get(link.from.part), middles.get(link.to.part)];
    if (!from || !to) continue;
    // Half by the way it takes now, half by where it has to get to.
    const blend = (start: Spot, near: Spot, far: Spot): Spot => {
      const scale = (spot: Spot) => {
        const long = Math.hypot(spot.x - start.x, spot.y - start.y) || 1;
        return { x: (spot.x - start.x) / long, y: (spot.y - start.y) / long };
      };
      const [a, b] = [scale(near), scale(far)];
      return { x: start.x + 0.25 * a.x + b.x, y: start.y + 0.25 * a.y + b.y };
    };
    courses.set(endId(link, 'from'), {
      towardsDeg: degrees(from, blend(from, spotAfter(route, lookAhead), to)),
      sort: sortOf(route)
    });
    courses.set(endId(link, 'to'), {
      towardsDeg: degrees(to, blend(to, spotAfter(back, lookAhead), from)),
      sort: sortOf(back)
    });
  }
  return courses;
};
