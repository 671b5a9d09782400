// Which picture a part gets, by its kind.
import type { Figure } from './figure.ts';
import { buildTransformer, buildYoke } from './column-figure.ts';
import { buildAntenna, buildControl, buildPictureTube, buildSpeaker } from './one-flank.ts';
import { buildPlug } from './plug.ts';
import type { FigureRequest } from './request.ts';
import { buildRing, isRing } from './ring.ts';
import { buildPlainBox, buildPoint, buildStrip } from './strip.ts';
import { buildTwoLead, isTwoLead } from './two-lead.ts';

/** The drawing of one part with its ports, in millimetres from its upper left corner. */
export const buildFigure = (request: FigureRequest): Figure => {
  const { part, terminals } = request;
  if (isTwoLead(part.kind, terminals.length)) return buildTwoLead(request);
  if (isRing(request)) return buildRing(request);
  switch (part.kind) {
    case 'terminal strip':
      return buildStrip(request);
    case 'plug':
    case 'jack':
      return buildPlug(request);
    case 'transformer':
    case 'coil':
      return buildTransformer(request);
    case 'yoke':
      return buildYoke(request);
    case 'picture tube':
      return buildPictureTube(request);
    case 'control':
      return buildControl(request);
    case 'speaker':
      return buildSpeaker(request);
    case 'antenna':
      return buildAntenna(request);
    case 'ground lug':
    case 'splice':
    case 'clip':
      return terminals.length === 1 ? buildPoint(request) : buildPlainBox(request);
    default:
      return buildPlainBox(request);
  }
};
