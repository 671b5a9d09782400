// What the drawing room offers to the rooms above it.
export * from './display-list.ts';
export * from './build-diagram.ts';
export * from './build-display-list.ts';
export * from './diagram.ts';
export * from './inks.ts';
export * from './styles.ts';
export * from './to-svg.ts';
export * from './photos/place-photos.ts';
export { layPhoto, photoPlace, type PhotoLay } from './photos/lay-photo.ts';
export { warpPixels, type Pixels } from './photos/warp.ts';
export { straightenRectangle, type Straightening } from './photos/straighten.ts';
export { pictureCorners, pictureFrame } from './picture-corners.ts';
export {
  buildPictorial,
  drawPictorial,
  type PictorialOptions
} from './pictorial/build-pictorial.ts';
export { layPictorial, type PictorialGeometry } from './pictorial/pictorial-geometry.ts';
export { type Face } from './pictorial/sheet-places.ts';
export type { ElkGraph, LayoutEngine } from './layout/first/layout-engine.ts';
export { LayoutError, type LayoutOptions, type LayoutProgress } from './layout/layout-options.ts';
export { markChanges, toMarks, type ChangeMark } from './mark-changes.ts';
export { cropToPick } from './paper/crop-to-pick.ts';
export { layOnPaper, PaperError, type PaperPlan, type PaperWish } from './paper/lay-on-paper.ts';
export { paperNames, type PaperName } from './paper/paper-sizes.ts';
