/** What the viewer has to know of one plate, for showing it beside another one. */
import type { APIRoute } from 'astro';
import type { PublishedPlate } from '../../../../components/exhibit.ts';
import { markOf, plateIn } from '../../../../components/translated.ts';
import { platePaths } from '../../../../components/plate-paths.ts';
import { inEachLanguage, speechOf } from '../../../../components/speech.ts';
import { stagePlace } from '../../../../components/viewer/stage-place.ts';
import { stageData } from '../../../../viewer/stage-data.ts';

export const getStaticPaths = async () =>
  inEachLanguage(await platePaths(({ record }) => record.advisory === undefined));

interface Props extends Record<string, unknown> {
  readonly plate: PublishedPlate;
  readonly plates: readonly PublishedPlate[];
}

export const GET: APIRoute<Props> = async ({ params, props }) => {
  const speech = await speechOf({ params });
  const plate = plateIn(speech, props.plates, props.plate);
  const place = stagePlace(speech, markOf(plate, speech.original));
  const data = stageData(plate.result, plate.record, place);
  return new Response(JSON.stringify(data), { headers: { 'content-type': 'application/json' } });
};
