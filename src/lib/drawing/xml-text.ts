// Text as it may stand in XML: characters that XML cannot hold are left out, the rest is escaped.

// eslint-disable-next-line no-control-regex -- the characters that XML 1.0 cannot hold
const notInXml = /[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g;
const loneSurrogate = /[\ud800-\udbff](?![\udc00-\udfff])|(?<![\ud800-\udbff])[\udc00-\udfff]/g;

const entities: Readonly<Record<string, string>> = {
  '&': '&amp;',
  '<': '&lt;',
  '>': '&gt;',
  '"': '&quot;',
  "'": '&#39;'
};

/** The text for element content and for attributes in either kind of quote. */
export const escapeXmlText = (text: string): string =>
  text
    .replace(notInXml, '')
    .replace(loneSurrogate, '\ufffd')
    .replace(/[\t\n\r]/g, ' ')
    .replace(/[&<>"']/g, (letter) => entities[letter] ?? letter);
