/** Was die Druckform einer Platte und der gedruckte Katalog von sich aus sagen, auf Deutsch. */
import type { PrintWords } from '../en/print.ts';

export const print: PrintWords = {
  trueSize: 'In wahrer Größe: ein Millimeter auf diesem Papier ist ein Millimeter auf der Platte.',
  ratio: (part) => `In ${part} der wahren Größe.`,
  unknownSize: 'Nicht in wahrer Größe: der Maßstab der Bilder ist nicht bekannt.',
  bar: (length) => `${length} auf der Platte`,
  covered: 'Verdeckt, und auch auf Papier verdeckt gelassen:',
  title: 'Katalog zum Drucken',
  lead: 'Die Platten dieser Ausstellung für Papier, jede positiv und negativ, mit Datensatz und Geschichte.',
  how: 'So entsteht er: npm run catalogue im Ordner des Ausstellungsprogramms. Es nimmt die genannten Platten oder alle.',
  of: 'Ein Katalog von Platten',
  introduction: 'Einführung',
  contents: 'Platten in diesem Katalog',
  colophon: 'Über diesen Katalog',
  sizes:
    'Wo eine Platte es sagt, sind ihre Bilder in wahrer Größe. Das gilt, wenn die Seiten mit 100 % gedruckt und nicht an das Papier angepasst werden; messen Sie zur Sicherheit den Maßstab unter den Bildern.',
  pictures:
    'Jedes Bild entstand aus Fotografien der Platte, wie ihre eigene Seite es angibt. Positiv und Negativ sind dieselbe Platte in verschiedenem Licht. Farben und Töne auf Papier sind nicht die eines Bildschirms, und beide nicht die der Platte.',
  left: 'Bilder, die in der Ausstellung verdeckt sind oder fehlen, stehen nicht in diesem Katalog.',
  rights: 'Rechte',
  address: 'Die Ausstellung',
  write: 'Schreiben an',
  program: (version) => `Erstellt mit Mirrorleaf ${version}.`,
  printed: 'Zusammengestellt am',
  failed: (page) => `${page} konnte nicht gelesen werden, der Katalog ist daher nicht vollständig.`,
};
