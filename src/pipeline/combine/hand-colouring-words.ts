/** What the pages say of the picture of hand colouring, and of plates on which it cannot be told. */
export const colouringWords = {
  step: 'telling hand colouring from tarnish',
  made:
    'Derived from the capture under a side lamp and the one in an even field: a film of tarnish colours what the plate scatters and what it mirrors alike, pigment only what it scatters. ' +
    'Where the two differ the colour is left as it is, where they may differ it is paler, all else is grey.',
  caution:
    'Not an identification of pigment, and not proof that a colour was laid on by hand: other deposits that scatter coloured light look the same, and a transparent dye is missed. ' +
    'Where tarnish is strong or the plate too dark, nothing is told.',
  figures: {
    area: 'Coloured area',
    uncertainty: 'Its uncertainty, plus or minus',
    most: 'Coloured area, at most (none is sure)',
    share: 'Part of the plate that is coloured',
    shareUncertainty: 'Its uncertainty, plus or minus',
    notJudged: 'Part of the picture where nothing can be told, surroundings included',
  },
  settings: {
    difference: 'least difference of colour that counts, ln',
    pixel: 'pixel of the derived picture, of the frame',
  },
  refused: (reason: string) =>
    `Hand colouring is recorded, but its area cannot be told here: ${reason}.`,
  remedy:
    'Take a positive under a side lamp and a negative in an even field in one sitting, in colour and with the same balance of white; without both, colour cannot be told from tarnish.',
  noPair:
    'it takes a positive under a side lamp and a negative in an even field of one sitting, both in register',
};
