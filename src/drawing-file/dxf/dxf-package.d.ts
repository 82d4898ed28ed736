/** The part of the package `dxf` that is used; it comes without types. What it gives is checked before it is believed. */
declare module "dxf" {
  export interface DxfVertex {
    readonly x?: number;
    readonly y?: number;
    readonly bulge?: number;
  }

  export interface DxfEntity {
    readonly type: string;
    readonly layer?: string;
    /** POLYLINE and LWPOLYLINE. */
    readonly vertices?: readonly DxfVertex[];
    readonly closed?: boolean;
    readonly polygonMesh?: boolean;
    readonly polyfaceMesh?: boolean;
    /** POINT, TEXT and the centre of an ARC or a CIRCLE. */
    readonly x?: number;
    readonly y?: number;
    /** LINE. */
    readonly start?: DxfVertex;
    readonly end?: DxfVertex;
    /** ARC: radius and angles in radians. */
    readonly r?: number;
    readonly startAngle?: number;
    readonly endAngle?: number;
    readonly extrusionZ?: number;
    /** TEXT. */
    readonly string?: string;
  }

  export interface DxfBlock {
    readonly name?: string;
    readonly entities?: readonly DxfEntity[];
  }

  export interface DxfFile {
    readonly blocks: readonly DxfBlock[];
    readonly entities: readonly DxfEntity[];
  }

  export function parseString(text: string): DxfFile;
}

declare module "dxf/lib/util/logger.js" {
  interface Logger {
    error: (...words: readonly unknown[]) => void;
  }
  const logger: Logger | { readonly default: Logger };
  export default logger;
}
