// The file desk's hands in the browser: download, choose, fetch. Nothing here decides anything.
import type { ChosenFile, DeskHost } from './file-desk.ts';
import type { FileHandle, FilePlace } from './file-place.ts';

/** The pickers of browsers that let a page write to a file that was chosen. */
interface Pickers {
  readonly showOpenFilePicker?: () => Promise<FileHandle[]>;
  readonly showSaveFilePicker?: (wish: { suggestedName: string }) => Promise<FileHandle>;
}
const pickers = (): Pickers => globalThis as Pickers;

const download = (name: string, type: string, content: string | Uint8Array): void => {
  const url = URL.createObjectURL(new Blob([content as BlobPart], { type }));
  const link = document.createElement('a');
  link.href = url;
  link.download = name;
  link.click();
  // The browser has taken the file by the next turn; the address is not needed after that.
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
};

const chooseByField = (): Promise<ChosenFile | null> =>
  new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = '.json,.zip,.csv,.tsv,.txt,.svg,.html';
    input.addEventListener('change', () => {
      const file = input.files?.[0];
      resolve(file ? { file, place: null } : null);
    });
    input.addEventListener('cancel', () => resolve(null));
    input.click();
  });

const isCancelled = (error: unknown): boolean =>
  error instanceof DOMException && error.name === 'AbortError';

const placeOf = (handle: FileHandle): FilePlace => ({ name: handle.name, handle });

const chooseFile = async (): Promise<ChosenFile | null> => {
  const { showOpenFilePicker } = pickers();
  if (!showOpenFilePicker) return chooseByField();
  try {
    const [handle] = await showOpenFilePicker.call(globalThis);
    return handle ? { file: await handle.getFile(), place: placeOf(handle) } : null;
  } catch (error) {
    return isCancelled(error) ? null : chooseByField();
  }
};

const choosePlace: DeskHost['choosePlace'] = async (name) => {
  const { showSaveFilePicker } = pickers();
  if (!showSaveFilePicker) return 'none';
  try {
    return placeOf(await showSaveFilePicker.call(globalThis, { suggestedName: name }));
  } catch (error) {
    return isCancelled(error) ? null : 'none';
  }
};

const fetchBytes = async (url: string): Promise<Uint8Array> => {
  const answer = await fetch(url);
  if (!answer.ok) throw new Error(`${url}: ${answer.status}`);
  return new Uint8Array(await answer.arrayBuffer());
};

const today = (): string => {
  const now = new Date();
  const two = (value: number): string => String(value).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};

export const browserHost: DeskHost = { download, chooseFile, choosePlace, today, fetchBytes };
