// The parts that are used of libraries that bring no types of their own.

declare module 'pdfkit' {
  interface PageOptions {
    size: [number, number];
    margin: number;
  }
  export default class PDFDocument extends NodeJS.EventEmitter {
    constructor(options: {
      autoFirstPage: boolean;
      compress: boolean;
      lang: string;
      info: Record<string, unknown>;
      displayTitle: boolean;
    });
    info: Record<string, unknown>;
    addPage(options: PageOptions): this;
    registerFont(name: string, file: string): this;
    on(event: 'data', listener: (chunk: Uint8Array) => void): this;
    on(event: 'end', listener: () => void): this;
    on(event: 'error', listener: (error: Error) => void): this;
    end(): void;
  }
}

declare module 'svg-to-pdfkit' {
  import type PDFDocument from 'pdfkit';

  interface Options {
    width: number;
    height: number;
    fontCallback: () => string;
    warningCallback: (message: string) => void;
  }
  export default function svgToPdf(document: PDFDocument, svg: string, x: number, y: number, options: Options): void;
}

declare module 'fontkit' {
  interface PathCommand {
    command: 'moveTo' | 'lineTo' | 'quadraticCurveTo' | 'bezierCurveTo' | 'closePath';
    args: number[];
  }
  interface Font {
    unitsPerEm: number;
    layout(text: string): {
      glyphs: { path: { commands: PathCommand[] } }[];
      positions: { xAdvance: number; xOffset: number; yOffset: number }[];
    };
  }
  export function openSync(path: string): Font;
}
