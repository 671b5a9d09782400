import type { Wire } from '#document/index.ts';
import type { Study } from './types.ts';

/** The name of the unit that a wire lies in, or of both where it goes from one to another; empty where
 *  neither end is known. */
export const unitNamesOf = (wire: Wire, { document }: Study): readonly string[] => {
  const names = [wire.from, wire.to].flatMap((end) => {
    const part = end.at && document.parts[end.at.part];
    const unit = part && document.units[part.unit];
    return unit ? [unit.name] : [];
  });
  return [...new Set(names)];
};
