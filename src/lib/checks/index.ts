// What the checks room offers to the rooms above it.
export * from './finding.ts';
export * from './registry.ts';
export * from './run-checks.ts';
export * from './cautions.ts';
export * from './explain-finding.ts';
