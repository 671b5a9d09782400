// Where the power line comes in: the source of a plug or of an interlock, or one on nets that are called
// the line.
import type { PlacedElement, Study } from '#study/index.ts';

/** No winding that feeds heaters gives as much; the line of no country gives less. */
const leastLineV = 80;

/** True for an alternating source that stands for the power line. */
export function isLineSource({ nets }: Study, { part, values, from, to }: PlacedElement): boolean {
  if (values.kind !== 'source' || values.current !== 'ac') return false;
  if (Math.abs(values.volts) < leastLineV) return false;
  if (/^(plug|jack)$/.test(part.kind)) return true;
  return [from, to].some((net) => nets.get(net.id)?.roles.has('line') === true);
}
