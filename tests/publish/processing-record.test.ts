import jsonld from 'jsonld';
import { describe, expect, test } from 'vitest';
import { processingRecord } from '../../src/publish/processing-record.ts';
import { plateResult } from '../fixtures/plate-result.ts';

const prov = 'http://www.w3.org/ns/prov#';
const plate = 'https://museum.example/plates/quay/';

/** A remote context would be a request to somebody else's server: refused. */
const documentLoader = (url: string) => Promise.reject(new Error(`asked for ${url}`));

type Expanded = Record<string, unknown> & { '@id': string; '@type'?: string[] };

async function expand(): Promise<Expanded[]> {
  const record = processingRecord(plateResult(), { plate, programVersion: '0.1.0' });
  // `safe` fails on a term that no context defines, which would otherwise vanish in silence.
  const options = { documentLoader, safe: true };
  return (await jsonld.expand(record, options)) as Expanded[];
}

const ids = (node: Expanded | undefined, term: string) =>
  ((node?.[`${prov}${term}`] ?? []) as { '@id': string }[]).map((found) => found['@id']);

describe('processingRecord', () => {
  test('expands with a general JSON-LD library, no term unknown, nothing fetched', async () => {
    const nodes = await expand();
    expect(nodes.length).toBe(9); // program, 2 captures, 2 files, 2 views with their makings
  });

  test('leads from every view to the digests of its captures', async () => {
    const nodes = await expand();
    const of = (id: string) => nodes.find((node) => node['@id'] === id);
    expect(ids(of(`${plate}views/normal`), 'wasDerivedFrom')).toEqual([
      `urn:sha256:${'a'.repeat(64)}`,
    ]);
    expect(ids(of(`${plate}views/axial`), 'wasDerivedFrom')).toEqual([
      `urn:sha256:${'b'.repeat(64)}`,
    ]);
    for (const view of ['normal', 'axial']) {
      for (const source of ids(of(`${plate}views/${view}`), 'wasDerivedFrom')) {
        expect(ids(of(source), 'wasGeneratedBy')).toEqual([`${plate}captures/#sitting-${view}`]);
      }
    }
  });

  test('uses only terms that PROV-O defines', async () => {
    // PROV-O, 30 April 2013, the terms of sections 3.1 and 3.2 that occur here.
    const known = [
      'used',
      'wasGeneratedBy',
      'wasDerivedFrom',
      'wasAssociatedWith',
      'wasAttributedTo',
    ];
    const types = ['Entity', 'Activity', 'Agent', 'SoftwareAgent'];
    for (const node of await expand()) {
      const terms = Object.keys(node).filter((key) => key.startsWith(prov));
      expect(known).toEqual(expect.arrayContaining(terms.map((key) => key.slice(prov.length))));
      const kinds = (node['@type'] ?? []).map((type) => type.slice(prov.length));
      expect(types).toEqual(expect.arrayContaining(kinds));
    }
  });
});
