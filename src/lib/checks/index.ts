// What the checks room offers to the rooms above it.
export * from './finding.ts';
export * from './registry.ts';
export { countFindings, runChecks } from './run-checks.ts';
export * from './check-again.ts';
export * from './cautions.ts';
export * from './explain-finding.ts';
