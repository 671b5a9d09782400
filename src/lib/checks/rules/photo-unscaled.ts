// A photo of a unit that is not true to scale: nothing may be measured on it.
import type { Photo } from '#document/index.ts';
import { sortByOrder } from '#document/order.ts';
import { findElement } from '#document/references.ts';
import type { Study } from '#study/index.ts';
import type { Finding, Rule } from '../finding.ts';
import { documentPlace } from '../places.ts';
import { commonPractice } from '../words.ts';

export const photoUnscaled: Rule = {
  id: 'photo-unscaled',
  severity: 'note',
  title: 'Photos that are not true to scale',
  source: commonPractice,
  explain:
    'A photo under the drawing shows where things are, but a distance on it means nothing until it has a scale. Photos of one spot are left out: nothing is drawn over them. It passes once the scale is set, by two places and the distance between them or by the corners of a rectangle of known sides.',
  check: (study) =>
    sortByOrder(study.document.photos)
      .filter(({ of, scale }) => of === undefined && scale === undefined)
      .map((photo) => findingOf(study, photo))
};

function findingOf(study: Study, photo: Photo): Finding {
  const unit = findElement(study.document.units, photo.unit);
  const name = photo.name === '' ? 'A photo' : `Photo ${photo.name}`;
  const where = unit ? ` of ${unit.name}` : '';
  return {
    rule: 'photo-unscaled',
    severity: 'note',
    at: [unit ? { kind: 'unit', id: unit.id, label: unit.name } : documentPlace(study)],
    message: `${name}${where}, seen from ${photo.face}, has no scale: nothing can be measured on it.`,
    source: commonPractice,
    fix: {
      words: 'Give two places and how far apart they are, or the corners of a known rectangle.'
    }
  };
}
