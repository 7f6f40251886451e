/** The processing record of a plate (PROV-O): which picture came from which files. */
import type { APIRoute, GetStaticPaths } from 'astro';
import { version } from '../../../../package.json';
import { base } from '../../../components/addresses.ts';
import { exhibit, publishedPlates, type PublishedPlate } from '../../../components/exhibit.ts';
import { documentAddress, jsonDocument } from '../../../components/manifest-parts.ts';
import { processingRecord } from '../../../publish/processing-record.ts';

export const getStaticPaths = (async () =>
  (await publishedPlates()).map((plate) => ({
    params: { slug: plate.slug },
    props: { plate },
  }))) satisfies GetStaticPaths;

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ props: { plate } }) => {
  const address = documentAddress(await exhibit(), `${base}plates/${plate.slug}/`);
  const record = processingRecord(plate.result, { plate: address, programVersion: version });
  return jsonDocument(record, 'application/ld+json');
};
