// The PDF writer and its faces: fetched when the first PDF is asked for.
export { toPdf } from '#drawing/paper/to-pdf.ts';
export { loadFace } from './face-files.ts';
