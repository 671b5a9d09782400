// The drawing against its baselines, on generated chassis: display list and SVG against the study,
// our layout against one bare call of elk.
import { fileURLToPath } from 'node:url';
import { runChecks } from '#checks/index.ts';
import { metadataForSvg, saveDocument } from '#document/index.ts';
import { buildDiagram, buildDisplayList, toSvg, type Diagram } from '#drawing/index.ts';
import { findFreePlace } from '#drawing/layout/free-place.ts';
import { moveParts } from '#drawing/layout/place-by-hand.ts';
import { buildRouter } from '#drawing/layout/run-lines.ts';
import { proveGeometry, type Proofs } from '#drawing/proofs.ts';
import { buildStudy } from '#study/index.ts';
import { generateChassis } from '../helpers/generate-chassis.ts';
import { layBare } from './bare-layout.ts';
import { createNodeEngine } from '../../src/cli/elk-in-node.ts';
import { judge, type Verdict } from './goals.ts';
import { measure, measureAsync, ratioLine, type Timing } from './measure.ts';

const counts = (name: string, proofs: Proofs): string =>
  `  ${name}: ${proofs.lines} lines, ${proofs.crossings} crossings, ${proofs.bends} bends, ` +
  `${proofs.throughParts.length} through parts, ${proofs.overlaps.length} overlaps, ` +
  `${(proofs.lengthMm / 1000).toFixed(1)} m`;

/** The goals are for a chassis of so many wires. */
const goalsAt = 1000;

/** Our layout against the bare one: its time and its crossings. */
const judgeLayout = (
  wires: number,
  ours: Timing,
  bare: Timing,
  crossings: { readonly ours: number; readonly bare: number }
): Verdict[] => {
  if (wires !== goalsAt) {
    console.log(`${wires} wires: ${ratioLine(ours, bare)}`);
    return [];
  }
  const isMet = crossings.ours <= crossings.bare / 4;
  const line = `crossings of ${wires} wires: ${crossings.ours} to ${crossings.bare} of one bare elk call; goal a quarter, ${isMet ? 'met' : 'MISSED'}`;
  console.log(line);
  return [judge(`laying out ${wires} wires`, ours, bare, 1 / 3), { line, isMet }];
};

/** All lines run anew, against one part with its wires moved by hand. */
const benchRouter = (wires: number, { geometry }: Diagram): Verdict[] => {
  const bare = { ...geometry, lines: geometry.lines.map((line) => ({ ...line, route: [] })) };
  const full = measure('full reroute', () => buildRouter(bare).routeOpen(), 1, 3);
  const [part] = [...geometry.parts].sort(
    (a, b) => Math.abs(a.figure.ports.length - 20) - Math.abs(b.figure.ports.length - 20)
  );
  if (!part) return [];
  const { x, y } = part.box;
  const others = geometry.parts.filter(({ id }) => id !== part.id).map(({ box }) => box);
  const at = findFreePlace({ ...part.box, x: x + 24, y: y + 24 }, others);
  const name = `one part with ${part.figure.ports.length} lines moved`;
  const moved = measure(name, () => moveParts(geometry, new Map([[part.id, at]])), 1, 3);
  if (wires !== goalsAt) {
    console.log(`${wires} wires: ${ratioLine(moved, full)}`);
    return [];
  }
  const second = { name: 'one second', ms: 1000, runs: 1 };
  return [
    judge(`running ${wires} wires anew`, full, second, 1),
    judge(`moving a part among ${wires} wires`, moved, full, 1 / 10)
  ];
};

/** Prints the lines of one size after another; elk stays warm in its thread. */
export async function benchDrawing(
  sizes: readonly number[] = [100, 300, goalsAt]
): Promise<readonly Verdict[]> {
  const verdicts: Verdict[] = [];
  const engine = createNodeEngine(fileURLToPath(new URL('./elk-worker.min.js', import.meta.url)));
  for (const wires of sizes) {
    const document = generateChassis(wires);
    const study = buildStudy(document);
    const findings = runChecks(study);
    const options = { timeLimitMs: 300_000 };
    const bare = await layBare(study, engine);
    const diagram = await buildDiagram(study, engine, options);
    const ours = await measureAsync('our layout', () => buildDiagram(study, engine, options), 1);
    const plain = await measureAsync('one bare elk call', () => layBare(study, engine), 1);
    const bareProofs = proveGeometry(bare);
    const crossings = { ours: diagram.proofs.crossings, bare: bareProofs.crossings };
    verdicts.push(...judgeLayout(wires, ours, plain, crossings));
    console.log(counts('ours', diagram.proofs));
    console.log(counts('bare', bareProofs));
    verdicts.push(...benchRouter(wires, diagram));
    const metadata = metadataForSvg(saveDocument(document));
    const studied = measure('study', () => buildStudy(document));
    const drawn = measure('display list + SVG', () =>
      toSvg(buildDisplayList(diagram, { findings }), { title: 'bench', metadata })
    );
    console.log(`${wires} wires: ${ratioLine(drawn, studied)}`);
  }
  engine.stop();
  return verdicts;
}
