/** Takes the text of one file out of a zip, with care for what others may have made of it. Knows zips, not rows. */
import { text } from 'node:stream/consumers';
import { crc32 } from 'node:zlib';
import yauzl, { type Entry, type ZipFile } from 'yauzl';

/** More than any book here could come to, and what fits in one text. */
const LONGEST = 400 * 1024 * 1024;

/** The text of `name` in the zip at `file`, or one sentence that says why there is none. */
export async function textInZip(file: string, name: string): Promise<{ text: string } | { refused: string }> {
  let zip: ZipFile | undefined;
  try {
    zip = await opened(file);
    const entry = await entryOf(zip, name);
    if (!entry) return { refused: `That zip is no Creasebook archive: there is no ${name} in it.` };
    if (entry.uncompressedSize > LONGEST)
      return { refused: 'That archive is larger than any book of ours. Nothing was written.' };
    const held = await read(zip, entry);
    if (crc32(held) !== entry.crc32) return { refused: DAMAGED };
    return { text: held };
  } catch {
    return { refused: DAMAGED };
  } finally {
    zip?.close();
  }
}

const DAMAGED =
  'That file is damaged, or no zip at all: it could not be read to its end. Nothing was written.';

const opened = (file: string): Promise<ZipFile> =>
  new Promise((resolve, reject) => {
    yauzl.open(file, { lazyEntries: true, autoClose: false }, (error, zip) =>
      error ? reject(error) : resolve(zip),
    );
  });

/** Reads all names first: one that climbs out of its folder is an error to yauzl, and then nothing of the zip is used. */
const entryOf = (zip: ZipFile, name: string): Promise<Entry | undefined> =>
  new Promise((resolve, reject) => {
    let found: Entry | undefined;
    zip.on('error', reject);
    zip.on('end', () => resolve(found));
    zip.on('entry', (entry: Entry) => {
      if (entry.fileName === name) found = entry;
      zip.readEntry();
    });
    zip.readEntry();
  });

/** Ends with an error where the zip holds more than it says, or less. */
const read = (zip: ZipFile, entry: Entry): Promise<string> =>
  new Promise((resolve, reject) => {
    zip.openReadStream(entry, (error, stream) =>
      error ? reject(error) : text(stream).then(resolve, reject),
    );
  });
