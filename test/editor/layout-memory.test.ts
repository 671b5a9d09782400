// The layout of the last visit: shown at once where the chassis is built as it was, and made anew where it is not.
import { runChecks } from '#checks/index.ts';
import { applyEdit, openDocument, saveDocument, type ChassisDocument } from '#document/index.ts';
import { connectEnd, setWireFields } from '#document/edits.ts';
import { layOutHere, type LayOut } from '#editor/sheet/lay-out.ts';
import { DiagramState, type DiagramView } from '#editor/sheet/diagram-state.svelte.ts';
import { lateSheet } from '#editor/sheet/late-sheet.ts';
import type { LayoutStore } from '#editor/sheet/layout-memory.ts';
import { structureKey } from '#editor/sheet/same-structure.ts';
import { buildStudy } from '#study/index.ts';
import { beforeAll, describe, expect, it } from 'vitest';
import { chassis } from '../helpers/chassis.ts';
import { layoutEngine } from '../helpers/layout-engine.ts';

beforeAll(() => lateSheet.load());

const start = chassis('Bench set')
  .unit('Main chassis', { size: [430, 300] })
  .tube('V1', '6CG7')
  .strip('TS1', 5, { grounded: [3] })
  .wire(12, 'V1-1', 'TS1-2', { dcV: 285 })
  .wire(14, 'V1-3', 'TS1-3')
  .build();
const [first = '', second = ''] = Object.keys(start.wires);
const edited = (...edits: Parameters<typeof applyEdit>[1][]): ChassisDocument =>
  edits.reduce((current, edit) => {
    const applied = applyEdit(current, edit);
    if (!applied.ok) throw new Error(applied.problem);
    return applied.document;
  }, start);
const reopened = (document: ChassisDocument): ChassisDocument => {
  const opened = openDocument(saveDocument(document), 'x');
  if (!opened.ok) throw new Error('it does not open');
  return opened.document;
};
const viewOf = (document: ChassisDocument): DiagramView => {
  const study = buildStudy(document);
  return { study, findings: runChecks(study), isMarked: () => true };
};

/** What a browser does with a layout: it copies it in and out. */
const buildStore = () => {
  const kept = new Map<string, { key: string; layout: unknown }>();
  const store: LayoutStore = {
    keepLayout: async (id, key, layout) => {
      kept.set(id, structuredClone({ key, layout }));
    },
    layout: async (id, key) => {
      const found = kept.get(id);
      return found?.key === key ? structuredClone(found.layout) : null;
    }
  };
  return store;
};

const nowhere: LayOut = () => Promise.reject(new Error('it was laid out anew'));
const drawn = async (state: DiagramState, document: ChassisDocument) => {
  state.show(viewOf(document));
  while (state.progress !== null) await new Promise((resolve) => setTimeout(resolve, 5));
  return state.list;
};

describe('a layout from the last visit', () => {
  it('is shown without another layout, item for item', async () => {
    const store = buildStore();
    const before = await drawn(
      new DiagramState(layOutHere(layoutEngine), { store, edition: '1' }),
      start
    );
    const later = new DiagramState(nowhere, { store, edition: '1' });
    const again = await drawn(later, reopened(start));
    expect(later.problem).toBeNull();
    expect(again).toEqual(before);
  });

  it('shows the values of today', async () => {
    const store = buildStore();
    await drawn(new DiagramState(layOutHere(layoutEngine), { store, edition: '1' }), start);
    const later = new DiagramState(nowhere, { store, edition: '1' });
    const list = await drawn(later, edited(setWireFields(first, { carries: { dcV: 18_000 } })));
    expect(list?.items.some(({ style }) => style === 'wire.20k+')).toBe(true);
  });

  it.each<[string, ChassisDocument, string]>([
    [
      'a wire ends elsewhere',
      edited(
        connectEnd(second, 'to', start.wires[first]?.to.at ?? { part: '', terminal: '' }, 'seen')
      ),
      '1'
    ],
    ['another edition of the program draws', start, '2']
  ])('is made anew where %s', async (_name, document, edition) => {
    const store = buildStore();
    await drawn(new DiagramState(layOutHere(layoutEngine), { store, edition: '1' }), start);
    const later = new DiagramState(nowhere, { store, edition });
    expect(await drawn(later, document)).toBeNull();
    expect(later.problem).toContain('it was laid out anew');
  });

  it('is done without where the browser keeps nothing', async () => {
    const broken = (): Promise<never> => Promise.reject(new Error('no store'));
    const store: LayoutStore = { keepLayout: broken, layout: broken };
    const state = new DiagramState(layOutHere(layoutEngine), { store, edition: '1' });
    expect((await drawn(state, start))?.items.length).toBeGreaterThan(10);
    expect(state.problem).toBeNull();
  });
});

describe('what a layout was made from', () => {
  it('is the same on a later visit, and after values changed', () => {
    expect(structureKey(reopened(start))).toBe(structureKey(start));
    const turned = { ...start, wires: Object.fromEntries(Object.entries(start.wires).reverse()) };
    expect(structureKey(turned)).toBe(structureKey(start));
    expect(structureKey(edited(setWireFields(first, { found: { colour: 'red' } })))).toBe(
      structureKey(start)
    );
  });
});
