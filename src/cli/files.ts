// Reading and writing files with errors that name the file and the way out. A file is written
// beside its place first and then moved there, so that a broken write never eats the old one.
import { mkdir, readFile, rename, rm, stat, writeFile } from 'node:fs/promises';
import { dirname, resolve } from 'node:path';
import { zipLimits } from '#storage/index.ts';
import { CommandError } from './command.ts';

/** A zip with pictures is the largest; what is read out of a file has limits of its own. */
const maxBytes = zipLimits.fileBytes;

const reasonOf = (error: unknown): string => {
  const code = error instanceof Error && 'code' in error ? String(error.code) : '';
  return (
    {
      ENOENT: 'there is no such file',
      EISDIR: 'that is a folder, not a file',
      EACCES: 'this user may not read or write it',
      ENOSPC: 'the disk is full',
      ENOTDIR: 'a part of the path is a file, not a folder'
    }[code] ?? (error instanceof Error ? error.message : String(error))
  );
};

/** The bytes of a file, as many as a zip may have. */
export const readBytes = async (path: string): Promise<Uint8Array> => {
  try {
    const { size } = await stat(path);
    if (size > maxBytes)
      throw new CommandError(
        `${path}: ${size} bytes, and the limit is ${maxBytes}: is it the right file?`
      );
    return await readFile(path);
  } catch (error) {
    if (error instanceof CommandError) throw error;
    throw new CommandError(`${path}: ${reasonOf(error)}: check the name and the folder`);
  }
};

/** As `writeBytes`, for text. */
export const writeText = (path: string, text: string): Promise<void> => write(path, text);

/** Writes a file whole or not at all; its folder is made where it is missing. */
export const writeBytes = (path: string, bytes: Uint8Array): Promise<void> => write(path, bytes);

const write = async (path: string, content: string | Uint8Array): Promise<void> => {
  const beside = `${path}.${process.pid}.part`;
  try {
    await mkdir(dirname(resolve(path)), { recursive: true });
    await writeFile(beside, content);
    await rename(beside, path);
  } catch (error) {
    await rm(beside, { force: true }).catch(() => undefined);
    throw new CommandError(
      `${path}: not written: ${reasonOf(error)}: choose another place with --out`
    );
  }
};
