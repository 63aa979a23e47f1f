import { fileName } from '../../share';
import { filledPage, walkText, type Walkthrough } from '../../walk';
import { download } from '../download';

/** Where the page without a walkthrough lies, under the site's own folder. */
const PLAYER = '/explain/player.html';

/** Saves a walkthrough as a file, to be opened here again. */
export const saveWalkFile = (walk: Walkthrough): void =>
  download(fileName(walk.title, 'walk.json'), 'application/json', walkText(walk));

/**
 * Saves a walkthrough as one page that plays by itself; tells its size in bytes.
 * @throws Error when the page is not there.
 */
export async function saveWalkPage(walk: Walkthrough, base: string): Promise<number> {
  const answer = await fetch(`${base}${PLAYER}`);
  if (!answer.ok) throw new Error(`The player could not be fetched: ${answer.status}.`);
  const page = filledPage(await answer.text(), walk);
  const bytes = new TextEncoder().encode(page);
  download(fileName(walk.title, 'html'), 'text/html', bytes);
  return bytes.length;
}
