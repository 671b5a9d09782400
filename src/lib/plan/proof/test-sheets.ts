// All test sheets of a chassis, in the order that they are made.
import type { Study } from '#study/index.ts';
import { continuitySheet } from './continuity.ts';
import { insulationSheet } from './insulation.ts';
import { leakageSheet } from './leakage.ts';
import { powerUpSheet } from './power-up.ts';
import type { TestSheet } from './test-row.ts';

/** @param tolerance share that a voltage may differ by, as the service data says; 0.2 where it does not */
export const buildTestSheets = (study: Study, tolerance?: number): readonly TestSheet[] => [
  continuitySheet(study),
  insulationSheet(study),
  leakageSheet(study),
  powerUpSheet(study, tolerance)
];
