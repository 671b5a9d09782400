// A chassis as one page, with what is private left out: the same for `page` and for `build --all`.
import { buildShareCopy, type PrivateThing } from '#document/index.ts';
import { buildPage } from '#paperwork/index.ts';
import type { Terminal } from './command.ts';
import { pageDrawings, shownPictures, today, type DrawOptions } from './draw-chassis.ts';
import { judgeDocument, type Judged } from './judge.ts';

/** The page's HTML.
 *  @param asked the private things that go along all the same
 *  @throws CommandError where the layout fails or takes longer than its limit */
export const drawPage = async (
  path: string,
  { document, pictures }: Pick<Judged, 'document' | 'pictures'>,
  asked: ReadonlySet<PrivateThing>,
  options: DrawOptions,
  terminal: Terminal
): Promise<string> => {
  const judged = judgeDocument(buildShareCopy(document, asked), pictures);
  return buildPage(judged.study, judged.findings, {
    drawings: await pageDrawings(path, judged, options, terminal),
    pictures: shownPictures(pictures),
    photos: (hash) => pictures.get(hash),
    date: today()
  });
};
