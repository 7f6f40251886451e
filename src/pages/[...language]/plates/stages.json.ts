/** Plates that can be shown beside another one; a covered plate is looked at on its own page. */
import type { APIRoute } from 'astro';
import { publishedPlates } from '../../../components/exhibit.ts';
import { inEachLanguage, speechOf } from '../../../components/speech.ts';
import { platesIn } from '../../../components/translated.ts';

export function getStaticPaths() {
  return inEachLanguage([{ params: {}, props: {} }]);
}

export const GET: APIRoute = async ({ params }) => {
  const plates = (await publishedPlates()).filter(({ record }) => record.advisory === undefined);
  const told = platesIn(await speechOf({ params }), plates);
  const list = told.map(({ slug, record }) => ({ slug, title: record.title }));
  return new Response(JSON.stringify(list), { headers: { 'content-type': 'application/json' } });
};
