// A file on the person's own disk that a chassis is saved back to, in browsers that allow it.
// Source: File System Access, WICG draft: what is written goes to a copy and takes the file's place when it
// is closed, so that an interrupted save leaves the former file.

/** What is used of a file's handle beyond what TypeScript knows of it. */
export type FileHandle = FileSystemFileHandle & {
  readonly requestPermission?: (wish: { mode: 'readwrite' }) => Promise<PermissionState>;
};

export interface FilePlace {
  readonly name: string;
  readonly handle: FileHandle;
}

/** Whether what was kept is the handle of a file. */
export const isFileHandle = (value: unknown): value is FileHandle =>
  typeof value === 'object' &&
  value !== null &&
  'createWritable' in value &&
  'name' in value &&
  typeof value.name === 'string';

/** Writes a file whole, or leaves it as it was and rejects. To be called from a click or a key, since the
 *  browser may ask whether it may. */
export const writeToPlace = async ({ handle }: FilePlace, bytes: Uint8Array): Promise<void> => {
  if ((await handle.requestPermission?.({ mode: 'readwrite' })) === 'denied') {
    throw new Error('the browser was told not to change this file');
  }
  const writer = await handle.createWritable();
  try {
    await writer.write(bytes as Uint8Array<ArrayBuffer>);
  } catch (error) {
    await writer.abort().catch(() => undefined);
    throw error;
  }
  await writer.close();
};
