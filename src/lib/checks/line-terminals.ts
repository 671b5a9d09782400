// Where the power line comes in: the source of a plug or of an interlock, or one on nets that are called
// the line.
import { isLineSource as isSourceOfLine } from '#study/line-side.ts';
import type { PlacedElement, Study } from '#study/index.ts';

/** True for an alternating source that stands for the power line. */
export const isLineSource = ({ nets }: Study, element: PlacedElement): boolean =>
  isSourceOfLine(element, ({ id }) => nets.get(id)?.roles.has('line') === true);
