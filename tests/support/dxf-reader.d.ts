// The part that is used of a library that brings no types of its own.
declare module 'dxf' {
  export class Helper {
    constructor(text: string);
    readonly parsed: {
      readonly entities: readonly unknown[];
      readonly header: { readonly insUnits: number };
      readonly tables: { readonly layers: Readonly<Record<string, unknown>> };
    };
  }
}
