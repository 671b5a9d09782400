// Puts a page for print into an empty frame. The policy of this page lets no text become styles, so the
// page's own go in as a sheet object.

/** Fills a frame with a page's body and styles. Scripts in it would not run: the document was only parsed. */
export const fillFrame = (frame: HTMLIFrameElement, page: string): void => {
  const inside = frame.contentWindow;
  if (inside === null) return;
  // Taken out before it is parsed: even there the policy would refuse it, and say so.
  const styles: string[] = [];
  const bare = page.replace(/<style>([^<]*)<\/style>/g, (_, own: string) => {
    styles.push(own);
    return '';
  });
  const parsed = new DOMParser().parseFromString(bare, 'text/html');
  const target = inside.document;
  target.title = parsed.title;
  target.documentElement.lang = parsed.documentElement.lang;
  target.body.replaceChildren(...[...parsed.body.childNodes].map((node) => target.adoptNode(node)));
  const { CSSStyleSheet: Sheet } = inside as unknown as { CSSStyleSheet: typeof CSSStyleSheet };
  const sheet = new Sheet();
  sheet.replaceSync(styles.join('\n'));
  target.adoptedStyleSheets = [sheet];
};
