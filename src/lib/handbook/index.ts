// What the handbook offers to the rooms above it.
export * from './source.ts';
export * from './tube-bases.ts';
export * from './pin-functions.ts';
export * from './tube-types.ts';
export * from './wire-styles.ts';
export * from './wire-sizes.ts';
export * from './class-ladder.ts';
export * from './colours.ts';
export * from './colour-code.ts';
export * from './reference-letters.ts';
export * from './cables.ts';
export * from './sleeves.ts';
export * from './clamps.ts';
