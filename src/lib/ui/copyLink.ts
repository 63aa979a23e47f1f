/** Links longer than this are cut by some programs that carry letters. Source: common practice. */
const LONG_LINK = 2000;

/** Copies a link; tells whether the browser would, and the words to say of it. */
export async function copyLink(
  link: string
): Promise<{ readonly copied: boolean; readonly words: string }> {
  const long =
    link.length > LONG_LINK
      ? ' Some letters cut a link as long as this: if it does not open, pass on a file.'
      : '';
  try {
    await navigator.clipboard.writeText(link);
    return { copied: true, words: `The link is copied: ${link.length} characters.${long}` };
  } catch {
    const words = `This browser copies nothing for a page. The link stands in the box below.${long}`;
    return { copied: false, words };
  }
}
