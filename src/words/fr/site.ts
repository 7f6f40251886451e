/** Les mots du site en français : cadre des pages, listes, recherche, leçons, pied de page. */
import { plural } from '../locale.ts';
import type { SiteWords } from '../en/site.ts';

const many = plural('fr');

export const site: SiteWords = {
  within: (name) => name.charAt(0).toLowerCase() + name.slice(1),
  languages: 'Langues',
  asWritten: (name) => `Ce texte est montré dans la langue où il a été écrit (${name}).`,
  skip: 'Aller au texte',
  menu: 'Pages',
  nav: {
    plates: 'Plaques',
    techniques: 'Techniques',
    lessons: 'Leçons',
    glossary: 'Glossaire',
    about: 'À propos',
    search: 'Recherche',
  },

  search: {
    title: 'Recherche',
    lead: 'Dans les mots de chaque plaque, repère, technique et leçon.',
    kind: { plate: 'Plaque', technique: 'Technique', lesson: 'Leçon', page: 'Page' },
    field: 'Mots à chercher',
    go: 'Chercher',
    none: (asked) => `Aucune page ne contient « ${asked} ».`,
    one: (asked) => `Une page contient « ${asked} ».`,
    several: (count, asked) => `${count} pages contiennent « ${asked} ».`,
    more: 'En montrer plus',
    failed:
      'L’index des mots n’a pas pu être chargé. Les listes ci-dessous mènent à toutes les pages.',
    without: 'La recherche de mots demande un script. Ces listes mènent aussi à tout :',
    covered:
      'Les plaques précédées d’un avertissement ne sont pas cherchées ; elles figurent dans la liste des plaques.',
    ways: 'Autres entrées',
  },

  home: {
    opening: 'La plaque d’ouverture',
    openingLink: 'Lire la page de cette plaque',
    plates: 'Les plaques',
    all: (count) => many(count, { one: 'L’index', other: `L’index des ${count} plaques` }),
    read: 'À lire',
  },

  index: {
    title: 'Plaques',
    lead: 'Chaque plaque est montrée deux fois : telle qu’on la voit avec une lampe à son côté devant une pièce sombre, et telle qu’on la voit quand le miroir reflète une surface claire.',
    narrow: 'Restreindre la liste',
    any: 'Tout',
    process: 'Procédé',
    size: 'Format',
    maker: 'Auteur',
    place: 'Lieu',
    made: 'Date',
    from: 'Des',
    to: 'aux',
    photographed: 'Éclairage',
    reading: 'Lecture',
    condition: 'État',
    decade: (year) => `années ${year}`,
    count: (plates) => many(plates, { one: ' plaque', other: ' plaques' }),
    shown: 'Plaques montrées :',
    none: 'Aucune plaque ne répond à tout cela. Retirez un choix, ou recommencez.',
    again: 'Recommencer',
    order: 'Par ordre de',
    orders: { date: 'date', title: 'titre', number: 'numéro', size: 'format' },
    by: (order) => `Plaques par ordre de ${order}`,
    search: 'Chercher dans les mots de toutes les pages',
  },

  techniques: {
    title: 'Techniques',
    one: 'Technique',
    lead: 'Une plaque, plusieurs lumières. Ce que chacune montre, comment on la dispose, et ce qui peut mal tourner.',
    plates: 'Plaques photographiées ainsi',
    planner: 'Préparer un éclairage',
    plannerNote: 'des chiffres et des dessins pour votre appareil et votre plaque.',
    findings: 'Constats dont traite cette page',
  },
  lessons: {
    title: 'Leçons',
    one: 'Leçon',
    lead: 'Des pages pour la classe : courtes, avec quelque chose à faire.',
    answer: 'La réponse',
    answerOf: (title) => `La réponse : ${title}`,
    answerLink: 'Vers la réponse, sur une page à part',
    back: 'Retour à la leçon',
    print: 'Une feuille pour la classe : imprimez cette page. La réponse n’y est pas.',
    printNow: 'Imprimer la feuille',
    screen: 'Plein écran',
    live: 'La plaque qui bascule',
    liveNote:
      'Une seule commande meut le dessin et la plaque. Sans script : la plaque tenue de deux façons.',
    turn: 'Incliner la plaque',
    question: 'Une question',
    forTeacher: 'Pour l’enseignant',
  },
  contents: 'Sur cette page',
  feed: 'Plaques nouvelles et modifiées',
  previewOf: (title) => `Les deux lectures de « ${title} » côte à côte`,
  moved: {
    title: 'Cette page a changé d’adresse',
    text: (title) => `« ${title} » se trouve maintenant à une autre adresse.`,
  },

  embed: {
    page: (title) => `Ouvrir la page de « ${title} »`,
  },

  missing: {
    title: 'Page introuvable',
    text: 'Il n’y a rien à cette adresse. La plaque a peut-être été retirée, ou l’adresse mal recopiée.',
    home: 'Vers le début',
  },

  footer: {
    planner: 'Préparation des éclairages',
    write: 'Nous écrire',
    rights: 'Images, sauf mention contraire sur la page d’une plaque :',
    made: 'Fait avec Mirrorleaf. Aucun cookie, rien n’est chargé d’ailleurs.',
  },
};
