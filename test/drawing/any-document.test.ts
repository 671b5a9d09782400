// Any document that the schema takes can be drawn: dangling references, unknown kinds, parts without
// terminals, wires without ends. What must hold of a good one holds of these too.
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runChecks } from '#checks/index.ts';
import { buildDiagram, buildDisplayList, toSvg } from '#drawing/index.ts';
import { findNumberClashes } from '#drawing/place-numbers.ts';
import { buildStudy } from '#study/build-study.ts';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

describe('the diagram of any document', () => {
  it('is proved, names every wire and can be written', async () => {
    await fc.assert(
      fc.asyncProperty(arbitraryDocument(14), async (document) => {
        const study = buildStudy(document);
        const diagram = await buildDiagram(study, layoutEngine, { tries: 1, timeLimitMs: 60_000 });
        const { throughParts, overlaps, partClashes, slanted } = diagram.proofs;
        expect({ throughParts, overlaps, partClashes, slanted }).toEqual({
          throughParts: [],
          overlaps: [],
          partClashes: [],
          slanted: 0
        });
        expect(findNumberClashes(diagram.tags.map(({ place }) => place))).toEqual([]);
        const list = buildDisplayList(diagram, { findings: runChecks(study) });
        const named = new Set(
          list.items.flatMap(({ layer, subject }) =>
            layer === 'numbers' && subject?.kind === 'wire' ? [subject.id] : []
          )
        );
        expect(named).toEqual(new Set(study.index.wires.map(({ id }) => id)));
        const ids = list.items.map(({ id }) => id);
        expect(new Set(ids).size).toBe(ids.length);
        expect(toSvg(list, { title: document.identity.title })).not.toMatch(/NaN|Infinity/);
      }),
      { seed: 21, numRuns: 40 }
    );
  }, 300_000);
});
