// The network solver's door.
export type { Branch, Circuit } from './circuit.ts';
export { solveNetwork } from './solve-network.ts';
