/** Types of the part of kld-intersections that the geometry tests check against; the package brings none. */
declare module "kld-intersections" {
  export interface PlainPoint {
    readonly x: number;
    readonly y: number;
  }

  /** An opaque description of a shape. */
  export interface ShapeInfo {
    readonly name: string;
  }

  interface ShapeMakers {
    line(p1: PlainPoint, p2: PlainPoint): ShapeInfo;
    circle(centre: PlainPoint, radius: number): ShapeInfo;
    cubicBezier(p1: PlainPoint, p2: PlainPoint, p3: PlainPoint, p4: PlainPoint): ShapeInfo;
    quadraticBezier(p1: PlainPoint, p2: PlainPoint, p3: PlainPoint): ShapeInfo;
    polyline(points: readonly PlainPoint[]): ShapeInfo;
    polygon(points: readonly PlainPoint[]): ShapeInfo;
    path(data: string): ShapeInfo;
  }

  export const ShapeInfo: ShapeMakers;

  export const Intersection: {
    intersect(a: ShapeInfo, b: ShapeInfo): { readonly status: string; readonly points: readonly PlainPoint[] };
  };
}
