/** The public API: a scenario in, a run, its figures and its report out. */

// machine
export { breakdown } from './machine/breakdown.ts';
export { type RatedPoint, ratedPoint } from './machine/ratedPoint.ts';
export { type SteadyState, steadyState } from './machine/steadyState.ts';
export { twoPoleSteadyState } from './machine/twoPoleSteadyState.ts';
// measure
export type { EnergyLedger } from './measure/energyLedger.ts';
export { measure } from './measure/measure.ts';
export { METRIC_KEYS, type Metric, type MetricKey, type Metrics } from './measure/metric.ts';
export type { RunResult } from './measure/result.ts';
export { simulate } from './measure/simulate.ts';
// report
export { buildReportFiles, type ReportFile } from './report/buildReportFiles.ts';
export { renderReportHtml } from './report/renderReportHtml.ts';
export { renderSummaryJson } from './report/renderSummaryJson.ts';
export { renderTerminal } from './report/renderTerminal.ts';
export { renderTraceCsv } from './report/renderTraceCsv.ts';
export type { SummaryFile } from './report/summaryFile.ts';
// scenario
export { assertScenario } from './scenario/assertScenario.ts';
export { parseScenario } from './scenario/parseScenario.ts';
export {
  type ParseOptions,
  parseScenarioWithOrigins,
  type ScenarioWithOrigins,
} from './scenario/parseScenarioWithOrigins.ts';
export { placeProblems } from './scenario/placeProblems.ts';
export { formatProblem, type Problem, type ProblemCode } from './scenario/problem.ts';
export { renderScenario } from './scenario/renderScenario.ts';
export type * from './scenario/scenario.ts';
export { ScenarioError } from './scenario/scenarioError.ts';
export { scenarioJsonSchema } from './scenario/scenarioJsonSchema.ts';
export { scenarioToYaml } from './scenario/scenarioToYaml.ts';
// shaft
export { steadySpeed } from './shaft/steadySpeed.ts';
// simulate
export { runTrajectory } from './simulate/run.ts';
export { isSuccessful, type RunStatus, type RunStatusCode } from './simulate/status.ts';
export type { Point, RunEvent, ShortCircuit, Trajectory } from './simulate/trajectory.ts';
