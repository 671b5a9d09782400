// What the quantity room offers to the rooms above it.
export * from './round.ts';
export * from './format.ts';
export * from './dimension.ts';
export * from './parse.ts';
export { inUnit } from './units.ts';
