/**
 * Hoses from the runners to a bar, as ducts:
 *
 *   runner, tapped at the face of its throttle body | hole | hose | bar | hose of the sensor | sensor
 *   air of the feed | valve | passage | bar
 *
 * Hoses have friction, inertia and warming of the exact theory at one frequency (thinLine.ts). A small room sets small steps of time, so one as small as a short piece of the
 * hose before it is lengthened hose instead: a shut pipe of the same room, alike far below its quarter wave; and
 * so small a bar is a joint without volume. Walls of hoses have the temperature of the day. Source: geometry.
 */

import type { BarSpecification } from '../bars.ts';
import { DuctEnd } from '../boundary/ductEnd.ts';
import { closedEnd, junction, type Node, openEnd, orifice, valve } from '../boundary/node.ts';
import { type OpenAir, Tapping, Volume } from '../boundary/reservoir.ts';
import { CYCLE } from '../crankAngle.ts';
import type { Duct } from '../duct/duct.ts';
import { circleArea } from '../duct/profile.ts';
import type { EngineSpecification } from '../specification.ts';
import { thinLine } from './thinLine.ts';

/** A bar in the network. */
export interface Bar {
  ducts: Duct[];
  nodes: Node[];
  volumes: Volume[];
  /** At the runners, in the order of the file. */
  hoses: DuctEnd[];
  /** What the bar and the sensor are under now [Pa]. */
  inside: () => number;
  sensed: () => number;
  /** The passage of the valve, where there is one. */
  passage?: DuctEnd;
}

/** What a bar and its hoses hold [kg]. */
export const heldBy = ({ ducts, volumes }: Bar): number =>
  ducts.reduce((sum, duct) => sum + duct.contents().mass, 0) +
  volumes.reduce((sum, { contents }) => sum + contents.mass, 0);

/** Room over the bores that open into it below which it counts as lengthened hose [m]: as long as coarse cells are. */
const LEAST_ROOM = 0.04;

/** @param runnerOf the runner of the cylinder at a place of the firing order */
export function barParts(
  bar: BarSpecification,
  engine: EngineSpecification,
  feed: OpenAir,
  runnerOf: (place: number) => Duct,
): Bar {
  return new Builder(bar, engine, feed).joined(runnerOf);
}

/** Puts one bar together. */
class Builder {
  private readonly cell: number;
  private readonly parts: Omit<Bar, 'inside' | 'sensed'> = {
    ducts: [],
    nodes: [],
    volumes: [],
    hoses: [],
  };
  /** Ends at the bar. */
  private readonly meeting: DuctEnd[] = [];

  constructor(
    private readonly bar: BarSpecification,
    private readonly engine: EngineSpecification,
    private readonly feed: OpenAir,
  ) {
    this.cell = engine.numerics.intakeCell;
  }

  joined(runnerOf: (place: number) => Duct): Bar {
    const { volume, hoses } = this.bar;
    const tooSmall =
      volume < LEAST_ROOM * hoses.reduce((sum, { bore }) => sum + circleArea(bore), 0);
    const spare = tooSmall ? volume / hoses.length : 0;
    for (const hose of hoses) this.addHose(hose, spare, runnerOf(hose.place));
    this.addValve();
    const sensed = this.addSensor();
    if (tooSmall) {
      this.parts.nodes.push(junction(this.meeting));
      const inside = pressureAt(this.meeting[0]!);
      return { ...this.parts, inside, sensed: sensed ?? inside };
    }
    const body = new Volume('bar', volume);
    this.parts.volumes.push(body);
    this.parts.nodes.push(...this.meeting.map((end) => openEnd(end, body)));
    const inside = () => body.pressure;
    return { ...this.parts, inside, sensed: sensed ?? inside };
  }

  private addHose(
    { length, bore, hole }: BarSpecification['hoses'][number],
    spare: number,
    runner: Duct,
  ): void {
    const hose = this.tube('hose', length, bore, spare);
    const { throttle } = this.engine.intake;
    const tap = new Tapping(runner, throttle.length - throttle.shaftPosition);
    const end = new DuctEnd(hose, 'low');
    this.parts.nodes.push(orifice(end, tap, hole));
    this.parts.hoses.push(end);
    this.meeting.push(new DuctEnd(hose, 'high'));
  }

  private addSensor(): (() => number) | undefined {
    const { sensor } = this.bar;
    if (!sensor) return undefined;
    const { length, bore, volume } = sensor;
    const small = volume < LEAST_ROOM * circleArea(bore);
    const tube = this.tube('hose of the sensor', length, bore, small ? volume : 0);
    this.meeting.push(new DuctEnd(tube, 'low'));
    const end = new DuctEnd(tube, 'high');
    if (small) {
      this.parts.nodes.push(closedEnd(end));
      return pressureAt(end);
    }
    const inside = new Volume('sensor', volume);
    this.parts.volumes.push(inside);
    this.parts.nodes.push(openEnd(end, inside));
    return () => inside.pressure;
  }

  private addValve(): void {
    if (!this.bar.valve) return;
    const { bore, area, times, open } = this.bar.valve;
    const passage = this.tube('passage of the valve', 3 * this.cell, bore);
    const period = CYCLE / times;
    const outer = new DuctEnd(passage, 'low');
    const areaAt = (angle: number) => (angle % period < open * period ? area : 0);
    this.parts.nodes.push(valve(outer, this.feed, areaAt));
    this.parts.passage = outer;
    this.meeting.push(new DuctEnd(passage, 'high'));
  }

  private tube(name: string, length: number, bore: number, spare = 0): Duct {
    const { bar, cell: largestCell, engine } = this;
    const duct = thinLine({ name, length, bore, spare, largestCell }, bar.at, engine.ambient);
    this.parts.ducts.push(duct);
    return duct;
  }
}

/** Pressure of the cell at an end [Pa]. */
const pressureAt =
  ({ duct, side }: DuctEnd) =>
  () =>
    duct.prim.p.at(side === 'low' ? 0 : duct.mesh.cells - 1);
