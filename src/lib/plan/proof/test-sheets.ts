// All test sheets of a chassis, in the order that they are made.
import type { Study } from '#study/index.ts';
import { continuitySheet } from './continuity.ts';
import { insulationSheet } from './insulation.ts';
import { leakageSheet } from './leakage.ts';
import { powerUpSheet, writtenTolerance } from './power-up.ts';
import type { TestSheet } from './test-row.ts';

/** @param tolerance share that a voltage may differ by; where not given, as it was written down from the
 *  service data, else 0.2 */
export const buildTestSheets = (study: Study, tolerance?: number): readonly TestSheet[] => [
  continuitySheet(study),
  insulationSheet(study),
  leakageSheet(study),
  powerUpSheet(study, tolerance ?? writtenTolerance(study))
];
