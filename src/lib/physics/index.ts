// What the physics room offers to the rooms above it.
export * from './sum-error.ts';
export * from './conductor.ts';
export * from './stress.ts';
export * from './insulation-class.ts';
export * from './post-wrap.ts';
export * from './strip.ts';
export * from './length.ts';
