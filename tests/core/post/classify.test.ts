/** Holds the size classes against published tables, worked examples, and both sides of every limit. */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { classify, classifyAll, type Posted } from '#core/post/classify.ts';
import { POST_IDS, POSTS, type PostId } from '#core/post/rules.ts';
import { inches, length, millimetres } from '#shared/length.ts';
import { grams, mass, ounces } from '#shared/mass.ts';

/** A thin card in a light envelope, addressed along its longer side. */
const light = (width: number, height: number, unit = inches): Posted => ({
  size: { width: unit(width), height: unit(height) },
  thickness: inches(0.05),
  mass: grams(15),
  address: 'along',
  front: 'light',
  troubles: [],
});

const mm = (width: number, height: number): Posted => light(width, height, millimetres);

const classAt = (post: PostId, posted: Posted): string => classify(posted, post).sizeClass;

describe('the envelopes makers use most', () => {
  // The sizes each post publishes: USPS DMM 101 and 201, Ofcom, Canada Post, Australia Post, Deutsche Post.
  test.each<[string, Posted, ...string[]]>([
    ['A1', light(3.625, 5.125), 'letter', 'Letter', 'under the minimum', 'small letter', 'Kompaktbrief'],
    ['A2', light(4.375, 5.75), 'letter', 'Letter', 'standard', 'small letter', 'Großbrief'],
    ['A7', light(5.25, 7.25), 'letter', 'Letter', 'standard', 'large letter', 'Großbrief'],
    ['#10', light(4.125, 9.5), 'letter', 'Large Letter', 'standard', 'large letter', 'Großbrief'],
    ['A10', light(6, 9.5), 'letter', 'Large Letter', 'standard', 'large letter', 'Großbrief'],
    ['C5', mm(162, 229), 'large envelope', 'Letter', 'oversize', 'large letter', 'Großbrief'],
    ['DL', mm(110, 220), 'letter', 'Letter', 'standard', 'small letter', 'Standardbrief'],
    [
      '5 × 5',
      light(5, 5),
      'nonmachinable letter',
      'Letter',
      'under the minimum',
      'small letter',
      'Großbrief',
    ],
  ])('%s', (_, posted, ...expected) => {
    const posts = ['us', 'uk', 'canada', 'australia', 'germany'] as const;
    expect(posts.map((post) => classAt(post, posted))).toEqual(expected);
  });

  // USPS DMM 101.1.2: L is the side along the address.
  test('addressed upright, an A1 and an A2 are unmailable and an A7 is nonmachinable in the United States', () => {
    const upright = (one: Posted): Posted => ({ ...one, address: 'up' });
    expect(classAt('us', upright(light(3.625, 5.125)))).toBe('unmailable');
    expect(classAt('us', upright(light(4.375, 5.75)))).toBe('unmailable');
    const a7 = classify(upright(light(5.25, 7.25)), 'us');
    expect(a7.sizeClass).toBe('nonmachinable letter');
    expect(a7.why).toEqual(['It’s 0.724 times as long along the address as across, under 1.3.']);
  });

  // Sums of the published sizes; USPS DMM 101.1.2 has the limits of 1.3 and 2.5.
  test.each([
    [4.375, 5.75, 1.314],
    [5.25, 7.25, 1.381],
    [4.125, 9.5, 2.30303],
    [6, 9.5, 1.583],
  ])('%d × %d in has the ratio %d, which a machine takes', (short, long, ratio) => {
    expect(long / short).toBeCloseTo(ratio, 3);
    expect(classAt('us', light(short, long))).toBe('letter');
  });
});

describe('the worked examples of the US post', () => {
  // Postal Bulletin 22212 (2007).
  test('a 6½ in square card ¼ in thick of 1.5 oz is a large envelope', () => {
    const card = { ...light(6.5, 6.5), thickness: inches(0.25), mass: ounces(1.5) };
    const verdict = classify(card, 'us');
    expect(verdict.sizeClass).toBe('large envelope');
    expect(verdict.why).toEqual(['6½″ on the shorter side is over 6⅛″.']);
  });

  test('a 5½ in square card ¼ in thick of 2 oz is a nonmachinable letter', () => {
    const card = { ...light(5.5, 5.5), thickness: inches(0.25), mass: ounces(2) };
    expect(classAt('us', card)).toBe('nonmachinable letter');
    expect(classify(card, 'us').why[0]).toContain('square');
  });

  // USPS DMM 101.1.2: both ends of the ratio are included.
  test('4 × 5.2 and 4 × 10 in pass the machine, a hair beyond does not', () => {
    expect(classAt('us', light(4, 5.2))).toBe('letter');
    expect(classAt('us', light(4, 10))).toBe('letter');
    const hair = (one: Posted, by: number): Posted => ({
      ...one,
      size: { ...one.size, height: length(one.size.height + by) },
    });
    expect(classAt('us', hair(light(4, 5.2), -1))).toBe('nonmachinable letter');
    expect(classAt('us', hair(light(4, 10), 1))).toBe('nonmachinable letter');
  });

  test.each(['clasp', 'lumps', 'rigid'] as const)('%s makes a letter nonmachinable', (trouble) => {
    const verdict = classify({ ...light(4.375, 5.75), troubles: [trouble] }, 'us');
    expect(verdict.sizeClass).toBe('nonmachinable letter');
    expect(verdict.changes).toHaveLength(1);
  });

  test('lumps or rigid contents make a large envelope a parcel', () => {
    expect(classAt('us', { ...light(7, 9), troubles: ['lumps'] })).toBe('parcel');
    expect(classAt('us', { ...light(7, 9), troubles: ['rigid'] })).toBe('parcel');
    expect(classAt('us', { ...light(7, 9), troubles: ['clasp'] })).toBe('large envelope');
  });

  // Australia Post, letter sizes: letters of either size hold flexible contents only, anything rigid is a parcel.
  test('rigid contents make a letter of either size a parcel in Australia', () => {
    for (const posted of [mm(200, 120), mm(300, 200)]) {
      const verdict = classify({ ...posted, troubles: ['rigid'] }, 'australia');
      expect(verdict).toMatchObject({ sizeClass: 'parcel', isLetter: false, why: ['It doesn’t bend.'] });
      expect(verdict.source).toMatch(/^Australia Post.*flexible contents only/);
      expect(verdict.changes.at(-1)).toBe('large letter: leave out what is rigid.');
    }
  });

  test('a small thick piece is no letter, but no longer unmailable', () => {
    expect(classAt('us', { ...light(3, 4), thickness: inches(0.25) })).toBe('unmailable');
    expect(classAt('us', { ...light(3, 4), thickness: inches(0.3) })).toBe('large envelope');
  });
});

interface Limit {
  readonly post: PostId;
  readonly limit: string;
  /** Still inside: exactly at the limit. */
  readonly at: Posted;
  readonly sizeClass: string;
  /** What to move, and by one unit in which direction it falls out. */
  readonly move: 'width' | 'height' | 'thickness' | 'mass';
  readonly by: 1 | -1;
  readonly then: string;
}

const row = (
  post: PostId,
  limit: string,
  at: Posted,
  sizeClass: string,
  move: Limit['move'],
  by: 1 | -1,
  then: string,
): Limit => ({ post, limit, at, sizeClass, move, by, then });

/** Every limit of every class, from the documents that SOURCES.md names for each post. */
const LIMITS: Limit[] = [
  row('us', 'letter 11½ long', light(11.5, 6), 'letter', 'width', 1, 'large envelope'),
  row('us', 'letter 6⅛ high', light(10, 6.125), 'letter', 'height', 1, 'large envelope'),
  row('us', 'letter 5 long', light(5, 3.75), 'letter', 'width', -1, 'unmailable'),
  row('us', 'letter 3½ high', light(5, 3.5), 'letter', 'height', -1, 'unmailable'),
  row(
    'us',
    'letter ¼ thick',
    { ...light(7, 5), thickness: inches(0.25) },
    'letter',
    'thickness',
    1,
    'large envelope',
  ),
  row('us', 'letter 3.5 oz', { ...light(7, 5), mass: ounces(3.5) }, 'letter', 'mass', 1, 'large envelope'),
  row(
    'us',
    'letter 0.007 thick',
    { ...light(5.5, 4), thickness: inches(0.007) },
    'letter',
    'thickness',
    -1,
    'unmailable',
  ),
  row(
    'us',
    '0.009 over 4¼ high',
    { ...light(6, 4.5), thickness: inches(0.009) },
    'letter',
    'thickness',
    -1,
    'nonmachinable letter',
  ),
  row(
    'us',
    '0.009 over 6 long',
    { ...light(7, 4), thickness: inches(0.009) },
    'letter',
    'thickness',
    -1,
    'nonmachinable letter',
  ),
  row(
    'us',
    'thin up to 6 long',
    { ...light(6, 4), thickness: inches(0.008) },
    'letter',
    'width',
    1,
    'nonmachinable letter',
  ),
  row(
    'us',
    'thin up to 4¼ high',
    { ...light(6, 4.25), thickness: inches(0.008) },
    'letter',
    'height',
    1,
    'nonmachinable letter',
  ),
  row('us', 'large 15 long', light(15, 12), 'large envelope', 'width', 1, 'parcel'),
  row('us', 'large 12 high', light(15, 12), 'large envelope', 'height', 1, 'parcel'),
  row(
    'us',
    'large ¾ thick',
    { ...light(9, 7), thickness: inches(0.75) },
    'large envelope',
    'thickness',
    1,
    'parcel',
  ),
  row('us', 'large 13 oz', { ...light(9, 7), mass: ounces(13) }, 'large envelope', 'mass', 1, 'parcel'),
  row('uk', 'Letter 240', mm(240, 165), 'Letter', 'width', 1, 'Large Letter'),
  row('uk', 'Letter 165', mm(240, 165), 'Letter', 'height', 1, 'Large Letter'),
  row(
    'uk',
    'Letter 5 thick',
    { ...mm(200, 150), thickness: millimetres(5) },
    'Letter',
    'thickness',
    1,
    'Large Letter',
  ),
  row('uk', 'Letter 100 g', { ...mm(200, 150), mass: grams(100) }, 'Letter', 'mass', 1, 'Large Letter'),
  row('uk', 'Large 353', mm(353, 250), 'Large Letter', 'width', 1, 'parcel'),
  row('uk', 'Large 250', mm(353, 250), 'Large Letter', 'height', 1, 'parcel'),
  row(
    'uk',
    'Large 25 thick',
    { ...mm(300, 200), thickness: millimetres(25) },
    'Large Letter',
    'thickness',
    1,
    'parcel',
  ),
  row('uk', 'Large 750 g', { ...mm(300, 200), mass: grams(750) }, 'Large Letter', 'mass', 1, 'parcel'),
  row('canada', 'standard 140', mm(140, 90), 'standard', 'width', -1, 'under the minimum'),
  row('canada', 'standard 90', mm(140, 90), 'standard', 'height', -1, 'under the minimum'),
  row(
    'canada',
    '0.18 thick',
    { ...mm(150, 100), thickness: millimetres(0.18) },
    'standard',
    'thickness',
    -1,
    'under the minimum',
  ),
  row('canada', 'standard 245', mm(245, 156), 'standard', 'width', 1, 'oversize'),
  row('canada', 'standard 156', mm(245, 156), 'standard', 'height', 1, 'oversize'),
  row(
    'canada',
    'standard 5 thick',
    { ...mm(200, 150), thickness: millimetres(5) },
    'standard',
    'thickness',
    1,
    'oversize',
  ),
  row('canada', 'standard 50 g', { ...mm(200, 150), mass: grams(50) }, 'standard', 'mass', 1, 'oversize'),
  row('canada', 'oversize 380', mm(380, 270), 'oversize', 'width', 1, 'parcel'),
  row('canada', 'oversize 270', mm(380, 270), 'oversize', 'height', 1, 'parcel'),
  row(
    'canada',
    'oversize 20 thick',
    { ...mm(300, 200), thickness: millimetres(20) },
    'oversize',
    'thickness',
    1,
    'parcel',
  ),
  row('canada', 'oversize 500 g', { ...mm(300, 200), mass: grams(500) }, 'oversize', 'mass', 1, 'parcel'),
  row('australia', 'small 240', mm(240, 130), 'small letter', 'width', 1, 'large letter'),
  row('australia', 'small 130', mm(240, 130), 'small letter', 'height', 1, 'large letter'),
  row(
    'australia',
    'small 5 thick',
    { ...mm(200, 120), thickness: millimetres(5) },
    'small letter',
    'thickness',
    1,
    'large letter',
  ),
  row(
    'australia',
    'small 250 g',
    { ...mm(200, 120), mass: grams(250) },
    'small letter',
    'mass',
    1,
    'large letter',
  ),
  row('australia', 'large 360', mm(360, 260), 'large letter', 'width', 1, 'parcel'),
  row('australia', 'large 260', mm(360, 260), 'large letter', 'height', 1, 'parcel'),
  row(
    'australia',
    'large 20 thick',
    { ...mm(300, 200), thickness: millimetres(20) },
    'large letter',
    'thickness',
    1,
    'parcel',
  ),
  row('australia', 'large 500 g', { ...mm(300, 200), mass: grams(500) }, 'large letter', 'mass', 1, 'parcel'),
  row('germany', 'Standard 140', mm(140, 95), 'Standardbrief', 'width', -1, 'Kompaktbrief'),
  row('germany', 'Standard 90', mm(160, 90), 'Standardbrief', 'height', -1, 'Kompaktbrief'),
  row('germany', 'Standard 235', mm(235, 125), 'Standardbrief', 'width', 1, 'Großbrief'),
  row('germany', 'Standard 125', mm(235, 125), 'Standardbrief', 'height', 1, 'Großbrief'),
  row(
    'germany',
    'Standard 5 thick',
    { ...mm(220, 110), thickness: millimetres(5) },
    'Standardbrief',
    'thickness',
    1,
    'Kompaktbrief',
  ),
  row(
    'germany',
    'Standard 20 g',
    { ...mm(220, 110), mass: grams(20) },
    'Standardbrief',
    'mass',
    1,
    'Kompaktbrief',
  ),
  row('germany', 'Standard ratio 1.4', mm(154, 110), 'Standardbrief', 'width', -1, 'Großbrief'),
  row('germany', 'Kompakt 100', mm(100, 71), 'Kompaktbrief', 'width', -1, 'under the minimum'),
  row('germany', 'Kompakt 70', mm(120, 70), 'Kompaktbrief', 'height', -1, 'under the minimum'),
  row(
    'germany',
    'Kompakt 10 thick',
    { ...mm(220, 110), thickness: millimetres(10) },
    'Kompaktbrief',
    'thickness',
    1,
    'Großbrief',
  ),
  row(
    'germany',
    'Kompakt 50 g',
    { ...mm(220, 110), mass: grams(50) },
    'Kompaktbrief',
    'mass',
    1,
    'Großbrief',
  ),
  row('germany', 'Groß 353', mm(353, 250), 'Großbrief', 'width', 1, 'parcel or a larger letter'),
  row('germany', 'Groß 250', mm(353, 250), 'Großbrief', 'height', 1, 'parcel or a larger letter'),
  row(
    'germany',
    'Groß 20 thick',
    { ...mm(300, 200), thickness: millimetres(20) },
    'Großbrief',
    'thickness',
    1,
    'parcel or a larger letter',
  ),
  row(
    'germany',
    'Groß 500 g',
    { ...mm(300, 200), mass: grams(500) },
    'Großbrief',
    'mass',
    1,
    'parcel or a larger letter',
  ),
  row('abroad', '140 less 2', mm(138, 90), 'letter-post', 'width', -1, 'under the minimum'),
  row('abroad', '90 less 2', mm(140, 88), 'letter-post', 'height', -1, 'under the minimum'),
  row(
    'abroad',
    '600 and 2',
    { ...mm(602, 250), thickness: millimetres(10) },
    'letter-post',
    'width',
    1,
    'parcel',
  ),
  row(
    'abroad',
    '900 and 2 in all',
    { ...mm(500, 392), thickness: millimetres(10) },
    'letter-post',
    'thickness',
    1,
    'parcel',
  ),
  row('abroad', '2 kg', { ...mm(300, 200), mass: grams(2000) }, 'letter-post', 'mass', 1, 'parcel'),
];

const moved = ({ at, move, by }: Limit): Posted => {
  if (move === 'thickness') return { ...at, thickness: length(at.thickness + by) };
  if (move === 'mass') return { ...at, mass: mass(at.mass + by) };
  return { ...at, size: { ...at.size, [move]: length(at.size[move] + by) } };
};

describe('both sides of every limit', () => {
  test.each(LIMITS)('$post: $limit', (limit) => {
    expect(classAt(limit.post, limit.at)).toBe(limit.sizeClass);
    expect(classAt(limit.post, moved(limit))).toBe(limit.then);
  });

  // USPS DMM 101: the postcard is a class for cards without an envelope only.
  test('a US postcard, bare, by each of its limits', () => {
    const bare = (width: number, height: number, thick: number): Posted => ({
      ...light(width, height),
      thickness: inches(thick),
      bare: true,
    });
    expect(classAt('us', bare(6, 4.25, 0.016))).toBe('postcard');
    expect(classAt('us', bare(5, 3.5, 0.007))).toBe('postcard');
    expect(classAt('us', { ...bare(6, 4.25, 0.016), bare: false })).toBe('letter');
    expect(classAt('us', bare(6.001, 4.25, 0.016))).toBe('letter');
    expect(classAt('us', bare(6, 4.251, 0.016))).toBe('letter');
    expect(classAt('us', bare(6, 4.25, 0.017))).toBe('letter');
    expect(classAt('us', bare(4.999, 3.5, 0.01))).toBe('unmailable');
  });

  test('an address up the envelope changes only the class of posts that measure by it', () => {
    for (const { at, post } of LIMITS.filter((one) => one.post !== 'us')) {
      expect(classAt(post, { ...at, address: 'up' })).toBe(classAt(post, at));
    }
  });
});

describe('what is said', () => {
  test('turning the address is offered when it is all that is wrong', () => {
    const verdict = classify({ ...light(4.375, 5.75), address: 'up' }, 'us');
    expect(verdict.why).toEqual(['4⅜″ along the address is under 5″.']);
    expect(verdict.changes[0]).toBe('letter: turn the address to run along the longer side.');
    expect(verdict.isLetter).toBe(false);
  });

  test('every change that is offered is said with its own limit', () => {
    expect(classify(light(4.125, 9.5), 'uk').changes).toEqual(['Letter: at most 240 mm on the longer side.']);
    expect(classify({ ...light(5, 7), mass: ounces(4) }, 'us').changes[0]).toBe('letter: at most 3.5 oz.');
    expect(classify(light(3, 6), 'us').changes[0]).toBe('letter: at least 3½″ across the address.');
  });

  test('the best class says how far it reaches', () => {
    const verdict = classify(mm(110, 220), 'uk');
    expect(verdict.why).toEqual(['Within all its limits: 240 mm by 165 mm, 5 mm thick, 100 g.']);
    expect(verdict.until).toEqual(['over 5 mm thick: Large Letter', 'over 100 g: Large Letter']);
    expect(verdict.changes).toEqual([]);
  });

  test('a patterned or dark front asks for a label, a light one does not', () => {
    expect(classify(light(5, 7), 'us').notes).toEqual([]);
    for (const front of ['patterned', 'dark'] as const) {
      expect(classify({ ...light(5, 7), front }, 'us').notes[0]).toMatch(/light label .*Publication 25/);
    }
  });

  test('every verdict names its rules, their date, and the post office; none names a price', () => {
    for (const verdict of classifyAll(light(5, 7))) {
      expect(verdict.source.length).toBeGreaterThan(5);
      expect(verdict.asOf).toContain('November 2026');
      expect(verdict.check).toContain('post office');
      expect(JSON.stringify(verdict)).not.toMatch(/[$£€¢]|\bprice/i);
    }
  });

  test('nothing without a size, a thickness and a mass is judged', () => {
    expect(() => classify({ ...light(5, 7), mass: mass(0) }, 'us')).toThrow('invalid envelope');
    expect(() => classify({ ...light(5, 7), thickness: length(-1) }, 'us')).toThrow('invalid envelope');
  });
});

describe('properties', () => {
  const posted = fc.record({
    width: fc.integer({ min: 50, max: 500 }),
    height: fc.integer({ min: 50, max: 500 }),
    thick: fc.integer({ min: 1, max: 40 }),
    grams: fc.integer({ min: 1, max: 2500 }),
    address: fc.constantFrom('along' as const, 'up' as const),
  });
  const envelope = (one: typeof posted extends fc.Arbitrary<infer T> ? T : never): Posted => ({
    ...mm(one.width, one.height),
    thickness: millimetres(one.thick),
    mass: grams(one.grams),
    address: one.address,
  });

  test('turning the envelope over on the table changes nothing', () => {
    fc.assert(
      fc.property(posted, (one) => {
        const lying = envelope(one);
        const standing = { ...lying, size: { width: lying.size.height, height: lying.size.width } };
        expect(classifyAll(standing)).toEqual(classifyAll(lying));
      }),
      { seed: 4 },
    );
  });

  test('more weight never makes a smaller class', () => {
    const rank = (post: PostId, one: Posted): number => {
      const place = POSTS[post].classes.findIndex((each) => each.name === classAt(post, one));
      return place < 0 ? POSTS[post].classes.length : place;
    };
    fc.assert(
      fc.property(posted, fc.constantFrom(...POST_IDS), (one, post) => {
        const heavier = { ...envelope(one), mass: grams(one.grams + 50) };
        expect(rank(post, heavier)).toBeGreaterThanOrEqual(rank(post, envelope(one)));
      }),
      { seed: 4 },
    );
  });

  test('what is no letter always says why', () => {
    fc.assert(
      fc.property(posted, (one) => {
        for (const verdict of classifyAll(envelope(one))) expect(verdict.why.length).toBeGreaterThan(0);
      }),
      { seed: 4 },
    );
  });
});
