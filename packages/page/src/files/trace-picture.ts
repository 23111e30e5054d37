import type { TracedArc } from '@fielded/exchange';
import TraceWorker from './trace-worker.ts?worker&inline';

/** The scale of a picture: pixels to the inch, or the sample's thickness in mm. */
export type PictureScale = { readonly dpi: number } | { readonly thickness: number };

/** A picture to be traced; without bytes the one before, at another scale. */
export interface TraceRequest {
  readonly bytes?: ArrayBuffer;
  readonly scale?: PictureScale;
}

/** One face's cut: its outline as path data in mm, and how far what was seen lies from it at most. */
export interface SeenSide {
  readonly path: string;
  readonly reach: number;
  readonly depth: number;
  readonly deviation: number;
  readonly arcs: readonly TracedArc[];
}

export type TraceAnswer =
  | { readonly kind: 'refused'; readonly refused: string; readonly instead: string }
  | { readonly kind: 'asks-scale' }
  | {
      readonly kind: 'traced';
      readonly dpi: readonly [number, number];
      readonly thickness: number;
      /** Degrees. */
      readonly turned: number;
      readonly front: SeenSide;
      readonly back: SeenSide | null;
      /** What was read drawn over what was seen. */
      readonly svg: string;
    };

/** The largest picture file that is read, bytes. */
const MOST_BYTES = 300_000_000;

/** Traces pictures in a worker, one at a time. */
export interface Tracer {
  trace(file: File): Promise<TraceAnswer>;
  /** Traces the picture before at another scale. */
  again(scale: PictureScale): Promise<TraceAnswer>;
  stop(): void;
}

export function createTracer(): Tracer {
  let worker: Worker | null = null;
  const ask = (request: TraceRequest, handed: Transferable[] = []) =>
    new Promise<TraceAnswer>((settle) => {
      worker ??= new TraceWorker();
      const lost = 'the picture could not be read: this browser may have too little memory for it';
      worker.onmessage = ({ data }: MessageEvent<TraceAnswer>) => settle(data);
      worker.onerror = () => {
        stop();
        settle({ kind: 'refused', refused: lost, instead: 'Crop it to the sample' });
      };
      worker.postMessage(request, handed);
    });
  const stop = () => {
    worker?.terminate();
    worker = null;
  };
  return {
    async trace(file) {
      if (file.size > MOST_BYTES)
        return { kind: 'refused', refused: 'the file is larger than 300 MB', instead: 'Crop it to the sample' };
      const bytes = await file.arrayBuffer();
      return ask({ bytes }, [bytes]);
    },
    again: (scale) => ask({ scale }),
    stop,
  };
}
