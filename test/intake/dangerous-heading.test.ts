// A column may be called anything: what is read from it must open again.
import { makeIdFrom, openDocument, saveDocument } from '#document/index.ts';
import { readWireList } from '#intake/index.ts';
import { expect, it } from 'vitest';

it.each(['constructor', '__proto__', 'prototype'])('keeps a column called %s', (heading) => {
  let turn = 0;
  const makeId = makeIdFrom(() => (turn++ * 0.618034) % 1);
  const list = readWireList(`no,from,to,${heading}\n1,V1-5,V2-3,kept\n`, {
    fileName: 'list.csv',
    makeId
  });
  const text = saveDocument(list.document!);
  expect(text).toContain('kept');
  expect(openDocument(text, 'x')).toMatchObject({ ok: true });
});
