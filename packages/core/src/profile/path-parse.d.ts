/** The parser of svgpath by itself: what the library offers whole takes three times its size, of which a profile needs nothing. */
declare module 'svgpath/lib/path_parse.js' {
  export default function parsePath(path: string): { readonly segments: unknown; readonly err: string };
}
