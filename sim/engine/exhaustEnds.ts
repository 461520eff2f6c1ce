/** What the primaries of an engine end in: joints, the pipes behind them, the open air. */
import { DuctEnd } from '../boundary/ductEnd.ts';
import {
  areaStep,
  type Collector,
  collector,
  junction,
  type Node,
  openEnd,
} from '../boundary/node.ts';
import type { OpenAir } from '../boundary/reservoir.ts';
import type { Duct } from '../duct/duct.ts';
import { behind, type Firing } from '../firings.ts';
import type { EngineSpecification } from '../specification.ts';
import { secondaryDuct, tailDuct } from './exhaustDucts.ts';
import { kindsOf, type Manifold, manifolds } from './manifolds.ts';

export interface ExhaustEnds {
  nodes: Node[];
  /** Secondaries and tails. */
  pipes: Duct[];
  /** Joints whose other pipes are echoes. */
  collectors: Collector[];
}

/** Ends of the primaries that are solved, by the numbers of their cylinders. */
type Primaries = ReadonlyMap<number, DuctEnd>;

/** @param all whether every cylinder is solved, those that do alike too */
export function exhaustEnds(
  spec: EngineSpecification,
  primaries: Primaries,
  outside: OpenAir,
  all: boolean,
): ExhaustEnds {
  const exhausts = all
    ? manifolds(spec).map((manifold) => ({ manifold, even: false }))
    : kindsOf(spec);
  const each = exhausts.map(({ manifold, even }) => {
    const ends: ExhaustEnds = { nodes: [], pipes: [], collectors: [] };
    const builder = new Builder(spec, primaries, even, ends);
    builder.openTo(outside, manifold);
    return ends;
  });
  return {
    nodes: each.flatMap(({ nodes }) => nodes),
    pipes: each.flatMap(({ pipes }) => pipes),
    collectors: each.flatMap(({ collectors }) => collectors),
  };
}

/** Puts one exhaust together, from its primaries outwards. */
class Builder {
  constructor(
    private readonly spec: EngineSpecification,
    private readonly primaries: Primaries,
    /** Whether its first cylinder stands for all. */
    private readonly even: boolean,
    private readonly to: ExhaustEnds,
  ) {}

  openTo(outside: OpenAir, manifold: Manifold): void {
    const { exhaust, numerics } = this.spec;
    const { silencerLoss } = exhaust;
    const bundles = this.even ? [manifold[0]!] : manifold;
    const ends = bundles.map((bundle) => this.bundleEnd(bundle));
    const tail = tailDuct(exhaust, numerics.exhaustCell);
    if (!tail) {
      this.to.nodes.push(openEnd(ends[0]!, outside, 0, silencerLoss));
      return;
    }
    const others = manifold.slice(1).map((bundle) => behind(bundle[0]!, manifold[0]![0]!));
    this.join(ends, others, new DuctEnd(this.keep(tail), 'low'));
    this.to.nodes.push(openEnd(new DuctEnd(tail, 'high'), outside, 0, silencerLoss));
  }

  /** End of the pipe that the primaries of a bundle end in; without secondaries that of the one primary. */
  private bundleEnd(bundle: readonly Firing[]): DuctEnd {
    const { exhaust, numerics } = this.spec;
    const solved = this.even ? [bundle[0]!] : bundle;
    const ends = solved.map(({ number }) => this.primaries.get(number)!);
    const secondary = secondaryDuct(exhaust, numerics.exhaustCell);
    if (!secondary) return ends[0]!;
    const others = bundle.slice(1).map((one) => behind(one, bundle[0]!));
    this.join(ends, others, new DuctEnd(this.keep(secondary), 'low'));
    return new DuctEnd(secondary, 'high');
  }

  /** Joins pipes to the one that leads on; where the first stands for all, the others come `delays` later. */
  private join(ends: readonly DuctEnd[], delays: readonly number[], on: DuctEnd): void {
    const { nodes, collectors } = this.to;
    if (ends.length === 1 && delays.length === 0) {
      nodes.push(areaStep(ends[0]!, on));
    } else if (this.even) {
      const joint = collector(ends[0]!, delays, [on]);
      collectors.push(joint);
      nodes.push(joint);
    } else {
      nodes.push(junction([...ends, on]));
    }
  }

  private keep(duct: Duct): Duct {
    this.to.pipes.push(duct);
    return duct;
  }
}
