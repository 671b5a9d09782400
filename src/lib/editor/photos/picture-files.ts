// Which of the files that came are pictures, and how the browser is asked for them.

const pictureEnding = /\.(jpe?g|jfif|png|webp|heic|heif|avif|gif|bmp|tiff?|dng)$/i;

/** True for what is to be taken as a photo, readable or not: a wrong kind is told of there. */
export const isPictureFile = ({ name, type }: Pick<File, 'name' | 'type'>): boolean =>
  (type.startsWith('image/') && type !== 'image/svg+xml') || pictureEnding.test(name);

/** Asks for pictures. `camera` goes straight to a camera where the device has one. Empty when the person
 *  gave up. To be called from a click or a key. */
export const choosePictures = (
  wish: { readonly camera?: boolean; readonly many?: boolean } = {}
): Promise<readonly File[]> =>
  new Promise((resolve) => {
    const input = document.createElement('input');
    input.type = 'file';
    input.accept = 'image/*';
    input.multiple = wish.many === true && wish.camera !== true;
    if (wish.camera === true) input.setAttribute('capture', 'environment');
    input.addEventListener('change', () => resolve([...(input.files ?? [])]));
    input.addEventListener('cancel', () => resolve([]));
    input.click();
  });
