/** The figures as a form, each section with its sketch; each change goes into the scenario's text. */
import { useMemo } from 'preact/hooks';
import { FIGURE_GROUPS, mayGo, type ScenarioIssue } from '../../sim/index.ts';
import { askedOf, type OtherSection, otherFigures } from '../drawing/formRows.ts';
import { figuresOf } from '../state/figures.ts';
import { reading, source } from '../state/scenario.ts';
import { AddFigure } from './AddFigure.tsx';
import { Figure, Remove } from './Figure.tsx';
import { SketchedFields } from './SketchedFields.tsx';

export function EngineForm() {
  const { text } = source.value;
  const { groups, others, tree } = useMemo(() => formOf(text), [text]);
  const now = reading.value;
  const issues = now.ok ? [] : now.issues;
  return (
    <form class="figures" onSubmit={(event) => event.preventDefault()}>
      {groups.map(({ title, fields }) => (
        <fieldset key={title}>
          <legend>{title}</legend>
          <SketchedFields
            fields={fields}
            field={(one) => <Figure key={one.path} asked={one} issues={issues} />}
          />
        </fieldset>
      ))}
      {others.map((one) => (
        <Others key={one.name} section={one} issues={issues} />
      ))}
      {tree !== undefined && <AddFigure tree={tree} />}
    </form>
  );
}

/** What the text says: the figures changed most in groups of their own, then the rest by section. */
function formOf(text: string) {
  const figures = figuresOf(text);
  const { tree } = figures;
  const groups = FIGURE_GROUPS.map(({ title, fields }) => ({
    title,
    fields: askedOf(fields, figures),
  })).filter(({ fields }) => fields.length > 0);
  const known = new Set(groups.flatMap(({ fields }) => fields.map(({ path }) => path)));
  return { groups, others: otherFigures(tree, known, figures), tree };
}

interface OthersProps {
  section: OtherSection;
  issues: readonly ScenarioIssue[];
}

function Others({ section: { name, fields, lists }, issues }: OthersProps) {
  return (
    <fieldset>
      <legend>
        Also: {name} {mayGo(name) && <Remove path={name} name={`all of ${name}`} />}
      </legend>
      <SketchedFields
        fields={fields}
        field={(one) => <Figure key={one.path} asked={one} issues={issues} />}
      />
      {lists.map(({ path, label, rows }) => (
        <p class="figure" key={path}>
          <span>{label}</span>
          <span class="figure-box">
            {rows} rows, in the file {mayGo(path) && <Remove path={path} name={label} />}
          </span>
        </p>
      ))}
    </fieldset>
  );
}
