// What the plan room offers to the rooms above it.
export * from './types.ts';
export * from './build-plan.ts';
export * from './cut-list.ts';
export * from './cutting/types.ts';
export * from './cutting/cut-pieces.ts';
export * from './cutting/bounds.ts';
