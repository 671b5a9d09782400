// What the intake offers to the rooms above it.
export { decodeListBytes } from './decode-list-bytes.ts';
export type { IntakeNote } from './notes.ts';
export {
  readWireList,
  type IntakeCounts,
  type WireListOptions,
  type WireListReading
} from './read-wire-list.ts';
export { openFileBytes, type FileProblem, type Opened } from './open-file.ts';
