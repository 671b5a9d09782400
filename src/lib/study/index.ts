// What the study room offers to the rooms above it.
export * from './types.ts';
export * from './build-study.ts';
export * from './terminal-key.ts';
export * from './place.ts';
export * from './wire-way.ts';
