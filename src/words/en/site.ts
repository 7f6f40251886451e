/** The words of the site in English: the frame of every page, lists, search, lessons, the footer. */
import { plural } from '../locale.ts';

const many = plural('en');

export const site = {
  /** A name from a list as it stands within a sentence. */
  within: (name: string) => name.charAt(0).toLowerCase() + name.slice(1),
  languages: 'Languages',
  /** Above a text that is not in the page's language. */
  asWritten: (name: string) => `This text is shown in the language it was written in (${name}).`,
  skip: 'Skip to the text',
  menu: 'Pages',
  nav: {
    plates: 'Plates',
    techniques: 'Techniques',
    lessons: 'Lessons',
    glossary: 'Glossary',
    about: 'About',
    search: 'Search',
  },

  search: {
    title: 'Search',
    lead: 'In the words of every plate, spot, technique and lesson.',
    kind: { plate: 'Plate', technique: 'Technique', lesson: 'Lesson', page: 'Page' },
    field: 'Words to look for',
    go: 'Search',
    none: (asked: string) => `Nothing has “${asked}” in it.`,
    one: (asked: string) => `One page has “${asked}” in it.`,
    several: (count: string, asked: string) => `${count} pages have “${asked}” in them.`,
    more: 'Show more',
    failed: 'The index of words could not be loaded. The lists below lead to every page.',
    without: 'Looking for words needs script. Everything can also be found by these lists:',
    covered: 'Plates with a word of care are not searched; they stand in the list of plates.',
    ways: 'Other ways in',
  },

  home: {
    opening: 'The opening plate',
    openingLink: 'Read this plate’s page',
    plates: 'The plates',
    all: (count: number) =>
      many(count, { one: 'The index', other: `The index of all ${count} plates` }),
    read: 'To read',
  },

  index: {
    title: 'Plates',
    lead: 'Each plate is shown twice: as it reads with a lamp at its side before a dark room, and as it reads when the mirror reflects something bright.',
    narrow: 'Narrow the list',
    any: 'Any',
    process: 'Process',
    size: 'Size',
    maker: 'Maker',
    place: 'Place',
    made: 'Date',
    from: 'From the',
    to: 'to the',
    photographed: 'Set-up',
    reading: 'Reading',
    condition: 'Condition',
    decade: (year: number) => `${year}s`,
    count: (plates: number) => many(plates, { one: ' plate', other: ' plates' }),
    shown: 'Plates shown:',
    none: 'No plate answers to all of this. Take one choice back, or begin again.',
    again: 'Begin again',
    order: 'In order of',
    orders: { date: 'date', title: 'title', number: 'number', size: 'size' },
    by: (order: string) => `Plates in order of ${order}`,
    search: 'Search the words of all pages',
  },

  techniques: {
    title: 'Techniques',
    one: 'Technique',
    lead: 'One plate, several lights. What each of them shows, how it is set up, and what may go wrong.',
    plates: 'Plates photographed so',
    planner: 'Plan a set-up',
    plannerNote: 'Numbers and drawings for your own camera and plate.',
    findings: 'Findings that this page is about',
  },
  lessons: {
    title: 'Lessons',
    one: 'Lesson',
    lead: 'Pages for teaching: short, with things to do.',
    answer: 'The answer',
    answerOf: (title: string) => `The answer: ${title}`,
    answerLink: 'To the answer, on a page of its own',
    back: 'Back to the lesson',
    print: 'A sheet for the class: print this page. The answer is not on it.',
    printNow: 'Print the sheet',
    screen: 'Full screen',
    live: 'The plate turning',
    liveNote:
      'One control moves the drawing and the plate. Without script: the plate held two ways.',
    turn: 'Turn the plate',
    question: 'A question',
    forTeacher: 'For the teacher',
  },
  contents: 'On this page',
  feed: 'New and changed plates',
  previewOf: (title: string) => `Both readings of “${title}” side by side`,
  moved: {
    title: 'This page has moved',
    text: (title: string) => `“${title}” now has another address.`,
  },

  embed: {
    page: (title: string) => `Open the page of “${title}”`,
  },

  missing: {
    title: 'No such page',
    text: 'There is nothing at this address. The plate may have been withdrawn, or the address mistyped.',
    home: 'To the beginning',
  },

  footer: {
    planner: 'Set-up planner',
    write: 'Write to us',
    rights: 'Pictures, unless a plate says otherwise:',
    made: 'Made with Mirrorleaf. No cookies, nothing is fetched from elsewhere.',
  },
};

export type SiteWords = typeof site;
