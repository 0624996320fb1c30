/** Every migration by the name under which a book remembers it. A landed one is never changed, a new one goes last. */
import type { Migration } from 'kysely';
import * as tools from './0001_tools.ts';
import * as stash from './0002_stash.ts';
import * as journal from './0003_journal.ts';
import * as ledger from './0004_ledger.ts';
import * as search from './0005_search.ts';
import * as startAsMade from './0006_start_as_made.ts';
import * as post from './0007_post.ts';
import * as plans from './0008_plans.ts';
import * as readyMade from './0009_ready_made.ts';
import * as realSheets from './0010_real_sheets.ts';
import * as madeBefore from './0011_made_before.ts';
import * as finding from './0012_finding.ts';
import * as fits from './0013_fits.ts';
import * as putAway from './0014_put_away.ts';
import * as lessonsAndTags from './0015_lessons_and_tags.ts';
import * as cost from './0016_cost.ts';
import * as shelf from './0017_shelf.ts';
import * as bulks from './0018_bulks.ts';
import * as books from './0019_books.ts';

export const migrations: Record<string, Migration> = {
  '0001_tools': tools,
  '0002_stash': stash,
  '0003_journal': journal,
  '0004_ledger': ledger,
  '0005_search': search,
  '0006_start_as_made': startAsMade,
  '0007_post': post,
  '0008_plans': plans,
  '0009_ready_made': readyMade,
  '0010_real_sheets': realSheets,
  '0011_made_before': madeBefore,
  '0012_finding': finding,
  '0013_fits': fits,
  '0014_put_away': putAway,
  '0015_lessons_and_tags': lessonsAndTags,
  '0016_cost': cost,
  '0017_shelf': shelf,
  '0018_bulks': bulks,
  '0019_books': books,
};
