// A chassis comes in from a document, a zip or a wire list, and a bad file is told with its limit.
import { makeIdFrom, saveDocument } from '#document/index.ts';
import { readAnyFile } from '#editor/files/read-any-file.ts';
import { buildChassisZip } from '#storage/index.ts';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { chassis } from '../../helpers/chassis.ts';

const makeId = makeIdFrom(() => 0.5);
const fileOf = (name: string, ...content: BlobPart[]): File => new File(content, name);
const set = chassis('Bench set').tube('V1', '6CG7').build();
const zipOf = (...titles: string[]): BlobPart =>
  buildChassisZip(
    titles.map((title) => chassis(title).build()),
    new Map()
  ) as BlobPart;

describe('a file', () => {
  it('that holds a document may be saved back to', async () => {
    const reading = await readAnyFile(fileOf('a.chassis.json', saveDocument(set)), makeId);
    expect(reading).toMatchObject({ ok: true, documents: [set], isDocumentFile: true });
  });

  it('that holds a list is opened as rows, and not read yet', async () => {
    const list = fileOf('a.csv', 'wire,from,to\n1,V1-2,V2-3\n');
    expect(await readAnyFile(list, makeId)).toMatchObject({
      ok: true,
      kind: 'list',
      sheets: [{ name: '', opened: { ok: true, source: { isRecognised: true } } }]
    });
  });

  it('that is a workbook gives its sheets', async () => {
    const bytes = readFileSync(
      new URL('../../intake/workbooks/bench-set.xlsx', import.meta.url)
    ) as BlobPart;
    expect(await readAnyFile(fileOf('set.xlsx', bytes), makeId)).toMatchObject({
      ok: true,
      kind: 'list',
      sheets: [{ name: 'wires' }]
    });
  });

  it('that is a zip is known by its content, and gives all its chassis', async () => {
    const reading = await readAnyFile(fileOf('a.csv', zipOf('First', 'Second')), makeId);
    expect(
      reading.ok &&
        reading.kind === 'chassis' &&
        reading.documents.map(({ identity }) => identity.title)
    ).toEqual(['First', 'Second']);
  });

  it('that is larger than anything is not even read', async () => {
    const large = {
      name: 'large.zip',
      size: 600 * 1024 * 1024,
      arrayBuffer: () => Promise.reject(new Error('it was read'))
    };
    const reading = await readAnyFile(large, makeId);
    expect(reading).toMatchObject({
      ok: false,
      problems: [{ wrong: 'it has 600 MB', wayOut: 'the most is 512 MB: is it the right file?' }]
    });
  });

  it('of a zip whose document does not open says where', async () => {
    const { zipSync, strToU8 } = await import('fflate');
    const zip = zipSync({ 'x.chassis.json': strToU8('{"format": 1}') });
    const reading = await readAnyFile(fileOf('x.zip', zip as BlobPart), makeId);
    expect(reading.ok).toBe(false);
    expect(!reading.ok && reading.problems[0]?.wrong).toContain('not a chassis document');
  });
});
