// A line beside another, at the same distance all along.

/** The points (x, y pairs) of a line moved sideways, to its left where `offset` is positive; corners are mitred,
 *  sharp ones cut short. */
export const besideLine = (points: readonly number[], offset: number): number[] => {
  const count = points.length / 2;
  const at = (index: number): readonly [number, number] => [
    points[index * 2] ?? 0,
    points[index * 2 + 1] ?? 0
  ];
  const normals: (readonly [number, number] | null)[] = [];
  for (let index = 0; index + 1 < count; index++) {
    const [[ax, ay], [bx, by]] = [at(index), at(index + 1)];
    const long = Math.hypot(bx - ax, by - ay);
    normals.push(long < 1e-9 ? null : [(by - ay) / long, (ax - bx) / long]);
  }
  return Array.from({ length: count }, (_, index) => index).flatMap((index) => {
    const before = normals[index - 1] ?? normals[index] ?? [0, 0];
    const after = normals[index] ?? before;
    const [sx, sy] = [before[0] + after[0], before[1] + after[1]];
    // The mitre of a turn back upon itself has no end.
    const square = Math.max(sx * sx + sy * sy, 1);
    const scale = (2 * offset) / square;
    const [x, y] = at(index);
    return [x + sx * scale, y + sy * scale];
  });
};
