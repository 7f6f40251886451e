/** What the viewer has to know of one plate, for showing it beside another one. */
import type { APIRoute } from 'astro';
import { base } from '../../../components/addresses.ts';
import { publishedPlates, type PublishedPlate } from '../../../components/exhibit.ts';
import { stageData } from '../../../viewer/stage-data.ts';

export async function getStaticPaths() {
  const plates = await publishedPlates();
  return plates
    .filter(({ record }) => record.advisory === undefined)
    .map((plate) => ({ params: { slug: plate.slug }, props: { plate } }));
}

export const GET: APIRoute<{ plate: PublishedPlate }> = ({ props: { plate } }) =>
  new Response(JSON.stringify(stageData(plate.result, plate.record, base)), {
    headers: { 'content-type': 'application/json' },
  });
