// What the storage room offers to the rooms above it.
export * from './files.ts';
export * from './store-failure.ts';
export * from './browser-store.ts';
export * from './picture-store.ts';
export * from './persist.ts';
export type { KeptEntry } from './database.ts';
