// What the study room offers to the rooms above it.
export * from './types.ts';
export * from './build-study.ts';
export * from './terminal-key.ts';
export * from './place.ts';
export * from './wire-way.ts';
export * from './conductor-in-place.ts';
export type { PlacedElement, ElementValues } from './circuit-elements.ts';
export type {
  FloatingIsland,
  NetworkStudy,
  StarvedLoads,
  VoltsDisagreement
} from './network/network-study.ts';
