// What a photo must have before anything is measured on it. Common practice, no source.
import { photoUnscaled } from '#checks/rules/photo-unscaled.ts';
import { documentSchema, type Photo } from '#document/index.ts';
import { chassis } from '../helpers/chassis.ts';
import { ruleTester } from '../helpers/rule-tester.ts';

const withPhoto = (more: Partial<Photo>) => () => {
  const document = structuredClone(chassis().strip('TS1', 2).build());
  const [unit = ''] = Object.keys(document.units);
  const picture = { hash: 'a'.repeat(64), type: 'image/jpeg', width: 3000, height: 2000 };
  const photo = {
    id: 'ph1',
    order: 'a0',
    unit,
    name: 'front half',
    picture,
    face: 'below',
    ...more
  };
  return documentSchema.parse({ ...document, photos: { ph1: photo } });
};

ruleTester(photoUnscaled, {
  valid: {
    'no photo': () => chassis().strip('TS1', 2),
    'two places': withPhoto({
      scale: { by: 'two points', a: { x: 0, y: 0 }, b: { x: 300, y: 400 }, mm: 100 }
    }),
    'a rectangle': withPhoto({
      scale: {
        by: 'rectangle',
        corners: [
          { x: 412, y: 305 },
          { x: 2710, y: 188 },
          { x: 2895, y: 2010 },
          { x: 265, y: 1874 }
        ],
        widthMm: 330,
        heightMm: 254
      }
    }),
    'a photo of one spot': withPhoto({ of: { part: 'pts1' } })
  },
  invalid: {
    'no scale': [
      withPhoto({}),
      {
        severity: 'note',
        says: /^Photo front half of .+, seen from below, has no scale/,
        hasEdit: false
      }
    ],
    'no name': [
      withPhoto({ name: '', face: 'above' }),
      { severity: 'note', says: /^A photo of .+ above/ }
    ],
    'a unit that is missing': [
      withPhoto({ unit: 'gone' }),
      { severity: 'note', says: 'Photo front half, seen from below, has no scale' }
    ]
  }
});
