/** Finds a Chromium or Chrome on this machine, and says once how to get one when there is none. */
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

export const browserPath: string | undefined = PLACES.find(
  (place) => place !== undefined && existsSync(place),
);

/** Runs once before all tests. */
export default function tellIfMissing(): void {
  if (browserPath) return;
  console.log(
    'Skipped: browser tests. No Chromium found; apt-get install -y chromium, or set CHROMIUM to its path.',
  );
}
