import { createHash } from 'node:crypto';
import type { Plugin } from 'vite';

/** Text that is carried and neither shown nor run: the licences of what the file holds. */
function inert(text: string): string {
  return `<template id="licences">${text.replaceAll('&', '&amp;').replaceAll('<', '&lt;')}</template>`;
}

/** Puts script and style into the page itself, allowed by their hashes, so that it opens from a single file on disk. */
export function singleFile(icon: string): Plugin {
  return {
    name: 'single-file',
    enforce: 'post',
    // Last of all: what stands for parts fetched later is filled in by then.
    generateBundle: {
      order: 'post',
      handler(_, bundle) {
        const page = bundle['index.html'];
        if (page?.type !== 'asset') return;
        const scripts: string[] = [];
        const styles: string[] = [];
        let licences = '';
        for (const [name, file] of Object.entries(bundle)) {
          if (file.type === 'chunk') scripts.push(file.code.replaceAll('</script', '<\\/script'));
          else if (name.endsWith('.css')) styles.push(String(file.source));
          else if (name === 'LICENSES.txt') licences = String(file.source);
          if (name !== 'index.html') delete bundle[name];
        }
        const script = scripts.join('\n');
        const style = styles.join('\n');
        const html = String(page.source)
          .replace(
            /\s*<script[^>]*src=[^>]*><\/script>|\s*<link[^>]*rel="(?:stylesheet|manifest|modulepreload)"[^>]*>/g,
            '',
          )
          .replace(/href="[^"]*icon[^"]*"/, () => `href="data:image/svg+xml,${encodeURIComponent(icon)}"`)
          .replace("script-src 'self'", `script-src '${hashOf(script)}'`)
          .replace("style-src 'self'", `style-src '${hashOf(style)}'`)
          .replace('</head>', () => `<style>${style}</style>\n  </head>`)
          .replace('</body>', () => `<script type="module">${script}</script>\n    ${inert(licences)}\n  </body>`);
        delete bundle['index.html'];
        this.emitFile({ type: 'asset', fileName: 'fielded.html', source: html });
      },
    },
  };
}

/** As a Content-Security-Policy names what it allows. */
function hashOf(text: string): string {
  return `sha256-${createHash('sha256').update(text).digest('base64')}`;
}
