/** What the viewer has to know of one plate, for showing it beside another one. */
import type { APIRoute } from 'astro';
import type { PublishedPlate } from '../../../../components/exhibit.ts';
import { platePaths } from '../../../../components/plate-paths.ts';
import { inEachLanguage, speechOf } from '../../../../components/speech.ts';
import { stagePlace } from '../../../../components/viewer/stage-place.ts';
import { stageData } from '../../../../viewer/stage-data.ts';

export const getStaticPaths = async () =>
  inEachLanguage(await platePaths(({ record }) => record.advisory === undefined));

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ params, props: { plate } }) => {
  const data = stageData(plate.result, plate.record, stagePlace(await speechOf({ params })));
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
