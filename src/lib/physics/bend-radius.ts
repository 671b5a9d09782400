// How tight a wire may be bent for good.
import { checkedNumber } from './guard.ts';

export const bendKinds = ['wire', 'cable', 'polyimide'] as const;
/** Insulated wire, a cable of several, or wire with polyimide insulation. */
export type BendKind = (typeof bendKinds)[number];

/** Least and preferred inside radius of a bend, mm, for an outside diameter.
 *  Formula:  6 D and 10 D; polyimide insulation 10 D and 15 D
 *  Source:   NASA-STD-8739.4 [7.3.21], as its workmanship pages print it
 *  Valid:    above 0 to 100 mm; otherwise SumError
 *  Example:  bendRadius({ diameterMm: 1.6, kind: "wire" }).minimumMm // 9.6
 */
export function bendRadius(inputs: { readonly diameterMm: number; readonly kind: BendKind }): {
  readonly minimumMm: number;
  readonly preferredMm: number;
} {
  const limits = { min: 0, max: 100, above: true, unit: 'mm' };
  const diameter = checkedNumber('diameter', inputs.diameterMm, limits);
  const [least, preferred] = inputs.kind === 'polyimide' ? [10, 15] : [6, 10];
  return { minimumMm: least * diameter, preferredMm: preferred * diameter };
}
