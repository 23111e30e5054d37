export type { Chain, Curve } from './geometry/curve.ts';
export type * from './job/job.ts';
export type * from './job/report.ts';
export { parseAngle } from './measure/angle.ts';
export type { Misreading } from './measure/figure.ts';
export { formatLength, formatNumber } from './measure/format.ts';
export { parseLength, toMillimetres, type Units } from './measure/length.ts';
export type { Fault, Problem, Severity } from './problem.ts';
