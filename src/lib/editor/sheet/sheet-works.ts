// What makes the drawing and works on it, as one piece that is fetched after the page.
export {
  buildDisplayList,
  drawPictorial,
  layPictorial,
  markChanges,
  toSvg
} from '#drawing/index.ts';
export { applyLook } from '#drawing/apply-look.ts';
export { redressDiagram, takeUpDiagram } from '#drawing/redress-diagram.ts';
export { letGoEdit, showHand, stepHand } from '../diagram/move-in-diagram.ts';
export { buildScene } from '../tools/scene.ts';
export { toolFaces } from '../tools/registry.ts';
