// The parts that are used of a library that brings no types of its own.

declare module 'pdfkit' {
  import type { EmbeddedFont } from '../letters/typefaces.ts';

  interface TextOptions {
    readonly lineBreak: false;
    readonly baseline: 'alphabetic';
    /** Left out: words are laid out once each and kept. */
    readonly features?: readonly string[];
  }
  interface StructureElement {
    add(child: StructureElement): StructureElement;
    end(): void;
  }
  export default class PDFDocument {
    constructor(options: {
      readonly autoFirstPage: boolean;
      readonly font: null;
      readonly lang: string;
      readonly displayTitle: boolean;
      readonly pdfVersion: string;
      readonly subset: string;
      readonly tagged: boolean;
      readonly info: Readonly<Record<string, unknown>>;
    });
    registerFont(name: string, font: EmbeddedFont): this;
    addPage(options: { readonly size: readonly [number, number]; readonly margin: number }): this;
    addStructure(element: StructureElement): this;
    struct(
      type: string,
      options: { readonly alt?: string; readonly lang?: string },
      children?: () => void,
    ): StructureElement;
    markContent(tag: string, options?: { readonly type: string }): this;
    endMarkedContent(): this;
    save(): this;
    restore(): this;
    scale(factor: number): this;
    rotate(degrees: number, options: { readonly origin: readonly [number, number] }): this;
    moveTo(x: number, y: number): this;
    lineTo(x: number, y: number): this;
    bezierCurveTo(x1: number, y1: number, x2: number, y2: number, x: number, y: number): this;
    closePath(): this;
    lineWidth(width: number): this;
    lineCap(cap: 'butt' | 'round'): this;
    lineJoin(join: 'round'): this;
    dash(length: number | readonly number[], options?: object): this;
    undash(): this;
    fill(colour: string, rule: 'even-odd'): this;
    stroke(colour: string): this;
    fillAndStroke(fill: string, stroke: string, rule: 'even-odd'): this;
    fillColor(colour: string): this;
    font(name: string, size: number): this;
    text(text: string, x: number, y: number, options: TextOptions): this;
    image(data: ArrayBuffer, x: number, y: number, size: { readonly width: number; readonly height: number }): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }
}
