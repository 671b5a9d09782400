// What writes files for others, but for the PDF writer, which is large.
export { cautionsFor, runChecks } from '#checks/index.ts';
export { cropToPick, layOnPaper, toSvg } from '#drawing/index.ts';
export {
  buildPage,
  buildSchedule,
  makeWholePlan,
  scheduleToCsv,
  scheduleToXlsx
} from '#paperwork/index.ts';
export { buildChassisZip } from '#storage/index.ts';
export { buildStudy } from '#study/index.ts';
export { decodePictures, toJpeg } from './picture-files.ts';
export { sheetOutlines } from './sheet-outlines.ts';
export { pngSize, writePng } from './write-png.ts';
