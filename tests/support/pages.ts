/** At least one address of every page, on the demo's shelf with three plans. Knows no answers. */
import type { App } from './app.ts';

const CARD = 'card=5+1%2F2+x+4+1%2F4';
const HALF_LETTER = 'width=5+1%2F2&height=4+1%2F4';

/** By route; where a page has several faces, each of them. */
export const PAGES: Record<string, readonly string[]> = {
  '/': ['/'],
  '/envelopes': [
    '/envelopes',
    `/envelopes?${CARD}`,
    `/envelopes?${CARD}&design=3`,
    `/envelopes?${CARD}&fold=side-seam`,
    `/envelopes?${CARD}&fold=two-piece`,
    '/envelopes?card=9+x+9',
    '/envelopes?card=11+x+8',
    `/envelopes?${CARD}&copies=3&fit=loose`,
    '/envelopes?project=15',
    `/envelopes?project=15&${CARD}`,
  ],
  '/in-place/:kind/:id': ['/in-place/pad-name/1'],
  '/in-place/:kind/:id/edit': ['/in-place/design-name/1/edit', '/in-place/offcut-count/1/edit'],
  '/kept/new': [
    '/kept/new',
    `/kept/new?${HALF_LETTER}&fold=diagonal&square=8&start=4`,
    '/kept/new?project=15',
  ],
  '/made-before': ['/made-before?card=5+1%2F2+x+4+1%2F4'],
  '/holding': ['/holding', '/holding?width=5+3%2F4&height=4+1%2F2'],
  '/holders': ['/holders'],
  '/holders/sets': ['/holders/sets'],
  '/find': ['/find', '/find?q=hare', '/find?q=5+3%2F8+x+4', '/find?q=K7&kind=offcut', '/find?fold=diagonal'],
  '/filling': ['/filling?offcut=1', '/filling?design=1', '/filling?design=1&card-1=on'],
  '/stash': [
    '/stash',
    '/stash?gone=1',
    '/stash?code=7',
    '/stash?width=4&height=3',
    '/stash?view=list',
    '/stash?view=list&sort=place&design=meadow&from=40',
    '/stash?sort=largest&kind=patterned&place=tray',
  ],
  '/likely/:what': ['/likely/designs?design=fern', '/likely/places?place=tray'],
  '/stash/sheets': ['/stash/sheets'],
  '/pads': ['/pads', '/pads?used=yes&from=16'],
  '/stash/low': ['/stash/low'],
  '/stash/waiting': ['/stash/waiting', '/stash/waiting?from=8&designs=12'],
  '/stash/shopping': ['/stash/shopping'],
  '/year': ['/year', '/year?of=2025'],
  '/stash/list': ['/stash/list'],
  '/pads/new': ['/pads/new'],
  '/pads/:id': ['/pads/1'],
  '/pads/:id/edit': ['/pads/1/edit'],
  '/pads/:id/designs/new': ['/pads/1/designs/new', '/pads/1/designs/new?after=1'],
  '/pads/:id/look': ['/pads/1/look'],
  '/designs/:id': ['/designs/1', '/designs/12'],
  '/designs/:id/edit': ['/designs/1/edit'],
  '/offcuts/new': ['/offcuts/new', '/offcuts/new?after=1', '/offcuts/new?design=1'],
  '/offcuts/:id': ['/offcuts/1', '/offcuts/1?gone=1'],
  '/offcuts/:id/about': ['/offcuts/1/about'],
  '/offcuts/:id/edit': ['/offcuts/1/edit'],
  '/ready-made/new': ['/ready-made/new'],
  '/ready-made/:id': ['/ready-made/1', '/ready-made/2'],
  '/ready-made/:id/edit': ['/ready-made/1/edit'],
  '/projects': ['/projects', '/projects?series=1', '/projects?q=notes', '/projects?tag=vellum'],
  '/projects/:id': Array.from({ length: 15 }, (_, one) => `/projects/${one + 1}`),
  '/projects/:id/cost': ['/projects/5/cost'],
  '/projects/:id/make': ['/projects/1/make', '/projects/1/make?envelope=1&step=1'],
  '/projects/:id/spoiled': ['/projects/1/spoiled?envelope=1'],
  '/projects/:id/start': ['/projects/1/start'],
  '/projects/:id/outcomes/new': ['/projects/1/outcomes/new?envelope=1'],
  '/projects/:id/outcomes/:number': ['/projects/1/outcomes/1'],
  '/projects/:id/plans/new': ['/projects/5/plans/new', '/projects/15/plans/new?after=1'],
  '/plans/:id': ['/plans/1', '/plans/2', '/plans/3'],
  '/plans/:id/planning': ['/plans/1/planning'],
  '/plans/:id/sheet': ['/plans/1/sheet', '/plans/2/sheet', '/plans/2/sheet?step=2'],
  '/series': ['/series'],
  '/series/:id': ['/series/1'],
  '/tags': ['/tags'],
  '/tags/:id': ['/tags/1'],
  '/put-away': ['/put-away', '/put-away?from=30'],
  '/paper': ['/paper'],
  '/paper/card': ['/paper/card'],
  '/parts': ['/parts', '/parts?project=1'],
  '/parts/order': ['/parts/order?project=1'],
  '/parts/:kind': ['/parts/base', `/parts/base?${HALF_LETTER}`, `/parts/liner?${HALF_LETTER}&project=1`],
  '/post': ['/post'],
  '/tools': ['/tools'],
  '/tools/fits': ['/tools/fits'],
  '/tools/notchers/new': ['/tools/notchers/new'],
  '/tools/notchers/:id': ['/tools/notchers/1'],
  '/tools/cards/new': ['/tools/cards/new'],
  '/tools/cards/:id': ['/tools/cards/1'],
  '/archive': ['/archive'],
  '/templates/envelope/:file': [`/templates/envelope/template.svg?${HALF_LETTER}`],
  '/templates/projects/:id/:file': ['/templates/projects/1/template.svg'],
  '/templates/parts/:kind/:file': [`/templates/parts/base/template.svg?${HALF_LETTER}`],
};

/** Adds to the demo's book the three plans that the addresses speak of: one cut, one that waits, and one asked in its place. */
export async function withPlans(app: App): Promise<void> {
  const part = {
    'parts.0.name': 'Front',
    'parts.0.width': '5',
    'parts.0.height': '3',
    'parts.0.copies': '3',
  };
  const asked = { do: 'plan', blanks: '0', paper: 'design-1', ...part };
  for (const project of [15, 15]) await app.post(`/projects/${project}/plans`, asked);
  await app.post('/plans/1/cuts', { place: 'blue folder' });
  await app.post('/plans/2/again', {});
}
