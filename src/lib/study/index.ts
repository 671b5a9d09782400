// What the study room offers to the rooms above it.
export * from './types.ts';
