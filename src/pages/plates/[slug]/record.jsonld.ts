/** The processing record of a plate (PROV-O): which picture came from which files. */
import type { APIRoute } from 'astro';
import { version } from '../../../../package.json';
import { base } from '../../../components/addresses.ts';
import { exhibit, type PublishedPlate } from '../../../components/exhibit.ts';
import { documentAddress, jsonDocument } from '../../../components/manifest-parts.ts';
import { platePaths } from '../../../components/plate-paths.ts';
import { processingRecord } from '../../../publish/processing-record.ts';

export const getStaticPaths = () => platePaths();

export const GET: APIRoute<{ plate: PublishedPlate }> = async ({ props: { plate } }) => {
  const address = documentAddress(await exhibit(), `${base}plates/${plate.slug}/`);
  const record = processingRecord(plate.result, { plate: address, programVersion: version });
  return jsonDocument(record, 'application/ld+json');
};
