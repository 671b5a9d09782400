// The network solver's door.
export type { Branch, Circuit, NetworkFault, NetworkSolution } from './circuit.ts';
export { solveNetwork } from './solve-network.ts';
