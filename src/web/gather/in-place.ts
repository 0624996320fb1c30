/** Reading and writing each value that may be edited where it stands. Knows no markup. */
import type { InPlaceKind } from '#shared/schemas/in-place.ts';
import type { Database } from '#stores/database.ts';
import { editDesign, readDesign } from '#stores/designs.ts';
import { countOffcut } from '#stores/movements.ts';
import { editOffcut, readOffcut } from '#stores/offcuts.ts';
import { editPad, readPad } from '#stores/pads.ts';
import { editProject, readProject } from '#stores/projects.ts';
import { editSeries, readSeries } from '#stores/series.ts';

interface Editable {
  /** Undefined where there is no such thing. */
  readonly read: (db: Database, id: number) => Promise<string | undefined>;
  /** Why it was refused, where it was. */
  readonly write: (db: Database, id: number, value: string, at: string) => Promise<string | undefined>;
}

export const EDITABLE: Record<InPlaceKind, Editable> = {
  'project-title': {
    read: async (db, id) => (await readProject(db, id))?.title,
    write: async (db, id, title, at) => done(await editProject(db, id, { title }, at)),
  },
  'series-name': {
    read: async (db, id) => (await readSeries(db, id))?.name,
    write: async (db, id, name) => {
      const { note } = (await readSeries(db, id))!;
      const edited = await editSeries(db, id, { name, note });
      return edited === 'taken' ? 'Another series has this name already.' : undefined;
    },
  },
  'pad-name': {
    read: async (db, id) => (await readPad(db, id))?.pad.name,
    write: async (db, id, name) => done(await editPad(db, id, { ...(await readPad(db, id))!.pad, name })),
  },
  'design-name': {
    read: async (db, id) => (await readDesign(db, id))?.name,
    write: async (db, id, name) => {
      const design = (await readDesign(db, id))!;
      return done(await editDesign(db, id, { ...design, print: design.wholePrint ?? design.print, name }));
    },
  },
  'offcut-place': {
    read: async (db, id) => (await readOffcut(db, id))?.place,
    write: async (db, id, place) => done(await editOffcut(db, id, { ...(await readOffcut(db, id))!, place })),
  },
  'offcut-count': {
    read: async (db, id) => (await readOffcut(db, id))?.count.toString(),
    write: async (db, id, count, at) => done(await countOffcut(db, id, { count: Number(count), at })),
  },
};

const done = (_: unknown): undefined => undefined;
