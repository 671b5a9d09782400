// What the document room offers to the rooms above it.
export * from './schema.ts';
export * from './primitives.ts';
export * from './part-schema.ts';
export * from './wire-schema.ts';
export * from './policy-schema.ts';
export * from './ids.ts';
export * from './order.ts';
export * from './empty-document.ts';
export * from './references.ts';
export * from './edit.ts';
export * from './edits.ts';
export * from './patch.ts';
export * from './apply-edit.ts';
export * from './history.ts';
