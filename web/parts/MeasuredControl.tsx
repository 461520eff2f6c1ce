/** Opens a run, says which trumpets it was made with, and what of the scenario to fit to it. */
import {
  changedText,
  isRefusal,
  METRES,
  type MeasuredStudy,
  UNKNOWN_NAMES,
  type UnknownName,
} from '../../sim/index.ts';
import { saveText } from '../save.ts';
import { resultOf } from '../state/asked.ts';
import { fileStem } from '../state/files.ts';
import {
  fitted,
  fitUnknown,
  MOST_UNKNOWNS,
  measured,
  openRun,
  runFile,
  runLength,
} from '../state/measured.ts';
import { picture } from '../state/picture.ts';
import { source, unit } from '../state/scenario.ts';
import { AskControl } from './AskControl.tsx';
import { FileChoice, FileIssues } from './FileChoice.tsx';
import { useFollowing } from './following.ts';

export function MeasuredControl() {
  const file = runFile.value;
  return (
    <>
      <div class="choice">
        <FileChoice label="Open a run (CSV)" onText={openRun} />
        {file && <span class="quiet">{file.file}</span>}
        {file?.run && <LengthOfRun />}
      </div>
      {file?.run && <Unknowns />}
      {file && <FileIssues what="The run" issues={file.issues} />}
      {file?.run && (
        <AskControl
          study={measured}
          label="Compare with the prediction"
          cost="One point a speed; a fit takes some more."
        />
      )}
      <SaveFitted />
    </>
  );
}

/** Trumpets that a run may be said to be made with [m]. */
const [SHORTEST, LONGEST] = [0.01, 1];

function LengthOfRun() {
  const own = picture.value?.scenario.engine.intake.trumpet.length ?? 0;
  const metres = METRES[unit.value];
  const figure = (length: number) => String(Math.round((length / metres) * 1e3) / 1e3);
  const field = useFollowing(figure(runLength.value ?? own));
  return (
    <label class="run-length">
      made with trumpets of{' '}
      <input
        type="number"
        min={figure(SHORTEST)}
        max={figure(LONGEST)}
        step="any"
        ref={field}
        onChange={({ currentTarget: { valueAsNumber } }) => {
          measured.clear();
          const length = valueAsNumber * metres;
          runLength.value = length >= SHORTEST ? length : undefined;
        }}
      />{' '}
      {unit.value}
    </label>
  );
}

function Unknowns() {
  const full = fitted.value.length >= MOST_UNKNOWNS;
  return (
    <fieldset class="choice">
      <legend>Fit to the run, at most {MOST_UNKNOWNS}</legend>
      {UNKNOWN_NAMES.map((name: UnknownName) => {
        const on = fitted.value.includes(name);
        return (
          <label key={name}>
            <input
              type="checkbox"
              checked={on}
              disabled={full && !on}
              onChange={() => {
                measured.clear();
                fitUnknown(name, !on);
              }}
            />{' '}
            {name.replaceAll('-', ' ')}
          </label>
        );
      })}
    </fieldset>
  );
}

/** The scenario as a file with the values found; the one on the page stays as it is. */
function SaveFitted() {
  const study = resultOf(measured);
  if (!study?.calibration || isRefusal(study.calibration)) return null;
  return (
    <p class="take">
      <button
        type="button"
        onClick={() => saveText(`${fileStem()}-fitted.yaml`, fittedText(study), 'text/yaml')}
      >
        Save the scenario with the values found (YAML)
      </button>
    </p>
  );
}

function fittedText({ calibration, unknowns }: MeasuredStudy): string {
  const { text, file } = source.peek();
  const found = calibration && !isRefusal(calibration) ? calibration.unknowns : [];
  const changes = found.flatMap(({ value }, k) => unknowns[k]!.changes(value));
  return changedText(text, file, changes);
}
