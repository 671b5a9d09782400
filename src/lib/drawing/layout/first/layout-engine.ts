// The layered layout comes from outside: elk in a worker thread for the command line and the tests, in a web
// worker for the browser. Both speak this.

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
