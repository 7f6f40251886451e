/** Everything may be read; where the list of pages is. */
import type { APIRoute } from 'astro';
import { base } from '../components/addresses.ts';
import { exhibit } from '../components/exhibit.ts';
import { documentAddress } from '../components/manifest-parts.ts';

export const GET: APIRoute = async () => {
  const whole = await exhibit();
  const list = whole.record.address
    ? `\nSitemap: ${documentAddress(whole, `${base}sitemap.xml`)}\n`
    : '';
  return new Response(`User-agent: *\nAllow: /\n${list}`, {
    headers: { 'content-type': 'text/plain' },
  });
};
