// What the storage room offers to the rooms above it.
export * from './files.ts';
export * from './store-failure.ts';
export * from './browser-store.ts';
export * from './beside-store.ts';
export * from './typed-store.ts';
export * from './picture-store.ts';
export * from './document-pictures.ts';
export * from './chassis-zip.ts';
export * from './workbook-zip.ts';
export { pictureTypeOf } from './picture-type.ts';
export { readPictureHead, type PictureHead } from './picture-file/picture-head.ts';
export { isOnItsSide, uprightTransform } from './picture-file/orientation.ts';
export { isZip, zipLimits } from './zip-directory.ts';
export * from './persist.ts';
export type { KeptEntry } from './database.ts';
export * from './share-link.ts';
