/** The frame of every page: head, name, the five places, the search box, the page itself. Knows no resource. */
import type { FC, PropsWithChildren } from 'hono/jsx';
import { FindBox } from './find/box.tsx';

export type Section = 'table' | 'envelopes' | 'stash' | 'journal' | 'tools';

const PLACES: readonly { section: Section; href: string; name: string }[] = [
  { section: 'table', href: '/', name: 'Table' },
  { section: 'envelopes', href: '/envelopes', name: 'Envelopes' },
  { section: 'stash', href: '/stash', name: 'Stash' },
  { section: 'journal', href: '/projects', name: 'Journal' },
  { section: 'tools', href: '/tools', name: 'Tools' },
];

const HTMX = JSON.stringify({ includeIndicatorCSS: false, metaCharacter: '-', defaultSwap: 'outerHTML' });

/** The addresses of what every page loads. */
interface Assets {
  readonly style: string;
  readonly scripts: readonly string[];
  readonly icon: string;
  readonly fonts: readonly string[];
}

interface Props {
  readonly title: string;
  readonly section: Section | undefined;
  readonly assets: Assets;
  /** In so many seconds, where scripts don't run. */
  readonly refresh?: number | undefined;
  /** What stands in the search box, on the page that answers it. */
  readonly sought?: string | undefined;
  /** Whether what was typed before has just been kept. */
  readonly saved?: boolean;
}

export const titleOf = (page: string): string => (page === 'Creasebook' ? page : `${page} · Creasebook`);

export const Layout: FC<PropsWithChildren<Props>> = ({
  title,
  section,
  assets,
  sought,
  refresh,
  saved,
  children,
}) => (
  <html lang="en">
    <head>
      <meta charset="utf-8" />
      <meta name="viewport" content="width=device-width, initial-scale=1" />
      <meta name="color-scheme" content="light dark" />
      <meta name="htmx-config" content={HTMX} />
      <title>{titleOf(title)}</title>
      {refresh === undefined ? null : (
        <noscript>
          <meta http-equiv="refresh" content={`${refresh}`} />
        </noscript>
      )}
      {assets.fonts.map((href) => (
        <link rel="preload" href={href} as="font" type="font/woff2" crossorigin="anonymous" />
      ))}
      <link rel="icon" href={assets.icon} type="image/svg+xml" />
      <link rel="stylesheet" href={assets.style} />
      {assets.scripts.map((src) => (
        <script src={src} defer></script>
      ))}
    </head>
    <body>
      <a class="skip" href="#main">
        To the page
      </a>
      <header class="masthead">
        <a class="name" href="/">
          <Mark />
          Creasebook
        </a>
        <nav aria-label="Places">
          {PLACES.map((place) => (
            <a href={place.href} aria-current={place.section === section ? 'page' : undefined}>
              {place.name}
            </a>
          ))}
        </nav>
        <FindBox sought={sought} />
      </header>
      <main id="main" tabindex={-1}>
        {saved ? (
          <p class="done no-print" role="status" tabindex={-1} autofocus>
            Saved.
          </p>
        ) : null}
        {children}
      </main>
    </body>
  </html>
);

const Mark: FC = () => (
  <svg class="mark" viewBox="0 0 48 32" width="36" height="24" aria-hidden="true">
    <path d="M2 2h44v28H2z M2 30 20 15 M46 30 28 15 M2 2 24 20 46 2" />
  </svg>
);
