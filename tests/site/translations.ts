/**
 * The small museum with further languages: the texts of its first plate are partly in French, and
 * one capture of it is withheld, with the spot and the step that show it.
 */
import { readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { blobs, writeCapture } from '../pipeline/small-content.ts';

export async function writeTranslations(content: string, languages: readonly string[]) {
  const collection = join(content, 'collection.md');
  await change(
    collection,
    'languages: [en]',
    `address: https://museum.example/plates/\nlanguages: [${languages.join(', ')}]`,
  );
  await writeFile(join(content, 'collection.fr.md'), '---\ntitle: Deux plaques\n---\n\nDeux.\n');
  const plate = join(content, 'plates', 'first');
  const sitting = join(plate, 'sitting.yaml');
  const captures =
    'captures:\n  - { id: veiled-one, file: veiled-one.tif, setup: raking, reading: mixed }\n';
  await change(sitting, 'captures:\n', captures);
  await writeCapture(join(plate, 'captures', 'veiled-one.tif'), blobs(3));
  await change(
    join(plate, 'plate.md'),
    'process:',
    `place: Fennel Quay
maker: [{ name: An unnamed maker }]
withheld: [veiled-one]
spots:
  - { id: blob, region: '90,80,60,60', title: A blob, note: Brighter than the rest. }
  - { id: face, region: '9,9,60,60', title: A zugzwang, view: veiled-one }
looks:
  - id: round
    title: Round the plate
    steps:
      - { text: Seen through zugzwang., of: [veiled-one] }
      - { text: The whole of it., of: [normal] }
process:`,
  );
  await writeFile(
    join(plate, 'plate.fr.md'),
    `---
title: La première plaque
place: Quai au Fenouil
description: { positive: Taches claires sur fond sombre., negative: Taches sombres sur fond clair. }
spots:
  - { id: face, title: Un zugzwang }
  - { id: blob, title: Une tache }
looks:
  - { id: round, steps: [{ text: À travers zugzwang. }, { text: La plaque entière. }] }
---

Le texte de la plaque, avec [la seconde](/plates/second/).

::spot{id=blob}
`,
  );
}

async function change(path: string, from: string, to: string): Promise<void> {
  const text = await readFile(path, 'utf8');
  if (!text.includes(from)) throw new Error(`"${from}" is not in ${path}.`);
  await writeFile(path, text.replace(from, to));
}
