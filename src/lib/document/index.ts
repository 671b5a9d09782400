// What the document room offers to the rooms above it.
export * from './schema.ts';
export * from './primitives.ts';
export * from './part-schema.ts';
export * from './wire-schema.ts';
export * from './policy-schema.ts';
export * from './edit.ts';
