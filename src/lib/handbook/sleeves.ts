// Heat-shrink sleeving, 2:1: sizes as supplied and after shrinking.
import { verified, type Sourced } from './source.ts';

export interface HeatShrink extends Sourced {
  /** Inside diameter as supplied, and after free shrinking, mm. */
  readonly suppliedMm: number;
  readonly recoveredMm: number;
  /** Wall after free shrinking, mm. */
  readonly wallMm: number;
}

const sheet = verified('data sheet of 2:1 heat-shrink sleeving of the MIL-I-23053 class');

const row = (suppliedMm: number, recoveredMm: number, wallMm: number): HeatShrink => ({
  suppliedMm,
  recoveredMm,
  wallMm,
  ...sheet
});

/** Thinnest first. */
export const heatShrinks: readonly HeatShrink[] = [
  row(1.6, 0.8, 0.4),
  row(2.4, 1.2, 0.48),
  row(3.2, 1.6, 0.48),
  row(4.8, 2.4, 0.48),
  row(6.4, 3.2, 0.56),
  row(9.5, 4.8, 0.62),
  row(12.7, 6.4, 0.62),
  row(19.1, 9.5, 0.69),
  row(25.4, 12.7, 0.89),
  row(38.1, 19.1, 1.0)
];

/** The sleeves that go over a round thing of this outside diameter (mm) and still grip it:
 *  recovered < outside < supplied. Loosest last; empty where no size fits. */
export const heatShrinksOver = (outsideMm: number): readonly HeatShrink[] =>
  heatShrinks.filter((sleeve) => sleeve.recoveredMm < outsideMm && outsideMm < sleeve.suppliedMm);
