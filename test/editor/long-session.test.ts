// Eight hours of use in fast time, seeded: edits, undo and redo, states gone back to, the page closed and opened
// again. At the end the document is sound, is what the store has kept, and can be undone as far as it goes back.
import 'fake-indexeddb/auto';
import {
  documentSchema,
  openDocument,
  saveDocument,
  type ChassisDocument
} from '#document/index.ts';
import { runChecks } from '#checks/index.ts';
import { DocumentState } from '#editor/core/document-state.svelte.ts';
import { createBrowserStore } from '#storage/index.ts';
import { buildStudy } from '#study/index.ts';
import fc from 'fast-check';
import { expect, it } from 'vitest';
import { generateChassis, seeded } from '../helpers/generate-chassis.ts';
import { arbitraryStudyEdit } from '../helpers/study-edits.ts';

const hours = 8;
const pauseMs = 10_000;
const saveEvery = 12;

it('eight hours of random use end with a sound document', async () => {
  const chance = seeded(88);
  const store = createBrowserStore('long session');
  let time = Date.UTC(2026, 0, 5, 9);
  const end = time + hours * 3_600_000;
  const edits = fc.sample(arbitraryStudyEdit, { seed: 89, numRuns: 600 });
  let documents = new DocumentState(generateChassis(60, 3), () => time);

  const done = { edited: 0, refused: 0, undone: 0, redone: 0, reopened: 0, wentBack: 0 };
  await store.save(documents.document, time);
  for (let turn = 0; time < end; turn++, time += pauseMs * (0.1 + 1.8 * chance())) {
    const what = chance();
    if (what < 0.75) {
      const edit = edits[Math.floor(chance() * edits.length)]?.(documents.document);
      if (edit === undefined) continue;
      if (documents.edit(edit).ok) done.edited += 1;
      else done.refused += 1;
    } else if (what < 0.87) {
      if (documents.undo() !== null) done.undone += 1;
    } else if (what < 0.97) {
      if (documents.redo() !== null) done.redone += 1;
    } else if (what < 0.985) {
      // The page is closed and opened again: undo begins anew, as in a fresh window.
      await store.save(documents.document, time);
      const again = await store.load(documents.document.id);
      expect(again).toEqual(documents.document);
      documents = new DocumentState(again ?? documents.document, () => time);
      done.reopened += 1;
    } else {
      const states = await store.states(documents.document.id);
      const state = states[Math.floor(chance() * states.length)];
      const earlier = state && (await store.loadRevision(documents.document.id, state.savedAt));
      if (earlier && documents.goTo(earlier, 'go back')) done.wentBack += 1;
    }
    if (turn % saveEvery === 0) await store.save(documents.document, time);
    // The study is made as it would be on screen, so that a fault in it comes to light.
    if (turn % 5 === 0) expect(documents.study.document).toBe(documents.document);
  }
  const kept: ChassisDocument = documents.document;
  await store.save(kept, time);
  const { edited, undone, redone, reopened, wentBack } = done;
  for (const count of [edited, undone, redone, reopened, wentBack])
    expect(count, JSON.stringify(done)).toBeGreaterThan(10);

  documentSchema.parse(kept);
  const text = saveDocument(kept);
  const opened = openDocument(text, 'x');
  expect(opened.ok && saveDocument(opened.document)).toBe(text);
  expect(await store.load(kept.id)).toEqual(kept);
  const fresh = runChecks(buildStudy(kept));
  const shown = runChecks(documents.study);
  expect(shown.map(({ rule, message }) => [rule, message])).toEqual(
    fresh.map(({ rule, message }) => [rule, message])
  );
  while (documents.undo() !== null);
  documentSchema.parse(documents.document);
  while (documents.redo() !== null);
  expect(saveDocument(documents.document)).toBe(text);
  store.close();
}, 600_000);
