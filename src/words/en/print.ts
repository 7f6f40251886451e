/** In English, what the printed form of a plate and the printed catalogue say by themselves. */
export const print = {
  trueSize: 'At true size: one millimetre on this paper is one millimetre on the plate.',
  ratio: (part: string) => `At ${part} of true size.`,
  unknownSize: 'Not at true size: the scale of the pictures is not known.',
  bar: (length: string) => `${length} on the plate`,
  covered: 'Covered, and left covered on paper:',
  title: 'Catalogue for printing',
  lead: 'The plates of this exhibit for paper, each with both readings, its record and its history.',
  how: 'To make it: npm run catalogue, in the folder of the exhibit’s program. It takes the plates that are named to it, or all of them.',
  of: 'A catalogue of plates',
  introduction: 'Introduction',
  contents: 'Plates in this catalogue',
  colophon: 'About this catalogue',
  sizes:
    'Where a plate says so, its pictures are at true size. This holds if the pages are printed at 100 %, not fitted to the paper; measure the bar beneath the pictures to be sure.',
  pictures:
    'Every picture was made from photographs of the plate as its own page states. Positive and negative are the same plate under different light. Colours and tones on paper are not those of a screen, and neither are those of the plate.',
  left: 'Pictures that are covered in the exhibit or withheld from it are not in this catalogue.',
  rights: 'Rights',
  address: 'The exhibit',
  write: 'Write to',
  program: (version: string) => `Made with Mirrorleaf ${version}.`,
  printed: 'Put together on',
  failed: (page: string) => `${page} could not be read, so the catalogue is not whole.`,
};

export type PrintWords = typeof print;
