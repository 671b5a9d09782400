// What the plan room offers to the rooms above it.
export * from './types.ts';
export * from './build-plan.ts';
export * from './choose.ts';
export * from './cut-list.ts';
export * from './cutting/types.ts';
export * from './cutting/cut-pieces.ts';
export * from './cutting/bounds.ts';
export * from './shopping-list.ts';
export * from './order-of-work.ts';
export * from './proof/discharge-first.ts';
export * from './proof/expectation.ts';
export { toleranceRecord } from './proof/power-up.ts';
export * from './proof/test-row.ts';
export * from './proof/test-sheets.ts';
export { chanceFrom } from '#quantity/seeded-chance.ts';
