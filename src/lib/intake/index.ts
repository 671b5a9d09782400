// What the intake offers to the rooms above it.
export { decodeListBytes } from './decode-list-bytes.ts';
export type { IntakeNote } from './notes.ts';
export {
  readListSource,
  readOpened,
  readWireList,
  type IntakeCounts,
  type WireListOptions,
  type WireListReading
} from './read-wire-list.ts';
export {
  isListFile,
  openFileBytes,
  openReading,
  type FileProblem,
  type Opened
} from './open-file.ts';
export {
  namesEnds,
  openListRows,
  openListText,
  withHeadingRow,
  withRole,
  type ListOpened,
  type ListSource
} from './list-source.ts';
export type { ListLayout } from './list-layout.ts';
export type { Column, ColumnRole } from './columns.ts';
export { openSheets, readWorkbook, type OpenedSheet } from './read-workbook.ts';
export { roleGroups, roleNames, unitsOfRole } from './role-names.ts';
export { mergeEdit, planMerge, type ListMerge, type MergedWire } from './merge-list.ts';
