import type { Plugin } from 'vite';

/** Parts of svg.js that the page paints with: elements, their attributes and their place in the drawing. */
const USED = /^src\/(?:elements\/(?:Dom|Element)|modules\/core\/(?:attr|namespaces|globals|selector)|types\/|utils\/)/;
const REGISTERS = /^(registerMethods|registerMorphableType|makeMorphable|register|extend|List\.extend)\(/;

/** An older browser's list.includes, with all that it needs; every browser with modules has its own. */
const POLYFILL = 'var import_includes = /* @__PURE__ */ __toESM(require_includes(), 1);';
const NATIVE = 'const import_includes = { default: (list) => list.includes };';

/**
 * Lets the bundler leave out the parts of svg.js that nothing uses.
 *
 * svg.js is one module that, when loaded, registers everything it has on its classes: animations, gradients, text. A
 * bundler has to keep all that. Here the registrations outside the parts used are marked as free of effects.
 */
export function leanSvg(): Plugin {
  return {
    name: 'lean-svg',
    transform(code, id) {
      if (!id.endsWith('/svg.esm.js')) return null;
      let region = '';
      if (!code.includes(POLYFILL)) throw new Error('svg.js brings its own includes no more: see lean-svg.ts');
      const lines = code
        .replace(POLYFILL, NATIVE)
        .split('\n')
        .map((line) => {
          region = /^\/\/#region (.*)$/.exec(line)?.[1] ?? region;
          const kept = USED.test(region) || /^extend\((?:Dom|Element|EventTarget),/.test(line);
          return REGISTERS.test(line) && !kept ? `/* @__PURE__ */ ${line}` : line;
        });
      return { code: lines.join('\n'), map: null };
    },
  };
}
