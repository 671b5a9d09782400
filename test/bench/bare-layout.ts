// The baseline of the drawing: one bare call of elk on the whole chassis. Parts are plain boxes,
// every wire between two terminals is an edge, grounds are drawn as the hubs they are.
import type { DiagramLine, Geometry } from '#drawing/layout/geometry.ts';
import type { Study } from '#study/index.ts';
import type { ElkGraph, LayoutEngine } from '#drawing/index.ts';

const pitch = 3;

/** The chassis as one flat graph for elk, in millimetres. */
const buildBareGraph = (study: Study): ElkGraph => ({
  id: 'sheet',
  layoutOptions: {
    'elk.algorithm': 'layered',
    'elk.direction': 'RIGHT',
    'elk.edgeRouting': 'ORTHOGONAL',
    'elk.json.shapeCoords': 'ROOT',
    'elk.json.edgeCoords': 'ROOT'
  },
  children: study.index.parts.map((part) => {
    const terminals = study.index.terminalsOf.get(part.id) ?? [];
    const half = Math.ceil(terminals.length / 2);
    return {
      id: part.id,
      width: 18,
      height: pitch * (half + 1),
      layoutOptions: { 'elk.portConstraints': 'FIXED_SIDE' },
      ports: terminals.map((terminal, index) => ({
        id: `${part.id}/${terminal.id}`,
        layoutOptions: { 'elk.port.side': index < half ? 'WEST' : 'EAST' }
      }))
    };
  }),
  edges: study.index.wires.flatMap(({ id, from, to }) =>
    from.at && to.at
      ? [
          {
            id,
            sources: [`${from.at.part}/${from.at.terminal}`],
            targets: [`${to.at.part}/${to.at.terminal}`]
          }
        ]
      : []
  )
});

/** Lays the bare graph out and gives it the shape that the proofs count in. */
export const layBare = async (study: Study, engine: LayoutEngine): Promise<Geometry> => {
  const laid = await engine.layout(buildBareGraph(study));
  const ends = new Map(
    study.index.wires.flatMap(({ id, from, to }) =>
      from.at && to.at ? [[id, { from: from.at, to: to.at }] as const] : []
    )
  );
  const lines = (laid.edges ?? []).flatMap((edge): DiagramLine[] => {
    const wire = ends.get(edge.id);
    const [section] = edge.sections ?? [];
    if (!wire || !section) return [];
    return [
      {
        link: {
          id: edge.id,
          kind: 'wire',
          from: { part: wire.from.part, terminal: wire.from.terminal },
          to: { part: wire.to.part, terminal: wire.to.terminal },
          wires: [edge.id]
        },
        route: [section.startPoint, ...(section.bendPoints ?? []), section.endPoint],
        fromPath: [],
        toPath: []
      }
    ];
  });
  return {
    x: 0,
    y: 0,
    width: laid.width ?? 0,
    height: laid.height ?? 0,
    frames: [],
    parts: (laid.children ?? []).map(({ id, x = 0, y = 0, width = 0, height = 0 }) => ({
      id,
      box: { x, y, width, height },
      figure: { width, height, ports: [], items: [] }
    })),
    lines
  };
};
