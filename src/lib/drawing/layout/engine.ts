// The layered layout comes from outside: elk in a worker thread for the command line and the tests,
// in a web worker for the browser. Both speak this.

/** A graph as elk takes and returns it; only what the diagram uses. */
export interface ElkGraph {
  id: string;
  x?: number;
  y?: number;
  width?: number;
  height?: number;
  layoutOptions?: Record<string, string>;
  children?: ElkGraph[];
  ports?: ElkPort[];
  edges?: ElkEdge[];
}

export interface ElkPort {
  id: string;
  x?: number;
  y?: number;
  width?: number;
  height?: number;
  layoutOptions?: Record<string, string>;
}

export interface ElkEdge {
  id: string;
  sources: string[];
  targets: string[];
  layoutOptions?: Record<string, string>;
  sections?: ElkSection[];
}

export interface ElkSection {
  startPoint: { x: number; y: number };
  endPoint: { x: number; y: number };
  bendPoints?: { x: number; y: number }[];
}

export interface LayoutEngine {
  /** Lays a graph out and returns it with places; rejects where elk throws. */
  readonly layout: (graph: ElkGraph) => Promise<ElkGraph>;
  /** Ends the worker, so that a layout under way stops. The engine starts a new one when asked again. */
  readonly stop: () => void;
}

export interface LayoutProgress {
  /** Boxes that are laid out, of how many in all. */
  readonly done: number;
  readonly of: number;
  /** The unit that is being laid out, for people. */
  readonly name: string;
}

export interface LayoutOptions {
  readonly onProgress?: (progress: LayoutProgress) => void;
  readonly signal?: AbortSignal;
  /** The whole layout may take this long; 10 s where nothing is said. */
  readonly timeLimitMs?: number;
}

/** A layout that was stopped, took too long or failed; the message says which and what to do. */
export class LayoutError extends Error {
  readonly why: 'stopped' | 'time' | 'engine';

  constructor(why: LayoutError['why'], message: string, options?: ErrorOptions) {
    super(message, options);
    this.name = 'LayoutError';
    this.why = why;
  }
}
