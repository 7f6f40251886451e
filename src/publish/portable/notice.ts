/** What a page says of itself when it was opened from a folder, in the languages of the interface. */

const sentences: Readonly<Record<string, string>> = {
  en: 'This page was opened from a folder: reading and looking work. Turning a plate, deep zoom and search need the small server beside it (READ-ME.txt).',
  fr: 'Cette page a été ouverte depuis un dossier : on peut lire et regarder. Pour faire basculer une plaque, agrandir ou chercher, lancez le petit serveur qui l’accompagne (READ-ME.txt).',
  de: 'Diese Seite wurde aus einem Ordner geöffnet: Lesen und Betrachten gehen. Zum Kippen einer Platte, zum Vergrößern und zum Suchen braucht es den kleinen Server daneben (READ-ME.txt).',
  es: 'Esta página se abrió desde una carpeta: se puede leer y mirar. Para inclinar una placa, ampliar o buscar hace falta el pequeño servidor que la acompaña (READ-ME.txt).',
};

/** A paragraph of HTML; English where the language is not one of the interface. */
export function folderNotice(language: string): string {
  const own = language.slice(0, 2);
  const [lang, sentence] = own in sentences ? [language, sentences[own]] : ['en', sentences['en']];
  return `<p class="from-folder" lang="${lang}">${sentence}</p>`;
}

/** The sheet that hides the paragraph: at an address that only a server answers. */
export const servedCss = '.from-folder{display:none}\n';
