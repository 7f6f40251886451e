/** Plates that can be shown beside another one; a covered plate is looked at on its own page. */
import type { APIRoute } from 'astro';
import { publishedPlates } from '../../../components/exhibit.ts';
import { inEachLanguage } from '../../../components/speech.ts';

export function getStaticPaths() {
  return inEachLanguage([{ params: {}, props: {} }]);
}

export const GET: APIRoute = async () => {
  const plates = (await publishedPlates()).filter(({ record }) => record.advisory === undefined);
  const list = plates.map(({ slug, record }) => ({ slug, title: record.title }));
  return new Response(JSON.stringify(list), { headers: { 'content-type': 'application/json' } });
};
