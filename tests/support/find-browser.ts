/** Finds a Chromium or Chrome on this machine. */
import { existsSync } from 'node:fs';

const PLACES = [
  process.env.CHROMIUM,
  '/usr/bin/chromium',
  '/usr/bin/chromium-browser',
  '/usr/bin/google-chrome',
  '/Applications/Google Chrome.app/Contents/MacOS/Google Chrome',
  '/Applications/Chromium.app/Contents/MacOS/Chromium',
  'C:\\Program Files\\Google\\Chrome\\Application\\chrome.exe',
];

export const findBrowser = (): string | undefined =>
  PLACES.find((place) => place !== undefined && existsSync(place));

export const browserPath = findBrowser();
