/**
 * Where the address goes on an envelope's front, how large a label may be, and what has to stay clear. Knows the US
 * post's reading area and uses it for every post: a machine elsewhere looks in the same place or asks for less.
 */
import { inches, type Length, length, subtract } from '#shared/length.ts';
import type { AddressRuns } from '#shared/schemas/post.ts';
import { longer, type Size, shorter } from '#shared/size.ts';

/** A rectangle on the front as it is read; `x` from the left and `y` down from the top. */
export interface Place extends Size {
  readonly x: Length;
  readonly y: Length;
}

export interface AddressPlaces {
  /** The front as it is read. */
  readonly front: Size;
  readonly area: Place;
  /** Where the post prints its bar code. */
  readonly clear: Place;
  /** The largest label that we suggest: centred in the area. */
  readonly label: Place;
  readonly source: string;
}

/**
 * The places on a front that is read along its longer side or up it; `undefined` when it is too small to hold an
 * address. Source: USPS Domestic Mail Manual 202.2.1 for the area, 202.5 and Publication 28 (appendix A1) for the clear
 * zone. The label's size is our choice.
 */
export function addressPlaces(size: Size, address: AddressRuns): AddressPlaces | undefined {
  const [long, short] = [longer(size), shorter(size)];
  const front = address === 'along' ? { width: long, height: short } : { width: short, height: long };
  const area = areaOn(front);
  if (area.width < LEAST || area.height < LEAST) return undefined;
  return { front, area, clear: clearOn(front), label: labelIn(area), source: SOURCE };
}

const SOURCE = 'USPS Domestic Mail Manual 202.2.1, Publication 28';
const SIDES = inches(0.5);
const LOWEST = inches(0.625);
const HIGHEST = inches(2.75);
const CLEAR: Size = { width: inches(4.75), height: inches(0.625) };

const LARGEST_LABEL: Size = { width: inches(4), height: inches(1.5) };
const LABEL_MARGIN = inches(0.125);
const LEAST = inches(0.5);

function areaOn(front: Size): Place {
  const top = Math.max(0, front.height - HIGHEST);
  return {
    x: SIDES,
    y: length(top),
    width: length(front.width - 2 * SIDES),
    height: length(front.height - LOWEST - top),
  };
}

function clearOn(front: Size): Place {
  const width = length(Math.min(CLEAR.width, front.width));
  return {
    x: subtract(front.width, width),
    y: subtract(front.height, CLEAR.height),
    width,
    height: CLEAR.height,
  };
}

function labelIn(area: Place): Place {
  const width = length(Math.min(LARGEST_LABEL.width, area.width - 2 * LABEL_MARGIN));
  const height = length(Math.min(LARGEST_LABEL.height, area.height - 2 * LABEL_MARGIN));
  const [left, top] = [area.width - width, area.height - height].map((room) => Math.floor(room / 2));
  return { x: length(area.x + left!), y: length(area.y + top!), width, height };
}
