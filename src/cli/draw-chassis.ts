// The drawing of a chassis as SVG text, with elk's worker from beside the program.
import { basename } from 'node:path';
import { fileURLToPath } from 'node:url';
import { metadataForSvg, saveDocument } from '#document/index.ts';
import { buildDiagram, buildDisplayList, LayoutError, toSvg } from '#drawing/index.ts';
import { CommandError, type Terminal } from './command.ts';
import { createNodeEngine } from './elk-in-node.ts';
import type { Judged } from './judge.ts';

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

/** Draws the diagram. Progress goes to stderr where a person watches it.
 *  @throws CommandError where the layout fails or takes longer than its limit */
export const drawChassis = async (
  path: string,
  { document, study, findings }: Judged,
  { theme, timeLimitMs }: DrawOptions,
  terminal: Terminal
): Promise<string> => {
  const engine = createNodeEngine(fileURLToPath(new URL('./elk-worker.min.js', import.meta.url)));
  try {
    const diagram = await buildDiagram(study, engine, {
      timeLimitMs,
      onProgress: ({ done, of, name }) => {
        if (process.stderr.isTTY) terminal.say(`laid out ${done} of ${of}: ${name}`);
      }
    });
    for (const remark of diagram.remarks) terminal.say(`${basename(path)}: ${remark}`);
    const list = buildDisplayList(diagram, { findings, date: today() });
    return toSvg(list, {
      theme,
      title: document.identity.title,
      description: `Wiring diagram: ${study.index.wires.length} wires, ${study.index.parts.length} parts.`,
      metadata: metadataForSvg(saveDocument(document))
    });
  } catch (error) {
    if (error instanceof LayoutError)
      throw new CommandError(`${path}: not drawn: ${error.message}`);
    throw error;
  } finally {
    engine.stop();
  }
};
