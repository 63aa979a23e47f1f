import page from 'virtual:walk-player';

export const prerender = true;

/** The page that plays one walkthrough by itself; the place for it is empty. */
export const GET = () =>
  new Response(page, { headers: { 'content-type': 'text/html; charset=utf-8' } });
