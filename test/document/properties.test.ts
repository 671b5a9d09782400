// What holds for any document and any edit. Runs are seeded; a failure prints its seed.
import {
  applyEdit,
  buildRevision,
  collections,
  compareRevisions,
  documentSchema,
  documentTextFromSvg,
  emptyHistory,
  hashOfDocument,
  metadataForSvg,
  openDocument,
  pushEdit,
  redo,
  saveDocument,
  setPolicy,
  undo,
  type ChassisDocument,
  type History
} from '#document/index.ts';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { arbitraryDocument } from '../helpers/arbitrary-document.ts';
import { arbitraryEditPlan, arbitraryRetyping } from '../helpers/arbitrary-edit.ts';
import { checkEdit } from '../helpers/check-edit.ts';

const opened = (text: string): ChassisDocument => {
  const result = openDocument(text, 'any.chassis.json');
  if (!result.ok) throw new Error(JSON.stringify(result.problems));
  return result.document;
};

/** The same document with the keys of every object the other way round. */
const turned = <T>(value: T): T => {
  if (Array.isArray(value)) return value.map(turned) as T;
  if (typeof value !== 'object' || value === null) return value;
  const entries = Object.entries(value).reverse();
  return Object.fromEntries(entries.map(([key, inner]) => [key, turned(inner)])) as T;
};

describe('any document', () => {
  it('opens as it was saved, and saves to the same bytes', () => {
    fc.assert(
      fc.property(arbitraryDocument(), (document) => {
        const text = saveDocument(document);
        const again = opened(text);
        expect(again).toEqual(document);
        expect(saveDocument(again)).toBe(text);
        expect(saveDocument(turned(document))).toBe(text);
        expect(documentSchema.parse(document)).toEqual(document);
      }),
      { seed: 5, numRuns: 100 }
    );
  });

  it('comes out of a drawing as it went in', () => {
    fc.assert(
      fc.property(arbitraryDocument(3), (document) => {
        const found = documentTextFromSvg(`<svg>${metadataForSvg(saveDocument(document))}</svg>`);
        expect(found.ok && opened(found.text)).toEqual(document);
      }),
      { seed: 6, numRuns: 50 }
    );
  });
});

describe('any edit', () => {
  it('leads there and back, goes through JSON, keeps to the schema and leaves the document alone', () => {
    const kinds = new Set<string>();
    fc.assert(
      fc.property(arbitraryDocument(), arbitraryEditPlan, (document, plan) => {
        const edit = plan(document);
        if (!edit) return;
        kinds.add(edit.kind);
        checkEdit(document, edit);
      }),
      { seed: 7, numRuns: 800 }
    );
    const elements = Object.keys(collections);
    const all = ['add', 'change', 'remove'].flatMap((verb) =>
      elements.map((name) => `${verb}-${name}`)
    );
    expect([...kinds].sort()).toEqual(
      [...all, 'change-identity', 'change-policy', 'change-proof', 'do-many'].sort()
    );
  });
});

describe('any sequence of edits', () => {
  it('can be undone to the start and redone to the end, to the byte', () => {
    const pause = fc.constantFrom(10, 2000);
    const once = fc.tuple(arbitraryEditPlan, pause, fc.boolean()).map((step) => [step]);
    const again = arbitraryRetyping.map((plans) => plans.map((plan) => [plan, 10, false] as const));
    const plans = fc.array(fc.oneof({ weight: 3, arbitrary: once }, again), { maxLength: 10 });
    let joined = 0;
    fc.assert(
      fc.property(arbitraryDocument(4), plans, (start, steps) => {
        let document = start;
        let history: History = emptyHistory;
        let time = 0;
        for (const [plan, pauseMs, isForced] of steps.flat()) {
          const edit = plan(document);
          if (!edit) continue;
          const applied = applyEdit(document, edit);
          if (!applied.ok) continue;
          time += pauseMs;
          const longer = pushEdit(history, edit, applied, time, ...(isForced ? ['any'] : []));
          if (longer !== history && longer.past.length === history.past.length) joined++;
          history = longer;
          document = applied.document;
        }
        const end = document;
        const stepsBack: ChassisDocument[] = [];
        for (let back = undo(document, history); back; back = undo(document, history)) {
          stepsBack.push(document);
          ({ document, history } = back);
        }
        expect(document).toEqual(start);
        expect(saveDocument(document)).toBe(saveDocument(start));
        history = JSON.parse(JSON.stringify(history)) as History;
        for (let on = redo(document, history); on; on = redo(document, history)) {
          ({ document, history } = on);
          expect(document).toEqual(stepsBack.pop());
        }
        expect(document).toEqual(end);
        expect(saveDocument(document)).toBe(saveDocument(end));
        const replayed = history.past.reduce((at, step) => {
          const applied = applyEdit(at, step.edit);
          return applied.ok ? applied.document : at;
        }, start);
        expect(replayed).toEqual(end);
      }),
      { seed: 8, numRuns: 200 }
    );
    expect(joined).toBeGreaterThan(200);
  });
});

describe('the lineage', () => {
  it('tells which copy is later and where two parted', () => {
    const [base] = fc.sample(arbitraryDocument(2), { seed: 9, numRuns: 1 });
    const edited = (document: ChassisDocument, marginRequired: number): ChassisDocument => {
      const applied = applyEdit(document, setPolicy({ marginRequired }));
      if (!applied.ok) throw new Error(applied.problem);
      return buildRevision(applied.document, document);
    };
    const mine = edited(base!, 1.4);
    const yours = edited(base!, 1.6);
    const later = edited(mine, 1.7);
    expect(buildRevision(base!, base!)).toBe(base);
    expect(later.lineage.slice(-2)).toEqual([hashOfDocument(base!), hashOfDocument(mine)]);
    expect(compareRevisions(base!, base!)).toBe('same');
    expect(compareRevisions(later, base!)).toBe('first is later');
    expect(compareRevisions(base!, later)).toBe('second is later');
    expect(compareRevisions(later, yours)).toBe('parted');
    const stranger = { ...base!, id: 'dother', lineage: [] };
    expect(compareRevisions({ ...base!, lineage: [] }, stranger)).toBe('unrelated');
    expect(openDocument(saveDocument(later), 'x').ok).toBe(true);
  });
});
