// The drawing of a chassis as SVG text, with elk's worker from beside the program.
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { metadataForSvg, saveDocument } from '#document/index.ts';
import {
  buildDiagram,
  buildDisplayList,
  buildPictorial,
  LayoutError,
  toSvg,
  type DisplayList
} from '#drawing/index.ts';
import { CommandError, type Terminal } from './command.ts';
import { createNodeEngine } from './elk-in-node.ts';
import type { Judged } from './judge.ts';

export const views = ['diagram', 'pictorial'] as const;
export type View = (typeof views)[number];

export interface DrawOptions {
  readonly theme: 'light' | 'dark' | 'print';
  readonly timeLimitMs: number;
}

/** The local date as it stands in a title block: 2026-11-25. */
const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

/** Lays the diagram out. Progress goes to stderr where a person watches it. */
const layDiagram = async (
  path: string,
  { study, findings }: Judged,
  timeLimitMs: number,
  terminal: Terminal
): Promise<DisplayList> => {
  const engine = createNodeEngine(fileURLToPath(new URL('./elk-worker.min.js', import.meta.url)));
  try {
    const diagram = await buildDiagram(study, engine, {
      timeLimitMs,
      onProgress: ({ done, of, name }) => {
        if (process.stderr.isTTY) terminal.say(`laid out ${done} of ${of}: ${name}`);
      }
    });
    for (const remark of diagram.remarks) terminal.say(`${basename(path)}: ${remark}`);
    return buildDisplayList(diagram, { findings, date: today() });
  } catch (error) {
    if (error instanceof LayoutError)
      throw new CommandError(`${path}: not drawn: ${error.message}`);
    throw error;
  } finally {
    engine.stop();
  }
};

/** A drawing of the chassis as SVG text that carries the document.
 *  @throws CommandError where the layout fails or takes longer than its limit */
export const drawChassis = async (
  path: string,
  judged: Judged,
  view: View,
  { theme, timeLimitMs }: DrawOptions,
  terminal: Terminal
): Promise<string> => {
  const { document, study, findings } = judged;
  const list =
    view === 'diagram'
      ? await layDiagram(path, judged, timeLimitMs, terminal)
      : buildPictorial(study, { findings, date: today(), withLengths: true });
  return toSvg(list, {
    theme,
    title: document.identity.title,
    description: `${view === 'diagram' ? 'Wiring diagram' : 'Chassis drawn to scale'}: ${study.index.wires.length} wires, ${study.index.parts.length} parts.`,
    metadata: metadataForSvg(saveDocument(document))
  });
};
