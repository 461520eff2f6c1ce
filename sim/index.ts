/** The public interface on one screen: what the command line, the page and scripts build on. */
export { type Band, bandMean, inBand } from './decision/band.ts';
export type { FloorMargin } from './decision/floor.ts';
export { gearChangeBands } from './decision/gearChange.ts';
export {
  allSettled,
  type LengthCurve,
  type LengthQuestion,
  type LengthStudy,
  lengthStudy,
  type Reason,
  runLengths,
  type WeighedLength,
} from './decision/lengthStudy.ts';
export { type GainAndPrice, paretoSet } from './decision/pareto.ts';
export {
  bandsOf,
  type Floor,
  inTarget,
  type Score,
  scores,
  type Target,
  targetMean,
  type WeightedBand,
} from './decision/target.ts';
export { efficiencies, type TradeOff, tradeOff } from './decision/tradeOff.ts';
export { type PointResult, runPoint } from './engine/point.ts';
export {
  STATIONS,
  type Station,
  type StationTrace,
  type Trace,
  tracePoint,
} from './engine/trace.ts';
export {
  issueText,
  NonPhysicalStateError,
  ScenarioError,
  type ScenarioIssue,
} from './errors.ts';
export { CAUTIONS, KNOWN, NOT_KNOWN } from './report/cautions.ts';
export { type CheckDocument, checkDocument } from './report/checkDocument.ts';
export { curveCsv, sweepCsv, traceCsv } from './report/csv.ts';
export { type CurveDocument, curveDocument } from './report/curveDocument.ts';
export type { ScenarioStamp } from './report/document.ts';
export { type ErrorDocument, errorDocument } from './report/errorDocument.ts';
export { curveReport, sweepReport } from './report/htmlReport.ts';
export { LENGTH_DRAWING, LENGTH_MEANING } from './report/lengthMeaning.ts';
export { type LengthRow, lengthTable, rowRemark, studyCurves } from './report/lengthTable.ts';
export { type FactSection, scenarioFacts } from './report/scenarioFacts.ts';
export {
  bandWords,
  curveSentences,
  type DecisionWords,
  decisionSentences,
  decisionWords,
} from './report/summary.ts';
export { type SweepDocument, sweepDocument } from './report/sweepDocument.ts';
export { checkText, curveText, sweepText, traceText } from './report/textReport.ts';
export { type TraceDocument, traceDocument } from './report/traceDocument.ts';
export { scenarioHash } from './scenario/hash.ts';
export { readScenario } from './scenario/read.ts';
export { type ReadValue, readValue, shortestLength } from './scenario/readValue.ts';
export type { Scenario } from './scenario/resolve.ts';
export type { EngineSpecification } from './specification.ts';
export {
  isFailure,
  type PointFailure,
  type PointJob,
  type PointOutcome,
  type PointRunner,
  runHere,
  runJob,
} from './sweep/runner.ts';
export { parseShard, runPoints, type Shard, shardPoints } from './sweep/shard.ts';
export {
  type FinishedPoints,
  jobKey,
  mending,
  pointLine,
  readPoints,
  storedRunner,
  unfinished,
} from './sweep/store.ts';
export {
  type SweepObserver,
  sweep,
  type TablePoint,
  tablePoints,
  withLength,
} from './sweep/sweep.ts';
export { PROGRAM } from './version.ts';
