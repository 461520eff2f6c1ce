/** The public interface on one screen: what the command line, the page and scripts build on. */
export { type Band, bandMean, inBand } from './decision/band.ts';
export {
  type Calibration,
  type CalibrationRefusal,
  type FittedUnknown,
  isRefusal,
} from './decision/calibration.ts';
export type { Comparison } from './decision/comparison.ts';
export type { FloorMargin } from './decision/floor.ts';
export { gearChangeBands } from './decision/gearChange.ts';
export {
  allSettled,
  type LengthCurve,
  type LengthQuestion,
  type LengthStudy,
  lengthStudy,
  lengthsToRun,
  type Reason,
  runLengths,
  type WeighedLength,
} from './decision/lengthStudy.ts';
export { flattestPair, type MixedLengths, mixedLengths } from './decision/mixedLengths.ts';
export { type GainAndPrice, paretoSet } from './decision/pareto.ts';
export {
  type PlacementQuestion,
  type PlacementStudy,
  placementSettled,
  placementStudy,
} from './decision/placement.ts';
export type { Estimate, Spread } from './decision/sampleFigures.ts';
export { type Fit, type ShelfAnswer, shelfAnswer } from './decision/shelf.ts';
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
export {
  type InputEffect,
  type InputSample,
  type LengthSpread,
  type UncertaintyQuestion,
  type UncertaintyStudy,
  uncertaintyStudy,
} from './decision/uncertainty.ts';
export {
  type VariantStudy,
  type VariedKey,
  variantStudy,
  type WeighedVariant,
} from './decision/variantStudy.ts';
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
export { type CompareDocument, compareCsv, compareDocument } from './report/compareDocument.ts';
export { compareReport } from './report/compareReport.ts';
export { type CompareWords, compareText, compareWords } from './report/compareText.ts';
export { curveCsv, sweepCsv, traceCsv, uncertaintyCsv, variantCsv } from './report/csv.ts';
export { type CurveDocument, curveDocument } from './report/curveDocument.ts';
export type { ScenarioStamp } from './report/document.ts';
export { type ErrorDocument, errorDocument } from './report/errorDocument.ts';
export { curveReport, sweepReport } from './report/htmlReport.ts';
export { variantReport } from './report/htmlVariants.ts';
export { LENGTH_DRAWING, LENGTH_MEANING } from './report/lengthMeaning.ts';
export { type LengthRow, lengthTable, rowRemark, studyCurves } from './report/lengthTable.ts';
export {
  type MeasuredQuestion,
  type MeasuredStudy,
  measuredStudy,
  type NoComparison,
} from './report/measuredStudy.ts';
export {
  type PlacementDocument,
  placementCsv,
  placementDocument,
} from './report/placementDocument.ts';
export { placementReport } from './report/placementReport.ts';
export { FUEL_CAUTIONS, placementSentences, placementText } from './report/placementWords.ts';
export { mixedWords, shelfWords, uncertaintySentences } from './report/questionWords.ts';
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
export type { Doubt } from './report/uncertaintyDocument.ts';
export { uncertaintyText } from './report/uncertaintyText.ts';
export { type VariantDocument, variantDocument } from './report/variantDocument.ts';
export { variantSentences, variantText } from './report/variantText.ts';
export {
  type DoubtfulInput,
  type DoubtSample,
  doubtfulInputs,
  doubtSample,
} from './scenario/doubt.ts';
export { scenarioHash } from './scenario/hash.ts';
export { type MeasuredRun, readMeasuredRun } from './scenario/measuredRun.ts';
export type { Axis, RangeProblem } from './scenario/range.ts';
export { readScenario } from './scenario/read.ts';
export { type ReadValue, readValue, readVariedKey, shortestLength } from './scenario/readValue.ts';
export type { Scenario } from './scenario/resolve.ts';
export { type Uncertainty, USUAL_UNCERTAINTY } from './scenario/sections/uncertainty.ts';
export {
  changedText,
  type ScenarioUnknown,
  scenarioUnknowns,
  UNKNOWN_NAMES,
  type UnknownName,
} from './scenario/unknowns.ts';
export { variantEngines } from './scenario/variants.ts';
export type { EngineSpecification } from './specification.ts';
export {
  isFailure,
  type PointFailure,
  type PointJob,
  type PointOutcome,
  type PointRunner,
  runHere,
  runJob,
  runSpeedsJob,
} from './sweep/runner.ts';
export { batched, type SpeedsJob } from './sweep/batch.ts';
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
