// All that sharing needs beside the page, as one piece that is fetched after it.
export { cautionsFor, runChecks } from '#checks/index.ts';
export { cropToPick, layOnPaper, toSvg } from '#drawing/index.ts';
export { toPdf } from '#drawing/paper/to-pdf.ts';
export {
  buildPage,
  buildSchedule,
  makeWholePlan,
  scheduleToCsv,
  scheduleToXlsx
} from '#paperwork/index.ts';
export { buildChassisZip } from '#storage/index.ts';
export { buildStudy } from '#study/index.ts';
export { loadFace } from './face-files.ts';
export { decodePictures, toJpeg } from './picture-files.ts';
export { sheetOutlines } from './sheet-outlines.ts';
export { pngSize, writePng } from './write-png.ts';
