/** The sign in a browser's tab: a plate, one half dark and one half bright. */
import type { APIRoute } from 'astro';

const mark = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 32 32"><path fill="#16110f" d="M5 2h22v28H5z"/><path fill="#d9cdb8" d="M16 4h9v24h-9z"/><path fill="none" stroke="#a9823c" stroke-width="2" d="M6 3h20v26H6z"/></svg>
`;

export const GET: APIRoute = () =>
  new Response(mark, { headers: { 'content-type': 'image/svg+xml' } });
